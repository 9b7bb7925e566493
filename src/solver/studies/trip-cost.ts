/**
 * What it costs to turn a layer turbulent too soon: drag coefficient of a section tripped at x on one side, less that of
 * the same section left alone, at the same angle. A few trips are solved; a curve joins them.
 */
import { type Curve, monotoneCubic } from '../numeric/spline.ts';
import { roughnessDrag } from '../section/rough-wall.ts';
import { criticalBump, wallFlow } from '../section/skin.ts';
import { type SectionState, type SideState, sectionState } from '../section/state.ts';
import { type Station, stateAtLift } from './section-station.ts';

export type SideName = 'upper' | 'lower';

const FIRST = 0.02; // foremost trip solved; ahead of it the layer cannot be tripped much sooner
const TRIPS = 6;

export class TripCost {
  readonly alpha: number; // rad
  readonly free: SectionState;
  private readonly curves = new Map<SideName, Curve>();

  /** Throws an Error with one sentence where the flow left alone does not settle. */
  constructor(readonly station: Station) {
    const found = stateAtLift(station.shape, station.cl, station.reynolds, station.flow);
    if (!found)
      throw new Error(
        `the flow of the ${station.part} does not settle at a lift coefficient of ${station.cl.toFixed(2)}`,
      );
    this.alpha = found.alpha;
    this.free = found.state;
  }

  transition(side: SideName): number {
    return this.free.figures[side].transition;
  }

  /** Extra drag coefficient of a trip at x over the whole span looked at; 0 behind transition. */
  at(side: SideName, x: number): number {
    const end = this.transition(side);
    if (x >= end || end <= 1.5 * FIRST) return 0;
    let curve = this.curves.get(side);
    if (!curve) {
      curve = this.solve(side, end);
      this.curves.set(side, curve);
    }
    return Math.max(0, curve(Math.max(FIRST, x)));
  }

  /** The section tripped on both sides where told; null where that does not settle. */
  tripped(upper: number, lower: number): SectionState | null {
    const { station, alpha } = this;
    const { shape, reynolds, flow } = station;
    const tripUpper = Math.min(upper, flow.tripUpper ?? 1);
    const tripLower = Math.min(lower, flow.tripLower ?? 1);
    return sectionState(shape, { ...flow, reynolds, alpha, tripUpper, tripLower });
  }

  /**
   * Extra drag coefficient of roughness of a height (m) all over, the layer tripped at these places (1: not at all); null
   * where that does not settle.
   */
  textured(height: number, upper: number, lower: number): number | null {
    const state = upper < 1 || lower < 1 ? this.tripped(upper, lower) : this.free;
    if (!state) return null;
    const { chord, reynolds } = this.station;
    const rough = (side: SideName) => roughnessDrag(state[side], height / chord, reynolds);
    return Math.max(0, state.figures.cd - this.free.figures.cd) + rough('upper') + rough('lower');
  }

  private solve(side: SideName, end: number): Curve {
    const places: number[] = [];
    const costs: number[] = [];
    for (let k = 0; k < TRIPS; k++) {
      const x = FIRST + (end - FIRST) * (k / TRIPS) ** 1.3;
      const state = side === 'upper' ? this.tripped(x, 1) : this.tripped(1, x);
      if (!state) continue;
      places.push(x);
      costs.push(state.figures.cd - this.free.figures.cd);
    }
    return monotoneCubic([...places, end], [...costs, 0]);
  }

  /** Height (m) of the lone bump that trips the layer at x; null where it is turbulent already. */
  criticalBump(side: SideName, x: number): number | null {
    const { state, k } = this.read(side, x);
    if (state.isTurbulent[k]) return null;
    const { viscosity } = this.station;
    return criticalBump(wallFlow(this.speedAt(side, x), state.friction[k]!, viscosity));
  }

  /** Speed of the water past x, m/s. */
  speedAt(side: SideName, x: number): number {
    const { state, k } = this.read(side, x);
    return Math.max(1e-3, state.speed[k]!) * this.station.speed;
  }

  /** The layer's station nearest behind x. */
  read(side: SideName, x: number): { state: SideState; k: number } {
    const state = this.free[side];
    const nose = state.x.indexOf(Math.min(...state.x));
    const k = state.x.findIndex((place, i) => i > nose && place >= x);
    return { state, k: k < 0 ? state.x.length - 1 : k };
  }
}
