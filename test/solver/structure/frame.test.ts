/** Beams as hinges against closed forms of Euler-Bernoulli, Saint-Venant, Euler and Beck; loads and energies. */
import { describe, expect, it } from 'vitest';
import { eigenvalues } from '../../../src/solver/numeric/eigen.ts';
import { randomFrom } from '../../../src/solver/numeric/random.ts';
import {
  addForce,
  addMoment,
  Frame,
  type Hinge,
  moveOf,
  turnOf,
} from '../../../src/solver/structure/frame.ts';
import { posedPoint, poseOf, seenFrom } from '../../../src/solver/structure/pose.ts';
import { pressMatrix } from '../../../src/solver/structure/press.ts';
import type { Shape } from '../../../src/solver/structure/shapes.ts';
import type { Triple } from '../../../src/solver/structure/triple.ts';
import { cantilever, deflect, endLoad, GAUSS, tipUnder } from '../../support/cantilever.ts';

const [W, L, EI] = [100, 0.4, 70];

describe('a cantilever of 0.4 m and 70 N m2 under 100 N', () => {
  it('at its end turns by W L^2/2EI with one segment', () => {
    const beam = cantilever(L, 1, () => EI);
    const { motion } = deflect(beam, endLoad(beam, W));
    expect(turnOf(motion, beam.tip)[0]).toBeCloseTo((W * L * L) / (2 * EI), 12);
  });

  it('whose thickness tapers to half, tip loaded, sinks by 1.6356 W L^3/3EI', () => {
    // EI (1 - y/2L)^3; with u = 1 - y/2L the integral of lever^2/EI is 8 (ln 2 - 1 + 3/8).
    const exact = 8 * (Math.log(2) - 1 + 3 / 8);
    expect(3 * exact).toBeCloseTo(1.6356, 3);
    const beam = cantilever(L, 8, (y) => EI * (1 - y / (2 * L)) ** 3);
    const tip = tipUnder(beam, endLoad(beam, W));
    expect(tip / ((W * L ** 3 * exact) / EI)).toBeCloseTo(1, 4);
  });

  it('on a root spring adds W L^2/k', () => {
    const k = 500;
    const beam = cantilever(L, 1, () => EI, k);
    const tip = tipUnder(beam, endLoad(beam, W));
    expect(tip).toBeCloseTo((W * L ** 3) / (3 * EI) + (W * L * L) / k, 12);
  });
});

describe('torsion', () => {
  it('turns an end by T L/GJ (Saint-Venant)', () => {
    const [length, GJ, T] = [0.9, 900, 10];
    const hinges = GAUSS.map(
      (share, k): Hinge => ({
        parent: k - 1,
        place: [0, 0, -share * length],
        axis: [0, 0, 1],
        give: length / 2 / GJ,
        strain: 0,
        group: 'strut.twist',
      }),
    );
    const frame = new Frame(hinges);
    const loads = frame.makeLoads();
    addMoment(loads, 1, [0, 0, T]);
    const motion = frame.motion(frame.turns(frame.carry(loads)));
    expect(turnOf(motion, 1)[2]).toBeCloseTo((T * length) / GJ, 12);
  });
});

describe('any tree of hinges', () => {
  const random = randomFrom(6);
  const hinges = Array.from({ length: 40 }, (_, j): Hinge => {
    const axis: Triple = [random() - 0.5, random() - 0.5, random() - 0.5];
    const size = Math.hypot(...axis);
    return {
      parent: j === 0 ? -1 : Math.floor(random() * j),
      place: [random(), random(), random()],
      axis: axis.map((value) => value / size) as Triple,
      give: random() * 1e-4,
      strain: 0,
      group: j % 2 ? 'one.flap' : 'two.twist',
    };
  });
  const frame = new Frame(hinges);
  const load = (body: number, place: Triple, force: Triple) => {
    const loads = frame.makeLoads();
    addForce(loads, body, place, force);
    return loads;
  };

  it('stores the work of its loads (B. P. E. Clapeyron)', () => {
    const loads = frame.makeLoads();
    const forces: Array<[number, Triple, Triple]> = [];
    for (let i = 0; i < 30; i++) {
      const force: [number, Triple, Triple] = [
        i,
        [random(), random(), random()],
        [random(), -random(), random()],
      ];
      forces.push(force);
      addForce(loads, ...force);
    }
    const moments = frame.carry(loads);
    const motion = frame.motion(frame.turns(moments));
    const work = forces.reduce((sum, [body, place, force]) => {
      const move = moveOf(motion, body, place);
      return sum + 0.5 * (move[0] * force[0] + move[1] * force[1] + move[2] * force[2]);
    }, 0);
    const strain = frame.energies(moments).reduce((sum, value) => sum + value, 0);
    expect(strain / work).toBeCloseTo(1, 10);
  });

  it('moves at one place under a load at another as the other way round (J. C. Maxwell, E. Betti)', () => {
    const [a, b]: [Triple, Triple] = [
      [0.3, 0.1, 0.9],
      [0.8, 0.2, 0.4],
    ];
    const [fa, fb]: [Triple, Triple] = [
      [1, 0, 0],
      [0, 0, 1],
    ];
    const motionOf = (loads: Float64Array) => frame.motion(frame.turns(frame.carry(loads)));
    const atB = moveOf(motionOf(load(35, a, fa)), 38, b)[2];
    const atA = moveOf(motionOf(load(38, b, fb)), 35, a)[0];
    expect(atB).toBeCloseTo(atA, 14);
    expect(atB).not.toBe(0);
  });

  it('bent by small turns comes to rest where the small motion says', () => {
    const turns = Float64Array.from({ length: 40 }, () => 1e-6 * (random() - 0.5));
    const pose = poseOf(frame, turns);
    const motion = frame.motion(turns);
    const p: Triple = [0.2, 0.7, 0.1];
    for (const body of [0, 12, 39]) {
      const found = posedPoint(pose, body, p);
      const move = moveOf(motion, body, p);
      for (const i of [0, 1, 2] as const) expect(found[i] - p[i]).toBeCloseTo(move[i], 11);
    }
    expect(posedPoint(seenFrom(pose, 12), 12, p).map((value, i) => value - p[i]!)).toEqual([
      expect.closeTo(0, 12),
      expect.closeTo(0, 12),
      expect.closeTo(0, 12),
    ]);
  });

  it('refuses a hinge before its parent', () => {
    expect(() => new Frame([{ ...hinges[0]!, parent: 3 }])).toThrow('hinge 0 comes before its parent 3');
  });
});

describe('a column pressed at its end', () => {
  it('gives way at pi^2 EI/4L^2 (L. Euler 1744)', () => {
    const beam = cantilever(L, 20, () => EI);
    // Shapes: every hinge by itself, scaled to unit energy.
    const shapes = Array.from({ length: beam.frame.count }, (_, j): Shape | null => {
      const give = beam.frame.give[j]!;
      if (give === 0) return null;
      const turns = new Float64Array(beam.frame.count);
      turns[j] = Math.sqrt(give);
      return { part: 'strut', turns, motion: beam.frame.motion(turns) };
    }).filter((shape) => shape !== null);
    const press = pressMatrix(beam.frame, shapes, {
      body: Int32Array.of(beam.tip),
      at: Float64Array.of(0, L, 0),
      force: Float64Array.of(0, -1, 0),
    });
    const largest = Math.max(...eigenvalues(press, shapes.length).map(({ real }) => real));
    expect(1 / largest / ((Math.PI ** 2 * EI) / (4 * L * L))).toBeCloseTo(1, 3);
  });
});
