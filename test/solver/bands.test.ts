/** The bands of the headline figures: what they must be where the answer is known. */
import { describe, expect, it, vi } from 'vitest';
import { bandStudy } from '../../src/solver/bands.ts';
import { solve } from '../../src/solver/solve.ts';
import { finish } from '../../src/solver/studies/study.ts';
import { expectClose } from '../support/close.ts';
import { ellipticChord, goodDesign, plainDesign } from '../support/designs.ts';

vi.setConfig({ testTimeout: 60_000 }); // fourteen cases of a foil, more slowly on a busy machine

describe('bands', () => {
  const design = goodDesign('curved-race');
  const { figures, known } = finish(bandStudy(design));

  it('are half widths of the inputs: a mass known to a share moves the drag by twice that share, speed the other way', () => {
    // Drag goes with lift squared over speed squared (definition of the induced drag): both shares count double.
    const flat = plainDesign({ chord: ellipticChord(10) });
    const { inputs } = finish(bandStudy(flat)).figures.inducedDrag;
    const drag = solve(flat).inducedDrag.farField;
    expectClose('band', inputs!, drag * Math.hypot(2 * known.mass, 2 * known.speed), { share: 0.1 });
  });

  it('leave the stabilizer volume to the geometry: neither method nor strips move it', () => {
    const { method, strips } = figures.stabilizerVolume;
    expect([method, strips]).toEqual([0, 0]);
  });

  it('hold what a finer solution finds', () => {
    const usual = solve(design);
    const fine = solve(design, { strips: 80, stabilizerStrips: 40 });
    expect(figures.inducedDrag.strips).toBe(Math.abs(fine.inducedDrag.farField - usual.inducedDrag.farField));
    expect(figures.neutralDroop.method).toBeGreaterThan(0);
  });

  it('are not known where a figure is missing', () => {
    const { neutralDroop } = solve(goodDesign('gull-lake')).stability;
    const { method } = finish(bandStudy(goodDesign('gull-lake'))).figures.neutralDroop;
    expect(neutralDroop === null).toBe(method === null);
  });
});
