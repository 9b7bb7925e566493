/**
 * One lifting surface as drawn: its quarter-chord line in space and the measures that follow from it.
 *
 * The line runs from root (eta 0) to tip (eta 1) of the starboard half; eta is the fraction of the unrolled half
 * length h. With Gamma the local slope, negative downward: dy/ds = cos Gamma, dz/ds = sin Gamma, s = h eta.
 * Lengths in m, areas in m2, angles in radians; x aft, y starboard, z up from the origin.
 */
import type { Planform } from '../design/document.ts';
import { chordLaw, droopLaw, type Law, type OpenDroop, sweepLaw, twistLaw } from '../design/laws.ts';
import { findRoot } from '../numeric/roots.ts';
import { eachToTip, integrate, type Line, type Point, panelEdges, traceLine } from './line.ts';
import { type SectionLift, thinLift } from './thin.ts';

export interface Surface {
  readonly halfLength: number; // m, unrolled, root to tip
  readonly halfSpan: number; // m, y of the tip
  readonly tipAngle: number; // rad, droop at the tip, positive down
  readonly amplitude: number; // rad, what the droop law calls its tip angle (the largest droop where the tip has none)
  readonly arm: number; // m, x of the root quarter chord
  readonly height: number; // m, z of the root quarter chord
  chord(eta: number): number;
  x(eta: number): number; // m, quarter-chord line
  droop(eta: number): number; // rad, positive down
  twist(eta: number): number; // rad, nose up, without incidence
  setting(eta: number): number; // rad, of the section's chord line to the x axis, nose up: incidence and twist
  readonly lift: SectionLift;
  point(eta: number): Point; // quarter-chord line; a new object each call
  readonly projectedArea: number; // m2, both halves, integral of c dy
  readonly unrolledArea: number; // m2, both halves, integral of c ds
  readonly span: number; // m, tip to tip
  readonly unrolledLength: number; // m, both halves
  readonly aspectRatio: number; // span^2 / projectedArea
  readonly meanChord: number; // m, (1/S) integral of c^2 dy
  readonly tipDrop: number; // m, root to tip, positive down
  readonly effectiveDroop: number; // rad, integral(-Gamma c y ds)/integral(c y ds)
  readonly sidewaysShare: number; // integral(sin^2 Gamma c ds)/integral(c ds)
  /** Nose-up moment of the sections' camber about their quarter chords, over dynamic pressure: integral of cm c^2 dy, m3. */
  camberMoment(): number;
}

/** A length, droop or chord that no surface can have. `key` is the path inside the planform. */
export class GeometryError extends Error {
  constructor(
    readonly key: string,
    readonly found: string,
    readonly allowed: string,
  ) {
    super(`${key}: found ${found}, allowed ${allowed}`);
  }
}

const RIGHT_ANGLE = Math.PI / 2;
const WRITTEN = 1e-7; // m: a length is written no finer, so the furthest drop may stand that much too far
const LEAST_SPREAD = 0.02; // tip-to-tip over unrolled length below which the wing is a folded blade

/**
 * The surface a planform draws, its root quarter chord at `place` (the wing's is the origin). `lift`: how its sections
 * lift; left out, as thin-airfoil theory says.
 * Throws GeometryError when the length or tip drop cannot be reached, or the wing has no area.
 */
export function surfaceOf(
  planform: Planform,
  place: { arm: number; height: number } = { arm: 0, height: 0 },
  lift: SectionLift = thinLift(planform.section),
): Surface {
  const chord = chordLaw(planform.chord);
  const open = droopLaw(planform.droop);
  const panels = panelEdges([...open.knots, ...chord.knots]);
  const { tip, halfLength } = fitDroop(planform, open, panels);
  const droop = (eta: number) => open.at(eta, tip);
  const line = traceLine(droop, halfLength, panels);
  return describe(planform, place, lift, chord, droop, line, halfLength, tip, open.knots, panels);
}

/** Tip drop (m, positive down) of the surface that a planform draws, without the rest of it: what a drag searches for. */
export function tipDropOf(planform: Planform): number {
  const open = droopLaw(planform.droop);
  const panels = panelEdges(open.knots);
  const { tip, halfLength } = fitDroop(planform, open, panels);
  return halfLength * integrate((eta) => Math.sin(open.at(eta, tip)), panels);
}

function describe(
  planform: Planform,
  place: { arm: number; height: number },
  lift: SectionLift,
  chord: Law,
  droop: (eta: number) => number,
  line: Line,
  halfLength: number,
  tip: number,
  droopKnots: readonly number[],
  panels: Float64Array,
): Surface {
  const sweep = sweepLaw(planform.sweep, halfLength);
  const twist = twistLaw(planform.twist);
  const incidence = (planform.incidence * Math.PI) / 180;
  const tipPoint = { y: 0, z: 0 };
  line.locate(1, tipPoint);
  for (const eta of panels)
    if (Math.abs(droop(eta)) > RIGHT_ANGLE + 1e-9)
      throw new GeometryError(
        'droop',
        `${((droop(eta) * 180) / Math.PI).toFixed(1)} degrees at eta ${eta.toFixed(2)}`,
        '-90 to 90 degrees',
      );
  const sums = sumUp(chord.at, droop, line, panels);
  if (!(sums.projected > 0))
    throw new GeometryError('chord', 'a wing without area', 'a chord above 0 inside the span');
  const projectedArea = 2 * halfLength * sums.projected;
  return {
    halfLength,
    halfSpan: tipPoint.y,
    tipAngle: droop(1),
    amplitude: tip !== 0 ? tip : extremeDroop(droop, droopKnots),
    arm: place.arm,
    height: place.height,
    chord: chord.at,
    x: (eta) => place.arm + sweep.at(eta),
    droop,
    twist: twist.at,
    setting: (eta) => incidence + twist.at(eta),
    lift,
    point(eta) {
      const at = { y: 0, z: 0 };
      line.locate(eta, at);
      at.z += place.height;
      return at;
    },
    projectedArea,
    unrolledArea: 2 * halfLength * sums.unrolled,
    span: 2 * tipPoint.y,
    unrolledLength: 2 * halfLength,
    aspectRatio: (4 * tipPoint.y * tipPoint.y) / projectedArea,
    meanChord: (2 * halfLength * sums.chordSquared) / projectedArea,
    tipDrop: -tipPoint.z,
    effectiveDroop: sums.droopMoment / sums.moment,
    sidewaysShare: sums.sideways / sums.unrolled,
    camberMoment: () => 2 * halfLength * camberOf(chord.at, droop, lift, panels),
  };
}

/**
 * Tip angle and half length that meet the document's length and its tip angle or tip drop.
 * The mean cosine and mean sine of the droop are all that either needs.
 */
function fitDroop(
  planform: Planform,
  open: OpenDroop,
  panels: Float64Array,
): { tip: number; halfLength: number } {
  const { kind, value } = planform.length;
  const mean = (tip: number, f: (angle: number) => number) =>
    integrate((eta) => f(open.at(eta, tip)), panels);
  const halfLengthFor = (tip: number) => {
    if (kind === 'unrolled') return value / 2;
    const spread = mean(tip, Math.cos);
    return spread > LEAST_SPREAD ? value / 2 / spread : Number.POSITIVE_INFINITY;
  };
  let tip = open.tipAngle;
  if (tip === null) {
    const asked = open.tipDrop ?? 0;
    const limit = kind === 'unrolled' ? RIGHT_ANGLE : 0.95 * RIGHT_ANGLE;
    const drop = (angle: number) => halfLengthFor(angle) * mean(angle, Math.sin);
    const least = drop(-limit);
    const most = drop(limit);
    const reached = Math.min(most, Math.max(least, asked));
    const wanted = Math.abs(asked - reached) <= WRITTEN ? reached : asked;
    tip = findRoot((angle) => drop(angle) - wanted, -limit, limit, 1e-13, least - wanted, most - wanted);
    if (tip === null) {
      const from = Math.ceil((least - WRITTEN) * 1000) / 1000;
      const to = Math.floor((most + WRITTEN) * 1000) / 1000;
      const allowed = `${from.toFixed(3)} to ${to.toFixed(3)} m with this length`;
      throw new GeometryError('droop.tipDrop', `${asked} m`, allowed);
    }
  }
  const halfLength = halfLengthFor(tip);
  if (!Number.isFinite(halfLength))
    throw new GeometryError(
      'droop',
      'a wing folded straight up or down, so that no tip-to-tip length is left',
      'less droop, or an unrolled length',
    );
  return { tip, halfLength };
}

/** Integrals over eta of one half, per unit half length. */
function sumUp(
  chord: (eta: number) => number,
  droop: (eta: number) => number,
  line: Line,
  panels: Float64Array,
) {
  let projected = 0;
  let unrolled = 0;
  let chordSquared = 0;
  let moment = 0;
  let droopMoment = 0;
  let sideways = 0;
  const at = { y: 0, z: 0 };
  eachToTip(panels, (eta, weight) => {
    const c = chord(eta);
    const area = weight * c;
    const angle = droop(eta);
    const cosine = Math.cos(angle);
    line.locate(eta, at);
    projected += area * cosine;
    unrolled += area;
    chordSquared += area * c * cosine;
    moment += area * at.y;
    droopMoment += area * at.y * angle;
    sideways += area * Math.sin(angle) ** 2;
  });
  return { projected, unrolled, chordSquared, moment, droopMoment, sideways };
}

/** Integral of cm c^2 cos Gamma over eta of one half. */
function camberOf(
  chord: (eta: number) => number,
  droop: (eta: number) => number,
  lift: SectionLift,
  panels: Float64Array,
): number {
  let camber = 0;
  eachToTip(panels, (eta, weight) => {
    const c = chord(eta);
    camber += weight * lift(eta, c).moment * c * c * Math.cos(droop(eta));
  });
  return camber;
}

function extremeDroop(droop: (eta: number) => number, knots: readonly number[]): number {
  let extreme = 0;
  for (let k = 0; k <= 200; k++) {
    const angle = droop(k / 200);
    if (Math.abs(angle) > Math.abs(extreme)) extreme = angle;
  }
  for (const knot of knots) if (Math.abs(droop(knot)) > Math.abs(extreme)) extreme = droop(knot);
  return extreme;
}

/**
 * eta at which the line reaches y: 0 before the root, 1 beyond the tip. By Newton, as y grows with cos Gamma; halved where
 * that leads out of what is left, as it does beside a tip that stands upright.
 */
export function etaAtY(surface: Surface, y: number): number {
  if (y <= 0) return 0;
  if (y >= surface.halfSpan) return 1;
  let [low, high] = [0, 1];
  let eta = y / surface.halfSpan;
  while (high - low > 1e-13) {
    const excess = surface.point(eta).y - y;
    if (excess > 0) high = eta;
    else low = eta;
    const next = eta - excess / (surface.halfLength * Math.cos(surface.droop(eta)));
    if (Math.abs(next - eta) < 1e-13) return next;
    eta = next > low && next < high ? next : 0.5 * (low + high);
  }
  return eta;
}
