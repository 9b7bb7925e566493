/** Beside the series of Speed: take-off, wedges, depth, heel and turning at cruise. Plain data; SI, angles in degrees. */
import type { Design } from '../design/document.ts';
import { breachHeel } from '../geometry/heel.ts';
import { attempt } from './attempt.ts';
import { depthAtSpeed } from './condition.ts';
import { type DepthRow, depthStudy, type HeelRow, heelStudy } from './depth-heel.ts';
import { type ShimRow, shimTable } from './shims.ts';
import type { LevelRunner } from './speed.ts';
import { makeRunner } from './speed-study.ts';
import { type Study, within } from './study.ts';
import { type TakeOff, takeOff } from './take-off.ts';
import { type CarveRow, carve } from './turning.ts';
import { type TurnChoice, turningChoices } from './turning-choices.ts';

export interface SpeedDetails {
  takeOff: TakeOff | null;
  shims: ShimRow[];
  depth: DepthRow[]; // at cruise
  heel: HeelRow[]; // at cruise
  breachHeel: number | null; // degrees, wing at cruise depth
  carve: Array<CarveRow | null>; // at cruise
  turns: TurnChoice[]; // at cruise
}

const HEELS = [0, 10, 20, 30, 40];
const CARVES = [10, 20, 30, 45, 60];
const DEEPEST = 2; // m
const COARSE = { strips: 24, stabilizerStrips: 12, rows: 1 }; // both halves are unknowns of a heeled foil

export function* speedDetails(design: Design): Study<SpeedDetails> {
  const runner = makeRunner(design);
  const { cruise } = design.brief.speeds;
  const lifted = takeOff(makeRunner, design);
  yield 0.1;
  const shims = yield* within(shimTable(makeRunner, design), 0.1, 0.5);
  const depth = depthAtSpeed(design.brief, cruise);
  const depths = depth === null ? [] : (attempt(() => depthStudy(runner, cruise, DEEPEST)) ?? []);
  yield 0.65;
  const carved = carve(runner, cruise, CARVES);
  const turns = attempt(() => turningChoices(makeRunner, design, cruise)) ?? [];
  yield 0.8;
  return {
    takeOff: lifted,
    shims,
    depth: depths,
    heel: depth === null ? [] : heeled(runner, design, cruise),
    breachHeel: depth === null ? null : breachDegrees(runner, depth),
    carve: carved,
    turns,
  };
}

function heeled(runner: LevelRunner, design: Design, speed: number): HeelRow[] {
  return (
    attempt(() => heelStudy(design, speed, runner.run(speed, 'incidence').lift.total, HEELS, COARSE)) ?? []
  );
}

function breachDegrees(runner: LevelRunner, depth: number): number | null {
  const heel = attempt(() => breachHeel(runner.rigFor(depth).craft.wing, depth));
  return heel === null ? null : (heel * 180) / Math.PI;
}
