/**
 * How a foil stalls, in level running with the stabilizer as drawn: lift against the angle with the sections' own lift
 * curves followed beyond their straight part (stall-line.ts), where along the wing it gives way first, how that spreads,
 * and at what speed. Angles in degrees.
 */
import type { Design } from '../design/document.ts';
import { alphaForLift, alphaLoads } from '../forces/loads.ts';
import type { Resolution } from '../geometry/craft.ts';
import { sectionBlend } from '../section/blend.ts';
import { USABLE_SHARE } from '../section/polar.ts';
import { FlowPool } from '../vortex/flow.ts';
import { type Condition, conditionOf } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { StallLine } from './stall-line.ts';
import { type Study, within } from './study.ts';

export interface StallOptions {
  speed?: number; // m/s, of the depth and of the Reynolds numbers to begin with; default take-off
}

/** A state on the way to stall and beyond. */
export interface StallPoint {
  alpha: number; // degrees, x axis to the stream
  isSettled: boolean; // false: the strips found no common answer, figures are those of the last try
  CL: number; // wing and stabilizer, on the wing's projected area
  CLwing: number;
  speed: number; // m/s, at which it carries the weight; NaN where it lifts nothing
  isStalled: boolean[]; // by wing strip: its section is beyond its greatest lift
  stalledShare: number; // of the wing's area, whose sections are beyond their greatest lift
  cl: Float64Array; // by wing strip
  shares: Float64Array; // of it: over the section's greatest
}

/** A named state, and the speed at which it carries the weight. */
export interface StallMark {
  alpha: number;
  CL: number;
  CLwing: number;
  eta: number; // of the wing strip closest to its limit
  speed: number; // m/s
  between: [StallPlace, StallPlace]; // the two states solved that it lies between; the same one twice where it is one
  share: number; // of its section's greatest lift coefficient, that strip's
}

/** A state solved, and how far the strip of the mark is there. */
export interface StallPlace {
  alpha: number; // degrees
  share: number;
}

export interface StallStudy {
  depth: number | null;
  speed: number; // m/s, of the Reynolds numbers
  weight: number; // N, what the speeds carry
  density: number; // kg/m3
  area: number; // m2, projected, of the wing
  eta: Float64Array; // wing strips
  y: Float64Array; // m, from the middle
  limit: Float64Array; // the strips' greatest section lift coefficients at this speed
  usableShare: number; // of those
  points: StallPoint[];
  /** The first wing strip reaches nine tenths of its section's greatest lift: what is counted on. */
  usable: StallMark | null;
  /** The first wing strip reaches its section's greatest lift. */
  first: StallMark | null;
  /** Most lift of the whole foil. `isPassed`: lift falls behind it; else no angle behind it settled, or it still grows. */
  greatest: (StallMark & { isPassed: boolean }) | null;
}

const DEGREES = 180 / Math.PI;
const STEP = 0.5 / DEGREES;
const MOST_STEPS = 60;
const FALLEN = 0.97; // of the greatest lift: far enough to see how stall spreads
const NEARLY = 0.999; // of a section's greatest lift: its curve is flat there
const PASSES = 2; // Reynolds numbers of the speed first guessed, then of the speed found
const RESOLUTION: Resolution = { strips: 30, stabilizerStrips: 15, rows: 1 };

/** Throws an Error with one sentence where the foil does not fit the water. */
export function* stallStudy(design: Design, options: StallOptions = {}): Study<StallStudy> {
  const { brief, wing, stabilizer } = design;
  const { clarity } = brief.water;
  let condition = conditionOf(brief, { speed: options.speed ?? brief.speeds.takeOff });
  const craft = craftFor(design, condition.depth, RESOLUTION);
  const flow = new FlowPool().solve('stall', craft, 'angle');
  const blends = [wing, ...(stabilizer ? [stabilizer] : [])].map(({ section }) =>
    sectionBlend(section.root, section.tip, clarity),
  );
  const start = alphaForLift(alphaLoads(flow.system, flow.symmetric), 0);
  let study: StallStudy | null = null;
  for (let pass = 0; pass < PASSES; pass++) {
    const line = new StallLine(craft, flow, blends, condition.speed / condition.viscosity);
    study = yield* within(walkToStall(line, start, condition), pass / PASSES, (pass + 1) / PASSES);
    const speed = study.greatest?.speed;
    if (speed === undefined || !Number.isFinite(speed)) break;
    condition = { ...condition, speed };
  }
  return study!;
}

function* walkToStall(line: StallLine, start: number, condition: Condition): Study<StallStudy> {
  const { craft } = line;
  const strips = craft.parts.wing;
  const area = craft.wing.projectedArea;
  const points: StallPoint[] = [];
  let most = 0;
  let misses = 0;
  line.begin();
  for (let k = 0; k <= MOST_STEPS && misses < 2; k++) {
    const alpha = start + k * STEP;
    const { isSettled, lift, cl, isStalled } = line.at(alpha);
    const shares = Float64Array.from({ length: line.wing }, (_, i) => cl[i]! / line.limit(i));
    let stalled = 0;
    let all = 0;
    shares.forEach((_, i) => {
      const own = strips.chord[i]! * strips.width[i]!;
      all += own;
      if (isStalled[i]) stalled += own;
    });
    const CL = (2 * lift.total) / area;
    points.push({
      alpha: alpha * DEGREES,
      isSettled,
      CL,
      CLwing: (2 * lift.wing) / area,
      speed: carryingSpeed(condition, area, CL),
      isStalled: isStalled.slice(0, line.wing),
      stalledShare: stalled / all,
      cl: cl.slice(0, line.wing),
      shares,
    });
    yield k / MOST_STEPS;
    misses = isSettled ? 0 : misses + 1;
    if (isSettled) most = Math.max(most, CL);
    if (isSettled && most > 0 && CL < FALLEN * most) break;
  }
  const limit = Float64Array.from({ length: line.wing }, (_, i) => line.limit(i));
  const { eta, controlY } = strips;
  const wing = { eta: eta.slice(), y: controlY.slice(0, line.wing), limit, area, usableShare: USABLE_SHARE };
  return { ...wing, ...marksOf(points, wing, condition) };
}

function marksOf(
  points: StallPoint[],
  wing: Pick<StallStudy, 'eta' | 'area'>,
  condition: Condition,
): Omit<StallStudy, 'eta' | 'y' | 'limit' | 'area' | 'usableShare'> {
  const { speed, depth, density, lift } = condition;
  const settled = points.filter(({ isSettled }) => isSettled);
  /** The state `share` of the way from one point to the next. */
  const mark = (from: StallPoint, to: StallPoint, share: number): StallMark => {
    const mix = (key: 'alpha' | 'CL' | 'CLwing') => from[key] + share * (to[key] - from[key]);
    const CL = mix('CL');
    const strip = foremost(to);
    const eta = wing.eta[strip]!;
    const place = ({ alpha, shares }: StallPoint): StallPlace => ({ alpha, share: shares[strip]! });
    const between: StallMark['between'] = [place(from), place(to)];
    return {
      alpha: mix('alpha'),
      CL,
      CLwing: mix('CLwing'),
      eta,
      speed: carryingSpeed(condition, wing.area, CL),
      between,
      share: between[0].share + share * (between[1].share - between[0].share),
    };
  };
  const passes = (wanted: number) => {
    const k = settled.findIndex((point) => point.shares[foremost(point)]! >= wanted);
    if (k < 0) return null;
    const to = settled[k]!;
    const from = settled[Math.max(0, k - 1)]!;
    const [low, high] = [from.shares[foremost(to)]!, to.shares[foremost(to)]!];
    return mark(from, to, high > low ? Math.max(0, (wanted - low) / (high - low)) : 1);
  };
  const best = settled.reduce<StallPoint | null>((top, at) => (top && top.CL >= at.CL ? top : at), null);
  return {
    depth,
    speed,
    weight: lift,
    density,
    points,
    usable: passes(USABLE_SHARE),
    first: passes(NEARLY),
    greatest:
      best && best.CL > 0 ? { ...mark(best, best, 0), isPassed: best !== settled[settled.length - 1] } : null,
  };
}

/** Speed (m/s) at which a lift coefficient on an area (m2) carries the condition's lift; NaN for none. */
function carryingSpeed({ density, lift }: Condition, area: number, CL: number): number {
  return CL > 0 ? Math.sqrt((2 * lift) / (density * area * CL)) : Number.NaN;
}

/** Index of the wing strip closest to its section's greatest lift. */
function foremost({ shares }: StallPoint): number {
  return shares.reduce((best, share, i) => (share > shares[best]! ? i : best), 0);
}
