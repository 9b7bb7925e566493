/**
 * How smooth is smooth enough, at one station of the foil and one speed: where the layer turns, its friction along the
 * chord, and the heights it does not notice. SI, shares of the chord; laws and their sources in section/skin.ts.
 */
import type { Design } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';
import { turbulentLength } from '../forces/profile.ts';
import { coarsestGrade, GRADES, gradeHeight } from '../section/grit.ts';
import {
  blasiusLocal,
  criticalBump,
  criticalGap,
  criticalStep,
  smoothHeight,
  turbulentLocal,
  wallFlow,
} from '../section/skin.ts';
import type { SideState } from '../section/state.ts';
import { type Place, type Station, Stations, stateAtLift } from './section-station.ts';

export interface SkinOptions extends Place {
  speed: number; // m/s
}

/** One side from the nose aft. Heights in m; NaN for those that only a laminar layer minds, where it is turbulent. */
export interface SkinSide {
  x: Float64Array;
  isTurbulent: Uint8Array;
  friction: Float64Array; // by the local speed
  laminarPlate: Float64Array; // friction of a plate as long as the way from the stagnation point
  turbulentPlate: Float64Array;
  bump: Float64Array; // lone bump that trips the layer
  step: Float64Array; // across the flow
  gap: Float64Array; // across the flow, its width
  spread: Float64Array; // evenly spread, hydraulically smooth
  transition: number; // x/c
  laminarShare: number; // of the side's length
}

export interface SkinHeights {
  bump: number | null; // m, the least one ahead of transition; null without a laminar run
  step: number | null;
  spread: number; // m
}

export interface SkinView {
  station: Omit<Station, 'shape'>;
  upper: SkinSide;
  lower: SkinSide;
  least: SkinHeights;
  /** Coarsest abrasive that leaves no more than the spread height, by the share of its grain and by the bare grain. */
  grade: { share: number; byShare: string | null; byGrain: string | null };
  grades: Array<{ name: string; height: number; grain: number }>; // m, coarse to fine
  /** Turbulent over laminar friction of a plate as long as the laminar run of the upper side; null without one. */
  frictionRatio: number | null;
  /** Laminar run of the strut, m along its chord half way up what spray and waves leave alone, at cruise and top speed; null where there is none to tell of. */
  strutRun: { cruise: number | null; top: number | null };
}

const AHEAD = 0.01; // of the chord: nearer the nose the water hardly moves

/** Throws an Error with one sentence where the foil does not run level or no flow settles. */
export function skinView(design: Design, { speed, ...place }: SkinOptions): SkinView {
  const stations = new Stations(design);
  const { shape, ...station } = stations.at(place, speed);
  const found = stateAtLift(shape, station.cl, station.reynolds, station.flow);
  if (!found)
    throw new Error(
      `the flow of the ${station.part} does not settle at this lift coefficient of ${station.cl.toFixed(2)}`,
    );
  const { figures } = found.state;
  const upper = skinSide(found.state.upper, figures.upper.transition, station);
  const lower = skinSide(found.state.lower, figures.lower.transition, station);
  const share = design.finish?.grainShare ?? RANGES['finish.grainShare'].default;
  const least = leastHeights([upper, lower]);
  return {
    station,
    upper,
    lower,
    least,
    grade: {
      share,
      byShare: coarsestGrade(least.spread, share)?.name ?? null,
      byGrain: coarsestGrade(least.spread, 1)?.name ?? null,
    },
    grades: GRADES.map((grade) => ({
      name: grade.name,
      height: gradeHeight(grade, share),
      grain: gradeHeight(grade, 1),
    })),
    frictionRatio: ratioAtTransition(upper),
    strutRun: {
      cruise: strutRun(stations, design, design.brief.speeds.cruise),
      top: strutRun(stations, design, design.brief.speeds.top),
    },
  };
}

function skinSide(side: SideState, transition: number, station: Omit<Station, 'shape'>): SkinSide {
  const { speed, chord, viscosity } = station;
  const nose = side.x.indexOf(Math.min(...side.x));
  const kept = Array.from(side.x.keys()).filter((k) => k > nose);
  const read = (value: (k: number) => number) => Float64Array.from(kept, value);
  const local = (k: number) => Math.max(1e-3, side.speed[k]!) * speed;
  const byArc = (k: number) => Math.max(100, (local(k) * side.arc[k]! * chord) / viscosity);
  const laminar = (value: (k: number) => number) => (k: number) =>
    side.isTurbulent[k] ? Number.NaN : value(k);
  const turn = side.isTurbulent.indexOf(1);
  const length = side.arc.at(-1)!;
  return {
    x: read((k) => side.x[k]!),
    isTurbulent: Uint8Array.from(kept, (k) => side.isTurbulent[k]!),
    friction: read((k) => side.friction[k]!),
    laminarPlate: read((k) => blasiusLocal(byArc(k))),
    turbulentPlate: read((k) => turbulentLocal(byArc(k))),
    bump: read(laminar((k) => criticalBump(wallFlow(local(k), side.friction[k]!, viscosity)))),
    step: read(laminar(() => criticalStep(speed, viscosity))),
    gap: read(laminar(() => criticalGap(speed, viscosity))),
    spread: read((k) => smoothHeight(local(k), viscosity)),
    transition,
    laminarShare: turn < 0 ? 1 : side.arc[turn]! / length,
  };
}

function leastHeights(sides: readonly SkinSide[]): SkinHeights {
  const least = (name: 'bump' | 'step' | 'spread') => {
    const values = sides.flatMap((side) =>
      Array.from(side[name]).filter((height, k) => side.x[k]! >= AHEAD && height > 0),
    );
    return values.length > 0 ? Math.min(...values) : null;
  };
  return { bump: least('bump'), step: least('step'), spread: least('spread')! };
}

function ratioAtTransition({ transition, x, laminarPlate, turbulentPlate }: SkinSide): number | null {
  const k = x.findIndex((place) => place >= transition);
  return k < 0 ? null : turbulentPlate[k]! / laminarPlate[k]!;
}

function strutRun(stations: Stations, design: Design, speed: number): number | null {
  if (!design.strut) return null;
  try {
    const { depth } = stations.running(speed);
    const calm = depth === null ? 1 : 1 - turbulentLength(design.strut, depth) / depth;
    if (calm <= 0) return null;
    const { shape, cl, reynolds, chord, flow } = stations.at({ part: 'strut', eta: 0.5 * calm }, speed);
    const found = stateAtLift(shape, cl, reynolds, flow);
    return found && found.state.figures.upper.transition * chord;
  } catch {
    return null;
  }
}
