/** What a wedge under the stabilizer does to trim speed, stance and drag. SI; degrees. */
import type { Design } from '../design/document.ts';
import { findRoot } from '../numeric/roots.ts';
import { type LevelRunner, speedPoint } from './speed.ts';
import type { Study } from './study.ts';

export interface ShimRow {
  shim: number; // degrees added to the stabilizer's incidence
  trimSpeed: number | null; // m/s at which the drawn stance balances
  stance: number; // m, balance point aft of the origin at cruise
  feet: number; // m, of an upright rider at cruise
  total: number; // N, at cruise
}

const STEP = 0.25; // degrees
const EACH_WAY = 6; // steps

/** What a wedge under the stabilizer does: -1.5 to +1.5 degrees in quarters. Empty without a stabilizer. */
export function* shimTable(make: (design: Design) => LevelRunner, design: Design): Study<ShimRow[]> {
  const { stabilizer, brief } = design;
  if (!stabilizer) return [];
  const rows: ShimRow[] = [];
  for (let k = -EACH_WAY; k <= EACH_WAY; k++) {
    const shim = STEP * k;
    const runner = make({ ...design, stabilizer: { ...stabilizer, incidence: stabilizer.incidence + shim } });
    const { stance, feet, total } = speedPoint(runner, runner.run(brief.speeds.cruise, 'incidence'));
    rows.push({ shim, trimSpeed: trimSpeed(runner), stance, feet, total });
    yield rows.length / (2 * EACH_WAY + 1);
  }
  return rows;
}

/** The speed at which the drawn stance balances with the incidence as it is; null outside take-off/2 to twice top. */
export function trimSpeed(runner: LevelRunner): number | null {
  const { speeds, balance } = runner.design.brief;
  const miss = (speed: number) => {
    try {
      return runner.run(speed, 'incidence').stance - balance.x;
    } catch {
      return Number.NEGATIVE_INFINITY; // slower than any lift: the stance goes far forward
    }
  };
  const low = Math.max(0.5, speeds.takeOff / 2);
  const high = Math.min(30, speeds.top * 2);
  const atLow = miss(low);
  return findRoot(miss, low, high, 1e-3, Number.isFinite(atLow) ? atLow : -10, miss(high));
}
