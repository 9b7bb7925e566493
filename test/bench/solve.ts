/**
 * Times one full solve of the default demo at the default resolution, stage by stage, against a plain dense product
 * timed in the same run. Run by `npm run bench`; prints medians in milliseconds.
 */
import { readFileSync } from 'node:fs';
import type { Design } from '../../src/solver/design/document.ts';
import { waterProperties } from '../../src/solver/design/water.ts';
import { drawLedger } from '../../src/solver/forces/ledger.ts';
import { alphaForLift, alphaLoads, mixAlpha } from '../../src/solver/forces/loads.ts';
import { stripFigures, sumWing } from '../../src/solver/forces/spread.ts';
import { craftOf } from '../../src/solver/geometry/craft.ts';
import { solve } from '../../src/solver/solve.ts';
import { derivativesOf, lateralLoads } from '../../src/solver/studies/derivatives.ts';
import { neutralPoint } from '../../src/solver/studies/pitch.ts';
import { solveAntisymmetricUnits, solveSymmetricUnits } from '../../src/solver/vortex/causes.ts';
import { FlowPool } from '../../src/solver/vortex/flow.ts';
import { gatherStrips, inducedDrag, leastDrag } from '../../src/solver/vortex/wake.ts';

const GRAVITY = 9.80665;
const RUNS = 400;
const resolution = { strips: 40, stabilizerStrips: 20, rows: 1 };
const demo = new URL('../../web/demos/', import.meta.url);

let sink = 0;

/** Median of repeated runs, ms; the first fifth warms up and is not counted. */
function median(run: () => void, runs = RUNS): number {
  const times: number[] = [];
  for (let k = 0; k < runs * 1.2; k++) {
    const start = performance.now();
    run();
    const time = performance.now() - start;
    if (k >= runs * 0.2) times.push(time);
  }
  times.sort((a, b) => a - b);
  return times[times.length >> 1]!;
}

/** A plain dense product of two 128 by 128 matrices: the yardstick that makes runs on other machines comparable. */
function yardstick(): number {
  const n = 128;
  const a = Float64Array.from({ length: n * n }, (_, k) => Math.sin(k));
  const b = Float64Array.from({ length: n * n }, (_, k) => Math.cos(k));
  const c = new Float64Array(n * n);
  return median(() => {
    c.fill(0);
    for (let i = 0; i < n; i++)
      for (let k = 0; k < n; k++) {
        const share = a[i * n + k]!;
        for (let j = 0; j < n; j++) c[i * n + j]! += share * b[k * n + j]!;
      }
    sink += c[17]!;
  });
}

export function benchSolve(file = 'curved-race.json'): void {
  const design = JSON.parse(readFileSync(new URL(file, demo), 'utf8')) as Design;
  const { depth, balance, allUpMass, upwardPull, speeds, water } = design.brief;
  const { density } = waterProperties(water.kind, water.temperature);
  const pressure = density * speeds.cruise ** 2;
  const lift = (1 - upwardPull) * allUpMass * GRAVITY;
  const pool = new FlowPool();
  const craft = craftOf(design, depth, resolution);
  const flow = pool.solve('design', craft, 'whole');
  const { system } = flow;
  const reference = { area: craft.wing.projectedArea, span: craft.wing.span };

  const finish = () => {
    const loads = alphaLoads(system, flow.symmetric);
    const alpha = alphaForLift(loads, lift / pressure);
    mixAlpha(flow.symmetric, alpha, flow.base);
    gatherStrips(system, flow.base.circulation, flow.stripCirculation);
    const wake = system.fillWake();
    const drag = inducedDrag(wake, flow.stripCirculation) * pressure;
    const least = leastDrag(system, wake, craft.wing.span);
    const foil = derivativesOf(lateralLoads(system, flow.base, flow.foil), { ...reference, x: 0, z: 0 });
    const whole = lateralLoads(system, flow.base, flow.craft);
    const about = derivativesOf(whole, { ...reference, x: balance.x, z: balance.height });
    sink += drag + least.factor + foil.Clr + about.Clr + neutralPoint(loads, alpha);
    return { alpha, drag, least };
  };
  const full = median(() => {
    pool.solve('design', craftOf(design, depth, resolution), 'whole');
    finish();
  });
  const geometry = median(() => void craftOf(design, depth, resolution));
  const influence = median(() => system.fillInfluence(true));
  const fillAndFactor = median(() => {
    system.fillInfluence(true);
    system.factorise(true);
  });
  system.fillInfluence(true);
  system.factorise(true);
  const units = median(() => {
    solveSymmetricUnits(system, flow.symmetric, true);
    solveAntisymmetricUnits(system, flow.foil, false);
    solveAntisymmetricUnits(system, flow.craft, true);
  });
  const forces = median(() => void finish());
  const { alpha, drag, least } = finish();
  const sums = sumWing(stripFigures(craft, flow, speeds.cruise, density, least).wing);
  const running = { alpha, pressure, lift, drag, ...sums };
  const ledger = median(() => void drawLedger(pool, craft, design.wing, resolution, running));
  const report = median(() => void solve(design), 60);
  const unit = yardstick();

  const line = (name: string, time: number) =>
    `${name}: ${time.toFixed(2)} ms (${(time / unit).toFixed(2)} of the yardstick)`;
  console.log(`full solve: ${full.toFixed(2)} ms`);
  console.log(
    [
      line('  influence', influence),
      line('  factorisation', Math.max(0, fillAndFactor - influence)),
      line('  the rest', Math.max(0, full - fillAndFactor)),
      line('    of it geometry', geometry),
      line('    of it unit solutions', units),
      line('    of it loads, drag, derivatives', forces),
      line('twins of the ledger', ledger),
      line('whole report with neutral droop', report),
      `yardstick, dense product of two 128 by 128 matrices: ${unit.toFixed(2)} ms`,
    ].join('\n'),
  );
  if (!Number.isFinite(sink)) throw new Error('the benchmark computed nothing finite');
}
