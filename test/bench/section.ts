/**
 * Times a section polar: 20 angles at one Reynolds number, with and without making the section ready, against a plain
 * dense product timed in the same run. Run by `npm run bench`; prints medians in milliseconds.
 */
import { readFileSync } from 'node:fs';
import type { Design } from '../../src/solver/design/document.ts';
import { outlinePoints } from '../../src/solver/geometry/outline.ts';
import { sectionPolar } from '../../src/solver/section/polar.ts';
import { sectionFlow } from '../../src/solver/section/section.ts';
import { createPolarTable, emptySample } from '../../src/solver/section/table.ts';
import { solve } from '../../src/solver/solve.ts';
import { keep, measure, printer, sayYardstick, timed } from './yardstick.ts';

const ALPHAS = Array.from({ length: 20 }, (_, k) => ((k - 5) * Math.PI) / 180);
const demo = new URL('../../web/demos/curved-race.json', import.meta.url);
const design = JSON.parse(readFileSync(demo, 'utf8')) as Design;

const CASES: Array<[string, number]> = [
  ['0009', 3e5],
  ['2412', 5e5],
  ['0012', 1e6],
  ['4412', 2e6],
];

/** A section no cache has met: the code's points, moved in the twelfth digit. */
function fresh(code: string, k: number) {
  const points = outlinePoints({ kind: 'naca4', code }, 241);
  return { x: points.x, y: points.y.map((y) => y * (1 + 1e-12 * (k + 1))) };
}

/** The default demo with a root section that no cache has met: its code's camber drawn a hair larger. */
function resolveWith(k: number): void {
  const { wing } = design;
  const root = { kind: 'naca4', code: '3411', camberScale: 1 + 1e-9 * (k + 1) } as const;
  const changed = { ...design, wing: { ...wing, section: { ...wing.section, root } } };
  keep(solve(changed, { neutralDroop: false }).drag.total);
}

export function bench(): void {
  const { line, unit } = printer(1);
  for (const [code, reynolds] of CASES) {
    const ready = measure((k) => void sectionFlow(fresh(code, k)), 15);
    const polar = measure(() => {
      const { points } = sectionPolar(
        { kind: 'naca4', code },
        { reynolds, alphas: ALPHAS, clarity: 'clean' },
      );
      keep(points[7]!.figures!.cd);
    }, 15);
    line(`section polar, NACA ${code}, Re ${reynolds}, 20 angles`, polar);
    line('  making the section ready, once', ready);
  }
  const table = createPolarTable({ kind: 'naca4', code: '2412' }, 'coastal');
  const sample = emptySample();
  line(
    'polar table, first look between two Reynolds numbers',
    timed(() => table.lookup(0.5, 6e5, sample)),
  );
  const looks = 20_000;
  const look = timed(() => {
    for (let k = 0; k < looks; k++) {
      table.lookup(0.2 + 3e-5 * k, 6e5, sample);
      keep(sample.cd);
    }
  });
  console.log(
    `  each look after that: ${((1000 * look) / looks).toFixed(2)} microseconds (${(look / looks / unit).toExponential(1)} of the yardstick)`,
  );
  line('a new section at the root of the wing, whole design re-solved', measure(resolveWith, 5));
  sayYardstick(unit);
}
