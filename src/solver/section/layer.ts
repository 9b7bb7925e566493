/**
 * The boundary layer of a section at one angle and one Reynolds number, in step with the outer flow: walks along the
 * layer (walk.ts) repeat until the mass defect stands still. Quasi-simultaneous method: A. E. P. Veldman, AIAA J. 19
 * (1981) 79. Chord 1, stream speed 1, angles in radians.
 */
import type { MassResponse } from './response.ts';
import { Settler } from './settle.ts';
import { Stations } from './stations.ts';
import { armTrip } from './trip.ts';
import { Walker } from './walk.ts';

export interface LayerConditions {
  reynolds: number; // by chord and stream
  alpha: number; // rad
  criticalN: number; // amplification exponent at transition
  criterion?: 'envelope' | 'michel'; // default envelope
  tripUpper?: number; // x/c of a trip; none where left out
  tripLower?: number;
}

/** Mass defect in chords that may still move: about 0.2 % of that of a thin layer, 0.05 % in drag. */
const TOLERANCE = 5e-6;
const MOST_WALKS = 150;
const MEMORY = 6; // tries the settler keeps; 3 to 12 do about as well

export class SectionLayer {
  readonly stations: Stations;
  walks = 0; // of the last solve
  private readonly walker: Walker;
  private isFresh = true;
  private readonly tried: Float64Array;
  private readonly settler: Settler;

  constructor(response: MassResponse) {
    this.stations = new Stations(response);
    this.walker = new Walker(this.stations);
    this.tried = new Float64Array(response.columns);
    this.settler = new Settler(response.columns, MEMORY);
  }

  /** Solves from the last solution, or from a plate's layer where there is none. False when it does not settle. */
  solve(conditions: LayerConditions): boolean {
    const { reynolds, alpha, criticalN, criterion, tripUpper = 1, tripLower = 1 } = conditions;
    const { walker, stations } = this;
    const { response, inviscid } = stations;
    walker.interval.reynolds = reynolds;
    walker.usesMichel = criterion === 'michel';
    walker.growthLimit = walker.usesMichel ? 1 : criticalN;
    response.speeds(alpha, inviscid);
    const { panels } = response.flow;
    stations.upper.trip = armTrip(panels, inviscid, reynolds, 'upper', tripUpper);
    stations.lower.trip = armTrip(panels, inviscid, reynolds, 'lower', tripLower);
    this.settler.restart();
    if (this.isFresh) this.guess(reynolds);
    for (this.walks = 1; this.walks <= MOST_WALKS; this.walks++) {
      const moved = this.improve();
      if (!Number.isFinite(moved)) break;
      if (moved < TOLERANCE && walker.failures === 0) {
        this.isFresh = false;
        return true;
      }
    }
    this.isFresh = true;
    return false;
  }

  /** The next solve starts from a plate's layer. */
  forget(): void {
    this.isFresh = true;
  }

  /** The next solve starts from a mass defect that settled before. */
  resume(mass: Float64Array): void {
    this.stations.mass.set(mass);
    this.isFresh = false;
  }

  /** One walk, then the next try; returns how far the walk moved the mass defect. */
  private improve(): number {
    const { tried } = this;
    const { mass } = this.stations;
    tried.set(mass);
    this.walker.walk();
    let moved = 0;
    for (let j = 0; j < mass.length; j++) moved = Math.max(moved, Math.abs(mass[j]! - tried[j]!));
    if (moved < TOLERANCE) return moved;
    this.settler.propose(tried, mass);
    mass.set(tried);
    return moved;
  }

  /** Mass defect of a turbulent plate, delta-star = 0.046 s Re_s^-0.2: H. Schlichting, Boundary-Layer Theory, ch. XXI. */
  private guess(reynolds: number): void {
    const { mass, theta, inviscid, response } = this.stations;
    const { surface, columns, flow } = response;
    const { arc, count } = flow.panels;
    const nose = arc[count / 2]!;
    const thickness = (s: number) => 0.046 * s ** 0.8 * reynolds ** -0.2;
    for (let i = 0; i < surface; i++)
      mass[i] = Math.sign(nose - arc[i]!) * thickness(Math.abs(arc[i]! - nose)) * Math.abs(inviscid[i]!);
    mass.fill(1.4 * thickness(nose), surface, columns); // both sides' sum, as the wake sheds part of it
    theta.fill(0); // no earlier answers to start from
  }
}
