/**
 * Inviscid flow round a section: vortices that vary linearly along straight panels, their strengths chosen so that the
 * outline is a streamline. Inside is still water, so the strength at a node is the speed of the water past it.
 *
 * Chord 1, stream speed 1, angles in radians. Speeds along the surface count clockwise: positive from the nose aft
 * over the upper side, negative aft along the lower one. Any angle is a mix of two unit solutions, 0 and 90 degrees.
 *
 * Unknowns: the strength at each node and the stream function inside. Equations: the stream function at each node, and
 * no difference of speed across the trailing edge (Kutta). A blunt trailing edge is closed by a base that emits the
 * water the two sides bring, along the bisector; a sharp one has two nodes in one place, and the second equation there
 * asks the mean strength to run out smoothly instead. Stream function and base: M. Drela, in T. J. Mueller (ed.),
 * Low Reynolds Number Aerodynamics, Springer 1989, p. 1, sections 2.1 and 2.2 (from memory).
 */
import { factor, solveFactored } from '../numeric/dense.ts';
import { PanelSight } from './influence.ts';
import type { Panels } from './panels.ts';

const OVER_2_PI = 0.5 / Math.PI;

export class PanelFlow {
  readonly nodes: number;
  /** Speed at each node in a stream of speed 1 along x, and along y. */
  readonly alongX: Float64Array;
  readonly alongY: Float64Array;
  /** Stream function at node i (row) of outflow 1 per length from panel j. */
  readonly outflow: Float64Array;
  /** Direction in which the water leaves the trailing edge: unit vector along the bisector. */
  readonly bisectorX: number;
  readonly bisectorY: number;
  /** Vortices (clockwise) and outflow of the base per speed of the trailing edge, half the difference of its nodes. */
  readonly base: { vortex: number; outflow: number };
  private readonly sight = new PanelSight();
  private readonly matrix: Float64Array;
  private readonly pivots: Int32Array;

  constructor(readonly panels: Panels) {
    const n = panels.count + 1;
    this.nodes = n;
    [this.bisectorX, this.bisectorY] = bisector(panels);
    this.base = baseShares(panels, this.bisectorX, this.bisectorY);
    this.matrix = new Float64Array((n + 1) * (n + 1));
    this.pivots = new Int32Array(n + 1);
    this.outflow = new Float64Array(n * panels.count);
    this.fill();
    factor(this.matrix, n + 1, this.pivots);
    this.alongX = this.solve(Float64Array.from(panels.y, (y) => -y));
    this.alongY = this.solve(Float64Array.from(panels.x));
  }

  /** Strengths that raise the stream function at the nodes by `rise` (n values), inside kept still. */
  solve(rise: Float64Array): Float64Array {
    const n = this.nodes;
    const right = new Float64Array(n + 1);
    right.set(rise);
    if (this.panels.gap === 0) right[n - 1] = 0;
    solveFactored(this.matrix, n + 1, this.pivots, right);
    return right.subarray(0, n);
  }

  /** Speed at the nodes at an angle of attack, rad. */
  speeds(alpha: number, out: Float64Array): void {
    const c = Math.cos(alpha);
    const s = Math.sin(alpha);
    for (let i = 0; i < this.nodes; i++) out[i] = c * this.alongX[i]! + s * this.alongY[i]!;
  }

  private fill(): void {
    const { nodes: n, matrix: a, panels } = this;
    for (let i = 0; i < n; i++) {
      this.fillRow(i);
      a[i * (n + 1) + n] = -1; // the stream function inside
    }
    if (panels.gap === 0) this.runOutSmoothly();
    a[n * (n + 1)] = 1;
    a[n * (n + 1) + n - 1] = 1;
  }

  /** Stream function at node i of unit strength at every node, base included; and of outflow from every panel. */
  private fillRow(i: number): void {
    const { base } = this;
    const { nodes: n, matrix: a, outflow, panels, sight } = this;
    const { x, y, count, gap } = panels;
    const row = i * (n + 1);
    for (let j = 0; j < count; j++) {
      sight.look(x[i]!, y[i]!, x[j]!, y[j]!, x[j + 1]!, y[j + 1]!);
      const even = sight.evenLog();
      const rising = sight.risingLog(even);
      a[row + j]! += OVER_2_PI * (even - rising);
      a[row + j + 1]! += OVER_2_PI * rising;
      outflow[i * count + j] = OVER_2_PI * sight.angleFromInside();
    }
    if (gap === 0) return;
    sight.look(x[i]!, y[i]!, x[count]!, y[count]!, x[0]!, y[0]!);
    const each = 0.5 * OVER_2_PI * (base.vortex * sight.evenLog() + base.outflow * sight.angleFromInside());
    a[row]! += each;
    a[row + count]! -= each;
  }

  /** Sharp trailing edge: the mean of upper and lower strength has no second difference along the last three nodes. */
  private runOutSmoothly(): void {
    const { nodes: n, matrix: a } = this;
    const row = (n - 1) * (n + 1);
    a.fill(0, row, row + n + 1);
    for (const [k, weight] of [1, -2, 1].entries()) {
      a[row + k] = weight;
      a[row + n - 1 - k] = -weight;
    }
  }
}

/** What the base carries per unit speed of the water leaving along the bisector: vortices (clockwise) and outflow. */
function baseShares(
  { x, y, count, gap }: Panels,
  bx: number,
  by: number,
): { vortex: number; outflow: number } {
  if (gap === 0) return { vortex: 0, outflow: 0 };
  const tx = (x[0]! - x[count]!) / gap;
  const ty = (y[0]! - y[count]!) / gap;
  return { vortex: -(bx * tx + by * ty), outflow: bx * ty - by * tx };
}

/** Unit vector midway between the directions in which the last panels of the two sides leave the section. */
function bisector({ x, y, length, count }: Panels): [number, number] {
  const bx = (x[0]! - x[1]!) / length[0]! + (x[count]! - x[count - 1]!) / length[count - 1]!;
  const by = (y[0]! - y[1]!) / length[0]! + (y[count]! - y[count - 1]!) / length[count - 1]!;
  const size = Math.hypot(bx, by);
  return [bx / size, by / size];
}

export interface SectionForces {
  cl: number;
  cm: number; // about the quarter chord, nose up
  cpMin: number;
}

/**
 * Lift, moment and lowest pressure coefficient from the speed at the nodes, which varies linearly between them: the
 * squared speed is integrated exactly over each panel. The base carries the pressure of the trailing edge.
 */
export function forcesFromSpeeds(panels: Panels, speed: Float64Array, alpha: number): SectionForces {
  const { x, y, count } = panels;
  let forceX = 0;
  let forceY = 0;
  let moment = 0;
  let fastest = 0;
  for (let k = 0; k <= count; k++) {
    const next = k === count ? 0 : k + 1;
    const g = speed[k]!;
    const h = k === count ? g : speed[next]!;
    const pressure = 1 - (g * g + g * h + h * h) / 3;
    const tilt = (h - g) * (h + g); // first moment of the squared speed about the middle, times -12
    const dx = x[next]! - x[k]!;
    const dy = y[next]! - y[k]!;
    const armX = 0.5 * (x[next]! + x[k]!) - 0.25;
    const armY = 0.5 * (y[next]! + y[k]!);
    forceX -= pressure * dy;
    forceY += pressure * dx;
    moment += pressure * (armX * dx + armY * dy) - (tilt * (dx * dx + dy * dy)) / 12;
    fastest = Math.max(fastest, g * g);
  }
  return {
    cl: forceY * Math.cos(alpha) - forceX * Math.sin(alpha),
    cm: -moment,
    cpMin: 1 - fastest,
  };
}

/** Circulation of the nodes' strengths as a lift coefficient (Kutta and Joukowski); base included. */
export function liftFromCirculation(flow: PanelFlow, speed: Float64Array): number {
  const { length, count, gap } = flow.panels;
  let sum = flow.base.vortex * gap * 0.5 * (speed[0]! - speed[count]!);
  for (let k = 0; k < count; k++) sum += 0.5 * (speed[k]! + speed[k + 1]!) * length[k]!;
  return 2 * sum;
}

export interface LiftLine {
  slope: number; // per rad, d cl / d sin(alpha) at zero lift
  zeroLift: number; // rad
}

/** Lift slope and zero-lift angle: the circulation is exactly proportional to sin(alpha - zeroLift). */
export function liftLine(flow: PanelFlow): LiftLine {
  const level = liftFromCirculation(flow, flow.alongX);
  const across = liftFromCirculation(flow, flow.alongY);
  return { slope: Math.hypot(level, across), zeroLift: -Math.atan2(level, across) };
}
