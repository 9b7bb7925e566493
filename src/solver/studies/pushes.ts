/**
 * How the vertical forces of a running foil change with its own motion: speed ahead, sinking speed, pitch rate about the
 * balance point, depth. Forces ahead and down in N, moments nose up in N m about the balance point.
 *
 * The vortex force is quadratic in the water's speeds along x and z, so central differences of it are exact. Drag along
 * the stream is the far-field induced drag in place of the near-field one, with the other sources of the running state
 * growing as speed squared; the strut's acts at the middle of its wetted length, the rest at the origin's height.
 */
import { farField } from '../forces/ledger.ts';
import { type AlphaLoads, alphaLoads, type Load } from '../forces/loads.ts';
import type { DragSources } from '../report.ts';
import type { Flow, FlowPool } from '../vortex/flow.ts';
import type { Condition } from './condition.ts';
import type { Pushes } from './motion.ts';
import type { RunningFoil } from './running.ts';
import { depthStep, flowAtDepth, verticalSlopes } from './vertical-slopes.ts';

/** Force aft, force up and nose-up moment about the origin, per density. */
type Push = Load;

export function pushesOf(
  pool: FlowPool,
  { speed, density }: Condition,
  foil: RunningFoil,
  drag: DragSources,
  { x, height }: { x: number; height: number },
): Pushes {
  const { craft, flow, loads, alpha } = foil;
  const still = stillDrag(drag, density * speed ** 2);
  const push = pushBySpeeds(foil, flow, loads, still);
  const [a, b] = [speed * Math.cos(alpha), speed * Math.sin(alpha)];
  const step = 0.01 * speed;
  const ahead = difference(push(a + step, b), push(a - step, b), 2 * step);
  const up = difference(push(a, b + step), push(a, b - step), 2 * step);
  const { pitchRate } = verticalSlopes(pool, foil);
  // Nose up about the balance point at rate q: the origin swings ahead by height q and rises by x q.
  const rate = (key: keyof Load) =>
    speed * (pitchRate[0][key] + pitchRate[1][key]) + height * ahead[key] - x * up[key];
  const byRate = { x: rate('x'), z: rate('z'), pitch: rate('pitch') };
  const byDepth = craft.depth === null ? NOTHING : slopeByDepth(pool, foil, craft.depth, still, a, b);
  const about = (at: Push): [number, number, number] => [
    -density * at.x,
    -density * at.z,
    density * (at.pitch - height * at.x + x * at.z),
  ];
  return { u: about(ahead), w: about(up), q: about(byRate), depth: about(byDepth) };
}

const NOTHING: Push = { x: 0, z: 0, pitch: 0 };

/** Drag that is not induced, per rho V^2 (m2). */
interface StillDrag {
  foil: number;
  strut: number;
}

function stillDrag(drag: DragSources, pressure: number): StillDrag {
  const foil = drag.wingProfile + drag.stabilizerProfile + drag.fuselage + drag.junctions + drag.wave;
  return { foil: foil / pressure, strut: (drag.strutProfile + drag.spray) / pressure };
}

function slopeByDepth(
  pool: FlowPool,
  foil: RunningFoil,
  depth: number,
  still: StillDrag,
  a: number,
  b: number,
): Push {
  const step = depthStep(depth);
  const at = (place: number) => {
    const flow = flowAtDepth(pool, foil.craft, place);
    // A deeper strut is wetted further.
    const deeper = { foil: still.foil, strut: (still.strut * place) / depth };
    return pushBySpeeds(foil, flow, alphaLoads(flow.system, flow.symmetric), deeper)(a, b);
  };
  return difference(at(depth + step), at(depth - step), 2 * step);
}

/** The push as a function of the water's speed aft and up, m/s. */
function pushBySpeeds(
  { craft }: RunningFoil,
  flow: Flow,
  loads: AlphaLoads,
  still: StillDrag,
): (a: number, b: number) => Push {
  const [ahead, middle, up] = [0, Math.PI / 4, Math.PI / 2].map((angle) => farField(flow, angle));
  const mixed = 2 * middle! - ahead! - up!;
  const strutMiddle = 0.5 * (craft.depth ?? craft.strut?.length ?? 0);
  return (a, b) => {
    const near = (key: keyof Load) => {
      const of = (part: 0 | 1) =>
        a * a * loads.ahead[part][key] + a * b * loads.mixed[part][key] + b * b * loads.up[part][key];
      return of(0) + of(1);
    };
    const square = a * a + b * b;
    const speed = Math.sqrt(square);
    const [x, z] = [near('x'), near('z')];
    const induced = a * a * ahead! + a * b * mixed + b * b * up!;
    const foil = induced + square * still.foil - (x * a + z * b) / speed;
    const strut = square * still.strut;
    return {
      x: x + ((foil + strut) * a) / speed,
      z: z + ((foil + strut) * b) / speed,
      pitch: near('pitch') + (strutMiddle * strut * a) / speed,
    };
  };
}

function difference(high: Push, low: Push, step: number): Push {
  return {
    x: (high.x - low.x) / step,
    z: (high.z - low.z) / step,
    pitch: (high.pitch - low.pitch) / step,
  };
}
