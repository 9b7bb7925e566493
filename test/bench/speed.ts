/** Times the series of Speed on every demo: 60 speeds from below take-off to above top, each way of trimming. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Design } from '../../src/solver/design/document.ts';
import type { Fix } from '../../src/solver/studies/level-running.ts';
import { speedStudy } from '../../src/solver/studies/speed-study.ts';

const RUNS = 15;
const COUNT = 60;
const demos = new URL('../../web/demos/', import.meta.url);

/** Prints medians in milliseconds; the first fifth of the runs warms up and is not counted. */
export function bench(): void {
  for (const file of readdirSync(demos)) {
    const design = JSON.parse(readFileSync(new URL(file, demos), 'utf8')) as Design;
    for (const fix of ['incidence', 'stance'] as const) report(`${file}, ${fix} kept`, design, fix);
    const { depth } = design.brief;
    if (depth === null) continue;
    // Another depth at every speed asks for a flow of its own each time.
    const rising = { ...design.brief, depths: { takeOff: 0.6 * depth, cruise: depth, top: 1.1 * depth } };
    report(`${file}, depth by speed`, { ...design, brief: rising }, 'stance');
  }
}

function report(name: string, design: Design, fix: Fix): void {
  console.log(`${COUNT} speeds of ${name}: ${timeOf(design, fix).toFixed(0)} ms (goal: below 500 ms)`);
}

function timeOf(design: Design, fix: Fix): number {
  const { takeOff, top } = design.brief.speeds;
  const times: number[] = [];
  for (let k = 0; k < 1.2 * RUNS; k++) {
    // A new design each time, as during a drag: nothing kept for the old one helps.
    const fresh = structuredClone(design);
    const start = performance.now();
    const { series } = speedStudy(fresh, { from: 0.8 * takeOff, to: 1.1 * top, count: COUNT, fix });
    if (k >= 0.2 * RUNS) times.push(performance.now() - start);
    if (series.length !== COUNT) throw new Error('the benchmark ran other speeds than it was asked for');
  }
  times.sort((a, b) => a - b);
  return times[times.length >> 1]!;
}
