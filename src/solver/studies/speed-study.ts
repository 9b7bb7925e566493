/**
 * The studies behind Speed: `speedStudy` is the series that follows a drag live, `speedDetails` what may come a moment
 * later (take-off, shims, depth, carving, waves, cavitation). Plain data; SI, angles in degrees.
 */
import type { Design } from '../design/document.ts';
import type { ProfileModel } from '../forces/profile.ts';
import { surfaceOf } from '../geometry/surface.ts';
import { type Place, type PressurePoint, PressureWatch } from './cavitation.ts';
import { depthAtSpeed, resolutionOf } from './condition.ts';
import { breachHeel, type DepthRow, depthStudy, type HeelRow, heelStudy } from './depth-heel.ts';
import type { Fix } from './level-running.ts';
import { profileFor } from './profile-for.ts';
import { type SideRule, type SideTrim, sideTrim } from './side-trim.ts';
import {
  type BestSpeeds,
  bestSpeeds,
  LevelRunner,
  REACH,
  type ShimRow,
  type SpeedCase,
  shimTable,
  speedSeries,
  type TakeOff,
  takeOff,
} from './speed.ts';
import type { Study } from './study.ts';
import { type CarveRow, carve } from './turning.ts';
import {
  type DownwindRow,
  downwindTable,
  type Pumping,
  pumping,
  type WaveSwing,
  type Waves,
  waveSwing,
} from './waves.ts';

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
  /** Stance shift of the feet per m/s between take-off and top speed, m; null where either is out of reach of the lift. */
  shift: number | null;
  /** Change of wing and stabilizer incidence (degrees) that lines the fuselage up with the flow at cruise; null likewise. */
  lineUp: number | null;
  sections: ProfileModel['source'];
  reach: number; // m, how far from the drawn stance the feet can go
}

export function makeRunner(design: Design): LevelRunner {
  return new LevelRunner(design, resolutionOf({}), profileFor(design));
}

export function speedStudy(design: Design, { from, to, count, fix }: SpeedStudyOptions): SpeedStudy {
  const runner = makeRunner(design);
  const series = speedSeries(runner, from, to, count, fix);
  const { speeds } = design.brief;
  const at = (speed: number): SpeedCase => speedSeries(runner, speed, speed, 1, fix)[0]!;
  const named = { takeOff: at(speeds.takeOff), cruise: at(speeds.cruise), top: at(speeds.top) };
  const [slow, fast] = [named.takeOff.point, named.top.point];
  return {
    series,
    named,
    best: bestSpeeds(series),
    shift: slow && fast ? (fast.feet - slow.feet) / (fast.speed - slow.speed) : null,
    lineUp: named.cruise.point?.alpha ?? null,
    sections: profileFor(design).source,
    reach: REACH,
  };
}

export interface SpeedDetailOptions {
  waves: Waves;
  pumpFrequency: number; // Hz
  side: SideRule;
}

export interface SpeedDetails {
  takeOff: TakeOff | null;
  shims: ShimRow[];
  depth: DepthRow[]; // at cruise
  heel: HeelRow[]; // at cruise
  breachHeel: number | null; // degrees, wing at cruise depth
  carve: Array<CarveRow | null>; // at cruise
  swing: Array<{ speed: number; swing: WaveSwing | null }>; // at the three speeds of the brief
  downwind: DownwindRow[];
  pumping: Pumping | null; // at the speed of least power, or take-off
  pumpSpeed: number;
  inception: Array<{ place: Place | 'anywhere'; speed: number; eta: number; depth: number }>;
  pressures: Array<{ name: string; speed: number; worst: PressurePoint | null }>;
  side: SideTrim | null;
  sideProblem: string | null;
}

const PLACES: ReadonlyArray<Place | 'anywhere'> = [
  'anywhere',
  'wing',
  'stabilizer',
  'strut',
  'wing junction',
  'strut junction',
];
const HEELS = [0, 10, 20, 30, 40];
const CARVES = [10, 20, 30, 45, 60];
const PULL_UP = 1.5; // load of a hard take-off pull on the weight (common practice)

export function* speedDetails(design: Design, options: SpeedDetailOptions): Study<SpeedDetails> {
  const runner = makeRunner(design);
  const { speeds } = design.brief;
  const { cruise } = speeds;
  const level = attempt(() => runner.run(cruise, 'incidence'));
  const lifted = takeOff(makeRunner, design);
  yield 0.15;
  const shims = attempt(() => shimTable(makeRunner, design)) ?? [];
  yield 0.3;
  const cruiseDepth = depthAtSpeed(design.brief, cruise);
  const depth = cruiseDepth === null ? [] : (attempt(() => depthStudy(runner, cruise, 2)) ?? []);
  yield 0.45;
  const heel =
    level && cruiseDepth !== null
      ? (attempt(() => heelStudy(design, cruise, level.lift.total, HEELS, resolutionOf({}))) ?? [])
      : [];
  const breach = cruiseDepth === null ? null : breachHeel(surfaceOf(design.wing), cruiseDepth);
  yield 0.6;
  const carved = carve(runner, cruise, CARVES);
  const swing = [speeds.takeOff, cruise, speeds.top].map((speed) => ({
    speed,
    swing: attempt(() => waveSwing(runner, speed, options.waves)),
  }));
  const glide = speedSeries(runner, speeds.takeOff, speeds.top, 12, 'incidence');
  const pumpSpeed = bestSpeeds(glide).leastPower?.speed ?? speeds.takeOff;
  const pumped = attempt(() =>
    pumping(
      runner,
      pumpSpeed,
      runner.run(pumpSpeed, 'incidence').totalDrag,
      options.pumpFrequency,
      runner.density,
    ),
  );
  yield 0.75;
  const watch = new PressureWatch(runner);
  const pressures = watched(runner, watch, design);
  const inception = PLACES.flatMap((place) => {
    const found = attempt(() => watch.inceptionSpeed(place, cruise));
    return found ? [{ place, speed: found.speed, eta: found.point.eta, depth: found.point.depth }] : [];
  });
  yield 0.9;
  let side: SideTrim | null = null;
  let sideProblem: string | null = null;
  try {
    if (design.brief.sidePull)
      side = sideTrim(design, cruise, options.side, { strips: 20, stabilizerStrips: 10, rows: 1 });
  } catch (error) {
    sideProblem = error instanceof Error ? error.message : String(error);
  }
  return {
    takeOff: lifted,
    shims,
    depth,
    heel,
    breachHeel: breach,
    carve: carved,
    swing,
    downwind: downwindTable(runner, glide),
    pumping: pumped,
    pumpSpeed,
    inception,
    pressures,
    side,
    sideProblem,
  };
}

/** The lowest pressures at a hard take-off pull, at cruise and at top speed. */
function watched(runner: LevelRunner, watch: PressureWatch, { brief }: Design): SpeedDetails['pressures'] {
  const { takeOff: slow, cruise, top } = brief.speeds;
  const cases = [
    { name: 'take-off pull', speed: slow, load: PULL_UP },
    { name: 'cruise', speed: cruise, load: 1 },
    { name: 'top speed', speed: top, load: 1 },
  ];
  return cases.map(({ name, speed, load }) => ({
    name,
    speed,
    worst: attempt(() =>
      watch.worst(runner.run(speed, 'incidence', depthAtSpeed(brief, speed), runner.weight * load)),
    ),
  }));
}

/** A running state that does not exist has no figure; the series says why. */
function attempt<Value>(f: () => Value): Value | null {
  try {
    return f();
  } catch {
    return null;
  }
}
