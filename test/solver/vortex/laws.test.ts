/** Laws that the vortex system must obey whatever the foil: symmetry, superposition, scaling, limits. */
import { describe, expect, it } from 'vitest';
import type { ChordLaw, Design, Planform, SweepLaw } from '../../../src/solver/design/document.ts';
import { mixAlpha } from '../../../src/solver/forces/loads.ts';
import { craftOf } from '../../../src/solver/geometry/craft.ts';
import type { ConditionOptions } from '../../../src/solver/report.ts';
import { solve as solveDesign } from '../../../src/solver/solve.ts';
import { FlowPool } from '../../../src/solver/vortex/flow.ts';
import { expectClose } from '../../support/close.ts';
import {
  goodDesign,
  goodDesigns,
  plainDesign,
  plainStabilizer,
  taperedChord,
} from '../../support/designs.ts';
import { fullSystem } from './full-system.ts';

const coarse = { strips: 12, stabilizerStrips: 6, rows: 1 };
const DEGREE = Math.PI / 180;

/** With thin sections: real ones change with size, and scaling would not hold. */
const solve = (design: Design, options: ConditionOptions = {}) =>
  solveDesign(design, { sections: 'thin', ...options });

/** Starboard circulations of an unsplit solution, whose segments alternate between the halves. */
const starboard = (all: number[]) => all.filter((_, k) => k % 2 === 0);
const port = (all: number[]) => all.filter((_, k) => k % 2 === 1);

function close(found: ArrayLike<number>, expected: number[], share = 1e-9) {
  const largest = Math.max(...expected.map(Math.abs));
  expected.forEach((value, k) => {
    expectClose(`segment ${k}`, found[k]!, value, { within: share * largest });
  });
}

describe('the split by symmetry', () => {
  for (const [name, design] of goodDesigns()) {
    const craft = craftOf(design, design.brief.depth, coarse);
    const full = fullSystem(craft, false);
    const flow = new FlowPool().solve('law', craft, 'whole');

    it(`${name}: level flight is its own mirror, and the half system finds it`, () => {
      const { circulation } = full.solve({ alpha: 3 * DEGREE });
      close(port(circulation), starboard(circulation));
      mixAlpha(flow.symmetric, 3 * DEGREE, flow.base);
      close(flow.base.circulation, starboard(circulation));
    });

    it(`${name}: sideslip, roll and yaw change the halves by opposite amounts, as the half system says`, () => {
      for (const [cause, unit] of [
        ['beta', flow.foil.beta],
        ['p', flow.foil.rollRate],
        ['r', flow.foil.yawRate],
      ] as const) {
        const step = 1e-3;
        const more = full.solve({ [cause]: step }).circulation;
        const less = full.solve({ [cause]: -step }).circulation;
        const slope = more.map((value, k) => (value - less[k]!) / (2 * step));
        close(
          port(slope),
          starboard(slope).map((value) => -value),
          1e-6,
        );
        close(unit.circulation, starboard(slope), 1e-5); // the sine of a finite sideslip
      }
    });
  }

  it('holds for several rows', () => {
    const design = goodDesign('curved-race');
    const craft = craftOf(design, 0.55, { strips: 8, stabilizerStrips: 4, rows: 3 });
    const flow = new FlowPool().solve('law', craft, 'angle');
    mixAlpha(flow.symmetric, 0.05, flow.base);
    close(flow.base.circulation, starboard(fullSystem(craft, false).solve({ alpha: 0.05 }).circulation));
  });
});

describe('superposition', () => {
  const design = goodDesign('curved-race');
  const craft = craftOf(design, 0.55, coarse);
  const full = fullSystem(craft, false);
  const flow = new FlowPool().solve('law', craft, 'whole');

  it('of a pitch rate', () => {
    const [still, turning] = [full.solve({}), full.solve({ q: 0.3 })];
    const slope = turning.circulation.map((value, k) => (value - still.circulation[k]!) / 0.3);
    close(flow.symmetric.pitchRate.circulation, starboard(slope));
  });

  it('of a turn of the stabilizer: unit solution against the turned design', () => {
    const turned = structuredClone(design);
    turned.stabilizer!.incidence += 0.01;
    const base = fullSystem(craft, false).solve({}).circulation;
    const other = fullSystem(craftOf(turned, 0.55, coarse), false).solve({}).circulation;
    const slope = other.map((value, k) => (value - base[k]!) / (0.01 * DEGREE));
    close(flow.symmetric.incidence.circulation, starboard(slope), 1e-3);
  });
});

describe('port and starboard, up and down', () => {
  it('a bend upwards turns the signs of what a bend downwards does (symmetric section, deep, no lift)', () => {
    const bent = (side: number) =>
      solve(
        plainDesign({ droop: { kind: 'arc', tipAngle: side * 30 }, sweep: { kind: 'straight', angle: 10 } }),
        {
          alpha: 0,
          neutralDroop: false,
        },
      ).stability.foil;
    const [down, up] = [bent(1), bent(-1)];
    for (const key of ['CYbeta', 'Cnbeta', 'Clp', 'CYr', 'Cnr'] as const)
      expectClose(key, up[key], down[key], { share: 1e-9 });
    for (const key of ['Clbeta', 'CYp', 'Cnp', 'Clr'] as const)
      expectClose(key, up[key], -down[key], { share: 1e-9 });
  });

  it('a foil upside down in deep water lifts the other way', () => {
    const design = goodDesign('formula-deep');
    const over = structuredClone(design);
    over.wing.droop = { kind: 'formula', expression: '-25 * eta^2' };
    over.wing.twist = { kind: 'formula', expression: '2 * eta^2' };
    for (const planform of [design.wing, over.wing])
      planform.section = { root: { kind: 'naca4', code: '0012' }, tip: { kind: 'naca4', code: '0012' } };
    const [one, other] = [
      solve(design, { alpha: 3, neutralDroop: false }),
      solve(over, { alpha: -3, neutralDroop: false }),
    ];
    expectClose('lift', other.lift.total, -one.lift.total, { share: 1e-9 });
    expectClose('induced drag', other.inducedDrag.farField, one.inducedDrag.farField, { share: 1e-9 });
  });
});

describe('scaling', () => {
  const design = goodDesign('curved-race');
  const options = { alpha: 2, depth: 0.55, neutralDroop: false };
  const one = solve(design, { ...options, speed: 6 });

  it('forces grow with the square of the speed, coefficients stay', () => {
    const twice = solve(design, { ...options, speed: 12 });
    expectClose('lift', twice.lift.total, 4 * one.lift.total, { share: 1e-12 });
    expectClose('induced drag', twice.inducedDrag.farField, 4 * one.inducedDrag.farField, { share: 1e-12 });
    expectClose('lost lift', twice.ledger.lostLift, 4 * one.ledger.lostLift, { share: 1e-9 });
    expectClose('pitch', twice.pitch.momentAboutBalance, 4 * one.pitch.momentAboutBalance, { share: 1e-12 });
    expectClose('CL', twice.lift.CL, one.lift.CL, { share: 1e-12 });
    expectClose('Clr', twice.stability.craft.Clr, one.stability.craft.Clr, { share: 1e-12 });
  });

  it('forces grow with the square of the size, coefficients stay', () => {
    const large = solve(scaled(design, 2.5), { ...options, speed: 6, depth: 2.5 * 0.55 });
    expectClose('lift', large.lift.total, 6.25 * one.lift.total, { share: 1e-9 });
    expectClose('CDi', large.inducedDrag.CDi, one.inducedDrag.CDi, { share: 1e-9 });
    expectClose('lost fraction', large.ledger.lostFraction!, one.ledger.lostFraction!, { within: 1e-9 });
    expectClose('neutral point', large.stability.neutralPoint, 2.5 * one.stability.neutralPoint, {
      share: 1e-9,
    });
    expectClose('static margin', large.stability.staticMargin, one.stability.staticMargin, { share: 1e-9 });
    for (const key of ['CYbeta', 'Clp', 'Cnr'] as const)
      expectClose(key, large.stability.craft[key], one.stability.craft[key], { share: 1e-9 });
  });
});

describe('limits', () => {
  it('a great depth is deep water', () => {
    const design = plainDesign({ chord: taperedChord(8, 0.4), droop: { kind: 'arc', tipAngle: 20 } });
    const [far, deep] = [solve(design, { alpha: 3, depth: 100 }), solve(design, { alpha: 3, depth: null })];
    expectClose('CL', far.lift.CL, deep.lift.CL, { share: 1e-4 });
    expectClose('CDi', far.inducedDrag.CDi, deep.inducedDrag.CDi, { share: 1e-4 });
    expectClose('k', far.inducedDrag.leastFactor, deep.inducedDrag.leastFactor, { share: 1e-4 });
    expectClose('Clr', far.stability.foil.Clr, deep.stability.foil.Clr, { share: 1e-3 });
  });

  it('the deeper the foil, the more it lifts and the less it drags', () => {
    const design = goodDesign('curved-race');
    const depths = [0.15, 0.3, 0.6, 0.9];
    const runs = depths.map((depth) => solve(design, { alpha: 3, depth, neutralDroop: false }));
    for (let k = 1; k < runs.length; k++) {
      expect(runs[k]!.lift.CL).toBeGreaterThan(runs[k - 1]!.lift.CL);
      expect(runs[k]!.inducedDrag.spanEfficiency!).toBeGreaterThan(runs[k - 1]!.inducedDrag.spanEfficiency!);
    }
  });

  it('lift is linear in the angle within 0.5 % to 6 degrees', () => {
    for (const design of [
      plainDesign({ chord: taperedChord(6, 0.5) }),
      plainDesign({ chord: taperedChord(12, 0.6) }),
    ]) {
      const slope = solve(design, { alpha: 0, neutralDroop: false }).lift.CLalpha;
      for (const alpha of [1, 2, 4, 6])
        expectClose(
          `CL at ${alpha}`,
          solve(design, { alpha, neutralDroop: false }).lift.CL,
          slope * alpha * DEGREE,
          { share: 0.005 },
        );
    }
  });

  it('a stabilizer without incidence behind a wing without lift carries nothing', () => {
    const design = plainDesign({}, { stabilizer: plainStabilizer() });
    const { lift } = solve(design, { alpha: 0, neutralDroop: false });
    expectClose('lift', lift.total, 0, { within: 1e-9 });
  });
});

/** The same design with every length multiplied. */
function scaled(design: Design, factor: number): Design {
  const chord = (law: ChordLaw): ChordLaw => {
    if (law.kind === 'taper') return { ...law, root: factor * law.root, tip: factor * law.tip };
    if (law.kind === 'superelliptic' || law.kind === 'elliptic') return { ...law, root: factor * law.root };
    throw new Error(`no scaling written for ${law.kind}`);
  };
  const sweep = (law: SweepLaw): SweepLaw => (law.kind === 'rake' ? { ...law, tip: factor * law.tip } : law);
  const planform = <P extends Planform>(p: P): P => ({
    ...p,
    length: { ...p.length, value: factor * p.length.value },
    chord: chord(p.chord),
    sweep: sweep(p.sweep),
  });
  const { brief, wing, stabilizer, strut } = design;
  return {
    ...design,
    brief: { ...brief, balance: { x: factor * brief.balance.x, height: factor * brief.balance.height } },
    wing: planform(wing),
    stabilizer: stabilizer && {
      ...planform(stabilizer),
      arm: factor * stabilizer.arm,
      height: factor * stabilizer.height,
    },
    strut: strut && {
      ...strut,
      x: factor * (strut.x ?? 0),
      length: factor * strut.length,
      chord: factor * strut.chord,
      thickness: factor * strut.thickness,
    },
  };
}
