/**
 * A section's flow at one angle, station by station: what the section view draws and Skin reads. Lengths in chords,
 * speeds in stream speeds, angles in radians. The arrays are the caller's own.
 */
import type { SectionFigures } from './drag.ts';
import { TURBULENT } from './interval.ts';
import { SectionLayer } from './layer.ts';
import { March, type Water } from './polar.ts';
import { liftLine } from './pressure.ts';
import { type SectionShape, sectionFlow } from './section.ts';
import type { Side, Stations } from './stations.ts';

/** One side from the stagnation point to the trailing edge. */
export interface SideState {
  x: Float64Array;
  y: Float64Array;
  arc: Float64Array; // from the stagnation point
  speed: Float64Array;
  cp: Float64Array;
  theta: Float64Array;
  displacement: Float64Array; // delta-star
  shape: Float64Array;
  friction: Float64Array; // cf by the local speed
  isTurbulent: Uint8Array;
}

export interface SectionState {
  figures: SectionFigures;
  upper: SideState;
  lower: SideState;
  wakeEnd: WakeEnd;
}

/** The layer where the computed wake ends, both halves together: its drag is 2 theta u^((H + 5)/2). */
export interface WakeEnd {
  theta: number;
  shape: number; // H
  speed: number; // u
}

export interface StateOptions extends Water {
  reynolds: number;
  alpha: number; // rad
}

/** The flow at an angle, reached from zero lift in steps; null where it does not settle. */
export function sectionState(shape: SectionShape, options: StateOptions): SectionState | null {
  const flow = sectionFlow(shape);
  const layer = new SectionLayer(flow);
  const march = new March(layer, options.reynolds, options);
  march.begin(liftLine(flow.flow).zeroLift);
  const figures = march.step(options.alpha);
  if (!figures) return null;
  const { stations } = layer;
  const last = stations.response.stations - 1;
  return {
    figures,
    upper: sideState(stations, stations.upper),
    lower: sideState(stations, stations.lower),
    wakeEnd: {
      theta: 2 * stations.theta[last]!,
      shape: stations.shape[last]!,
      speed: stations.speed[last]!,
    },
  };
}

/**
 * Drag coefficient that laminar bubbles add at an angle: against the same section tripped where each of them opens.
 * Null where there is no bubble, or the tripped flow does not settle; negative where the bubble is the cheaper way to
 * turn turbulent.
 */
export function bubbleDrag(
  shape: SectionShape,
  options: StateOptions,
  figures: SectionFigures,
): number | null {
  const { upper, lower } = figures;
  if (!upper.bubble && !lower.bubble) return null;
  const nearer = (trip: number | undefined, from: number | undefined) => Math.min(trip ?? 1, from ?? 1);
  const tripped = sectionState(shape, {
    ...options,
    tripUpper: nearer(options.tripUpper, upper.bubble?.from),
    tripLower: nearer(options.tripLower, lower.bubble?.from),
  });
  return tripped && figures.cd - tripped.figures.cd;
}

function sideState(stations: Stations, side: Side): SideState {
  const { panels } = stations.response.flow;
  const nodes = Array.from(panels.arc.keys()).filter(
    (i) => side.sign * (stations.stagnation - panels.arc[i]!) > 0,
  );
  if (side.sign > 0) nodes.reverse();
  const read = (value: (i: number) => number) => Float64Array.from(nodes, value);
  return {
    x: read((i) => panels.x[i]!),
    y: read((i) => panels.y[i]!),
    arc: read((i) => stations.arc[i]!),
    speed: read((i) => stations.speed[i]!),
    cp: read((i) => 1 - stations.speed[i]! ** 2),
    theta: read((i) => stations.theta[i]!),
    displacement: read((i) => stations.theta[i]! * stations.shape[i]!),
    shape: read((i) => stations.shape[i]!),
    friction: read((i) => 2 * stations.friction[i]!),
    isTurbulent: Uint8Array.from(nodes, (i) => (stations.kind[i] === TURBULENT ? 1 : 0)),
  };
}
