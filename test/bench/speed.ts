/** Times the series of Speed on every demo: 60 speeds from below take-off to above top, each way of trimming. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Design } from '../../src/solver/design/document.ts';
import type { Fix } from '../../src/solver/studies/level-running.ts';
import { speedStudy } from '../../src/solver/studies/speed-study.ts';
import { finish } from '../../src/solver/studies/study.ts';
import { measure, printer, sayYardstick } from './yardstick.ts';

const RUNS = 15;
const COUNT = 60;
const demos = new URL('../../web/demos/', import.meta.url);

export function bench(): void {
  const print = printer(0);
  for (const file of readdirSync(demos)) {
    const design = JSON.parse(readFileSync(new URL(file, demos), 'utf8')) as Design;
    for (const fix of ['incidence', 'stance'] as const) report(print, `${file}, ${fix} kept`, design, fix);
    const { depth } = design.brief;
    if (depth === null) continue;
    // Another depth at every speed asks for a flow of its own each time.
    const rising = { ...design.brief, depths: { takeOff: 0.6 * depth, cruise: depth, top: 1.1 * depth } };
    report(print, `${file}, depth by speed`, { ...design, brief: rising }, 'stance');
  }
  sayYardstick(print.unit);
}

function report(print: ReturnType<typeof printer>, name: string, design: Design, fix: Fix): void {
  const { takeOff, top } = design.brief.speeds;
  const time = measure(() => {
    // A new design each time, as during a drag: nothing kept for the old one helps.
    const fresh = structuredClone(design);
    const { series } = finish(speedStudy(fresh, { from: 0.8 * takeOff, to: 1.1 * top, count: COUNT, fix }));
    if (series.length !== COUNT) throw new Error('the benchmark ran other speeds than it was asked for');
  }, RUNS);
  print.line(`${COUNT} speeds of ${name} (goal: below 500 ms)`, time);
}
