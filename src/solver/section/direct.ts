/**
 * The classic chain on the inviscid speeds alone: Thwaites, transition, Head, Squire and Young. It lets the outer flow
 * take no notice of the layer, so it knows no bubble and no stall; it is here to show what the interaction of
 * layer.ts changes, and for plates. Chord 1, stream speed 1.
 *
 * Laminar: B. Thwaites, Aeronaut. Quart. 1 (1949) 245, with H and l as fitted by T. Cebeci and P. Bradshaw, Momentum
 * Transfer in Boundary Layers (1977). Turbulent: M. R. Head, ARC R&M 3152 (1958), with the wall friction of H. Ludwieg
 * and W. Tillmann, NACA TM 1285 (1950), and the fits of the same book. All from memory.
 */
import { squireYoung } from './drag.ts';
import type { LayerConditions } from './layer.ts';
import type { MassResponse } from './response.ts';
import { amplification, michelReTheta } from './transition.ts';
import { armTrip } from './trip.ts';

/** A layer at one place: distance from its start, speed of the water, momentum thickness, shape factor. */
export interface Station {
  arc: number;
  speed: number;
  theta: number;
  shape: number;
}

export interface DirectSide {
  transition: number; // arc from the stagnation point; infinite where laminar to the end
  isSeparated: boolean; // the turbulent layer left the surface: its drag is then worth little
  end: Station;
}

export interface DirectFigures {
  cd: number;
  upper: DirectSide;
  lower: DirectSide;
}

/** Thwaites: the layer separates where lambda = theta^2/nu du/ds falls to this. */
export const LAMBDA_SEPARATION = -0.09;

/** Shape factor H by lambda. */
export function thwaitesShape(lambda: number): number {
  if (lambda >= 0) return 2.61 - lambda * (3.75 - 5.24 * lambda);
  return 2.088 + 0.0731 / (0.14 + Math.max(lambda, -0.1));
}

/** Wall friction: cf/2 = l(lambda)/Re_theta. */
export function thwaitesFriction(lambda: number): number {
  if (lambda >= 0) return 0.22 + lambda * (1.57 - 1.8 * lambda);
  const bounded = Math.max(lambda, -0.1);
  return 0.22 + 1.402 * bounded + (0.018 * bounded) / (0.107 + bounded);
}

/** Head's entrainment over the outer speed, by his shape factor H1 = (delta - delta-star)/theta. */
export function headEntrainment(h1: number): number {
  return 0.0306 * Math.max(h1 - 3, 0.01) ** -0.6169;
}

export function headShape(shape: number): number {
  return shape <= 1.6
    ? 3.3 + 0.8234 * Math.max(shape - 1.1, 1e-3) ** -1.287
    : 3.3 + 1.5501 * (shape - 0.6778) ** -3.064;
}

/** The shape factor H that goes with H1, 3 where the layer has separated (H1 of 3.3 and less). */
export function shapeFromHead(h1: number): number {
  const over = h1 - 3.3;
  if (over <= 0.0279) return 3; // H1 at H = 3
  return over >= 2.0009 ? 1.1 + (over / 0.8234) ** (-1 / 1.287) : 0.6778 + (over / 1.5501) ** (-1 / 3.064);
}

/** Ludwieg and Tillmann: cf = 0.246 10^(-0.678 H) Re_theta^-0.268. */
export function ludwiegTillmann(shape: number, reTheta: number): number {
  return 0.246 * 10 ** (-0.678 * shape) * reTheta ** -0.268;
}

export function directFigures(response: MassResponse, conditions: LayerConditions): DirectFigures {
  const { panels } = response.flow;
  const { reynolds, alpha, tripUpper = 1, tripLower = 1 } = conditions;
  const speed = new Float64Array(response.stations);
  response.speeds(alpha, speed);
  const nodes = panels.count + 1;
  const below = speed.findIndex((u, i) => i > 0 && i < nodes && u <= 0);
  const [near, far] = [speed[below - 1]!, speed[below]!];
  const origin = panels.arc[below - 1]! + (panels.length[below - 1]! * near) / (near - far);
  const side = (first: number, direction: 1 | -1, trip: number) => {
    const arcs: number[] = [0];
    const speeds: number[] = [0];
    for (let i = first; i >= 0 && i < nodes; i += direction) {
      arcs.push(Math.abs(panels.arc[i]! - origin));
      speeds.push(Math.max(-direction * speed[i]!, 1e-6));
    }
    return runSide(arcs, speeds, conditions, Math.abs(trip - origin));
  };
  const upper = side(below - 1, -1, armTrip(panels, speed, reynolds, 'upper', tripUpper));
  const lower = side(below, 1, armTrip(panels, speed, reynolds, 'lower', tripLower));
  const drag = ({ end }: DirectSide) => squireYoung(end.theta, end.shape, end.speed);
  return { cd: drag(upper) + drag(lower), upper, lower };
}

/** A layer under speeds given at rising arcs, linear in between. `trip` NaN for none. */
export function runSide(
  arcs: readonly number[],
  speeds: readonly number[],
  { reynolds, criticalN, criterion }: LayerConditions,
  trip: number,
): DirectSide {
  let integral = 0; // of u^5 ds
  let growth = 0;
  let before: Station = { arc: 0, speed: speeds[0]!, theta: 0, shape: 2.61 };
  for (let k = 1; k < arcs.length; k++) {
    const arc = arcs[k]!;
    const speed = speeds[k]!;
    const reach = arc - before.arc;
    integral += reach * fifthPowerMean(before.speed, speed);
    const theta = Math.sqrt((0.45 * integral) / (reynolds * speed ** 6));
    const slope =
      k + 1 < arcs.length
        ? (speeds[k + 1]! - before.speed) / (arcs[k + 1]! - before.arc)
        : (speed - before.speed) / reach;
    const lambda = theta * theta * reynolds * slope;
    const here: Station = { arc, speed, theta, shape: thwaitesShape(lambda) };
    const reTheta = reynolds * speed * theta;
    growth += 0.5 * reach * rate(before, reynolds) + 0.5 * reach * rate(here, reynolds);
    const turns =
      criterion === 'michel' ? reTheta > michelReTheta(reynolds * speed * arc) : growth > criticalN;
    if (turns || lambda < LAMBDA_SEPARATION || arc >= trip)
      return runTurbulent(arcs, speeds, k, here, reynolds);
    before = here;
  }
  return { transition: Number.POSITIVE_INFINITY, isSeparated: false, end: before };
}

/** Growth of n along the surface; none at the very start. */
function rate({ shape, speed, theta }: Station, reynolds: number): number {
  return theta > 0 ? amplification(shape, reynolds * speed * theta) / theta : 0;
}

/** Mean of u^5 where u runs linearly from a to b. */
function fifthPowerMean(a: number, b: number): number {
  return (a ** 5 + a ** 4 * b + a ** 3 * b * b + a * a * b ** 3 + a * b ** 4 + b ** 5) / 6;
}

const SUBSTEPS = 8; // of a panel, by the midpoint rule
const FRESH_SHAPE = 1.4; // of a layer that has just turned turbulent: common practice with Head's method

function runTurbulent(
  arcs: readonly number[],
  speeds: readonly number[],
  from: number,
  start: Station,
  reynolds: number,
): DirectSide {
  let { theta } = start;
  let h1 = headShape(FRESH_SHAPE);
  let isSeparated = false;
  for (let k = from; k + 1 < arcs.length; k++) {
    const step = (arcs[k + 1]! - arcs[k]!) / SUBSTEPS;
    const slope = (speeds[k + 1]! - speeds[k]!) / (arcs[k + 1]! - arcs[k]!);
    for (let j = 0; j < SUBSTEPS; j++) {
      const u = speeds[k]! + slope * step * j;
      const half = headRates(u, slope, theta, h1, reynolds);
      const middle = headRates(
        u + 0.5 * step * slope,
        slope,
        theta + 0.5 * step * half[0],
        h1 + 0.5 * step * half[1],
        reynolds,
      );
      theta += step * middle[0];
      h1 = Math.max(h1 + step * middle[1], 3.3);
      isSeparated ||= shapeFromHead(h1) >= 3;
    }
  }
  const last = arcs.length - 1;
  const end = { arc: arcs[last]!, speed: speeds[last]!, theta, shape: shapeFromHead(h1) };
  return { transition: start.arc, isSeparated, end };
}

/** Rates of theta and H1: d(theta)/ds = cf/2 - (H + 2) theta u'/u, d(u theta H1)/ds = u F(H1). */
function headRates(u: number, slope: number, theta: number, h1: number, reynolds: number): [number, number] {
  const shape = shapeFromHead(h1);
  const dTheta = 0.5 * ludwiegTillmann(shape, reynolds * u * theta) - (shape + 2) * theta * (slope / u);
  return [dTheta, (headEntrainment(h1) - h1 * (dTheta + (theta * slope) / u)) / theta];
}
