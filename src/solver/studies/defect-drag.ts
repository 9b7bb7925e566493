/**
 * Drag of a fault of the skin. Ahead of transition, and high enough to trip the layer, it leaves a wedge of turbulent flow
 * behind it: a strip beside it is tripped where the wedge's edge crosses it, so that
 *   D = q c [w cost(x) + 2 tan(wedge/2) c integral of cost(x') dx' from x to transition],
 * w the fault's own width and cost(x) the drag coefficient of a trip at x (trip-cost.ts). Anywhere it has a drag of its own
 * form besides. SI; angles in degrees.
 *
 * Wedge: G. B. Schubauer and P. S. Klebanoff, NACA Report 1289 (1956): 10.6 degrees to either side with its ragged edge;
 * N. Gregory and W. S. Walker, ARC R&M 2779 (1951): 7 to 11 (from memory). Form drag: S. F. Hoerner, Fluid-Dynamic Drag
 * (1965), ch. 5: 0.4 of the dynamic pressure the fault meets in the layer, on its front (from memory, to be read as +-50 %).
 */
import { criticalGap, criticalStep, criticalWave, plateProfile } from '../section/skin.ts';
import type { SideName, TripCost } from './trip-cost.ts';

export type FaultKind = 'bump' | 'step' | 'cavity' | 'groove' | 'wave';

export interface Fault {
  kind: FaultKind; // groove: a scratch across the flow; wave: `length` long
  side: SideName;
  at: number; // x/c
  height: number; // m; depth of a cavity or groove
  width: number; // m across the flow
  length?: number; // m along the flow: of a wave, a groove, a cavity (its width when left out)
  wedge: number; // degrees, whole angle
}

/** Newtons between two bounds; the same where the law is settled. */
export interface DragRange {
  low: number;
  high: number;
}

export interface FaultDrag extends DragRange {
  /** Height (m) at which it starts to trip the layer; null where that is turbulent already. */
  critical: number | null;
  /** What the layer does: is turbulent already, takes no notice, is tripped, or may be (no sound limit is published). */
  layer: 'turbulent' | 'calm' | 'tripped' | 'doubtful';
}

const FORM = 0.4;
const STEPS = 24; // of the integral along the wedge
const RADIANS = Math.PI / 180;
const WALL_SLOPE = 0.332057; // of the Blasius profile, as in section/skin.ts

export function faultDrag(cost: TripCost, fault: Fault): FaultDrag {
  const { side, at } = fault;
  const isProud = fault.kind === 'bump' || fault.kind === 'step';
  const form = isProud ? formDrag(cost, fault) : 0;
  const bump = cost.criticalBump(side, at);
  if (bump === null) return { low: form, high: form, critical: null, layer: 'turbulent' };
  const { critical, layer } = verdict(cost, fault, bump);
  const wedge = layer === 'calm' ? 0 : wedgeDrag(cost, fault);
  return { low: form + (layer === 'tripped' ? wedge : 0), high: form + wedge, critical, layer };
}

type Verdict = Pick<FaultDrag, 'layer'> & { critical: number };

/**
 * A cavity is no bump, and no limit for it is published: shallower than a bump of its depth that counts it is calm, wider
 * than a gap that counts it trips, between the two it is doubtful.
 */
function verdict(cost: TripCost, { kind, height, width, length }: Fault, bump: number): Verdict {
  const { viscosity, chord, reynolds, speed } = cost.station;
  const step = criticalStep(speed, viscosity);
  if (kind === 'cavity' || kind === 'groove') {
    const least = kind === 'cavity' ? bump : step;
    const opening = length ?? width;
    const layer = height < least ? 'calm' : opening >= criticalGap(speed, viscosity) ? 'tripped' : 'doubtful';
    return { critical: least, layer };
  }
  const waved = length ?? 0.04;
  const critical =
    kind === 'bump' ? bump : kind === 'step' ? step : waved * criticalWave(chord, waved, reynolds);
  return { critical, layer: height >= critical ? 'tripped' : 'calm' };
}

/** Drag (N) of the wedge behind a fault that trips the layer. */
export function wedgeDrag(
  cost: TripCost,
  { side, at, width, wedge }: Pick<Fault, 'side' | 'at' | 'width' | 'wedge'>,
): number {
  const { chord, pressure } = cost.station;
  const end = cost.transition(side);
  const step = Math.max(0, end - at) / STEPS;
  let spread = 0;
  for (let k = 0; k < STEPS; k++) spread += cost.at(side, at + (k + 0.5) * step) * step;
  const opening = 2 * Math.tan(0.5 * wedge * RADIANS);
  return pressure * chord * (width * cost.at(side, at) + opening * chord * spread);
}

/** Drag (N) of the fault's own front in the slow water of the layer. */
function formDrag(cost: TripCost, { side, at, height, width }: Fault): number {
  const { state, k } = cost.read(side, at);
  const { chord, speed, viscosity, pressure } = cost.station;
  const local = state.speed[k]!;
  const thickness = (state.theta[k]! * chord * 72) / 7; // of a one-seventh-power layer
  const slope = (0.5 * state.friction[k]! * (local * speed) ** 2) / viscosity;
  const unit = slope > 0 ? (WALL_SLOPE * local * speed) / slope : height; // stretches the plate's profile to this wall
  let met = 0; // mean of (u/U)^2 over the height
  for (let j = 0; j < STEPS; j++) {
    const y = ((j + 0.5) / STEPS) * height;
    const share = state.isTurbulent[k] ? Math.min(1, y / thickness) ** (1 / 7) : plateProfile(y / unit);
    met += share ** 2 / STEPS;
  }
  return FORM * met * local ** 2 * pressure * height * width;
}
