/**
 * The boundary layer as it stands, station by station: surface nodes in the order of the panels, then the wake's.
 * Chord 1, stream speed 1. Walks (walk.ts) renew it in place.
 */
import { dot } from '../numeric/dense.ts';
import type { MassResponse } from './response.ts';

/** One side of the section. Arcs are along the panels, from their first node. */
export interface Side {
  readonly sign: 1 | -1; // of the clockwise speed
  trip: number; // arc of the trip; NaN where there is none
  transition: number; // arc of transition; NaN where the layer stays laminar up to the trailing edge
}

export class Stations {
  readonly arc: Float64Array; // from the stagnation point
  readonly theta: Float64Array; // momentum thickness; of one half in the wake
  readonly shape: Float64Array; // H
  readonly speed: Float64Array; // along the flow, positive
  readonly stress: Float64Array; // q; 0 where laminar
  readonly friction: Float64Array; // cf/2
  readonly growth: Float64Array; // of disturbances, where laminar: n, or Re_theta over Michel's
  readonly kind: Uint8Array; // of interval.ts
  readonly mass: Float64Array; // m as `MassResponse` takes it
  readonly inviscid: Float64Array; // speed, clockwise on the surface
  readonly upper: Side = { sign: 1, trip: Number.NaN, transition: Number.NaN };
  readonly lower: Side = { sign: -1, trip: Number.NaN, transition: Number.NaN };
  stagnation = 0; // arc along the panels
  ahead: number; // last node above the stagnation point

  constructor(readonly response: MassResponse) {
    const { stations, columns, surface } = response;
    this.arc = new Float64Array(stations);
    this.theta = new Float64Array(stations);
    this.shape = new Float64Array(stations);
    this.speed = new Float64Array(stations);
    this.stress = new Float64Array(stations);
    this.friction = new Float64Array(stations);
    this.growth = new Float64Array(stations);
    this.kind = new Uint8Array(stations);
    this.mass = new Float64Array(columns);
    this.inviscid = new Float64Array(stations);
    this.ahead = (surface - 1) / 2;
  }

  /** Speed at a station, clockwise on the surface, by the latest mass defect. */
  speedAt(i: number): number {
    const { change, columns } = this.response;
    return this.inviscid[i]! + dot(change, i * columns, this.mass, 0, columns);
  }

  /** Finds where the clockwise speed changes sign, from where it last did. */
  findStagnation(): void {
    const { count, arc } = this.response.flow.panels;
    let k = this.ahead;
    while (k > 1 && this.speedAt(k) <= 0) k--;
    while (k < count - 2 && this.speedAt(k + 1) > 0) k++;
    const above = this.speedAt(k);
    const below = this.speedAt(k + 1);
    this.ahead = k;
    this.stagnation = arc[k]! + ((arc[k + 1]! - arc[k]!) * above) / (above - below);
  }
}
