/** What the flow answers to a foil that gives, against the derivatives and the divergence of strip theory. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { readDesign } from '../../../src/solver/design/read.ts';
import { mixAlpha, mixAlphaSlope } from '../../../src/solver/forces/loads.ts';
import { craftOf } from '../../../src/solver/geometry/craft.ts';
import { solve } from '../../../src/solver/solve.ts';
import { lumpsOf } from '../../../src/solver/structure/masses.ts';
import type { Part } from '../../../src/solver/structure/parts.ts';
import { shapesOf } from '../../../src/solver/structure/shapes.ts';
import { skeletonOf } from '../../../src/solver/structure/skeleton.ts';
import { massMatrix, swingsOf } from '../../../src/solver/structure/vibration.ts';
import { conditionOf } from '../../../src/solver/studies/condition.ts';
import { ElasticFlow } from '../../../src/solver/studies/elastic.ts';
import { flexibleModes } from '../../../src/solver/studies/flexible-modes.ts';
import { frequencyStudy } from '../../../src/solver/studies/frequencies.ts';
import { rideStudy } from '../../../src/solver/studies/ride.ts';
import { runFoil } from '../../../src/solver/studies/running.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import { FlowPool } from '../../../src/solver/vortex/flow.ts';

function demo(name = 'curved-race'): Design {
  const reading = readDesign(
    readFileSync(new URL(`../../../web/demos/${name}.json`, import.meta.url), 'utf8'),
  );
  if (!reading.ok) throw new Error(reading.message);
  return reading.design;
}

const resolution = { strips: 24, stabilizerStrips: 12, rows: 1 };
const RIGID = { roll: 1e9, pitch: 1e9, yaw: 1e9 };
const HARD = { modulus: 1e12, shear: 5e11 };

/** Everything as stiff as a document can say. */
const hard = (design: Design): Design => ({
  ...design,
  laminate: { strut: HARD, fuselage: HARD, wing: HARD, stabilizer: HARD },
  joints: { box: RIGID, strut: RIGID, wing: RIGID, stabilizer: RIGID },
});

function setUp(
  design: Design,
  symmetry: 'symmetric' | 'antisymmetric',
  hasStrut = symmetry === 'antisymmetric',
) {
  const condition = conditionOf(design.brief, {});
  const craft = craftOf(design, condition.depth, resolution);
  const foil = runFoil(new FlowPool(), 'test', craft, condition, 'whole');
  const { flow, alpha } = foil;
  mixAlpha(flow.symmetric, alpha, flow.base);
  mixAlphaSlope(flow.symmetric, alpha, flow.change);
  const skeleton = skeletonOf(design, craft);
  const elastic = new ElasticFlow(flow, alpha, craft, skeleton, symmetry, hasStrut);
  const whole = (turn: readonly [number, number, number]) => {
    const motion = new Float64Array(6 * skeleton.frame.count);
    for (let j = 0; j < motion.length; j += 6) motion.set(turn, j);
    return motion;
  };
  return { elastic, flow, whole, skeleton, craft, condition };
}

const near = (found: number, expected: number, share: number) =>
  expect(Math.abs(found - expected)).toBeLessThan(share * Math.abs(expected));

describe('a foil turned as a whole', () => {
  it('nose up about the origin answers as it does to a larger angle', () => {
    const { elastic, flow, whole } = setUp(demo(), 'symmetric');
    const turned = elastic.atRest(whole([0, 1, 0]));
    const angled = elastic.ofCause(flow.change);
    // What is left apart is the induced part of the velocity, which turns with the foil.
    near(turned.total.force[2], angled.total.force[2], 0.03);
    near(turned.total.moment[1], angled.total.moment[1], 0.05);
  });

  it('nose to starboard answers as it does to water from port', () => {
    const { elastic, flow, whole } = setUp(demo(), 'antisymmetric');
    const turned = elastic.atRest(whole([0, 0, -1]));
    const slipped = elastic.ofCause(flow.craft.beta);
    near(turned.total.force[1], -slipped.total.force[1], 0.03);
    near(turned.total.moment[2], -slipped.total.moment[2], 0.1);
  });

  it('starboard down leans its lift to starboard', () => {
    const { elastic, whole, condition } = setUp(demo('flat-race'), 'antisymmetric', false);
    const turned = elastic.atRest(whole([-1, 0, 0]));
    near(turned.total.force[1], condition.lift / (condition.density * condition.speed ** 2), 0.05);
  });

  it('in motion answers as it does to the rates', () => {
    const { elastic, flow, whole } = setUp(demo(), 'antisymmetric');
    for (const [turn, unit] of [
      [[-1, 0, 0], flow.craft.rollRate],
      [[0, 0, -1], flow.craft.yawRate],
    ] as const) {
      const moved = elastic.inMotion(whole(turn));
      const cause = elastic.ofCause(unit);
      for (const axis of [0, 1, 2] as const) {
        expect(moved.total.force[axis]).toBeCloseTo(cause.total.force[axis], 9);
        expect(moved.total.moment[axis]).toBeCloseTo(cause.total.moment[axis], 9);
      }
    }
  });
});

describe('the ride', () => {
  const study = finish(rideStudy(demo(), { count: 2 }));

  it('of the foil held stiff is that of the solve', () => {
    const { stability } = solve(demo(), { strips: 24, neutralDroop: false });
    for (const key of ['Clbeta', 'Cnbeta', 'Clr', 'Cnr'] as const)
      expect(study.cruise.rigid[key]).toBeCloseTo(stability.craft[key], 5);
    expect(study.cruise.rigid.rollFromYaw).toBeCloseTo(stability.rollFromYaw!, 5);
  });

  it('is shared out without a rest', () => {
    for (const key of ['Clbeta', 'Clr', 'Cmalpha'] as const) {
      const sum = study.shares.reduce((total, { change }) => total + change[key], 0);
      expect(sum).toBeCloseTo(study.cruise.flexible[key] - study.cruise.rigid[key], 8);
    }
  });

  it('of a foil as stiff as can be is that of the drawn one', () => {
    const { cruise } = finish(rideStudy(hard(demo()), { count: 1 }));
    for (const key of ['Clbeta', 'Cmalpha'] as const)
      expect(Math.abs(cruise.flexible[key] / cruise.rigid[key] - 1)).toBeLessThan(0.06);
  });

  it('softens more as speed grows', () => {
    const [slow, fast] = study.points;
    const softness = ({ rigid, flexible }: NonNullable<typeof slow>) =>
      Math.abs(flexible.Clbeta / rigid.Clbeta - 1);
    expect(softness(fast!)).toBeGreaterThan(softness(slow!));
  });
});

describe('divergence', () => {
  it('of a straight wing comes at the speed of strip theory, a little above', () => {
    // R. L. Bisplinghoff, H. Ashley, R. L. Halfman, Aeroelasticity, 1955, ch. 8: even wing held at its root,
    // q = (pi/2)^2 GJ/(L^2 c e a) for a lift slope a per rad acting e ahead of the elastic axis.
    const wing: Design['wing'] = {
      ...demo('flat-race').wing,
      length: { kind: 'unrolled', value: 4 },
      chord: { kind: 'taper', root: 0.05, tip: 0.05 },
      sweep: { kind: 'straight', angle: 0 },
      droop: { kind: 'flat' },
      twist: { kind: 'linear', tip: 0 },
      section: { root: { kind: 'naca4', code: '0012' }, tip: { kind: 'naca4', code: '0012' } },
    };
    const design: Design = {
      ...demo('flat-race'),
      wing,
      stabilizer: null,
      fuselage: null,
      strut: null,
      brief: { ...demo('flat-race').brief, depth: null, allUpMass: 20 },
      laminate: { wing: { modulus: 1e12, shear: 1.2e10 } },
    };
    const { condition, craft, skeleton, elastic } = setUp(
      { ...design, brief: { ...design.brief } },
      'symmetric',
    );
    const { density } = condition;
    const beam = skeleton.wing.starboard.beam[0]!;
    const [length, chord] = [craft.wing.halfLength, 0.05];
    const offset = (beam.axis - 0.25) * chord;
    const slope = solve(design, { strips: 24, neutralDroop: false }).lift.CLalpha;
    const dynamic = ((Math.PI / 2) ** 2 * beam.torsion) / (length ** 2 * chord * offset * slope);
    const parts: ReadonlySet<Part> = new Set(['wing']);
    const found = Math.sqrt(1 / elastic.growth(parts) / density);
    const expected = Math.sqrt((2 * dynamic) / density);
    expect(found / expected).toBeGreaterThan(0.9);
    expect(found / expected).toBeLessThan(1.15);
  });

  it('comes later for a foil twice as stiff, by the root of two', () => {
    const speedOf = (factor: number) => {
      const soft = { modulus: 4e10 * factor, shear: 1e10 * factor };
      const spring = { roll: 4e3 * factor, pitch: 4e3 * factor, yaw: 4e3 * factor };
      // Hardly any weight to carry: a lift that stays while the speed grows would add its own share.
      const design: Design = {
        ...demo(),
        brief: { ...demo().brief, allUpMass: 20, upwardPull: 0.9 },
        laminate: { strut: soft, fuselage: soft, wing: soft, stabilizer: soft },
        joints: { box: spring, strut: spring, wing: spring, stabilizer: spring },
      };
      const { divergence } = finish(frequencyStudy(design));
      return divergence.find(({ what }) => what === 'pitching')!.speed!;
    };
    expect(speedOf(2) / speedOf(1)).toBeCloseTo(Math.SQRT2, 1);
  });
});

describe('frequencies', () => {
  it('fall in water, by the water the foil moves', () => {
    const { wing, strut, masses } = finish(frequencyStudy(demo()));
    expect(masses.water).toBeGreaterThan(masses.own);
    expect(wing.bending.water!).toBeLessThan(wing.bending.air!);
    expect(wing.twist.water!).toBeLessThan(wing.twist.air!);
    expect(strut!.bending.water!).toBeLessThan(strut!.bending.air!);
  });

  it('rise with the root of the modulus', () => {
    const at = (factor: number) => {
      const made = { modulus: 5e10 * factor, shear: 1e10 * factor };
      return finish(frequencyStudy({ ...demo(), laminate: { wing: made } })).wing;
    };
    const [one, four] = [at(1), at(4)];
    expect(four.bending.water! / one.bending.water!).toBeCloseTo(2, 6);
    expect(four.twist.water! / one.twist.water!).toBeCloseTo(2, 6);
  });

  it('of an even cantilever are those of the first three roots, 1.8751, 4.6941 and 7.8548', () => {
    // S. Timoshenko, Vibration Problems in Engineering, ch. V; R. D. Blevins, Formulas for Natural Frequency, table 8-1.
    const section = { root: { kind: 'naca4', code: '0010' }, tip: { kind: 'naca4', code: '0010' } } as const;
    const design: Design = {
      ...demo('flat-race'),
      wing: {
        ...demo('flat-race').wing,
        length: { kind: 'unrolled', value: 2 },
        chord: { kind: 'taper', root: 0.06, tip: 0.06 },
        sweep: { kind: 'straight', angle: 0 },
        droop: { kind: 'flat' },
        section,
      },
      stabilizer: null,
      fuselage: null,
      strut: null,
      brief: { ...demo('flat-race').brief, depth: null },
    };
    const { skeleton, craft } = setUp(design, 'symmetric');
    const shapes = shapesOf(skeleton, 'symmetric', 8).filter(({ part }) => part === 'wing');
    const lumps = lumpsOf(design, craft, skeleton, 0);
    const bending = swingsOf(skeleton.frame, shapes, massMatrix(lumps, shapes)).filter(
      ({ energies }) => energies['wing.flap']! > 0.9,
    );
    const { flap, mass } = skeleton.wing.starboard.beam[0]!;
    for (const [k, root] of [1.8751, 4.6941, 7.8548].entries()) {
      const expected = (root ** 2 / (2 * Math.PI)) * Math.sqrt(flap / mass);
      near(bending[k]!.frequency, expected, 0.01);
    }
  });
});

describe('modes with a strut that gives', () => {
  it('come close to those of the stiff strut as it stiffens', () => {
    const gap = (design: Design) => {
      const { modes } = flexibleModes(design)!;
      const fall = modes.find(({ rigid }) => rigid && rigid.real > 0.5)!;
      return Math.abs(fall.flexible.real - fall.rigid!.real);
    };
    expect(gap(hard(demo()))).toBeLessThan(0.2 * gap(demo()));
  });

  it('are eight states: four of the craft and two swings', () => {
    const { modes } = flexibleModes(demo())!;
    const states = modes.reduce((sum, { flexible }) => sum + (flexible.imaginary > 0 ? 2 : 1), 0);
    expect(states).toBe(8);
  });

  it('need a strut', () => {
    expect(flexibleModes({ ...demo(), strut: null })).toBeNull();
  });
});
