/**
 * What the circulations of a system do to its own strips and segments: the four matrices and how they are filled. They are
 * split by symmetry as system.ts has it.
 */
import { addComponent, addComponents, addVelocities, addVelocity } from './filament.ts';
import type { VortexSystem } from './system.ts';

/** Row after row; velocities as x, y and z in turn. */
export interface Influence {
  symmetric: Float64Array; // foil by foil: the velocity through a strip
  antisymmetric: Float64Array; // all by all
  symmetricField: Float64Array; // all by foil: the velocity where a bound segment carries its force
  antisymmetricField: Float64Array; // foil by all
}

export function makeInfluence(foil: number, all: number): Influence {
  const each = (size: number) => new Float64Array(size);
  return {
    symmetric: each(foil * foil),
    antisymmetric: each(all * all),
    symmetricField: each(3 * all * foil),
    antisymmetricField: each(3 * foil * all),
  };
}

/**
 * Fills the influence of the symmetric system and, when asked, of the antisymmetric one. `deep`, of the same foil without
 * strut or surface, is given its symmetric one on the way: all but the images.
 */
export function fillInfluence(
  system: VortexSystem,
  into: Influence,
  antisymmetric: boolean,
  deep: Influence | null,
): void {
  for (let i = 0; i < system.foil; i++) {
    fillTangency(system, into, i, antisymmetric, deep);
    fillField(system, into, i, antisymmetric, deep);
  }
  if (!antisymmetric) return;
  for (let i = system.foil; i < system.all; i++) {
    fillStrutTangency(system, into, i);
    fillStrutField(system, into, i);
  }
}

/**
 * Rows i of both matrices: the velocity through strip i of the foil per circulation. The copies to starboard are gathered
 * in the antisymmetric row, their mirrors in the symmetric one, before the two are split; where only that is asked for,
 * all are gathered there.
 */
function fillTangency(
  system: VortexSystem,
  into: Influence,
  i: number,
  antisymmetric: boolean,
  deep: Influence | null,
): void {
  const { foil, all, nodes } = system;
  const { symmetric: even, antisymmetric: odd } = into;
  const row = i * foil;
  const oddRow = i * all;
  const [own, ownRow] = antisymmetric ? [odd, oddRow] : [even, row];
  even.fill(0, row, row + foil);
  if (antisymmetric) odd.fill(0, oddRow, oddRow + all);
  const px = system.controlX[i]!;
  const py = system.controlY[i]!;
  const pz = system.controlZ[i]!;
  const ny = system.normalY[i]!;
  const nz = system.normalZ[i]!;
  const image = 2 * system.height - pz;
  const under = Number.isFinite(image);
  for (const line of system.foilLines) addComponents(own, ownRow, even, row, line, nodes, px, py, pz, ny, nz);
  if (deep) sumRows(own, ownRow, even, row, deep.symmetric, foil);
  if (under)
    for (const line of system.foilLines)
      addComponents(own, ownRow, even, row, line, nodes, px, py, image, -ny, nz);
  if (!antisymmetric) return;
  splitRows(odd, oddRow, even, row, foil);
  for (const line of system.strutLines) {
    addComponent(odd, oddRow, line, nodes, px, py, pz, ny, nz);
    if (under) addComponent(odd, oddRow, line, nodes, px, py, image, -ny, nz);
  }
}

/** The same for a strip of the strut: in the plane of symmetry the mirrors blow through it the other way, as hard. */
function fillStrutTangency(system: VortexSystem, into: Influence, i: number): void {
  const { foil, all, nodes } = system;
  const odd = into.antisymmetric;
  const row = i * all;
  odd.fill(0, row, row + all);
  const px = system.controlX[i]!;
  const py = system.controlY[i]!;
  const pz = system.controlZ[i]!;
  const ny = system.normalY[i]!;
  const nz = system.normalZ[i]!;
  const image = 2 * system.height - pz;
  for (const line of system.lines) {
    addComponent(odd, row, line, nodes, px, py, pz, ny, nz);
    if (Number.isFinite(image)) addComponent(odd, row, line, nodes, px, py, image, -ny, nz);
  }
  for (let j = row; j < row + foil; j++) odd[j]! *= 2;
}

/** Rows i of both velocity fields: the velocity on bound segment i of the foil per circulation; gathered likewise. */
function fillField(
  system: VortexSystem,
  into: Influence,
  i: number,
  antisymmetric: boolean,
  deep: Influence | null,
): void {
  const { foil, all, nodes } = system;
  const { symmetricField: even, antisymmetricField: odd } = into;
  const row = i * foil;
  const oddRow = i * all;
  const [own, ownRow] = antisymmetric ? [odd, oddRow] : [even, row];
  even.fill(0, 3 * row, 3 * (row + foil));
  if (antisymmetric) odd.fill(0, 3 * oddRow, 3 * (oddRow + all));
  const px = system.placeX[i]!;
  const py = system.placeY[i]!;
  const pz = system.placeZ[i]!;
  const image = 2 * system.height - pz;
  const under = Number.isFinite(image);
  for (const line of system.foilLines) {
    // On its own surface a line has no finite chord to cut off the velocity, which would grow without end.
    const isOwn = line.surface === system.surfaceOf[i];
    const core = isOwn ? 0 : line.core;
    const spread = isOwn ? system.spread[i]! : 0;
    addVelocities(own, ownRow, even, row, line, nodes, px, py, pz, 1, core, spread);
  }
  if (deep) sumRows(own, 3 * ownRow, even, 3 * row, deep.symmetricField, 3 * foil);
  if (under)
    for (const line of system.foilLines)
      addVelocities(own, ownRow, even, row, line, nodes, px, py, image, -1, 0, 0);
  if (!antisymmetric) return;
  splitRows(odd, 3 * oddRow, even, 3 * row, 3 * foil);
  for (const line of system.strutLines) {
    addVelocity(odd, oddRow, line, nodes, px, py, pz, 1, 1, 1, line.core, 0);
    if (under) addVelocity(odd, oddRow, line, nodes, px, py, image, -1, -1, 1, 0, 0);
  }
}

/** The symmetric one for a segment of the strut: there the mirrors do the same, turned about in y. */
function fillStrutField(system: VortexSystem, into: Influence, i: number): void {
  const { foil, nodes } = system;
  const even = into.symmetricField;
  const row = i * foil;
  even.fill(0, 3 * row, 3 * (row + foil));
  const px = system.placeX[i]!;
  const py = system.placeY[i]!;
  const pz = system.placeZ[i]!;
  const image = 2 * system.height - pz;
  for (const line of system.foilLines) {
    addVelocity(even, row, line, nodes, px, py, pz, 1, 1, 1, line.core, 0);
    if (Number.isFinite(image)) addVelocity(even, row, line, nodes, px, py, image, -1, -1, 1, 0, 0);
  }
  for (let at = 3 * row; at < 3 * (row + foil); at += 3) {
    even[at]! *= 2;
    even[at + 1] = 0;
    even[at + 2]! *= 2;
  }
}

/** What own copies and mirrors have gathered so far, in two rows or in one, into the same row of another matrix. */
function sumRows(
  own: Float64Array,
  ownRow: number,
  even: Float64Array,
  row: number,
  matrix: Float64Array,
  count: number,
): void {
  if (own === even) for (let j = row; j < row + count; j++) matrix[j] = even[j]!;
  else for (let j = 0; j < count; j++) matrix[row + j] = own[ownRow + j]! + even[row + j]!;
}

/** Starboard copies in one row and their mirrors in the other become the difference and the sum. */
export function splitRows(
  odd: Float64Array,
  oddRow: number,
  even: Float64Array,
  row: number,
  count: number,
): void {
  for (let j = 0; j < count; j++) {
    const own = odd[oddRow + j]!;
    const mirrored = even[row + j]!;
    odd[oddRow + j] = own - mirrored;
    even[row + j] = own + mirrored;
  }
}
