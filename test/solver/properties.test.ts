/**
 * What holds for every design that can be drawn, whatever its shape: laws, not values. fast-check prints the seed and
 * the design of a failure. 2300 designs in all, in deep water and under the surface.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design, DroopLaw } from '../../src/solver/design/document.ts';
import { readDesign, writeDesign } from '../../src/solver/design/read.ts';
import { mixAlpha } from '../../src/solver/forces/loads.ts';
import { craftOf, touchingProblem } from '../../src/solver/geometry/craft.ts';
import { scaledPlanform } from '../../src/solver/geometry/scale.ts';
import type { Strips } from '../../src/solver/geometry/strips.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import type { ConditionOptions, Derivatives, Report } from '../../src/solver/report.ts';
import { solve } from '../../src/solver/solve.ts';
import { FlowPool } from '../../src/solver/vortex/flow.ts';
import { expectClose } from '../support/close.ts';
import { anyDeepDesign, anyDesign, anyPlanarWing, number } from '../support/random-designs.ts';
import { validate } from './forces/validate.ts';

const COARSE: ConditionOptions = { strips: 12, stabilizerStrips: 8, neutralDroop: false, sections: 'thin' };
const at = (design: Design, alpha: number, options: ConditionOptions = {}): Report =>
  solve(design, { ...COARSE, alpha, ...options });

/** Angle of zero lift, degrees: twist may put it far from zero, so that one step along the slope is not enough. */
function zeroLift(design: Design): number {
  let alpha = 0;
  for (let k = 0; k < 2; k++) {
    const { CL, CLalpha } = at(design, alpha).lift;
    alpha -= ((CL / CLalpha) * 180) / Math.PI;
  }
  return alpha;
}

describe('any design', () => {
  it('answers with finite numbers that add up, lift slope and induced drag above zero', () => {
    fc.assert(
      fc.property(anyDesign, number(1, 8), (design, alpha) => validate(at(design, alpha))),
      { numRuns: 1200 },
    );
  }, 120_000);

  it('is written and read back byte for byte', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const text = writeDesign(design);
        const reading = readDesign(text);
        if (!reading.ok) throw new Error(reading.message);
        expect(writeDesign(reading.design)).toBe(text);
      }),
      { numRuns: 300 },
    );
  }, 60_000);
});

describe('any design in deep water', () => {
  // Through each strip goes sin alpha of the stream and its force leans by cos alpha: sin 2 alpha alone takes 0.55 %
  // at 6 degrees and 0.14 % at 3. Steep, swept wings of small aspect ratio bend more: what each strip's x-velocity
  // adds goes with the square of the angle.
  for (const [steepness, isMeant, share] of [
    ['40 degrees of droop at most', (angle: number) => angle <= 40, 0.005],
    ['more droop', (angle: number) => angle > 40, 0.013],
  ] as const)
    it(`lifts in proportion to the angle from zero lift, ${steepness}: within ${100 * share} % to 3 degrees`, () => {
      const meant = anyDeepDesign.filter(({ wing: { droop } }) =>
        isMeant('tipAngle' in droop ? Math.abs(droop.tipAngle) : 0),
      );
      fc.assert(
        fc.property(meant, (design) => {
          const zero = zeroLift(design);
          const [one, two, three] = [1.5, 3, 6].map((more) => at(design, zero + more).lift.CL) as [
            number,
            number,
            number,
          ];
          expectClose('lift at 3 degrees', two, 2 * one, { share });
          expectClose('lift at 6 degrees', three, 4 * one, { share: 3 * share });
        }),
        { numRuns: 100 },
      );
    }, 60_000);

  it('has the same coefficients at any size', () => {
    fc.assert(
      fc.property(anyDeepDesign, number(0.2, 5), (design, factor) => {
        const [one, other] = [design, scaled(design, factor)].map((drawn) => at(drawn, 4)) as [
          Report,
          Report,
        ];
        expectClose('CL', other.lift.CL, one.lift.CL, { share: 1e-8 });
        expectClose('CDi', other.inducedDrag.CDi, one.inducedDrag.CDi, { share: 1e-8 });
        expectSameDerivatives(other.stability.foil, one.stability.foil, 1e-7);
      }),
      { numRuns: 100 },
    );
  }, 60_000);

  it('upside down is its own mirror: forces turn their sign, drag and derivatives across the mirror stay', () => {
    fc.assert(
      fc.property(anyDeepDesign, (design) => {
        const [one, other] = [at(design, 4), at(upsideDown(design), -4)];
        expectClose('CL', other.lift.CL, -one.lift.CL, { within: 1e-9 });
        expectClose('CDi', other.inducedDrag.CDi, one.inducedDrag.CDi, { within: 1e-10 });
        const { foil } = one.stability;
        const mirrored = { ...foil, Clbeta: -foil.Clbeta, CYp: -foil.CYp, Cnp: -foil.Cnp, Clr: -foil.Clr };
        expectSameDerivatives(other.stability.foil, mirrored, 1e-8);
      }),
      { numRuns: 100 },
    );
  }, 60_000);

  it('is what it becomes far below the surface', () => {
    fc.assert(
      fc.property(anyDeepDesign, (design) => {
        const strutless = { ...design, strut: null };
        const [deep, far] = [at(strutless, 4), at(strutless, 4, { depth: 3000 })];
        expectClose('CL', far.lift.CL, deep.lift.CL, { within: 1e-6 });
        expectClose('CDi', far.inducedDrag.CDi, deep.inducedDrag.CDi, { within: 1e-6 });
        expectSameDerivatives(far.stability.foil, deep.stability.foil, 1e-5);
      }),
      { numRuns: 100 },
    );
  }, 60_000);

  it('flattened goes over into the flat one without a jump', () => {
    const FLAT: DroopLaw = { kind: 'flat' };
    fc.assert(
      fc.property(anyDeepDesign, fc.constantFrom('vee' as const, 'arc' as const), (design, kind) => {
        fc.pre(isClear({ ...design, wing: { ...design.wing, droop: FLAT } }));
        const bent = (droop: DroopLaw) => at({ ...design, wing: { ...design.wing, droop } }, 4);
        const [flat, nearly] = [bent(FLAT), bent({ kind, tipAngle: 1e-4 })];
        expectClose('CL', nearly.lift.CL, flat.lift.CL, { within: 1e-4 });
        expectClose('CDi', nearly.inducedDrag.CDi, flat.inducedDrag.CDi, { within: 1e-4 });
        expectSameDerivatives(nearly.stability.foil, flat.stability.foil, 1e-3);
      }),
      { numRuns: 100 },
    );
  }, 60_000);

  it('counted from the tips inwards is the same', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const craft = craftOf(design, design.brief.depth, { strips: 12, stabilizerStrips: 8, rows: 1 });
        const { parts } = craft;
        const turned = {
          ...craft,
          parts: {
            ...parts,
            wing: reversed(parts.wing),
            stabilizer: parts.stabilizer && reversed(parts.stabilizer),
          },
        };
        const [one, other] = [craft, turned].map((counted) => {
          const { symmetric, foil, base } = new FlowPool().solve('law', counted, 'lateral');
          mixAlpha(symmetric, 0.07, base);
          return [base, foil.beta, foil.rollRate, foil.yawRate].map(({ circulation }) => circulation);
        }) as [Float64Array[], Float64Array[]];
        const { count } = parts.wing;
        one.forEach((circulation, cause) => {
          const size = Math.max(...circulation.map(Math.abs));
          // A bound line walked the other way carries the circulation of the other sign.
          for (let k = 0; k < count; k++)
            expectClose(`cause ${cause}, strip ${k}`, -other[cause]![count - 1 - k]!, circulation[k]!, {
              within: 1e-9 * size,
            });
        });
      }),
      { numRuns: 100 },
    );
  }, 60_000);
});

describe('any flat, unswept wing', () => {
  it('has the same drag on the wing as far behind it, within 1 %', () => {
    fc.assert(
      fc.property(anyPlanarWing, number(4, 8), (design, alpha) => {
        const options = { alpha, neutralDroop: false, sections: 'thin' } as const;
        const { nearField, farField } = solve(design, options).inducedDrag;
        expectClose('near-field drag', nearField, farField, { share: 0.01 });
      }),
      { numRuns: 200 },
    );
  }, 60_000);
});

/** Flattening may bring a wing into the stabilizer's way. */
function isClear({ wing, stabilizer }: Design): boolean {
  return touchingProblem(surfaceOf(wing), stabilizer && surfaceOf(stabilizer, stabilizer)) === null;
}

function scaled(design: Design, factor: number): Design {
  const { wing, stabilizer } = design;
  return {
    ...design,
    wing: scaledPlanform(wing, factor),
    stabilizer: stabilizer && {
      ...scaledPlanform(stabilizer, factor),
      arm: factor * stabilizer.arm,
      height: factor * stabilizer.height,
    },
    strut: null,
  };
}

function upsideDown(design: Design): Design {
  const { wing, stabilizer } = design;
  return {
    ...design,
    wing: turnedOver(wing),
    stabilizer: stabilizer && { ...turnedOver(stabilizer), height: -stabilizer.height },
    strut: null,
  };
}

/** Bent, twisted and set the other way; sections here are symmetric. */
function turnedOver<P extends Design['wing']>(planform: P): P {
  const { droop, twist } = planform;
  if (twist.kind !== 'linear') throw new Error('random designs twist linearly');
  const other = structuredClone(droop);
  if ('tipAngle' in other) other.tipAngle *= -1;
  if ('rootAngle' in other) other.rootAngle *= -1;
  return { ...planform, droop: other, twist: { ...twist, tip: -twist.tip }, incidence: -planform.incidence };
}

function reversed(strips: Strips): Strips {
  const back = (values: Float64Array) => values.slice().reverse();
  const turned = { ...strips };
  for (const key of Object.keys(strips) as Array<keyof Strips>) {
    const values = strips[key];
    if (values instanceof Float64Array) Object.assign(turned, { [key]: back(values) });
  }
  return turned;
}

function expectSameDerivatives(found: Derivatives, expected: Derivatives, share: number): void {
  const size = Math.max(...Object.values(expected).map(Math.abs));
  for (const key of Object.keys(expected) as Array<keyof Derivatives>)
    expectClose(key, found[key], expected[key], { within: share * size });
}
