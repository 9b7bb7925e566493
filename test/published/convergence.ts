/**
 * How the headline figures settle as strips are doubled and as rows are added, on the demos and on hard shapes. Order
 * and remaining error by L. F. Richardson's extrapolation (Phil. Trans. A 210, 1911, 307) over 20, 40 and 80 strips a
 * side; the default resolution is 40 and 20. `npm run accuracy` writes the tables.
 */
import { readFileSync } from 'node:fs';
import type { Design } from '../../src/solver/design/document.ts';
import type { ConditionOptions, Report } from '../../src/solver/report.ts';
import { solve } from '../../src/solver/solve.ts';
import { type DerivativeName, lateralParts } from '../support/derivative-parts.ts';
import { goodDesign, plainDesign, plainStabilizer, taperedChord } from '../support/designs.ts';

const demo = (name: string): Design =>
  JSON.parse(readFileSync(new URL(`../../web/demos/${name}.json`, import.meta.url), 'utf8'));

const shallow = { brief: { depth: 0.08 } };

const CASES: ReadonlyArray<[name: string, design: Design]> = [
  ['demo: flat race wing', demo('flat-race')],
  ['demo: curved race wing', demo('curved-race')],
  ['demo: downwind wing', demo('downwind')],
  ['swept 45 degrees', plainDesign({ sweep: { kind: 'straight', angle: 45 } })],
  ['tips 75 degrees down', plainDesign({ droop: { kind: 'late', tipAngle: 75, from: 0.3, power: 2 } })],
  ['aspect ratio 3', plainDesign({ chord: taperedChord(3, 0.5) })],
  ['aspect ratio 25', plainDesign({ chord: taperedChord(25, 0.5) })],
  ['stabilizer in the wing’s plane', plainDesign({}, { stabilizer: plainStabilizer({ height: 0 }) })],
  ['foot 0.8 chords below the surface', plainDesign({ droop: { kind: 'arc', tipAngle: 20 } }, shallow)],
];

interface Figure {
  name: string;
  of: (report: Report) => number | null;
  scale: (value: number) => number; // what a difference is compared with
}

const own = (value: number) => Math.abs(value);
const one = () => 1;

const FIGURES: readonly Figure[] = [
  { name: 'lift slope', of: ({ lift }) => lift.CLalpha, scale: own },
  { name: 'induced drag', of: ({ inducedDrag }) => inducedDrag.CDi, scale: own },
  { name: 'lost share of lift', of: ({ ledger }) => ledger.lostFraction, scale: one },
  { name: 'neutral point, mean chords', of: ({ stability }) => stability.staticMargin, scale: one },
  { name: 'hold index', of: ({ stability }) => stability.holdIndex, scale: own },
  { name: 'roll from yaw', of: ({ stability }) => stability.rollFromYaw, scale: one },
  { name: 'roll damping', of: ({ stability }) => stability.foil.Clp, scale: own },
  { name: 'yaw by roll, Cnp', of: ({ stability }) => stability.foil.Cnp, scale: own },
];

const STRIPS = [20, 40, 80] as const;
const ROWS = [1, 4] as const;

const ANGLE = 3; // degrees

const at = (design: Design, options: ConditionOptions): Report =>
  solve(design, { alpha: ANGLE, neutralDroop: false, ...options });

export interface Settling {
  figure: string;
  values: number[]; // at 20, 40, 80 strips
  order: number | null; // null where the differences do not shrink steadily
  error: number; // of the default resolution, as a share of the figure or of one
  rows: number; // change from one row to four, likewise
}

/** Every headline figure of one design. */
export function settle(design: Design): Settling[] {
  const fine = STRIPS.map((strips) => at(design, { strips, stabilizerStrips: strips / 2 }));
  const rows = ROWS.map((count) => at(design, { strips: 24, stabilizerStrips: 12, rows: count }));
  return FIGURES.flatMap(({ name, of, scale }) => {
    const values = fine.map(of);
    const [single, several] = rows.map(of);
    if (values.some((value) => value === null) || single === null || several === null) return [];
    if (values.every((value) => value === 0) && several === 0) return []; // nothing to settle
    const [coarse, middle, last] = values as [number, number, number];
    const ratio = (coarse - middle) / (middle - last);
    const order = ratio > 1 && Number.isFinite(ratio) ? Math.log2(ratio) : null;
    const rest = order === null ? 0 : (last - middle) / (2 ** order - 1);
    const size = scale(last) || 1;
    return {
      figure: name,
      values: [coarse, middle, last],
      order,
      error: (Math.abs(last - middle) + Math.abs(rest)) / size,
      rows: Math.abs(several! - single!) / size,
    };
  });
}

/** What doubling the default strips moves in the lateral derivatives: of one that stands alone and of one that cancels. */
export interface Doubling {
  who: 'foil' | 'craft';
  alone: { name: string; share: number } | null; // of itself
  cancelling: { name: string; share: number; ofLargest: number } | null; // of itself, and of its largest part
}

const CANCELS = 0.1; // of the largest part: below it a derivative counts as what its parts leave over
const NOTHING = 1e-6; // a derivative that symmetry forbids, or nearly

export function doubling(design: Design): Doubling[] {
  const [coarse, fine] = [40, 80].map((strips) => lateralParts(design, ANGLE, strips)) as [
    ReturnType<typeof lateralParts>,
    ReturnType<typeof lateralParts>,
  ];
  return (['foil', 'craft'] as const).map((who) => {
    const rows = (Object.keys(fine[who]) as DerivativeName[])
      .map((name) => {
        const { value, largest } = fine[who][name];
        const change = Math.abs(coarse[who][name].value - value);
        return {
          name,
          value: Math.abs(value),
          largest,
          share: change / Math.abs(value),
          ofLargest: change / largest,
        };
      })
      .filter(({ value }) => value > NOTHING);
    const worst = <R extends { share: number }>(of: R[]): R | null =>
      of.reduce<R | null>((one, row) => (one && one.share >= row.share ? one : row), null);
    return {
      who,
      alone: worst(rows.filter(({ value, largest }) => value >= CANCELS * largest)),
      cancelling: worst(rows.filter(({ value, largest }) => value < CANCELS * largest)),
    };
  });
}

function doublingTable(): string {
  const cases = [...CASES, ['downwind glider', goodDesign('downwind')] as const]; // its strut and wing nearly cancel
  const rows = cases.flatMap(([name, design]) =>
    doubling(design).map(({ who, alone, cancelling }) => {
      const one = alone ? `${alone.name}, ${percent(alone.share)}` : 'none';
      const other = cancelling
        ? `${cancelling.name}, ${percent(cancelling.share)} | ${percent(cancelling.ofLargest)}`
        : 'none |';
      return `| ${name} | ${who} | ${one} | ${other} |`;
    }),
  );
  return `### Derivatives

What eighty strips change in the nine lateral derivatives of the foil (about the origin) and of the craft (with its strut, about
the balance point): the one that moves most, and the one that moves most of those that are less than a tenth of the largest part
that wing, stabilizer or strut adds. A small difference of large parts is known only as well as they are: it is held to half a
percent of the largest.

| design | of the | moves most | moves most of those that cancel | of its largest part |
| --- | --- | --- | --- | ---: |
${rows.join('\n')}`;
}

/** The section of the page. */
export function convergencePage(): string {
  const tables = CASES.map(([name, design]) =>
    [
      `### ${name[0]!.toUpperCase()}${name.slice(1)}`,
      '',
      '| figure | 20 strips | 40 strips | 80 strips | order | error at 40 | one row to four |',
      '| --- | ---: | ---: | ---: | ---: | ---: | ---: |',
      ...settle(design).map(
        ({ figure, values, order, error, rows }) =>
          `| ${figure} | ${values.map((value) => +value.toPrecision(5)).join(' | ')} | ${order === null ? 'uneven' : order.toFixed(1)} | ${percent(error)} | ${percent(rows)} |`,
      ),
    ].join('\n'),
  );
  return `## Convergence

Each headline figure at 3 degrees with 20, 40 and 80 strips a side (half as many on the stabilizer): the order at which it
settles, and what is left at the default of 40, by Richardson's extrapolation (L. F. Richardson, Phil. Trans. A 210, 1911,
307). The last column is what four rows of vortices along the chord change at 24 strips: the error of the method itself, not
of the strips. Shares are of the figure; for *lost share of lift*, *neutral point* and *roll from yaw* they are of one. Forty
strips were chosen from this table: what they leave is nearly everywhere far below what the single row of the method leaves.

${tables.join('\n\n')}

${doublingTable()}`;
}

const percent = (share: number) => (share < 1e-7 ? '0' : `${(100 * share).toPrecision(2)} %`);
