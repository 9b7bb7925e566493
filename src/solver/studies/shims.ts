/** What a wedge under the stabilizer does to trim speed, stance and drag. SI; degrees. */
import type { Design } from '../design/document.ts';
import { findRoot } from '../numeric/roots.ts';
import { attempt } from './attempt.ts';
import { type LevelRunner, speedPoint } from './speed.ts';
import type { Study } from './study.ts';

export interface ShimRow {
  shim: number; // degrees added to the stabilizer's incidence
  trimSpeed: number | null; // m/s nearest to cruise at which the drawn stance balances
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
    rows.push({ shim, trimSpeed: balanceSpeed(runner, brief.balance.x), stance, feet, total });
    yield rows.length / (2 * EACH_WAY + 1);
  }
  return rows;
}

const STRIDE = 1.04; // ratio of neighbouring speeds looked at: two crossings nearer to one another go unseen

/**
 * The speed nearest to cruise at which the stance (m aft of the foil's origin) balances, from half the brief's take-off to
 * twice its top speed; null where none does. A stance may balance at two speeds, so that the ends of the range say nothing.
 */
export function balanceSpeed(runner: LevelRunner, stance: number): number | null {
  const { takeOff, cruise, top } = runner.design.brief.speeds;
  const miss = (speed: number): number =>
    attempt(() => runner.run(speed, 'incidence').stance - stance) ?? Number.NaN;
  const here = miss(cruise);
  if (Math.abs(here) < 1e-9) return cruise;
  const ends = [
    { at: cruise, value: here, ratio: STRIDE },
    { at: cruise, value: here, ratio: 1 / STRIDE },
  ];
  const isWithin = (speed: number) => speed >= Math.max(0.5, takeOff / 2) && speed <= Math.min(30, 2 * top);
  while (ends.some(({ at, value, ratio }) => isWithin(at * ratio) && Number.isFinite(value)))
    for (const end of ends) {
      const next = end.at * end.ratio;
      if (!isWithin(next) || !Number.isFinite(end.value)) continue;
      const value = miss(next);
      if (value * end.value <= 0) return findRoot(miss, end.at, next, 1e-3, end.value, value);
      Object.assign(end, { at: next, value });
    }
  return null;
}
