/**
 * What a solved layer says of its section: lift, drag, moment, lowest pressure, and where the flow turns, separates
 * and comes back. Coefficients by chord and stream; places as x/c.
 */
import { LAMINAR } from './interval.ts';
import { LAMINAR_SEPARATION } from './laminar.ts';
import type { SectionLayer } from './layer.ts';
import type { Panels } from './panels.ts';
import { forcesFromSpeeds } from './pressure.ts';
import type { Side, Stations } from './stations.ts';

/** A laminar layer that leaves the surface, and where it comes back turbulent. */
export interface Bubble {
  from: number;
  to: number; // 1 where it does not come back
  isOpen: boolean; // burst: open down to the trailing edge
}

export interface SideFigures {
  transition: number; // 1 where laminar to the trailing edge
  separation: number; // of the turbulent layer, or of an open bubble; 1 where there is none
  bubble: Bubble | null;
}

export interface SectionFigures {
  cl: number;
  cd: number;
  cdFriction: number; // wall friction's part of cd; the rest is pressure
  cm: number; // about the quarter chord, nose up
  cpMin: number;
  upper: SideFigures;
  lower: SideFigures;
}

/**
 * Drag coefficient from the end of a computed wake, both halves together: H. B. Squire and A. D. Young, ARC R&M 1838
 * (1937). What is left of the speed defect far downstream follows from theta u^((H + 5)/2) = constant.
 */
export function squireYoung(theta: number, shape: number, speed: number): number {
  return 2 * theta * speed ** (0.5 * (shape + 5));
}

/** Reads a layer that has settled at an angle, rad. */
export function figuresOf({ stations }: SectionLayer, alpha: number): SectionFigures {
  const { panels } = stations.response.flow;
  const { theta, shape, speed } = stations;
  const last = stations.response.stations - 1;
  const clockwise = Float64Array.from({ length: panels.count + 1 }, (_, i) => stations.speedAt(i));
  return {
    ...forcesFromSpeeds(panels, clockwise, alpha),
    cd: squireYoung(2 * theta[last]!, shape[last]!, speed[last]!),
    cdFriction: frictionDrag(stations, alpha),
    upper: sideFigures(stations, stations.upper),
    lower: sideFigures(stations, stations.lower),
  };
}

/** Wall friction resolved along the stream: the integral of cf u^2 along the stream's direction. */
function frictionDrag(stations: Stations, alpha: number): number {
  const { x, y, arc, count } = stations.response.flow.panels;
  let sum = 0;
  for (let k = 0; k < count; k++) {
    const isUpper = arc[k + 1]! <= stations.stagnation;
    const isLower = arc[k]! >= stations.stagnation;
    if (!isUpper && !isLower) continue; // the panel of the stagnation point
    const along = (x[k + 1]! - x[k]!) * Math.cos(alpha) + (y[k + 1]! - y[k]!) * Math.sin(alpha);
    const shear =
      stations.friction[k]! * stations.speed[k]! ** 2 +
      stations.friction[k + 1]! * stations.speed[k + 1]! ** 2;
    sum += (isLower ? along : -along) * shear; // cf is twice the friction kept, the mean takes half
  }
  return sum;
}

function sideFigures(stations: Stations, side: Side): SideFigures {
  const { panels } = stations.response.flow;
  const { arc, x, count } = panels;
  const direction = side.sign > 0 ? -1 : 1;
  const end = side.sign > 0 ? 0 : count;
  let node = arc.findIndex((s) => s > stations.stagnation);
  if (side.sign > 0) node--;
  let bubbleFrom = Number.NaN;
  let bubbleTo = Number.NaN;
  let separation = Number.NaN;
  for (let i = node; i !== end + direction; i += direction) {
    if (stations.kind[i] === LAMINAR) {
      if (stations.shape[i]! > LAMINAR_SEPARATION && Number.isNaN(bubbleFrom)) bubbleFrom = x[i]!;
    } else if (stations.friction[i]! > 0) {
      if (!Number.isNaN(bubbleFrom) && Number.isNaN(bubbleTo)) bubbleTo = x[i]!;
      separation = Number.NaN;
    } else if (Number.isNaN(separation)) separation = x[i]!;
  }
  const hasBubble = !Number.isNaN(bubbleFrom);
  const isOpen = hasBubble && Number.isNaN(bubbleTo);
  const at = isOpen ? bubbleFrom : separation;
  return {
    transition: Number.isNaN(side.transition) ? 1 : placeAt(panels, side.transition),
    separation: Number.isNaN(at) ? 1 : at,
    bubble: hasBubble ? { from: bubbleFrom, to: isOpen ? 1 : bubbleTo, isOpen } : null,
  };
}

/** x/c at an arc along the panels. */
export function placeAt({ arc, x, count }: Panels, at: number): number {
  let low = 0;
  let high = count;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (arc[middle]! <= at) low = middle;
    else high = middle;
  }
  const share = (at - arc[low]!) / (arc[high]! - arc[low]!);
  return x[low]! + share * (x[high]! - x[low]!);
}
