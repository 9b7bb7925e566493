/**
 * The series behind Speed, which follows a drag live. What may come a moment later: speed-details.ts, wave-study.ts,
 * cavitation-study.ts, side-study.ts. Plain data; SI, angles in degrees.
 */
import type { Design } from '../design/document.ts';
import type { ProfileModel } from '../forces/profile.ts';
import { resolutionOf } from './condition.ts';
import type { Fix } from './level-running.ts';
import { profileFor } from './profile-for.ts';
import type { Rig } from './rig.ts';
import { type BestSpeeds, bestSpeeds, LevelRunner, REACH, type SpeedCase, speedSeries } from './speed.ts';
import type { Study } from './study.ts';
import { takeOffDepth } from './take-off.ts';

const SMALL = 0.01; // rad

export interface SpeedStudyOptions {
  from: number; // m/s
  to: number;
  count: number;
  fix: Fix;
}

export interface SpeedStudy {
  series: SpeedCase[];
  named: { takeOff: SpeedCase; cruise: SpeedCase; top: SpeedCase };
  best: BestSpeeds;
  /** Stance shift of the feet per m/s between take-off and top speed, m; null where either cannot be run or stood at. */
  shift: number | null;
  /** Change of wing and stabilizer incidence (degrees) that lines the fuselage up with the flow at cruise; null likewise. */
  lineUp: number | null;
  /** What the surface takes of the lift slope at the depth of take-off, as a share; null in deep water. */
  surfaceShare: number | null;
  sections: ProfileModel['source'];
  reach: number; // m, how far from the drawn stance the feet can go
}

export function makeRunner(design: Design): LevelRunner {
  return new LevelRunner(design, resolutionOf({}), profileFor(design));
}

/** Speed by speed, so that a drag that wants the next shape is heard and what sections have told is kept. */
export function* speedStudy(design: Design, { from, to, count, fix }: SpeedStudyOptions): Study<SpeedStudy> {
  const runner = makeRunner(design);
  const { speeds } = design.brief;
  const at = (speed: number): SpeedCase => speedSeries(runner, speed, speed, 1, fix)[0]!;
  const series: SpeedCase[] = [];
  for (let k = 0; k < count; k++) {
    series.push(at(count === 1 ? from : from + ((to - from) * k) / (count - 1)));
    yield (k + 1) / (count + 3); // the three named speeds are still to come
  }
  const named = { takeOff: at(speeds.takeOff), cruise: at(speeds.cruise), top: at(speeds.top) };
  const [slow, fast] = [named.takeOff.point, named.top.point];
  return {
    series,
    named,
    best: bestSpeeds(series),
    shift:
      slow?.isReachable && fast?.isReachable ? (fast.feet - slow.feet) / (fast.speed - slow.speed) : null,
    lineUp: named.cruise.point?.isReachable ? named.cruise.point.alpha : null,
    surfaceShare: surfaceShare(runner, takeOffDepth(design)),
    sections: profileFor(design).source,
    reach: REACH,
  };
}

function surfaceShare(runner: LevelRunner, depth: number | null): number | null {
  if (depth === null) return null;
  const near = liftSlope(runner.rigFor(depth));
  return 1 - near / liftSlope(runner.rigFor(null));
}

/** Change of lift per rad of angle at a small angle, per rho V^2. */
function liftSlope({ loads }: Rig): number {
  const lift = (alpha: number) => loads.at(alpha, 0).reduce((sum, { z }) => sum + z, 0);
  return (lift(SMALL) - lift(0)) / SMALL;
}
