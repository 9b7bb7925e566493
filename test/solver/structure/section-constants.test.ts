/** Section constants against quadrature, closed forms and solutions of Saint-Venant's problem. */
import { describe, expect, it } from 'vitest';
import { type OutlinePoints, outlinePoints } from '../../../src/solver/geometry/outline.ts';
import { strutOutline } from '../../../src/solver/structure/beam.ts';
import {
  cellShearCentre,
  sectionOf,
  shellConstants,
  solidConstants,
  solidShearCentre,
} from '../../../src/solver/structure/section-constants.ts';
import { closedCellTorsion, solidTorsion } from '../../../src/solver/structure/torsion.ts';

/** Points of an ellipse of chord 1 and a thickness share, as outlinePoints gives them. */
function ellipse(thickness: number, count: number): OutlinePoints {
  const angle = (k: number) => (2 * Math.PI * k) / (count - 1);
  return {
    x: Float64Array.from({ length: count }, (_, k) => 0.5 * (1 + Math.cos(angle(k)))),
    y: Float64Array.from({ length: count }, (_, k) => 0.5 * thickness * Math.sin(angle(k))),
  };
}

const fourDigit = (code: string, count = 1601) => sectionOf(outlinePoints({ kind: 'naca4', code }, count));

describe('a solid section', () => {
  it('that is an ellipse has pi a b, pi a b^3/4 and pi a^3 b^3/(a^2 + b^2)', () => {
    const [a, b] = [0.5, 0.06];
    const { area, x, flap, lag, torsion } = solidConstants(sectionOf(ellipse(2 * b, 1601)));
    expect(x).toBeCloseTo(0.5, 6);
    expect(area / (Math.PI * a * b)).toBeCloseTo(1, 4);
    expect(flap / ((Math.PI * a * b ** 3) / 4)).toBeCloseTo(1, 4);
    expect(lag / ((Math.PI * a ** 3 * b) / 4)).toBeCloseTo(1, 4);
    // Saint-Venant 1855; S. Timoshenko, J. N. Goodier, Theory of Elasticity, ch. 10.
    expect(torsion / ((Math.PI * a ** 3 * b ** 3) / (a * a + b * b))).toBeCloseTo(1, 3);
  });

  it('that is a long strip has a third of length times thickness cubed', () => {
    const [length, t, n] = [1, 0.01, 200];
    const along = Float64Array.from({ length: n }, (_, k) => ((k + 0.5) * length) / n);
    const strip = { along, width: along.map(() => length / n), half: along.map(() => t / 2) };
    // S. Timoshenko, J. N. Goodier, ch. 10 (membrane analogy); the strip's ends are not seen by a thin section.
    expect(solidTorsion(strip) / ((length * t ** 3) / 3)).toBeCloseTo(1, 3);
  });

  it('half as thick on the same chord has an eighth of the bending stiffness', () => {
    const thick = solidConstants(sectionOf(strutOutline(0.12)));
    const thin = solidConstants(sectionOf(strutOutline(0.06)));
    expect(thick.flap / thin.flap).toBeCloseTo(8, 9);
    expect(thick.torsion / thin.torsion).toBeGreaterThan(7.7);
    expect(thick.torsion / thin.torsion).toBeLessThan(8);
  });

  it('bends without twisting under a load through its shear centre: an ellipse at its middle', () => {
    expect(solidShearCentre(sectionOf(ellipse(0.1, 401)), 0.5, 0.3)).toBeCloseTo(0.5, 9);
  });

  it('that is a narrow triangle has its shear centre 0.187 of its length from the centroid', () => {
    // R. J. Roark, Formulas for Stress and Strain, shear centres of thin solid sections, nu = 0.25 (from memory).
    const n = 400;
    const x = Float64Array.from({ length: n }, (_, k) => (k + 0.5) / n);
    const half = x.map((at) => 0.05 * (1 - at));
    const section = { ...fourDigit('0010', 1601), x, width: x.map(() => 1 / n), half };
    expect(1 / 3 - solidShearCentre(section, 1 / 3, 0.25)).toBeCloseTo(0.187, 3);
  });
});

describe('a skin over a core', () => {
  it('and its core make up the whole section', () => {
    const section = fourDigit('0012', 401);
    const whole = solidConstants(section);
    for (const wall of [0.002, 0.01, 0.03]) {
      const { skin, core } = shellConstants(section, wall);
      expect((skin.area + core.area) / whole.area).toBeCloseTo(1, 3);
      expect((skin.flap + core.flap) / whole.flap).toBeCloseTo(1, 2);
    }
  });

  it('thicker than the section is solid', () => {
    const section = fourDigit('0012', 401);
    const { skin, core } = shellConstants(section, 0.1);
    expect(core.area).toBe(0);
    expect(skin.torsion).toBeCloseTo(solidConstants(section).torsion, 9);
  });

  it('thin and round resists torsion by 2 pi r^3 t (R. Bredt 1896)', () => {
    const [r, t] = [0.5, 0.005];
    expect(closedCellTorsion(Math.PI * r * r, 2 * Math.PI * r, t)).toBeCloseTo(2 * Math.PI * r ** 3 * t, 12);
    // A thin elliptic tube: 4 A^2 t/perimeter of its middle line, the perimeter by S. Ramanujan's formula (1914).
    const [a, b, wall] = [0.5, 0.1, 0.001];
    const [p, q] = [a - wall / 2, b - wall / 2];
    const perimeter = Math.PI * (3 * (p + q) - Math.sqrt((3 * p + q) * (p + 3 * q)));
    const { skin } = shellConstants(sectionOf(ellipse(2 * b, 1601)), wall);
    expect(Math.abs(skin.torsion / ((4 * (Math.PI * p * q) ** 2 * wall) / perimeter) - 1)).toBeLessThan(0.01);
  });

  it('that is an ellipse has its shear centre in the middle, one that is fuller ahead has it ahead', () => {
    expect(cellShearCentre(sectionOf(ellipse(0.1, 801)))).toBeCloseTo(0.5, 3);
    expect(cellShearCentre(fourDigit('0012', 801))).toBeLessThan(0.42);
  });
});
