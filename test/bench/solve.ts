/**
 * Times one full solve of the default demo at the default resolution, its stages and a plain dense product, all in turn.
 * Run by `npm run bench`; prints medians in milliseconds.
 */
import { readFileSync } from 'node:fs';
import type { Design } from '../../src/solver/design/document.ts';
import { waterProperties } from '../../src/solver/design/water.ts';
import { deepLift, drawLedger } from '../../src/solver/forces/ledger.ts';
import { alphaForLift, alphaLoads, mixAlpha } from '../../src/solver/forces/loads.ts';
import { stripFigures, sumWing } from '../../src/solver/forces/spread.ts';
import { solve } from '../../src/solver/solve.ts';
import { craftFor } from '../../src/solver/studies/craft-for.ts';
import { derivativesOf, lateralLoads } from '../../src/solver/studies/derivatives.ts';
import { neutralPoint } from '../../src/solver/studies/pitch.ts';
import { profileFor } from '../../src/solver/studies/profile-for.ts';
import { solveAntisymmetricUnits, solveSymmetricUnits } from '../../src/solver/vortex/causes.ts';
import { FlowPool } from '../../src/solver/vortex/flow.ts';
import { gatherStrips, inducedDrag, leastDrag } from '../../src/solver/vortex/wake.ts';
import { inTurn, keep, measure, printer, sayYardstick, spreadOf, yardstick } from './yardstick.ts';

const GRAVITY = 9.80665;
const RUNS = 400;
const resolution = { strips: 40, stabilizerStrips: 20, rows: 1 };
const demo = new URL('../../web/demos/', import.meta.url);

export function bench(): void {
  const design = JSON.parse(readFileSync(new URL('curved-race.json', demo), 'utf8')) as Design;
  const { depth, balance, allUpMass, upwardPull, speeds, water } = design.brief;
  const { density, viscosity } = waterProperties(water.kind, water.temperature);
  const pressure = density * speeds.cruise ** 2;
  const lift = (1 - upwardPull) * allUpMass * GRAVITY;
  const pool = new FlowPool();
  const craft = craftFor(design, depth, resolution);
  const flow = pool.solve('design', craft, 'whole');
  const profile = profileFor(design);
  const stream = { speed: speeds.cruise, density, viscosity };
  const { system } = flow;
  const reference = { area: craft.wing.projectedArea, span: craft.wing.span };

  const finish = () => {
    const loads = alphaLoads(system, flow.symmetric);
    const alpha = alphaForLift(loads, lift / pressure);
    mixAlpha(flow.symmetric, alpha, flow.base);
    gatherStrips(system, flow.base.circulation, flow.stripCirculation);
    const wake = system.fillWakes().free;
    const drag = inducedDrag(wake, flow.stripCirculation) * pressure;
    const least = leastDrag(system, wake, craft.wing.span);
    const foil = derivativesOf(lateralLoads(system, flow.base, flow.foil), { ...reference, x: 0, z: 0 });
    const whole = lateralLoads(system, flow.base, flow.craft);
    const about = derivativesOf(whole, { ...reference, x: balance.x, z: balance.height });
    keep(drag + least.factor + foil.Clr + about.Clr + neutralPoint(loads, alpha));
    return { alpha, drag, least };
  };
  const { alpha, drag, least } = finish();
  const sums = sumWing(stripFigures(craft, flow, stream, least, profile).wing);
  const beside = deepLift(pool.solve('design', craft, 'whole', true), { alpha, pressure });
  const running = { alpha, pressure, lift, drag, profileDrag: 0, stream, deepLift: beside, ...sums };
  const times = inTurn(
    {
      full: () => {
        pool.solve('design', craftFor(design, depth, resolution), 'whole');
        finish();
      },
      geometry: () => void craftFor(design, depth, resolution),
      influence: () => system.fillInfluence(true),
      matrix: () => {
        system.fillInfluence(true);
        system.factorise(true);
      },
      units: () => {
        solveSymmetricUnits(system, flow.symmetric, true);
        solveAntisymmetricUnits(system, flow.foil, false);
        solveAntisymmetricUnits(system, flow.craft, true);
      },
      forces: () => void finish(),
      ledger: () => void drawLedger(pool, craft, design.wing, resolution, running, profile),
      yardstick: yardstick(),
    },
    RUNS,
  );
  const of = (name: keyof typeof times) => spreadOf(times[name]);
  const less = (whole: keyof typeof times, part: keyof typeof times) =>
    spreadOf(times[whole].map((time, k) => time - times[part][k]!));
  const report = measure(() => void solve(design), 60);

  console.log(`full solve: ${of('full').median.toFixed(2)} ms`);
  const { line, unit } = printer(2, of('yardstick').median);
  line('  the same with its spread', of('full'));
  line('  influence', of('influence'));
  line('  factorisation', less('matrix', 'influence'));
  line('  the rest', less('full', 'matrix'));
  line('    of it geometry', of('geometry'));
  line('    of it unit solutions', of('units'));
  line('    of it loads, drag, derivatives', of('forces'));
  line('twins of the ledger', of('ledger'));
  line('whole report with neutral droop', report);
  sayYardstick(unit);
}
