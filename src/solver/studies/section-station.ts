/**
 * One section of the foil at a speed: where it stands, what it is drawn like, how fast and how hard it works; and the
 * flow round it at that lift. SI; angles in radians.
 */
import type { Design, Outline, Pair } from '../design/document.ts';
import { waterProperties } from '../design/water.ts';
import { turbulentLength } from '../forces/profile.ts';
import { blendOutlines, strutOutline } from '../geometry/outline.ts';
import { LAST_STATION } from '../geometry/outline-marks.ts';
import type { Water } from '../section/polar.ts';
import { liftLine } from '../section/pressure.ts';
import { type SectionShape, sectionFlow } from '../section/section.ts';
import { type SectionState, sectionState } from '../section/state.ts';
import { ATMOSPHERE } from './cavitation.ts';
import { GRAVITY, resolutionOf } from './condition.ts';
import type { RunningState } from './level-running.ts';
import { profileFor } from './profile-for.ts';
import { LevelRunner } from './speed.ts';
import { TRIPPED } from './strut-polars.ts';

export type FoilPart = 'wing' | 'stabilizer' | 'strut';

/** Where on a part: eta of the unrolled half; share of the wetted length from the foot up on the strut. */
export interface Place {
  part: FoilPart;
  eta: number;
}

export interface Station extends Place {
  shape: SectionShape;
  chord: number; // m
  speed: number; // m/s
  reynolds: number;
  cl: number; // 2 circulation/(V chord) of level running; 0 on the strut
  flown: Flown | null; // where that was read; null on the strut
  depth: number; // m below the surface; from the strut's length in deep water
  sigma: number; // cavitation number there
  pressure: number; // Pa, half rho V^2
  density: number; // kg/m3
  atmosphere: number; // Pa
  vapourPressure: number; // Pa
  gravity: number; // m/s2
  viscosity: number; // m2/s
  /** How its layer turns turbulent: by the water's clarity, and at the nose where spray and waves keep a strut turbulent. */
  flow: Water;
}

/** The lift coefficient as flown, read between the control stations of two strips. */
export interface Flown {
  cl: number;
  strips: [StripPlace, StripPlace]; // the same one twice beyond the last
}

export interface StripPlace {
  eta: number;
  cl: number;
}

const POINTS = 241; // of a blend

/** Sections of one design; its running states are solved once a speed. */
export class Stations {
  private readonly runner: LevelRunner;
  private readonly states = new Map<number, RunningState>();
  private readonly water;

  constructor(readonly design: Design) {
    this.runner = new LevelRunner(design, resolutionOf({}), profileFor(design));
    this.water = waterProperties(design.brief.water.kind, design.brief.water.temperature);
  }

  /** Throws an Error with one sentence where the foil does not run level at the speed. */
  running(speed: number): RunningState {
    let state = this.states.get(speed);
    if (!state) {
      state = this.runner.run(speed, 'incidence');
      this.states.set(speed, state);
    }
    return state;
  }

  /** Throws like `running`, and where the design has no such part. */
  at({ part, eta }: Place, speed: number): Station {
    const { design } = this;
    if (!design[part]) throw new Error(`this design has no ${part}`);
    const state = this.running(speed);
    const { craft } = this.runner.rigFor(state.depth);
    const foot = state.depth ?? design.strut?.length ?? 1;
    const surface = part === 'wing' ? craft.wing : craft.stabilizer;
    const station = Math.min(LAST_STATION, Math.max(0, eta));
    const onStrut = part === 'strut' || !surface;
    const chord = onStrut ? design.strut!.chord : surface.chord(station);
    const height = onStrut ? station * foot : surface.point(station).z;
    const depth = foot - height;
    const pressure = 0.5 * this.water.density * speed * speed;
    const flown = onStrut ? null : this.flownAt(state, part, station);
    return {
      part,
      eta: station,
      shape: shapeAt(design, part, station),
      chord,
      speed,
      reynolds: (speed * chord) / this.water.viscosity,
      cl: flown?.cl ?? 0,
      flown,
      depth,
      sigma: (ATMOSPHERE + this.water.density * GRAVITY * depth - this.water.vapourPressure) / pressure,
      pressure,
      density: this.water.density,
      atmosphere: ATMOSPHERE,
      vapourPressure: this.water.vapourPressure,
      gravity: GRAVITY,
      viscosity: this.water.viscosity,
      flow: this.flowAt(part, depth, state.depth),
    };
  }

  /** Length (m) of a part in the water, along its unrolled line, both halves. */
  length(part: FoilPart, speed: number): number {
    const { design } = this;
    const state = this.running(speed);
    const { craft } = this.runner.rigFor(state.depth);
    if (part === 'strut') return state.depth ?? design.strut?.length ?? 0;
    return (part === 'wing' ? craft.wing : craft.stabilizer)?.unrolledLength ?? 0;
  }

  private flowAt(part: FoilPart, depth: number, foot: number | null): Water {
    const { strut, brief } = this.design;
    const { clarity } = brief.water;
    const isStirred = part === 'strut' && strut && depth < turbulentLength(strut, foot);
    return isStirred ? { clarity, ...TRIPPED } : { clarity };
  }

  private flownAt(state: RunningState, part: FoilPart, eta: number): Flown {
    const { craft, eta: places } = this.runner.rigFor(state.depth);
    const wing = craft.parts.wing.count;
    const [from, to] = part === 'wing' ? [0, wing] : [wing, places.length];
    let k = from;
    while (k < to - 1 && places[k + 1]! < eta) k++;
    if (eta <= places[from]!) k = from;
    const next = eta <= places[from]! ? k : Math.min(k + 1, to - 1);
    const at = (strip: number): StripPlace => ({ eta: places[strip]!, cl: state.stripCl[strip]! });
    const strips: Flown['strips'] = [at(k), at(next)];
    if (next === k) return { cl: state.stripCl[k]!, strips };
    const share = Math.min(1, (eta - places[k]!) / (places[next]! - places[k]!));
    return { cl: strips[0].cl + share * (strips[1].cl - strips[0].cl), strips };
  }
}

/** The section at eta: the outline of the document, or points between root and tip. */
function shapeAt(design: Design, part: FoilPart, eta: number): SectionShape {
  if (part === 'strut') return strutOutline(design.strut!);
  const { root, tip } = design[part]!.section;
  const isOne = eta === 0 || JSON.stringify(root) === JSON.stringify(tip);
  return isOne ? root : blendOutlines(root, tip, eta, POINTS);
}

/** A shape as an outline, to be measured. */
export function outlineOf(shape: SectionShape): Outline {
  if ('kind' in shape) return shape;
  const points = Array.from(shape.x, (x, k): Pair => [x, shape.y[k]!]);
  return { kind: 'coordinates', name: 'between root and tip', points };
}

/** The flow at a lift coefficient: its angle (rad) and its state. */
export interface LiftingState {
  alpha: number;
  state: SectionState;
}

const CLOSE = 5e-4; // of lift coefficient
const TRIES = 8;
const STEEPEST = 0.28; // rad from zero lift: no section here lifts so far without stalling
const LEAST_SLOPE = 0.1; // of the inviscid one: less is stall

/**
 * The flow round a section at a lift coefficient, found from the inviscid angle by secants; null where it does not settle
 * or does not lift so much.
 */
export function stateAtLift(
  shape: SectionShape,
  cl: number,
  reynolds: number,
  water: Water,
): LiftingState | null {
  const line = liftLine(sectionFlow(shape).flow);
  if (Math.abs(cl / line.slope) > STEEPEST) return null;
  let slope = 0.95 * line.slope;
  let alpha = line.zeroLift + Math.asin(cl / line.slope);
  let before: { alpha: number; cl: number } | null = null;
  for (let k = 0; k < TRIES; k++) {
    const state = sectionState(shape, { ...water, reynolds, alpha });
    if (!state) return null;
    const found = state.figures.cl;
    if (Math.abs(cl - found) < CLOSE) return { alpha, state };
    if (before && Math.abs(alpha - before.alpha) > 1e-7) slope = (found - before.cl) / (alpha - before.alpha);
    if (!(slope > LEAST_SLOPE * line.slope)) return null;
    before = { alpha, cl: found };
    alpha += (cl - found) / Math.min(slope, 1.5 * line.slope);
  }
  return null;
}
