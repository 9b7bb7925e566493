/** Every stated band is the scatter that the published checks find: worked out anew from their rows. */
import { describe, expect, it, vi } from 'vitest';
import { STATED, type StatedName } from '../../../src/solver/design/stated-bands.ts';
import { bending } from '../../published/bending.ts';
import { check } from '../../published/check.ts';
import { friction } from '../../published/friction.ts';
import { making } from '../../published/making.ts';
import type { PublishedRow } from '../../published/row.ts';
import { sectionDrag } from '../../published/section-drag.ts';

vi.setConfig({ testTimeout: 120_000 }); // polars at large Reynolds numbers

const isMeasured = ({ status }: PublishedRow) => !status.includes('derived');

/** What each band is taken from: rows, and the quantities of theirs that count. */
const FROM: Record<StatedName, [rows: readonly PublishedRow[], quantity: RegExp]> = {
  sectionDrag: [sectionDrag.filter(isMeasured), /^(least cd|cd|cd at zero lift)$/],
  greatestLift: [sectionDrag.filter(isMeasured), /^clmax$/],
  sectionLiftSlope: [sectionDrag.filter(isMeasured), /^lift slope per deg$/],
  sectionPressure: [sectionDrag.filter(isMeasured), /^Cp$/],
  turbulentFriction: [friction, /^turbulent mean CF$/],
  beams: [
    bending,
    /^(side bending stiffness|torsional stiffness|foot to the side|twist of the foot|first bending|in water)/,
  ],
  bodies: [making, /^(volume|mass)/],
};

describe('stated bands', () => {
  it.each(Object.keys(STATED) as StatedName[])('%s is the root mean square of its rows', (name) => {
    const [rows, quantity] = FROM[name];
    const shares = rows
      .filter(({ quantities }) => quantities.some((one) => quantity.test(one)))
      .flatMap(check)
      .filter((one) => quantity.test(one.quantity))
      .map(({ found, published }) => found / published - 1);
    const { share, values } = STATED[name];
    const scatter = Math.hypot(...shares) / Math.sqrt(shares.length);
    expect(shares.length).toBe(values);
    expect(Math.abs(scatter - share), `found ${scatter}`).toBeLessThan(0.06 * share); // two digits are stated
  });
});
