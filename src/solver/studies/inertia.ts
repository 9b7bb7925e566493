/**
 * Mass and moments of inertia of rider, board and foil, from a simple model whose every number can be changed:
 *
 * - the board is a flat plate with its centre above the balance point's x, at the top of the strut;
 * - half of the foil's mass is an upright rod from the origin to the top of the strut, half a rod along the span;
 * - the rest of the all-up mass is the rider (and the rig), standing rigidly where the whole balances at the balance
 *   point, with given radii of gyration about its own centre.
 *
 * The defaults (in ranges.ts) are common practice, not measured: a crouching rider of 0.40 m about the roll and pitch
 * axes and 0.25 m about the upright one, a board of 5 kg, 1.3 m by 0.5 m, a foil of 4 kg. Body axes: x ahead, y to starboard, z down
 * from the balance point; kg, m.
 */
import type { Design } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';

/** Board and foil in kg and m, the rider's radii of gyration in m. */
export type InertiaModel = Required<NonNullable<Design['inertia']>>;

export const INERTIA_DEFAULTS: InertiaModel = {
  boardMass: RANGES['inertia.boardMass'].default,
  boardLength: RANGES['inertia.boardLength'].default,
  boardWidth: RANGES['inertia.boardWidth'].default,
  foilMass: RANGES['inertia.foilMass'].default,
  riderRoll: RANGES['inertia.riderRoll'].default,
  riderPitch: RANGES['inertia.riderPitch'].default,
  riderYaw: RANGES['inertia.riderYaw'].default,
};

export interface Inertia {
  mass: number; // kg
  roll: number; // kg m2, about the balance point
  pitch: number;
  yaw: number;
  rollYaw: number; // kg m2, integral of x z dm
  riderHeight: number; // m above the origin: the centre of rider and rig that the balance asks for
}

/** Throws one sentence when board and foil outweigh the all-up mass. `span` of the wing in m. */
export function inertiaOf(design: Design, span: number): Inertia {
  const model = { ...INERTIA_DEFAULTS, ...design.inertia };
  const { allUpMass: mass, balance } = design.brief;
  const top = design.strut?.length ?? 1;
  const strutX = design.strut?.x ?? 0;
  const rider = mass - model.boardMass - model.foilMass;
  if (!(rider > 0))
    throw new Error(
      `inertia: found ${model.boardMass} kg of board and ${model.foilMass} kg of foil, allowed less than brief.allUpMass, ${mass} kg`,
    );
  const half = 0.5 * model.foilMass;
  const bodies: Body[] = [
    plate(model.boardMass, model.boardLength, model.boardWidth, balance.x, top),
    { mass: half, x: strutX, z: 0.5 * top, roll: rod(half, top), pitch: rod(half, top), yaw: 0 },
    { mass: half, x: 0, z: 0, roll: rod(half, span), pitch: 0, yaw: rod(half, span) },
  ];
  const moment = (key: 'x' | 'z') => bodies.reduce((sum, body) => sum + body.mass * body[key], 0);
  const standing = {
    mass: rider,
    x: (mass * balance.x - moment('x')) / rider,
    z: (mass * balance.height - moment('z')) / rider,
    roll: rider * model.riderRoll ** 2,
    pitch: rider * model.riderPitch ** 2,
    yaw: rider * model.riderYaw ** 2,
  };
  return { ...gather([...bodies, standing], balance.x, balance.height), mass, riderHeight: standing.z };
}

/** A part with its centre (x aft, z up from the origin) and its moments about that centre. */
interface Body {
  mass: number;
  x: number;
  z: number;
  roll: number;
  pitch: number;
  yaw: number;
}

const rod = (mass: number, length: number): number => (mass * length * length) / 12;

function plate(mass: number, length: number, width: number, x: number, z: number): Body {
  const along = rod(mass, length);
  const across = rod(mass, width);
  return { mass, x, z, roll: across, pitch: along, yaw: along + across };
}

function gather(bodies: readonly Body[], x: number, z: number) {
  const sum = { roll: 0, pitch: 0, yaw: 0, rollYaw: 0 };
  for (const body of bodies) {
    const ahead = x - body.x;
    const down = z - body.z;
    sum.roll += body.roll + body.mass * down * down;
    sum.pitch += body.pitch + body.mass * (ahead * ahead + down * down);
    sum.yaw += body.yaw + body.mass * ahead * ahead;
    sum.rollYaw += body.mass * ahead * down;
  }
  return sum;
}
