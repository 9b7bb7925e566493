/** How steeply the strut lifts to the side: by its own section, wherever a flow is solved. */
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { alphaLoads, liftSlopeAt } from '../../../src/solver/forces/loads.ts';
import { type Craft, craftOf } from '../../../src/solver/geometry/craft.ts';
import { createPolarTable } from '../../../src/solver/section/table.ts';
import { solve } from '../../../src/solver/solve.ts';
import { craftFor } from '../../../src/solver/studies/craft-for.ts';
import { sideLoads } from '../../../src/solver/studies/derivatives.ts';
import { TRIPPED } from '../../../src/solver/studies/strut-polars.ts';
import { FlowPool } from '../../../src/solver/vortex/flow.ts';
import { STRUT } from '../../../src/solver/vortex/system.ts';
import { solveWhole, wholeFoil } from '../../../src/solver/vortex/whole.ts';
import { expectClose } from '../../support/close.ts';
import { plainDesign } from '../../support/designs.ts';

const THIN = 2 * Math.PI;
const RESOLUTION = { strips: 40, stabilizerStrips: 1, rows: 1 };
/** 1 m by 0.1 m, two metres ahead of a wing too small to be felt. */
const standing = (thickness: number, rest: Partial<Design['brief']> = {}, turbulentTo?: number): Design =>
  plainDesign(
    { length: { kind: 'unrolled', value: 0.2 }, chord: { kind: 'taper', root: 1e-3, tip: 1e-3 } },
    {
      strut: { x: -2, length: 1, chord: 0.1, thickness, ...(turbulentTo !== undefined && { turbulentTo }) },
      brief: rest,
    },
  );
const design = standing(0.012);
const { brief } = design;
const VISCOSITY = solve(design, { sections: 'thin', alpha: 0, neutralDroop: false }).condition.viscosity;
const REYNOLDS = (brief.speeds.cruise * 0.1) / VISCOSITY;
const ownSlope = (layer: 'natural' | 'turbulent'): number =>
  createPolarTable(
    { kind: 'naca4', code: '0012' },
    { clarity: 'clean', ...(layer === 'turbulent' && TRIPPED) },
  ).viscousLine(REYNOLDS).slope;
/** H. Glauert, The Elements of Aerofoil and Airscrew Theory (1926), ch. XI, with elliptic loading; aspect ratio 10. */
const lifted = (a0: number) => 1 / (1 / a0 + 1 / (Math.PI * 10));

/** Side force coefficient of the strut by sideslip, on its own area. */
function sideSlope(craft: Craft): number {
  const flow = new FlowPool().solve('strut', craft, 'whole');
  return (-2 * sideLoads(flow.system, flow.symmetric.ahead, flow.craft.beta)[STRUT].y) / 0.1;
}

describe('a strut in deep water', { timeout: 60_000 }, () => {
  it.each([THIN, 0.95 * THIN, 1.05 * THIN])('is a wing on its side, section slope %f', (slope) => {
    const lift = () => ({ zeroLift: 0, moment: 0, slope });
    // As many strips on the 20 of the strut as on both halves of this wing, in the same places.
    const wing = craftOf(plainDesign({}), null, { ...RESOLUTION, strips: 10 }, { wing: lift });
    const flow = new FlowPool().solve('wing', wing, 'angle');
    const strut = craftOf(design, null, RESOLUTION, { strut: () => slope });
    expectClose(
      'slope',
      sideSlope(strut),
      (2 * liftSlopeAt(alphaLoads(flow.system, flow.symmetric), 0)) / 0.1,
      {
        share: 1e-4,
      },
    );
  });

  it('of slope 2 pi is the thin strut to the last digit', () => {
    const given = craftOf(design, null, RESOLUTION, { strut: () => THIN });
    const left = craftOf(design, null, RESOLUTION);
    expect(given.parts.strut).toEqual(left.parts.strut);
    expect(craftFor(design, null, { ...RESOLUTION, sections: 'thin' }).parts.strut).toEqual(left.parts.strut);
  });

  it('pushes sideways by its own section, as lifting-line theory says for its aspect ratio', () => {
    const a0 = ownSlope('natural');
    expect(a0).toBeLessThan(0.99 * THIN);
    const by = (sections: 'real' | 'thin') => solve(design, { sections, alpha: 0, neutralDroop: false });
    const [real, thin] = [by('real').stability.craft, by('thin').stability.craft];
    for (const figure of ['CYbeta', 'Clbeta', 'CYp', 'Clp', 'Cnbeta', 'CYr', 'Clr', 'Cnp', 'Cnr'] as const)
      expectClose(figure, real[figure] / thin[figure], lifted(a0) / lifted(THIN), { share: 0.005 });
  });
});

describe('along a strut', { timeout: 60_000 }, () => {
  const at = (drawn: Design, from: number, to: number, depth: number | null = 0.5) =>
    craftFor(drawn, depth, RESOLUTION).strutSlope(from, to);

  it('the layer below spray and waves is the water’s, above it turbulent, and a strip across has its share of both', () => {
    const [natural, turbulent] = [ownSlope('natural'), ownSlope('turbulent')];
    expect(turbulent).toBeGreaterThan(1.005 * natural);
    const drawn = standing(0.012, {}, 0.1);
    expectClose('below', at(drawn, 0.1, 0.5), natural, { share: 1e-3 });
    expectClose('above', at(drawn, 0, 0.1), turbulent, { share: 1e-3 });
    expectClose('across', at(drawn, 0.08, 0.12), 0.5 * (at(drawn, 0, 0.1) + at(drawn, 0.1, 0.5)), {
      share: 1e-9,
    });
    expect(at(standing(0.012, {}, 0), 0, 0.1)).toBe(at(drawn, 0.1, 0.5));
    expect(at(drawn, 0, 0.1, null)).toBe(at(drawn, 0.1, 0.5));
  });

  it('every strip meets the flow where its own height asks for it', () => {
    const { parts } = craftFor(standing(0.012, {}, 0.1), 0.5, RESOLUTION);
    const { count, controlX, nodeZ, chord } = parts.strut!;
    for (let k = 0; k < count; k++) {
      const slope = at(standing(0.012, {}, 0.1), 0.5 - nodeZ[k + 1]!, 0.5 - nodeZ[k]!);
      expectClose(`strip ${k}`, controlX[k]! - -2, (chord[k]! * slope) / (4 * Math.PI), { within: 1e-12 });
    }
    expect(controlX[count - 1]).toBeGreaterThan(controlX[0]! + 1e-4);
  });

  it('thicker or thinner than any polar it keeps 2 pi', () => {
    for (const thickness of [0.003, 0.025]) expect(at(standing(thickness), 0, 0.5)).toBe(THIN);
  });

  it('heeled it lifts by the same section, however far it reaches', () => {
    const drawn = standing(0.012, {}, 0.1);
    const [real, thin] = (['real', 'thin'] as const).map((sections) =>
      craftFor(drawn, 0.5, { ...RESOLUTION, sections }),
    );
    const force = (craft: Craft) =>
      solveWhole(wholeFoil(craft, 0), 0.5)([1, -1e-3, 0]).loads[STRUT].y / -1e-3;
    expectClose('upright', force(real!) / force(thin!), sideSlope(real!) / sideSlope(thin!), { share: 1e-6 });
    const { stations, controls, chord } = wholeFoil(real!, Math.PI / 3); // all of its metre is wetted
    const own = stations.flatMap(({ surface }, i) => (surface === STRUT ? [i] : []));
    const slopeAt = (i: number) => ((controls.x[i]! + 2) / chord[i]!) * 4 * Math.PI;
    expectClose('foot', slopeAt(own[0]!), at(drawn, 0.1, 0.5), { share: 1e-9 });
    expectClose('head', slopeAt(own.at(-1)!), at(drawn, 0, 0.1), { share: 1e-9 });
  });
});

describe('the slope a strut asks for', { timeout: 60_000 }, () => {
  it.each([
    ['0012', {}, 8e5, 1e-3],
    ['0016', TRIPPED, 8e5, 1e-3],
    ['0016', {}, 1.2e5, 0.01], // laminar separation bends its curve
  ] as const)('is that of the whole polar of %s, layer %o, at Re %d', (code, layer, reynolds, share) => {
    const table = createPolarTable({ kind: 'naca4', code }, { clarity: 'clean', ...layer });
    expectClose('slope', table.levelSlope(reynolds), table.viscousLine(reynolds).slope, { share });
  });
});
