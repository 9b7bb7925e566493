/**
 * Times a section polar: 20 angles at one Reynolds number, with and without making the section ready, against a plain
 * dense product timed in the same run. Run by `npm run bench`; prints medians in milliseconds.
 */
import { outlinePoints } from '../../src/solver/geometry/outline.ts';
import { sectionPolar } from '../../src/solver/section/polar.ts';
import { sectionFlow } from '../../src/solver/section/section.ts';
import { createPolarTable, emptySample } from '../../src/solver/section/table.ts';

const ALPHAS = Array.from({ length: 20 }, (_, k) => ((k - 5) * Math.PI) / 180);
const CASES: Array<[string, number]> = [
  ['0009', 3e5],
  ['2412', 5e5],
  ['0012', 1e6],
  ['4412', 2e6],
];

let sink = 0;

function timed(run: () => void): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}

function median(times: number[]): number {
  times.sort((a, b) => a - b);
  return times[times.length >> 1]!;
}

const repeat = (runs: number, run: (k: number) => number) =>
  median(Array.from({ length: runs }, (_, k) => run(k)).slice(runs / 5));

/** A section no cache has met: the code's points, moved in the twelfth digit. */
function fresh(code: string, k: number) {
  const points = outlinePoints({ kind: 'naca4', code }, 241);
  return { x: points.x, y: points.y.map((y) => y * (1 + 1e-12 * (k + 1))) };
}

/** A plain dense product of two 128 by 128 matrices: makes runs on other machines comparable. */
function yardstick(): number {
  const n = 128;
  const a = Float64Array.from({ length: n * n }, (_, k) => Math.sin(k));
  const c = new Float64Array(n * n);
  return repeat(40, () =>
    timed(() => {
      for (let i = 0; i < n; i++)
        for (let k = 0; k < n; k++)
          for (let j = 0; j < n; j++) c[i * n + j]! += a[i * n + k]! * a[k * n + j]!;
      sink += c[17]!;
    }),
  );
}

export function benchSection(): void {
  const unit = yardstick();
  const line = (name: string, time: number) =>
    console.log(`${name}: ${time.toFixed(1)} ms (${(time / unit).toFixed(1)} of the yardstick)`);
  for (const [code, reynolds] of CASES) {
    const ready = repeat(15, (k) => timed(() => void sectionFlow(fresh(code, k))));
    const polar = repeat(15, () =>
      timed(() => {
        const { points } = sectionPolar(
          { kind: 'naca4', code },
          { reynolds, alphas: ALPHAS, clarity: 'clean' },
        );
        sink += points[7]!.figures!.cd;
      }),
    );
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
      sink += sample.cd;
    }
  });
  console.log(`  each look after that: ${((1000 * look) / looks).toFixed(2)} microseconds`);
  console.log(`yardstick, dense product of two 128 by 128 matrices: ${unit.toFixed(2)} ms`);
  if (!Number.isFinite(sink)) throw new Error('the benchmark computed nothing finite');
}
