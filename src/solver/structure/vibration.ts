/**
 * Frequencies at which a foil swings, still water or air, undamped: the shapes' masses against their stiffness, which is
 * one for each (shapes.ts). Ritz's method: frequencies come out a little high, the lowest best (S. Timoshenko, Vibration
 * Problems in Engineering, ch. VI).
 */
import { eigenvalues, eigenvector } from '../numeric/eigen.ts';
import type { Frame } from './frame.ts';
import { type Lump, product, weigh } from './masses.ts';
import type { Shape } from './shapes.ts';

export interface Swing {
  frequency: number; // Hz
  mix: Float64Array; // share of each shape; scaled by nothing in particular
  energies: Record<string, number>; // share of the strain energy by group ("strut.flap"), adding up to 1
}

/** Mass matrix of the shapes, row after row. */
export function massMatrix(lumps: readonly Lump[], shapes: readonly Shape[]): Float64Array {
  const n = shapes.length;
  const rows = shapes.map(({ motion }) => weigh(lumps, motion));
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      const mass = product(rows[i]!, rows[j]!);
      matrix[i * n + j] = mass;
      matrix[j * n + i] = mass;
    }
  return matrix;
}

/** Swings, slowest first. */
export function swingsOf(frame: Frame, shapes: readonly Shape[], masses: Float64Array): Swing[] {
  const n = shapes.length;
  return eigenvalues(masses, n)
    .filter(({ real }) => real > 0)
    .sort((a, b) => b.real - a.real)
    .map((root) => {
      const mix = Float64Array.from(eigenvector(masses, n, root), ({ real }) => real);
      return {
        frequency: 1 / (2 * Math.PI * Math.sqrt(root.real)),
        mix,
        energies: energyShares(frame, shapes, mix),
      };
    });
}

/** Strain energy of a mix of shapes by group, as shares. */
export function energyShares(
  frame: Frame,
  shapes: readonly Shape[],
  mix: Float64Array,
): Record<string, number> {
  const sums = new Float64Array(frame.groups.length);
  let total = 0;
  for (let j = 0; j < frame.count; j++) {
    let turn = 0;
    shapes.forEach((shape, k) => {
      turn += mix[k]! * shape.turns[j]!;
    });
    const energy = frame.give[j]! > 0 ? turn ** 2 / frame.give[j]! : 0;
    sums[frame.groupOf[j]!]! += energy;
    total += energy;
  }
  return Object.fromEntries(frame.groups.map((group, i) => [group, total > 0 ? sums[i]! / total : 0]));
}
