/**
 * Drag by source of a foil at an attitude, each with the height it acts at: what pitch balance and power need. SI; the
 * correlations are named in forces/drag-sources.ts and forces/wave-drag.ts.
 */
import type { Strut } from '../design/document.ts';
import {
  fuselageDrag,
  junctionDrag,
  type Stream,
  sprayDrag,
  strutFrictionDrag,
} from '../forces/drag-sources.ts';
import { type ProfileModel, turbulentLength } from '../forces/profile.ts';
import { imageDifference, waveForm } from '../forces/wave-drag.ts';
import { thicknessRatio } from '../geometry/outline.ts';
import { dot } from '../numeric/dense.ts';
import type { DragSources } from '../report.ts';
import { fuselageLength, type Rig } from './rig.ts';

/** Drags and their moment about the height of the balance point (N m, nose up positive). */
export interface DragState {
  sources: DragSources;
  total: number;
  moment: number;
  stallMargin: number;
  stallStrip: number;
  stripMargin: Float64Array; // clMax - cl of every wing strip
  stabilizerMargin: number; // least clMax - |cl| of the stabilizer, pulling up or down alike; infinite without one
  stripCl: Float64Array;
}

/** Attitude of a foil in level running. */
export interface Attitude {
  alpha: number; // rad
  turn: number; // rad, of the stabilizer from its drawn incidence
}

/** Drag at any attitude of a stream; what does not change with the attitude is worked out once. */
export function levelDrag(
  rig: Rig,
  stream: Stream,
  profile: ProfileModel,
): (attitude: Attitude) => DragState {
  const { depth } = rig.craft;
  const { height } = rig.design.brief.balance;
  const drivenAt = rig.design.brief.driveHeight ?? height;
  const standing = standingDrag(rig, stream, profile);
  const pressure = stream.density * stream.speed ** 2;
  const form = depth === null ? null : waveForm(rig.flow.system, rig.loads.causes, depth, stream.speed);
  return ({ alpha, turn }) => {
    const circulation = rig.flow.stripCirculation;
    rig.loads.circulation(alpha, turn, circulation);
    const { sources: lifting, moment, ...stall } = liftingDrag(rig, stream, circulation, profile);
    const wave = form
      ? pressure * (imageDifference(rig.wakes, circulation) + rig.loads.quadratic(form, alpha, turn))
      : 0;
    const sources: DragSources = { ...lifting, ...standing.sources, wave };
    const total = Object.values(sources).reduce((sum, value) => sum + value, 0);
    const heights = moment + standing.moment; // sum of drag times z
    return { sources, total, moment: heights - drivenAt * total, ...stall };
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
  const stripMargin = new Float64Array(wing);
  let moment = 0;
  let stallMargin = Number.POSITIVE_INFINITY;
  let stallStrip = 0;
  let stabilizerMargin = Number.POSITIVE_INFINITY;
  for (let i = 0; i < n; i++) {
    const part = i < wing ? 'wing' : 'stabilizer';
    const induced = -2 * q * circulation[i]! * dot(wakes.free, i * n, circulation, 0, n);
    const cl = (2 * circulation[i]!) / chord[i]!;
    stripCl[i] = cl;
    const reynolds = (stream.speed * chord[i]!) / stream.viscosity;
    const friction = 2 * q * area[i]! * profile.cd(part, eta[i]!, cl, reynolds);
    const clMax = profile.clMax(part, eta[i]!, reynolds);
    if (part === 'wing') {
      sources.wingInduced += induced;
      sources.wingProfile += friction;
      const margin = clMax - cl;
      stripMargin[i] = margin;
      if (margin < stallMargin) {
        stallMargin = margin;
        stallStrip = i;
      }
    } else {
      sources.stabilizerInduced += induced;
      sources.stabilizerProfile += friction;
      stabilizerMargin = Math.min(stabilizerMargin, clMax - Math.abs(cl));
    }
    moment += (induced + friction) * height[i]!;
  }
  return { sources, moment, stallMargin, stallStrip, stripMargin, stabilizerMargin, stripCl };
}

/** Strut, fuselage, junctions and spray, and the sum of drag times height. */
function standingDrag({ craft, design }: Rig, stream: Stream, profile: ProfileModel) {
  const { strut, fuselage, wing, stabilizer } = design;
  const wetted = strut ? (craft.depth ?? strut.length) : 0;
  const ofStrut = strut ? strutDrag(strut, craft.depth, stream, profile) : { drag: 0, moment: 0 };
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
      strutProfile: ofStrut.drag,
      fuselage: fuselage ? fuselageDrag(fuselage, fuselageLength(design, craft), stream) : 0,
      junctions: atFoot + atWing + atStabilizer,
      spray,
    },
    moment: ofStrut.moment + spray * wetted + atStabilizer * (stabilizer?.height ?? 0),
  };
}

/** Profile drag (N) of the strut and the sum of it times height (N m); its upper part may be kept turbulent. */
function strutDrag(strut: Strut, depth: number | null, stream: Stream, profile: ProfileModel) {
  const wetted = depth ?? strut.length;
  const upper = turbulentLength(strut, depth);
  const reynolds = (stream.speed * strut.chord) / stream.viscosity;
  const cd = profile.strutCd(reynolds, 'natural');
  const stirred = upper > 0 ? profile.strutCd(reynolds, 'turbulent') : 0;
  if (cd === null || stirred === null) {
    const drag = strutFrictionDrag(strut, wetted, stream);
    return { drag, moment: 0.5 * wetted * drag };
  }
  const perLength = 0.5 * stream.density * stream.speed ** 2 * strut.chord;
  const below = perLength * cd * (wetted - upper);
  const above = perLength * stirred * upper;
  return {
    drag: below + above,
    moment: 0.5 * (wetted - upper) * below + (wetted - 0.5 * upper) * above,
  };
}
