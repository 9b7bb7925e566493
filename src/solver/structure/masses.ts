/**
 * What has to move when a foil swings: its own mass, and the water it takes along. A strip of chord c moves
 * rho pi c^2/4 of water a metre across itself, acting at mid-chord, and resists a turn about mid-chord with
 * rho pi c^4/128 (a flat plate: J. N. Newman, Marine Hydrodynamics, 1977, table 4.3; H. Lamb, Hydrodynamics, art. 71); a
 * rod takes along what it displaces. The nearness of the surface and the ends are left out. kg, m.
 */
import type { Design } from '../design/document.ts';
import type { Craft } from '../geometry/craft.ts';
import type { Strips } from '../geometry/strips.ts';
import { moveOf, turnOf } from './frame.ts';
import type { HalfBodies } from './hinge-chain.ts';
import type { Skeleton } from './skeleton.ts';
import { dot, type Triple } from './triple.ts';

export interface Lump {
  body: number;
  place: Triple; // of its own mass
  mass: number;
  spin: number; // kg m2 about `along`
  along: Triple;
  water: { place: Triple; mass: number; spin: number; across: readonly Triple[] } | null;
}

export interface MassSums {
  own: number; // kg of wing, stabilizer, strut and fuselage
  water: number; // kg taken along across wing, stabilizer and strut
}

/** `density` of the water; 0 for the foil in air. */
export function lumpsOf(design: Design, craft: Craft, skeleton: Skeleton, density: number): Lump[] {
  const { parts } = craft;
  const { wing, stabilizer, strut, dry } = skeleton;
  return [
    ...stripLumps(wing.starboard, parts.wing, 1, density),
    ...stripLumps(wing.port, parts.wing, -1, density),
    ...(stabilizer && parts.stabilizer
      ? [
          ...stripLumps(stabilizer.starboard, parts.stabilizer, 1, density),
          ...stripLumps(stabilizer.port, parts.stabilizer, -1, density),
        ]
      : []),
    ...(strut && parts.strut ? stripLumps(strut, parts.strut, 1, density) : []),
    ...(dry ? dryLumps(dry, skeleton) : []),
    ...fuselageLumps(design, skeleton, density),
  ];
}

function stripLumps(half: HalfBodies, strips: Strips, side: 1 | -1, density: number): Lump[] {
  return Array.from({ length: strips.count }, (_, k) => {
    const { axis, centre, mass, spin } = half.beam[k]!;
    const chord = strips.chord[k]!;
    const run = strips.width[k]!;
    const droop = strips.droop[k]!;
    const [x, y, z] = half.middle[k]!;
    const aft = (share: number): Triple => [x + (share - axis) * chord, y, z];
    const across: Triple = [0, side * Math.sin(droop), Math.cos(droop)];
    const plate = (Math.PI / 4) * density * chord * chord * run;
    return {
      body: half.strips[k]!,
      place: aft(centre),
      mass: mass * run,
      spin: spin * run,
      along: [0, side * Math.cos(droop), -Math.sin(droop)],
      water: { place: aft(0.5), mass: plate, spin: (plate * chord * chord) / 32, across: [across] },
    };
  });
}

/** The dry strut, equal steps from the board down to the water. */
function dryLumps(dry: HalfBodies, { places }: Skeleton): Lump[] {
  const count = dry.strips.length;
  const step = count > 1 ? dry.middle[0]![2] - dry.middle[1]![2] : 2 * (places.box[2] - dry.middle[0]![2]);
  return Array.from({ length: count }, (_, k) => {
    const { axis, centre, chord, mass, spin } = dry.beam[k]!;
    const [x, y, z] = dry.middle[k]!;
    return {
      body: dry.strips[k]!,
      place: [x + (centre - axis) * chord, y, z],
      mass: mass * step,
      spin: spin * step,
      along: [0, 0, 1],
      water: null,
    };
  });
}

/** Fuselage: each of its runs as two halves at its ends, the nose with the wing. */
function fuselageLumps({ fuselage }: Design, skeleton: Skeleton, density: number): Lump[] {
  const { beam, front, aft } = skeleton.fuselage;
  if (!fuselage || !beam) return [];
  const { places, junction, wingRoot } = skeleton;
  const lump = (body: number, place: Triple, run: number): Lump => ({
    body,
    place,
    mass: beam.mass * run,
    spin: beam.spin * run,
    along: [1, 0, 0],
    water: {
      place,
      mass: (Math.PI / 4) * density * beam.chord ** 2 * run,
      spin: 0,
      across: [
        [0, 1, 0],
        [0, 0, 1],
      ],
    },
  });
  const toWing = Math.abs(places.foot[0] - places.wing[0]);
  const list = [
    lump(junction, places.foot, toWing / 2),
    lump(front, places.wing, toWing / 2),
    lump(wingRoot, [places.wing[0] - fuselage.nose / 2, places.wing[1], places.wing[2]], fuselage.nose),
  ];
  if (places.stabilizer) {
    const toTail = Math.abs(places.stabilizer[0] - places.foot[0]);
    list.push(lump(junction, places.foot, toTail / 2), lump(aft, places.stabilizer, toTail / 2));
  }
  return list;
}

/**
 * A motion weighed: one number for each way each lump moves, times the root of what moves. The generalised mass of two
 * motions is the product of their weighed rows.
 */
export function weigh(lumps: readonly Lump[], motion: Float64Array): Float64Array {
  const row: number[] = [];
  for (const { body, place, mass, spin, along, water } of lumps) {
    const own = Math.sqrt(mass);
    for (const part of moveOf(motion, body, place)) row.push(own * part);
    row.push(Math.sqrt(spin + (water?.spin ?? 0)) * dot(turnOf(motion, body), along));
    if (!water) continue;
    const move = moveOf(motion, body, water.place);
    for (const across of water.across) row.push(Math.sqrt(water.mass) * dot(move, across));
  }
  return Float64Array.from(row);
}

export function product(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += one[i]! * other[i]!;
  return sum;
}

export function massSums(lumps: readonly Lump[]): MassSums {
  return lumps.reduce(
    (sums, { mass, water }) => ({ own: sums.own + mass, water: sums.water + (water?.mass ?? 0) }),
    { own: 0, water: 0 },
  );
}
