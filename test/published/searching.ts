/**
 * Searches and fits: problems of the literature whose least is known, statistics with printed answers, and proposals whose
 * answer can be told beforehand.
 */
import type { Design } from '../../src/solver/design/document.ts';
import { goodBand } from '../../src/solver/design/marks.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { minimise, type Values } from '../../src/solver/numeric/constrained.ts';
import { fitPolynomial } from '../../src/solver/numeric/fit.ts';
import { leastSquares, studentT } from '../../src/solver/numeric/least-squares.ts';
import { randomFrom } from '../../src/solver/numeric/random.ts';
import { rankCorrelation } from '../../src/solver/numeric/rank.ts';
import { findRoot } from '../../src/solver/numeric/roots.ts';
import { solve } from '../../src/solver/solve.ts';
import { holdReport } from '../../src/solver/studies/hold-report.ts';
import { frontChain, frontEnds, frontOf } from '../../src/solver/studies/propose/front.ts';
import { planOf } from '../../src/solver/studies/propose/plan.ts';
import { settle } from '../../src/solver/studies/propose/proposal.ts';
import { searchFrom } from '../../src/solver/studies/propose/search.ts';
import { standingOf } from '../../src/solver/studies/propose/standing.ts';
import { rankPair } from '../../src/solver/studies/ridden.ts';
import { finish } from '../../src/solver/studies/study.ts';
import { goodDesign, plainDesign } from '../support/designs.ts';
import type { PublishedRow } from './row.ts';

/** A problem of variables between `low` and `high`, each mapped to 0..1. */
function least(
  low: readonly number[],
  high: readonly number[],
  from: readonly number[],
  values: (x: number[]) => Values,
): { objective: number; x: number[]; multipliers: Float64Array } {
  const place = (unit: ArrayLike<number>) => low.map((a, k) => a + (high[k]! - a) * unit[k]!);
  const start = Float64Array.from(from, (value, k) => (value - low[k]!) / (high[k]! - low[k]!));
  const found = drained(minimise((unit) => values(place(unit)), start, { tolerance: 1e-9, rounds: 200 }));
  return { objective: found.values.objective, x: place(found.x), multipliers: found.multipliers };
}

function drained<Result>(search: Generator<unknown, Result, void>): Result {
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

const HOCK =
  'W. Hock, K. Schittkowski, Test Examples for Nonlinear Programming Codes, 1981 (answers from memory, checked by the conditions of Kuhn and Tucker)';

const searches: PublishedRow[] = [
  {
    quantities: ['least', 'x1', 'x2', 'x3', 'x4'],
    conditions: 'problem 71: x1 x4 (x1 + x2 + x3) + x3, product 25 or more, sum of squares 40',
    published: [17.0140173, 1, 4.742994, 3.8211503, 1.3794082],
    tolerance: [{ within: 1e-4 }, { within: 1e-4 }, { within: 2e-3 }, { within: 2e-3 }, { within: 2e-3 }],
    source: HOCK,
    status: 'from memory',
    method: 'successive quadratic programming by differences',
    compute: () => {
      const { objective, x } = least([1, 1, 1, 1], [5, 5, 5, 5], [1, 5, 5, 1], ([a, b, c, d]) => {
        const squares = a! ** 2 + b! ** 2 + c! ** 2 + d! ** 2 - 40;
        return {
          objective: a! * d! * (a! + b! + c!) + c!,
          margins: Float64Array.of((a! * b! * c! * d! - 25) / 25, squares / 40, -squares / 40),
        };
      });
      return [objective, ...x];
    },
  },
  {
    quantities: ['least', 'x1', 'x2', 'x3', 'x4'],
    conditions: 'problem 43 (Rosen and Suzuki), three quadratic inequalities',
    published: [-44, 0, 1, 2, -1],
    tolerance: [{ within: 1e-4 }, { within: 2e-3 }, { within: 2e-3 }, { within: 2e-3 }, { within: 2e-3 }],
    source: HOCK,
    status: 'from memory',
    method: 'successive quadratic programming by differences',
    compute: () => {
      const low = [-5, -5, -5, -5];
      const high = [5, 5, 5, 5];
      const { objective, x } = least(low, high, [0, 0, 0, 0], ([a, b, c, d]) => {
        const [aa, bb, cc, dd] = [a! * a!, b! * b!, c! * c!, d! * d!];
        return {
          objective: aa + bb + 2 * cc + dd - 5 * a! - 5 * b! - 21 * c! + 7 * d!,
          margins: Float64Array.of(
            8 - aa - bb - cc - dd - a! + b! - c! + d!,
            10 - aa - 2 * bb - cc - 2 * dd + a! + d!,
            5 - 2 * aa - bb - cc - 2 * a! + b! + d!,
          ),
        };
      });
      return [objective, ...x];
    },
  },
  {
    quantities: ['least', 'price of the inequality'],
    conditions: 'x^2 + y^2 with x + y of 1 or more',
    published: [0.5, 1],
    tolerance: [{ within: 1e-6 }, { within: 1e-3 }],
    source: 'by hand: x = y = 1/2, d(s^2/2)/ds = s',
    status: 'derived',
    method: 'multiplier of the search',
    compute: () => {
      const found = least([0, 0], [2, 2], [1.5, 0.3], ([x, y]) => ({
        objective: x! * x! + y! * y!,
        margins: Float64Array.of(x! + y! - 1),
      }));
      return [found.objective, found.multipliers[0]!];
    },
  },
];

const PAIRS: [number[], number[]] = [
  [106, 100, 86, 101, 99, 103, 97, 113, 112, 110],
  [7, 27, 2, 50, 28, 29, 20, 12, 6, 17],
];

const statistics: PublishedRow[] = [
  {
    quantities: ['rank correlation', 'the same of figures and a rider’s marks'],
    conditions: 'ten pairs: 106 7, 100 27, 86 2, 101 50, 99 28, 103 29, 97 20, 113 12, 112 6, 110 17',
    published: [-29 / 165, -29 / 165],
    tolerance: [{ within: 1e-12 }, { within: 1e-12 }],
    source: 'C. Spearman 1904: 1 - 6 sum d^2/(n (n^2 - 1)), sum d^2 = 194',
    status: 'derived',
    method: 'Spearman’s rank correlation',
    compute: () => [rankCorrelation(...PAIRS), rankPair(...PAIRS).correlation ?? Number.NaN],
  },
  {
    quantities: ['last below the divide', 'first above it', 'on the wrong side'],
    conditions: 'eight designs of figures 1 to 8 with marks 2 1 3 4 2 5 4 5; 4 and 5 are good',
    published: [3, 4, 1],
    tolerance: [{ within: 0 }, { within: 0 }, { within: 0 }],
    source:
      'counted: three of four others below and no good one, J = 3/4 (W. J. Youden, Cancer 3, 1950); no divide has more',
    status: 'derived',
    method: 'where good marks begin',
    compute: () => {
      const marks = [2, 1, 3, 4, 2, 5, 4, 5];
      const { low, high, against } = goodBand(marks.map((mark, k) => ({ figure: k + 1, mark })))!;
      return [low, high, against];
    },
  },
  {
    quantities: ['1 degree of freedom', '10', '30'],
    conditions: 'Student’s t, both sides 5 %',
    published: [12.706, 2.228, 2.042],
    tolerance: [{ within: 0.002 }, { within: 0.002 }, { within: 0.002 }],
    source: 'tables of Student’s distribution',
    status: 'from memory',
    method: 'bench fit’s intervals',
    compute: () => [1, 10, 30].map(studentT),
  },
  {
    quantities: ['intercept', 'slope', 'scatter'],
    conditions: 'straight line through (1, 6), (2, 5), (3, 7), (4, 10)',
    published: [3.5, 1.4, Math.sqrt(4.2 / 2)],
    tolerance: [{ within: 1e-9 }, { within: 1e-9 }, { within: 1e-9 }],
    source: 'normal equations by hand: squares left over 4.2',
    status: 'derived',
    method: 'least squares',
    compute: () => {
      const columns = [Float64Array.of(1, 1, 1, 1), Float64Array.of(1, 2, 3, 4)];
      const { sizes, scatter } = leastSquares(columns, Float64Array.of(6, 5, 7, 10));
      return [sizes[0]!, sizes[1]!, scatter];
    },
  },
  {
    quantities: ['slope at 1', 'root of cos x - x'],
    conditions: 'cubic x^3 - x through 20 points; Dottie’s number',
    published: [2, 0.7390851332],
    tolerance: [{ within: 1e-8 }, { within: 1e-6 }],
    source: 'by hand',
    status: 'derived',
    method: 'polynomial fit, roots',
    compute: () => {
      const x = Array.from({ length: 20 }, (_, k) => k / 10);
      const fit = fitPolynomial(
        x,
        x.map((at) => at ** 3 - at),
        5,
      );
      return [fit.slope(1), findRoot((at) => Math.cos(at) - at, 0, 1, 1e-9) ?? Number.NaN];
    },
  },
  {
    quantities: ['mean', 'variance'],
    conditions: 'ten thousand random numbers between 0 and 1',
    published: [0.5, 1 / 12],
    tolerance: [{ within: 0.01 }, { within: 0.003 }], // three standard errors
    source: 'even distribution',
    status: 'derived',
    method: 'random numbers from a seed',
    compute: () => {
      const random = randomFrom(3);
      const list = Array.from({ length: 10_000 }, () => random());
      const mean = list.reduce((sum, value) => sum + value, 0) / list.length;
      return [mean, list.reduce((sum, value) => sum + (value - mean) ** 2, 0) / list.length];
    },
  },
  {
    quantities: ['designs asked for', 'rank correlations between -1 and 1, share'],
    conditions: 'hold index against solved figures, six random designs',
    published: [6, 1],
    tolerance: [{ within: 0 }, { within: 0 }],
    source: 'definition of a rank correlation',
    status: 'derived',
    method: 'report on the hold index',
    compute: () => {
      const { designs, index } = finish(holdReport(5, 6));
      const values = Object.values(index).map(({ value }) => value);
      return [designs, values.filter((value) => Math.abs(value) <= 1).length / values.length];
    },
  },
];

const drawn = goodDesign('flat-race');
const [SHORTEST, LONGEST] = [0.6, 0.9];

/** Length and area are free: at one area drag falls with every bit of span, up to the limit on it. */
const lengthening: Design = {
  ...drawn,
  wanted: {
    free: { length: { least: SHORTEST, most: LONGEST }, area: { least: 0.05, most: 0.09 } },
    limits: { span: { most: 0.75 } },
  },
};

const elliptic = plainDesign({ chord: { kind: 'elliptic', root: 0.1 } }); // 1 m, under 50 kg
const ELLIPTIC_MOMENT = (50 * 9.80665 * 0.5 * 4) / (2 * 3 * Math.PI); // N m

const proposals: PublishedRow[] = [
  {
    quantities: ['span, m', 'drag over the drawn foil’s, under 1 (1 yes)'],
    conditions: 'flat race wing, length and area free, its span no more than 0.75 m',
    published: [0.75, 1],
    tolerance: [{ within: 2e-4 }, { within: 0 }],
    source: 'induced drag falls with span squared: the limit binds',
    status: 'derived',
    method: 'proposal, settled at the program’s own resolution',
    compute: () => {
      const found = finish(searchFrom(lengthening, { seed: 1, start: 0 }))!;
      const proposal = finish(settle(lengthening, { seed: 1, founds: [found] }));
      if (proposal.outcome !== 'found') throw new Error(proposal.outcome);
      const drag = (design: Design) => solve(design, { neutralDroop: false }).drag.total;
      return [surfaceOf(proposal.design.wing).span, drag(proposal.design) < drag(drawn) ? 1 : 0];
    },
  },
  {
    quantities: ['quantities that move', 'span held, m', 'length from, m'],
    conditions: 'the same search before it starts',
    published: [2, 0.75, SHORTEST],
    tolerance: [{ within: 0 }, { within: 1e-12 }, { within: 1e-12 }],
    source: 'what was asked for',
    status: 'derived',
    method: 'plan of a proposal',
    compute: () => {
      const { quantities, limits } = planOf(lengthening);
      const free = quantities.filter(({ isFree }) => isFree);
      return [free.length, limits.find(({ name }) => name === 'span')?.held ?? Number.NaN, free[0]!.least];
    },
  },
  {
    quantities: ['root bending moment, N m'],
    conditions: 'elliptic wing of 1 m carrying 50 kg, as the plan of a proposal has it',
    published: [ELLIPTIC_MOMENT],
    tolerance: [{ share: 0.005 }], // the extended line’s loading is not quite elliptic
    source: 'half the lift at the centroid of a quarter ellipse, 4/(3 pi) of the half span',
    status: 'derived',
    method: 'figures of a candidate, level running',
    compute: () => {
      const { limits } = planOf(elliptic);
      return [limits.find(({ name }) => name === 'rootMoment')?.drawn ?? Number.NaN];
    },
  },
  {
    quantities: ['root bending moment, N m'],
    conditions: 'the same wing with a brief of 100 kg, weighed in the one of 50 kg',
    published: [ELLIPTIC_MOMENT],
    tolerance: [{ share: 0.005 }],
    source: 'half the lift at the centroid of a quarter ellipse, 4/(3 pi) of the half span',
    status: 'derived',
    method: 'standing of another design in a brief',
    compute: () => {
      const { brief } = elliptic;
      const heavy: Design = { ...elliptic, brief: { ...brief, allUpMass: 2 * brief.allUpMass } };
      const standing = standingOf(heavy, { brief, weights: null, front: [] });
      return [standing?.figures.rootMoment ?? Number.NaN];
    },
  },
  {
    quantities: ['hold bought without drag, steps of the front (0: none)'],
    conditions: 'front of least drag against hold, curved race wing with length and droop free',
    published: [0],
    tolerance: [{ within: 0 }],
    source: 'definition of a front: along it drag rises with hold',
    status: 'derived',
    method: 'front, chain after chain',
    compute: () => {
      const curved = goodDesign('curved-race');
      const free = { length: { least: 0.6, most: 0.86 }, droop: { least: 0, most: 45 } };
      const design: Design = { ...curved, wanted: { free } };
      const ends = finish(frontEnds(design, { near: curved, variant: 0 }))!;
      const chains = ends.chains.map((options) => finish(frontChain(design, options)));
      const { points } = frontOf(ends, chains);
      const bought = points.slice(1).filter(({ drag }, k) => !(drag > points[k]!.drag));
      return [points.length < 5 ? Number.NaN : bought.length];
    },
  },
];

export const searching: PublishedRow[] = [...searches, ...statistics, ...proposals];
