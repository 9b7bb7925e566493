/**
 * Two foils for one rider: what a page for the rider says in sentences. Both are asked with the first one's brief, so that
 * rider, water, speeds and depths are the same. SI; angles in degrees.
 */
import type { Design } from '../design/document.ts';
import { mixAlpha } from '../forces/loads.ts';
import { breachHeel } from '../geometry/heel.ts';
import { FlowPool } from '../vortex/flow.ts';
import { conditionOf, resolutionOf } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { derivativesOf, lateralLoads } from './derivatives.ts';
import { holdTerms } from './hold.ts';
import { runFoil } from './running.ts';
import { type LevelRunner, speedPoint } from './speed.ts';
import { makeRunner } from './speed-study.ts';
import { type Study, within } from './study.ts';
import { lowestSpeed } from './take-off.ts';

const DEGREES = 180 / Math.PI;

/** One of the two; a figure that no level running gives is null. */
export interface RiderFigures {
  takeOff: number | null; // m/s
  holdIndex: number | null;
  rollFromYaw: number | null; // Clr/|Clp| of the foil at cruise
  topDrag: number | null; // N
  feet: { aftOfStrut: number; isReachable: boolean } | null; // m, of an upright rider at cruise
  breachHeel: number | null; // degrees at cruise depth; null where no heel brings a tip up
  problem: string | null; // why the first missing figure is missing
}

export interface RiderComparison {
  /** The first one's, asked of both. */
  brief: Design['brief'];
  isSameBrief: boolean;
  one: RiderFigures;
  other: RiderFigures;
}

export function* riderStudy(design: Design, { against }: { against: Design }): Study<RiderComparison> {
  const { brief } = design;
  const one = yield* within(figuresOf(design), 0, 0.5);
  const other = yield* within(figuresOf({ ...against, brief }), 0.5, 1);
  return { brief, isSameBrief: JSON.stringify(brief) === JSON.stringify(against.brief), one, other };
}

function* figuresOf(design: Design): Study<RiderFigures> {
  const { cruise, top } = design.brief.speeds;
  const runner = makeRunner(design);
  let problem: string | null = null;
  const attempt = <Value>(figure: () => Value): Value | null => {
    try {
      return figure();
    } catch (error) {
      problem ??= error instanceof Error ? error.message : String(error);
      return null;
    }
  };
  yield 0;
  const feet = attempt(() => feetOf(runner, cruise));
  yield 0.5;
  const keeping = attempt(() => keepingOf(design));
  yield 0.7;
  const topDrag = attempt(() => runner.run(top, 'incidence').totalDrag);
  const takeOff = lowestSpeed(runner, runner.weight);
  return {
    takeOff,
    holdIndex: null,
    rollFromYaw: null,
    breachHeel: null,
    ...keeping,
    topDrag,
    feet,
    problem,
  };
}

function feetOf(runner: LevelRunner, speed: number): NonNullable<RiderFigures['feet']> {
  const { feet, isReachable } = speedPoint(runner, runner.run(speed, 'incidence'));
  return { aftOfStrut: feet - (runner.design.strut?.x ?? 0), isReachable };
}

/** How it keeps its line at cruise: closed index, solved coupling about the origin without the strut, heel to breach. */
function keepingOf(design: Design): Pick<RiderFigures, 'holdIndex' | 'rollFromYaw' | 'breachHeel'> {
  const condition = conditionOf(design.brief, {});
  const craft = craftFor(design, condition.depth, resolutionOf({}));
  const { flow, alpha, CL } = runFoil(new FlowPool(), 'rider', craft, condition, 'whole');
  mixAlpha(flow.symmetric, alpha, flow.base);
  const { projectedArea: area, span } = craft.wing;
  const lateral = lateralLoads(flow.system, flow.base, flow.foil);
  const { Clr, Clp } = derivativesOf(lateral, { area, span, x: 0, z: 0 });
  const heel = condition.depth === null ? null : breachHeel(craft.wing, condition.depth);
  return {
    holdIndex: holdTerms(craft.wing, craft.stabilizer, CL).index,
    rollFromYaw: Clp === 0 ? null : Clr / Math.abs(Clp),
    breachHeel: heel === null ? null : heel * DEGREES,
  };
}
