/** The foil against the rig's sideways pull at the brief's three speeds, and what the slipping strut's suction may draw. SI. */
import type { Design } from '../design/document.ts';
import { type PressurePoint, PressureWatch } from './cavitation.ts';
import { GRAVITY } from './condition.ts';
import type { Fix } from './level-running.ts';
import { type SideRule, type SideTrim, sideTrim } from './side-trim.ts';
import { makeRunner } from './speed-study.ts';
import type { Study } from './study.ts';

export interface SideStudyOptions {
  rule: SideRule;
  fix: Fix;
}

export interface SideCase {
  name: 'takeOff' | 'cruise' | 'top';
  speed: number; // m/s
  trim: SideTrim | null;
  problem: string | null; // why there is none
  /** Lowest pressure on the slipping strut; null without a strut or a trim. */
  strut: PressurePoint | null;
  froude: number | null; // V / sqrt(g h) of the strut's wetted length
}

const RESOLUTION = { strips: 20, stabilizerStrips: 10, rows: 1 };

/** Empty without a sideways pull. */
export function* sideStudy(design: Design, { rule, fix }: SideStudyOptions): Study<SideCase[]> {
  const { speeds, sidePull } = design.brief;
  if (!sidePull || sidePull.share === 0) return [];
  const runner = makeRunner(design);
  const watch = new PressureWatch(runner);
  const cases: SideCase[] = [];
  for (const name of ['takeOff', 'cruise', 'top'] as const) {
    const speed = speeds[name];
    let trim: SideTrim | null = null;
    let problem: string | null = null;
    try {
      trim = sideTrim(runner, speed, rule, fix, RESOLUTION);
    } catch (error) {
      problem = error instanceof Error ? error.message : String(error);
    }
    const points = watch.slipping(trim?.strut ?? [], speed);
    const strut = points.reduce<PressurePoint | null>(
      (least, point) => (least === null || point.againstAir < least.againstAir ? point : least),
      null,
    );
    const wetted = trim?.strut[0]?.depth;
    cases.push({
      name,
      speed,
      trim,
      problem,
      strut,
      froude: wetted === undefined ? null : speed / Math.sqrt(GRAVITY * wetted),
    });
    yield cases.length / 3;
  }
  return cases;
}
