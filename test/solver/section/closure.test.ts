/** Relations of the boundary layer: derivatives against differences, joints without a jump, limits from textbooks. */
import { describe, expect, it } from 'vitest';
import * as slot from '../../../src/solver/section/closure.ts';
import {
  LAMINAR_SEPARATION,
  laminarClosure,
  STAGNATION_SHAPE,
  STAGNATION_THETA,
} from '../../../src/solver/section/laminar.ts';
import { amplification } from '../../../src/solver/section/transition.ts';
import { turbulentClosure, wakeClosure } from '../../../src/solver/section/turbulent.ts';

type Closure = (shape: number, reTheta: number, q: number, out: Float64Array) => void;

const closures: Record<string, Closure> = {
  laminar: (shape, reTheta, _q, out) => laminarClosure(shape, reTheta, out),
  turbulent: turbulentClosure,
  wake: wakeClosure,
};

// value, its derivatives by ln H, ln Re_theta, ln q; whether the slot's derivatives are those of its logarithm
const DERIVATIVES: Array<[string, number, [number, number?, number?], boolean]> = [
  ['H*', slot.STAR, [slot.STAR_H, slot.STAR_R], true],
  ['cf/2', slot.FRICTION, [slot.FRICTION_H, slot.FRICTION_R], false],
  ['2 CD/H*', slot.DISSIPATION, [slot.DISSIPATION_H, slot.DISSIPATION_R, slot.DISSIPATION_Q], false],
  ['q in equilibrium', slot.BALANCE, [slot.BALANCE_H, slot.BALANCE_R], false],
  ['delta/theta', slot.THICKNESS, [slot.THICKNESS_H], false],
];

describe('derivatives of the relations', () => {
  for (const [name, closure] of Object.entries(closures))
    it(`${name}: equal to central differences`, () => {
      const h = 1e-5;
      const [here, plus, minus] = [0, 1, 2].map(() => new Float64Array(slot.CLOSURE_SLOTS));
      for (const shape of [1.2, 1.5, 2, 2.59, 3.3, 3.9, 5, 7, 9])
        for (const reTheta of [50, 150, 300, 1000, 1e4])
          for (const q of [0.02, 0.1]) {
            closure(shape, reTheta, q, here!);
            for (const [value, at, by, isLog] of DERIVATIVES)
              by.forEach((derivative, k) => {
                const up = [0, 0, 0].map((_, j) => (j === k ? Math.exp(h) : 1));
                closure(shape * up[0]!, reTheta * up[1]!, q * up[2]!, plus!);
                closure(shape / up[0]!, reTheta / up[1]!, q / up[2]!, minus!);
                const read = (state: Float64Array) => (isLog ? Math.log(state[at]! || 1) : state[at]!);
                const difference = (read(plus!) - read(minus!)) / (2 * h);
                const error = Math.abs(here![derivative!]! - difference);
                const size = Math.abs(difference) + 1e-3 * Math.abs(here![at]!) + 1e-9;
                expect(error / size, `${value} at H ${shape}, Re_theta ${reTheta}`).toBeLessThan(1e-4);
              });
          }
    });

  it('run on without a jump where a fit changes', () => {
    const [below, above] = [0, 1].map(() => new Float64Array(slot.CLOSURE_SLOTS));
    const joints: Array<[Closure, number, number]> = [
      [closures.laminar!, 4, 500],
      [closures.laminar!, 7.4, 500],
      [closures.turbulent!, 3 + 400 / 1000, 1000],
      [closures.turbulent!, 4, 300],
    ];
    for (const [closure, shape, reTheta] of joints) {
      closure(shape - 1e-7, reTheta, 0.05, below!);
      closure(shape + 1e-7, reTheta, 0.05, above!);
      for (const at of [slot.STAR, slot.FRICTION, slot.DISSIPATION])
        expect(Math.abs(above![at]! - below![at]!)).toBeLessThan(1e-5 * Math.abs(below![slot.STAR]!));
    }
  });
});

describe('limits', () => {
  it('laminar plate: Re_theta cf/2 is 0.2205 at H 2.591 (Blasius)', () => {
    const out = new Float64Array(slot.CLOSURE_SLOTS);
    laminarClosure(2.591, 1, out);
    expect(Math.abs(out[slot.FRICTION]! / 0.2205 - 1)).toBeLessThan(0.005);
  });

  it('laminar separation: H* is least at H 4, friction gone within 4 % of it (Falkner-Skan: both at 4.03)', () => {
    const out = new Float64Array(slot.CLOSURE_SLOTS);
    const at = (shape: number, which: number) => {
      laminarClosure(shape, 1, out);
      return out[which]!;
    };
    const least = at(LAMINAR_SEPARATION, slot.STAR);
    expect(at(LAMINAR_SEPARATION - 0.1, slot.STAR)).toBeGreaterThan(least);
    expect(at(LAMINAR_SEPARATION + 0.1, slot.STAR)).toBeGreaterThan(least);
    expect(at(0.99 * 4.03, slot.FRICTION)).toBeGreaterThan(0);
    expect(at(1.04 * 4.03, slot.FRICTION)).toBeLessThan(0);
  });

  it('stagnation point: momentum and energy stand still at the stated shape; Hiemenz within 1.5 %', () => {
    const out = new Float64Array(slot.CLOSURE_SLOTS);
    laminarClosure(STAGNATION_SHAPE, 1, out);
    const square = STAGNATION_THETA ** 2;
    expect(out[slot.FRICTION]! / square).toBeCloseTo(2 + STAGNATION_SHAPE, 3);
    expect((out[slot.DISSIPATION]! - out[slot.FRICTION]!) / square).toBeCloseTo(1 - STAGNATION_SHAPE, 3);
    // F. M. White, Viscous Fluid Flow: H 2.216, theta 0.2923
    expect(Math.abs(STAGNATION_SHAPE / 2.216 - 1)).toBeLessThan(0.015);
    expect(Math.abs(STAGNATION_THETA / 0.2923 - 1)).toBeLessThan(0.015);
  });

  it('waves walked along a plate reach n = 9 within 3 % of the Re_theta of the correlation', () => {
    let grown = 0;
    let re = 1;
    // On a plate theta dRe_theta/ds = 0.664115^2/2.
    for (const step = 0.05; grown < 9; re += step)
      grown += (amplification(2.591, re + 0.5 * step) * step) / (0.664115 ** 2 / 2);
    expect(Math.abs(re / 1108 - 1)).toBeLessThan(0.03);
  });
});
