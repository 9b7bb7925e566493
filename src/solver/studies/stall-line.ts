/**
 * A lifting line that follows its sections beyond the straight part of their lift curves. Each strip is turned by an
 * angle of its own, found together for all strips, so that the lift the line gives it is the lift its section gives at
 * the angle the strip then meets.
 *
 * With cl the strip's lift coefficient on the line, a0 and zero the slope and zero-lift angle the line was drawn with,
 * and d the turn, the section meets zero + asin(cl/a0) - d. Newton's method in the turns of all strips at once; the
 * idea of turning strips is decambering, R. Mukherjee and A. Gopalarathnam, J. Aircraft 43 (2006) 660 (from memory).
 * One chordwise row; angles in radians; circulations of a stream of speed 1.
 */
import { type AlphaLoads, alphaLoads, liftOf, loadsAt, mixAlpha } from '../forces/loads.ts';
import type { Craft } from '../geometry/craft.ts';
import { factor, solveFactored } from '../numeric/dense.ts';
import type { Flow } from '../vortex/flow.ts';

/** What the sections of one surface give, by eta and chord Reynolds number. */
export interface SectionCurves {
  lift(eta: number, alpha: number, reynolds: number): number;
  limit(eta: number, reynolds: number): number;
  stallAngle(eta: number, reynolds: number): number;
}

export interface SettledLine {
  isSettled: boolean;
  lift: { total: number; wing: number }; // across the stream per rho V^2, m2
  cl: Float64Array; // per strip, wing then stabilizer
  isStalled: boolean[]; // its section meets an angle beyond that of its greatest lift
}

const CLOSE = 1e-4; // of a lift coefficient
const MOST_STEPS = 40;
const LARGEST_TURN = (1.5 * Math.PI) / 180; // of a strip in one step
const NUDGE = 1e-3; // rad, for the slope of a section's lift curve

export class StallLine {
  readonly count: number;
  readonly wing: number; // strips of it
  readonly reynolds: Float64Array;
  private readonly loads: AlphaLoads;
  private readonly response: Float64Array; // circulation of strip i (row) by the turn of strip j's normal
  private readonly turn: Float64Array;
  private readonly chord: Float64Array;
  private readonly eta: Float64Array;
  private readonly slope: Float64Array;
  private readonly zeroLift: Float64Array;

  constructor(
    readonly craft: Craft,
    private readonly flow: Flow,
    private readonly curves: ReadonlyArray<SectionCurves>, // wing, stabilizer
    perChord: number, // Reynolds number over chord, 1/m
  ) {
    const { parts, wing, stabilizer } = craft;
    const surfaces = [wing, ...(stabilizer ? [stabilizer] : [])];
    const strips = [parts.wing, ...(parts.stabilizer ? [parts.stabilizer] : [])];
    const join = (read: (surface: number, eta: number, chord: number) => number) =>
      Float64Array.from(
        strips.flatMap(({ eta, chord }, s) => Array.from(eta, (at, k) => read(s, at, chord[k]!))),
      );
    this.wing = parts.wing.count;
    this.chord = join((_, __, chord) => chord);
    this.eta = join((_, eta) => eta);
    this.slope = join((s, eta, chord) => surfaces[s]!.lift(eta, chord).slope);
    this.zeroLift = join((s, eta, chord) => surfaces[s]!.lift(eta, chord).zeroLift);
    this.reynolds = this.chord.map((chord) => perChord * chord);
    this.count = this.chord.length;
    this.turn = new Float64Array(this.count);
    this.loads = alphaLoads(flow.system, flow.symmetric);
    this.response = responseOf(flow, this.count);
  }

  /** Forgets the turns found so far. */
  begin(): void {
    this.turn.fill(0);
  }

  /** Greatest lift coefficient of a strip's section. */
  limit(i: number): number {
    return this.curvesOf(i).limit(this.eta[i]!, this.reynolds[i]!);
  }

  /** The line at an angle of the x axis to the stream, started from the turns of the last angle that settled. */
  at(alpha: number): SettledLine {
    const { count, flow, chord, turn } = this;
    const { system, symmetric, base } = flow;
    mixAlpha(symmetric, alpha, base);
    const straight = base.circulation.slice(0, count);
    const through = Float64Array.from({ length: count }, (_, j) => {
      const across = Math.sin(alpha) * system.normalZ[j]!;
      return Math.cos(alpha) * system.cosPitch[j]! - across * system.sinPitch[j]!;
    });
    const by = this.response.map(
      (value, k) => (2 * value * through[k % count]!) / chord[Math.floor(k / count)]!,
    );
    const before = turn.slice();
    const cl = new Float64Array(count);
    const isSettled = this.settle(straight, by, cl);
    const [onWing, onStabilizer] = loadsAt(this.loads, alpha);
    const lift = { wing: liftOf(onWing, alpha), total: liftOf(onWing, alpha) + liftOf(onStabilizer, alpha) };
    for (let i = 0; i < count; i++) {
      // Turned strips change their circulation in the stream: 2 (two halves) times its breadth in y.
      const more = (0.5 * cl[i]! * chord[i]! - straight[i]!) * 2 * system.alongY[i]!;
      lift.total += more;
      if (i < this.wing) lift.wing += more;
    }
    const isStalled = Array.from(cl, (value, i) => {
      const angle = this.met(i, value);
      return angle > this.curvesOf(i).stallAngle(this.eta[i]!, this.reynolds[i]!);
    });
    if (!isSettled) turn.set(before);
    return { isSettled, lift, cl, isStalled };
  }

  /** Newton's steps; fills `cl` with the last ones. */
  private settle(straight: Float64Array, by: Float64Array, cl: Float64Array): boolean {
    const { count: n, chord, slope, turn } = this;
    const matrix = new Float64Array(n * n);
    const pivots = new Int32Array(n);
    const miss = new Float64Array(n);
    for (let step = 0; step < MOST_STEPS; step++) {
      let furthest = 0;
      for (let i = 0; i < n; i++) {
        let value = (2 * straight[i]!) / chord[i]!;
        for (let j = 0; j < n; j++) value += by[i * n + j]! * turn[j]!;
        cl[i] = value;
        const alpha = this.met(i, value);
        const given = this.given(i, alpha);
        const steep = (this.given(i, alpha + NUDGE) - given) / NUDGE;
        const perLift = steep / (slope[i]! * Math.cos(alpha - this.zeroLift[i]! + turn[i]!)) - 1;
        for (let j = 0; j < n; j++) matrix[i * n + j] = perLift * by[i * n + j]!;
        matrix[i * n + i]! -= steep;
        miss[i] = value - given;
        furthest = Math.max(furthest, Math.abs(miss[i]!));
      }
      if (furthest < CLOSE) return true;
      if (!Number.isFinite(furthest)) return false;
      factor(matrix, n, pivots);
      solveFactored(matrix, n, pivots, miss);
      const largest = miss.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      const share = Math.min(1, LARGEST_TURN / largest);
      for (let i = 0; i < n; i++) turn[i]! += share * miss[i]!;
    }
    return false;
  }

  /** Angle that the section of a strip meets at a lift coefficient of the line. */
  private met(i: number, cl: number): number {
    const sine = Math.max(-0.99, Math.min(0.99, cl / this.slope[i]!));
    return this.zeroLift[i]! + Math.asin(sine) - this.turn[i]!;
  }

  private given(i: number, alpha: number): number {
    return this.curvesOf(i).lift(this.eta[i]!, alpha, this.reynolds[i]!);
  }

  private curvesOf(i: number): SectionCurves {
    return this.curves[i < this.wing ? 0 : 1]!;
  }
}

/** Circulations called up by turning the normal of one strip after another into a stream through it of speed 1. */
function responseOf({ system }: Flow, count: number): Float64Array {
  const response = new Float64Array(count * count);
  const cause = new Float64Array(system.all);
  for (let j = 0; j < count; j++) {
    cause.fill(0);
    cause[j] = -1;
    system.solveSymmetric(cause);
    for (let i = 0; i < count; i++) response[i * count + j] = cause[i]!;
  }
  return response;
}
