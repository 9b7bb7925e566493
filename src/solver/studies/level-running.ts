/**
 * Level running at a speed: lift carries the weight less the rig's pull, and the moments about the balance point vanish
 * with every drag at its own height and the drive at its. Either the stance is kept and the stabilizer's incidence
 * found, or the incidence is kept and the stance found. SI; angles in radians, incidence in degrees.
 */
import type { Design } from '../design/document.ts';
import {
  fuselageDrag,
  junctionDrag,
  type Stream,
  sprayDrag,
  strutFrictionDrag,
} from '../forces/drag-sources.ts';
import { type PitchLoads, pitchLoads } from '../forces/pitch-loads.ts';
import type { ProfileModel, ProfilePoint } from '../forces/profile.ts';
import { waveDrag } from '../forces/wave-drag.ts';
import { type Craft, craftOf, type Resolution } from '../geometry/craft.ts';
import { thicknessRatio } from '../geometry/outline.ts';
import type { Strips } from '../geometry/strips.ts';
import type { Flow, FlowPool } from '../vortex/flow.ts';
import { camberMoment } from './pitch.ts';

/** Drag by source, N. Interference of the two induced drags is counted once: each row of the wake sum has one owner. */
export interface DragSources {
  wingInduced: number;
  stabilizerInduced: number;
  wingProfile: number;
  stabilizerProfile: number;
  strutProfile: number;
  fuselage: number;
  junctions: number;
  spray: number;
  wave: number;
}

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
  stallMargin: number; // least (clMax - cl) over the wing's strips; infinite where the profile model knows no clMax
  stallStrip: number; // index of that strip
  stripCl: Float64Array; // wing then stabilizer
  residual: { lift: number; pitch: number }; // of weight, and of weight times mean chord
}

/** A foil at one depth with all that running states of any speed share. */
export interface Rig {
  design: Design;
  craft: Craft;
  flow: Flow;
  loads: PitchLoads;
  wakes: { free: Float64Array; lid: Float64Array };
  chord: Float64Array; // per strip, wing then stabilizer
  area: Float64Array; // chord times unrolled width, one half
  height: Float64Array; // z
  eta: Float64Array;
}

const DEGREES = 180 / Math.PI;

/** Solves the flow at a depth. The rig is good until the pool solves the role 'running' again. */
export function rigAt(pool: FlowPool, design: Design, depth: number | null, resolution: Resolution): Rig {
  const craft = craftOf(design, depth, resolution);
  return rigOf(design, craft, pool.solve('running', craft, 'pitch'));
}

/** The rig of a flow already solved with scope 'pitch' or 'whole'. */
export function rigOf(design: Design, craft: Craft, flow: Flow): Rig {
  const { depth } = craft;
  const free = flow.system.fillWake().slice();
  const lid = depth === null ? free : flow.system.fillWake(-1).slice();
  const parts = [craft.parts.wing, ...(craft.parts.stabilizer ? [craft.parts.stabilizer] : [])];
  const join = (pick: (strips: Strips, k: number) => number) =>
    Float64Array.from(parts.flatMap((strips) => Array.from(strips.eta, (_, k) => pick(strips, k))));
  return {
    design,
    craft,
    flow,
    loads: pitchLoads(flow),
    wakes: { free, lid },
    chord: join((strips, k) => strips.chord[k]!),
    area: join((strips, k) => strips.chord[k]! * strips.width[k]!),
    height: join((strips, k) => strips.controlZ[k]!),
    eta: join((strips, k) => strips.eta[k]!),
  };
}

/** Drags and their moment about the height of the balance point (N m, nose up positive). */
interface DragState {
  sources: DragSources;
  total: number;
  moment: number;
  stallMargin: number;
  stallStrip: number;
  stripCl: Float64Array;
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
  let drag = dragAt(rig, stream, state, profile);
  for (let round = 0; round < 40; round++) {
    const before = { ...state };
    if (keepsStance) trimByIncidence(rig, state, weight, drag.moment, pressure);
    else trimByStance(rig, state, weight, drag.moment, pressure);
    drag = dragAt(rig, stream, state, profile);
    const moved = Math.abs(state.alpha - before.alpha) + Math.abs(state.turn - before.turn);
    if (moved + Math.abs(state.stance - before.stance) < 1e-11) break;
  }
  return describe(rig, stream, weight, state, drag, pressure);
}

interface Attitude {
  alpha: number;
  turn: number;
  stance: number;
}

/** Lift (N) and nose-up moment (N m) about the balance point of the vortex forces, their drag taken out. */
function vortexBalance(rig: Rig, state: Attitude, pressure: number) {
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

function trimByIncidence(
  rig: Rig,
  state: Attitude,
  weight: number,
  dragMoment: number,
  pressure: number,
): void {
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

function trimByStance(rig: Rig, state: Attitude, weight: number, dragMoment: number, pressure: number): void {
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

function dragAt(rig: Rig, stream: Stream, state: Attitude, profile: ProfileModel): DragState {
  const { craft, flow, design } = rig;
  const circulation = flow.stripCirculation;
  rig.loads.circulation(state.alpha, state.turn, circulation);
  const { depth } = craft;
  const pressure = stream.density * stream.speed ** 2;
  const lifting = liftingDrag(rig, stream, circulation, profile);
  const wave =
    depth === null ? 0 : pressure * waveDrag(flow.system, rig.wakes, circulation, depth, stream.speed);
  const standing = standingDrag(rig, stream, profile);
  const sources: DragSources = { ...lifting.sources, ...standing.sources, wave };
  const total = Object.values(sources).reduce((sum, value) => sum + value, 0);
  const { height } = design.brief.balance;
  const drive = design.brief.driveHeight === null ? 0 : total * (design.brief.driveHeight - height);
  const heights = lifting.moment + standing.moment; // sum of drag times z
  return {
    sources,
    total,
    moment: heights - height * total - drive,
    stallMargin: lifting.stallMargin,
    stallStrip: lifting.stallStrip,
    stripCl: lifting.stripCl,
  };
}

/** Induced and profile drag strip by strip (both halves), and the sum of drag times height. */
function liftingDrag(rig: Rig, stream: Stream, circulation: Float64Array, profile: ProfileModel) {
  const { wakes, chord, area, height, eta, craft } = rig;
  const n = circulation.length;
  const wing = craft.parts.wing.count;
  const q = 0.5 * stream.density * stream.speed ** 2;
  const sources = { wingInduced: 0, stabilizerInduced: 0, wingProfile: 0, stabilizerProfile: 0 };
  const stripCl = new Float64Array(n);
  const point: ProfilePoint = { cd: 0, clMax: Number.POSITIVE_INFINITY };
  let moment = 0;
  let stallMargin = Number.POSITIVE_INFINITY;
  let stallStrip = 0;
  for (let i = 0; i < n; i++) {
    const onWing = i < wing;
    let flow = 0;
    for (let j = 0; j < n; j++) flow += wakes.free[i * n + j]! * circulation[j]!;
    const induced = -2 * q * circulation[i]! * flow;
    const cl = (2 * circulation[i]!) / chord[i]!;
    stripCl[i] = cl;
    const reynolds = (stream.speed * chord[i]!) / stream.viscosity;
    profile.surface(onWing ? 'wing' : 'stabilizer', eta[i]!, cl, reynolds, point);
    const friction = 2 * q * area[i]! * point.cd;
    if (onWing) {
      sources.wingInduced += induced;
      sources.wingProfile += friction;
      if (point.clMax - cl < stallMargin) {
        stallMargin = point.clMax - cl;
        stallStrip = i;
      }
    } else {
      sources.stabilizerInduced += induced;
      sources.stabilizerProfile += friction;
    }
    moment += (induced + friction) * height[i]!;
  }
  return { sources, moment, stallMargin, stallStrip, stripCl };
}

/** Strut, fuselage, junctions and spray, and the sum of drag times height. */
function standingDrag({ craft, design }: Rig, stream: Stream, profile: ProfileModel) {
  const { strut, fuselage, wing, stabilizer } = design;
  const q = 0.5 * stream.density * stream.speed ** 2;
  const wetted = strut ? (craft.depth ?? strut.length) : 0;
  const cd = strut ? profile.strutCd((stream.speed * strut.chord) / stream.viscosity) : null;
  const strutProfile = !strut
    ? 0
    : cd === null
      ? strutFrictionDrag(strut, wetted, stream)
      : cd * strut.chord * wetted * q;
  const spray = strut && craft.depth !== null ? sprayDrag(strut.thickness, stream) : 0;
  // The wing and the stabilizer meet the fuselage on both sides, the strut once.
  const rootOf = (chord: number, thickness: number) => 2 * junctionDrag(thickness * chord, chord, stream);
  const atFoot = strut ? junctionDrag(strut.thickness, strut.chord, stream) : 0;
  const atWing = fuselage ? rootOf(craft.wing.chord(0), thicknessRatio(wing.section.root)) : 0;
  const atStabilizer =
    fuselage && stabilizer && craft.stabilizer
      ? rootOf(craft.stabilizer.chord(0), thicknessRatio(stabilizer.section.root))
      : 0;
  return {
    sources: {
      strutProfile,
      fuselage: fuselage ? fuselageDrag(fuselage, fuselageLength(design, craft), stream) : 0,
      junctions: atFoot + atWing + atStabilizer,
      spray,
    },
    moment: strutProfile * 0.5 * wetted + spray * wetted + atStabilizer * (stabilizer?.height ?? 0),
  };
}

/** Nose to the stabilizer's trailing edge, or to the wing's or the strut's where there is none (common practice). */
export function fuselageLength({ fuselage, strut }: Design, { wing, stabilizer }: Craft): number {
  const aft = stabilizer
    ? stabilizer.arm + 0.75 * stabilizer.chord(0)
    : Math.max(0.75 * wing.chord(0), strut ? (strut.x ?? 0) + 0.75 * strut.chord : 0);
  return (fuselage?.nose ?? 0) + aft;
}

function describe(
  rig: Rig,
  stream: Stream,
  weight: number,
  state: Attitude,
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
    stallMargin: drag.stallMargin,
    stallStrip: drag.stallStrip,
    stripCl: drag.stripCl,
    residual: {
      lift: (balance.lift - weight) / weight,
      pitch: (balance.moment + drag.moment) / (weight * craft.wing.meanChord),
    },
  };
}
