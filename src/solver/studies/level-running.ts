/**
 * Level running at a speed: lift carries the weight less the rig's pull, and the moments about the balance point vanish
 * with every drag at its own height and the drive at its. Either the stance is kept and the stabilizer's incidence
 * found, or the incidence is kept and the stance found. SI; angles in radians, incidence in degrees.
 */
import type { Stream } from '../forces/drag-sources.ts';
import type { ProfileModel } from '../forces/profile.ts';
import type { DragSources } from '../report.ts';
import { type Attitude, type DragState, levelDrag } from './level-drag.ts';
import { camberMoment } from './pitch.ts';
import type { Rig } from './rig.ts';

const DEGREES = 180 / Math.PI;

export type Fix = 'stance' | 'incidence';

export interface RunningState {
  speed: number; // m/s
  depth: number | null; // m
  alpha: number; // rad
  incidence: number; // degrees, of the stabilizer
  stance: number; // m, balance point aft of the origin
  lift: { total: number; wing: number; stabilizer: number }; // N across the stream
  liftCoefficients: { wing: number; stabilizer: number | null }; // each on its own projected area
  drag: DragSources;
  totalDrag: number; // N
  dragMoment: number; // N m, nose up, of the drags and the drive about the balance point
  stallMargin: number; // least (clMax - cl) over the wing's strips; infinite where the profile model knows no clMax
  stallStrip: number; // index of that strip
  stripMargin: Float64Array; // clMax - cl of every wing strip
  stabilizerMargin: number; // least clMax - |cl| of the stabilizer; infinite without one
  stripCl: Float64Array; // wing then stabilizer
  residual: { lift: number; pitch: number }; // of weight, and of weight times mean chord
}

/**
 * The running state at a speed carrying `weight` (N). Throws an Error with one sentence when nothing carries it or no
 * incidence within 30 degrees trims it.
 */
export function runLevel(
  rig: Rig,
  stream: Stream,
  weight: number,
  fix: Fix,
  profile: ProfileModel,
): RunningState {
  const { design, craft } = rig;
  const { balance } = design.brief;
  const pressure = stream.density * stream.speed ** 2;
  const keepsStance = fix === 'stance' && craft.stabilizer !== null;
  const state = { alpha: 0, turn: 0, stance: balance.x };
  const dragOf = levelDrag(rig, stream, profile);
  let drag = dragOf(state);
  for (let round = 0; round < 40; round++) {
    const before = { ...state };
    if (keepsStance) trimByIncidence(rig, state, weight, drag.moment, pressure);
    else trimByStance(rig, state, weight, drag.moment, pressure);
    drag = dragOf(state);
    const moved = Math.abs(state.alpha - before.alpha) + Math.abs(state.turn - before.turn);
    if (moved + Math.abs(state.stance - before.stance) < 1e-11) break;
  }
  return describe(rig, stream, weight, state, drag, pressure);
}

interface Trim extends Attitude {
  stance: number;
}

/** Lift (N) and nose-up moment (N m) about the balance point of the vortex forces, their drag taken out. */
function vortexBalance(rig: Rig, state: Trim, pressure: number) {
  const [wing, stabilizer] = rig.loads.at(state.alpha, state.turn);
  const c = Math.cos(state.alpha);
  const s = Math.sin(state.alpha);
  const x = wing.x + stabilizer.x;
  const z = wing.z + stabilizer.z;
  const { height } = rig.design.brief.balance;
  // The near-field drag is replaced by the far-field one, strip by strip, so it must not count twice.
  const nearWing = wing.x * c + wing.z * s;
  const nearStabilizer = stabilizer.x * c + stabilizer.z * s;
  const aloft = nearWing * (0 - height) + nearStabilizer * ((rig.craft.stabilizer?.height ?? 0) - height);
  const moment =
    wing.pitch + stabilizer.pitch - height * x + state.stance * z - aloft * c + camberMoment(rig.craft);
  return {
    lift: (z * c - x * s) * pressure,
    wingLift: (wing.z * c - wing.x * s) * pressure,
    moment: moment * pressure,
    vertical: z * pressure,
  };
}

function trimByIncidence(rig: Rig, state: Trim, weight: number, dragMoment: number, pressure: number): void {
  const step = 1e-5;
  for (let i = 0; i < 40; i++) {
    const here = vortexBalance(rig, state, pressure);
    const miss = { lift: weight - here.lift, moment: -dragMoment - here.moment };
    const byAlpha = vortexBalance(rig, { ...state, alpha: state.alpha + step }, pressure);
    const byTurn = vortexBalance(rig, { ...state, turn: state.turn + step }, pressure);
    const a = (byAlpha.lift - here.lift) / step;
    const b = (byTurn.lift - here.lift) / step;
    const c = (byAlpha.moment - here.moment) / step;
    const d = (byTurn.moment - here.moment) / step;
    const determinant = a * d - b * c;
    const alphaStep = (miss.lift * d - b * miss.moment) / determinant;
    const turnStep = (a * miss.moment - c * miss.lift) / determinant;
    state.alpha += alphaStep;
    state.turn += turnStep;
    if (!(Math.abs(state.turn) < Math.PI / 6))
      throw new Error('no stabilizer incidence within 30 degrees balances this stance at this speed');
    checkAngle(state.alpha);
    if (Math.abs(alphaStep) + Math.abs(turnStep) < 1e-13) return;
  }
}

function trimByStance(rig: Rig, state: Trim, weight: number, dragMoment: number, pressure: number): void {
  const step = 1e-5;
  for (let i = 0; i < 40; i++) {
    const here = vortexBalance(rig, state, pressure);
    const ahead = vortexBalance(rig, { ...state, alpha: state.alpha + step }, pressure);
    const alphaStep = ((weight - here.lift) * step) / (ahead.lift - here.lift);
    state.alpha += alphaStep;
    checkAngle(state.alpha);
    if (Math.abs(alphaStep) < 1e-13) break;
  }
  const here = vortexBalance(rig, state, pressure);
  state.stance -= (here.moment + dragMoment) / here.vertical;
}

function checkAngle(alpha: number): void {
  if (!(Math.abs(alpha) < Math.PI / 4))
    throw new Error('no angle between -45 and 45 degrees carries this weight at this speed');
}

function describe(
  rig: Rig,
  stream: Stream,
  weight: number,
  state: Trim,
  drag: DragState,
  pressure: number,
): RunningState {
  const { craft, design } = rig;
  const balance = vortexBalance(rig, state, pressure);
  const q = pressure / 2;
  const stabilizerLift = balance.lift - balance.wingLift;
  return {
    speed: stream.speed,
    depth: craft.depth,
    alpha: state.alpha,
    incidence: (design.stabilizer?.incidence ?? 0) + state.turn * DEGREES,
    stance: state.stance,
    lift: { total: balance.lift, wing: balance.wingLift, stabilizer: stabilizerLift },
    liftCoefficients: {
      wing: balance.wingLift / (q * craft.wing.projectedArea),
      stabilizer: craft.stabilizer ? stabilizerLift / (q * craft.stabilizer.projectedArea) : null,
    },
    drag: drag.sources,
    totalDrag: drag.total,
    dragMoment: drag.moment,
    stallMargin: drag.stallMargin,
    stallStrip: drag.stallStrip,
    stripMargin: drag.stripMargin,
    stabilizerMargin: drag.stabilizerMargin,
    stripCl: drag.stripCl,
    residual: {
      lift: (balance.lift - weight) / weight,
      pitch: (balance.moment + drag.moment) / (weight * craft.wing.meanChord),
    },
  };
}
