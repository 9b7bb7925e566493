/** Known least-drag wings found again from a plain start, with nothing but induced drag to pay. */
import { describe, expect, it } from 'vitest';
import type { Design, Pair, Planform } from '../../../../src/solver/design/document.ts';
import type { ProfileModel } from '../../../../src/solver/forces/profile.ts';
import { type Least, minimise, type Values } from '../../../../src/solver/numeric/constrained.ts';
import { solve } from '../../../../src/solver/solve.ts';
import { Candidate, makeBench } from '../../../../src/solver/studies/propose/candidate.ts';
import { rootMomentOf } from '../../../../src/solver/studies/propose/figures.ts';
import {
  designAt,
  type Limit,
  type Problem,
  placeOf,
  problemOf,
  valuesOf,
} from '../../../../src/solver/studies/propose/problem.ts';
import { plainDesign } from '../../../support/designs.ts';

const frictionless: ProfileModel = {
  source: 'fixed',
  cd: () => 0,
  clMax: () => Number.POSITIVE_INFINITY,
  strutCd: () => 0,
};

const bench = makeBench({ strips: 40, stabilizerStrips: 20, rows: 1 }, () => frictionless);

/** Stations of the free chords and twists, closer where an ellipse falls fast. */
const ETAS = [0, 0.3, 0.55, 0.75, 0.9, 0.97, 1];

/** A rectangular wing of 1 m, aspect ratio 10, as points that may move. */
function freeWing(changes: Partial<Planform> = {}): Partial<Planform> {
  const points = (value: number) => ({ kind: 'points' as const, at: ETAS.map((eta): Pair => [eta, value]) });
  return { chord: points(0.1), twist: points(0), ...changes };
}

function searched(
  design: Design,
  limits: readonly Limit[],
  values: (problem: Problem, candidate: Candidate) => Values = valuesOf,
): { least: Least; design: Design; candidate: Candidate } {
  const problem = problemOf(design, limits, bench);
  const search = minimise(
    (x) => {
      try {
        return values(problem, new Candidate(designAt(problem, x), bench));
      } catch {
        return null;
      }
    },
    placeOf(problem, design),
    { rounds: 80, tolerance: 1e-8 },
  );
  let step = search.next();
  while (!step.done) step = search.next();
  const found = designAt(problem, step.value.x);
  return { least: step.value, design: found, candidate: new Candidate(found, bench) };
}

function dragOf(candidate: Candidate): number {
  return candidate.at('cruise').totalDrag;
}

const FREE = { chords: { least: 0.01, most: 0.2 }, twist: { least: -6, most: 6 } };
const AT_CRUISE = { takeOff: 0, cruise: 1, top: 0 };

const start = plainDesign(freeWing());
const wanted = { weights: AT_CRUISE, free: FREE };
const elliptic = searched({ ...start, wanted }, []);
const atRoot = rootMomentOf(elliptic.candidate); // the next candidate takes its work arrays
const ellipticDrag = dragOf(elliptic.candidate);

/** The same brief with the span multiplied. */
function wider(factor: number): Design {
  return { ...plainDesign(freeWing({ length: { kind: 'tipToTip', value: factor } })), wanted };
}

describe('a planar wing of given span', () => {
  const found = elliptic;
  const report = solve(found.design);

  it('is loaded as an ellipse within 1 % (M. M. Munk, NACA Report 121, 1921)', () => {
    const { wing } = report.strips;
    const half = report.geometry.wing.span / 2;
    const elliptic = ({ y }: { y: number }) => Math.sqrt(1 - (y / half) ** 2);
    const sum = (pick: (strip: (typeof wing)[number]) => number) =>
      wing.reduce((total, strip) => total + pick(strip) * strip.width, 0);
    const root = sum(({ circulation }) => circulation) / sum(elliptic);
    for (const strip of wing)
      expect(Math.abs(strip.circulation / root - elliptic(strip)), `y ${strip.y}`).toBeLessThan(0.01);
  });

  it('has a span efficiency within 0.003 of 1', () => {
    expect(report.inducedDrag.spanEfficiency).toBeGreaterThan(0.997);
    expect(report.inducedDrag.spanEfficiency).toBeLessThan(1.003);
  });

  it('came from a wing that was neither', () => {
    expect(solve(start).inducedDrag.spanEfficiency).toBeLessThan(0.98);
  });
});

describe('a planar wing whose root may bend no more than the elliptic one’s', () => {
  const limit = atRoot.bending;
  const found = new Map(
    [1, 1.15, 1.3].map((span) => {
      const { candidate } = searched(wider(span), [], (problem, tried) => ({
        ...valuesOf(problem, tried),
        margins: Float64Array.of(1 - rootMomentOf(tried).bending / limit),
      }));
      return [
        span,
        { drag: dragOf(candidate) / ellipticDrag, moment: rootMomentOf(candidate).bending / limit },
      ];
    }),
  );

  it('has about 15 % less induced drag with 15 % more span (R. T. Jones, NACA TN 2249, 1950)', () => {
    // Least drag over the elliptic wing's at a span ratio s: (1 + 8 (1 - 1/s)^2)/s^2, from memory of the report's solution.
    for (const [span, { drag: ratio }] of found)
      expect(ratio / ((1 + 8 * (1 - 1 / span) ** 2) / span ** 2) - 1, `span ${span}`).toBeCloseTo(0, 1.7);
    expect(found.get(1.15)!.drag).toBeCloseTo(0.85, 1.7);
  });

  it('holds the moment to a thousandth', () => {
    for (const { moment } of found.values()) expect(moment).toBeLessThan(1.001);
  });
});

describe('a planar wing whose lift has the elliptic one’s moment of inertia', () => {
  const limit = atRoot.second;
  const span = Math.sqrt(1.5);
  const { candidate } = searched(wider(span), [], (problem, tried) => ({
    ...valuesOf(problem, tried),
    margins: Float64Array.of(1 - rootMomentOf(tried).second / limit),
  }));

  it('has 11 % less induced drag with 22 % more span (L. Prandtl, Z. Flugtechnik Motorluftschiffahrt 24, 1933)', () => {
    expect(dragOf(candidate) / ellipticDrag).toBeCloseTo(8 / 9, 2);
  });

  it('is loaded as (1 - (2y/b)^2)^(3/2), the bell of the same paper, within 2 % of its root', () => {
    const { wing } = solve(candidate.design).strips;
    const bell = ({ y }: { y: number }) => (1 - ((2 * y) / span) ** 2) ** 1.5;
    const root = wing[0]!.circulation / bell(wing[0]!);
    for (const strip of wing)
      expect(Math.abs(strip.circulation / root - bell(strip)), `y ${strip.y}`).toBeLessThan(0.02);
  });
});

describe('a wing bent to a given arc', () => {
  it.each([20, 40])(
    'of %i degrees meets the least drag 1 + 2 (d/b)^2 allows within 0.5 % (C. D. Cone, NASA TR R-139, 1962)',
    (tipAngle) => {
      const arc = freeWing({ length: { kind: 'tipToTip', value: 1 }, droop: { kind: 'arc', tipAngle } });
      const { geometry, lift, inducedDrag, condition } = solve(
        searched({ ...plainDesign(arc), wanted }, []).design,
      );
      const { span, tipDrop } = geometry.wing;
      const q = 0.5 * condition.density * condition.speed ** 2;
      const flat = lift.total ** 2 / (Math.PI * q * span ** 2);
      const factor = 1 + 2 * (tipDrop / span) ** 2;
      expect(flat / inducedDrag.farField / factor).toBeGreaterThan(0.995);
      expect(flat / inducedDrag.farField / factor).toBeLessThan(1.005);
    },
  );
});
