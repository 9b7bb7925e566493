/**
 * What each mode is to a rider, so that it can be followed from one design to another. A root has one name and a name
 * one root.
 *
 * Lateral: `fall` grows and ends in the water, whatever turns on the way; `righting` is its mirror, coming back from a
 * lean; `heading` turns away or settles slowly; `rollDamping` dies at once; `swing` is a pair that rolls and turns to
 * and fro. Vertical: `pitchFall` grows; `speed` is slow; `porpoise` is a pair, or `pitchRighting` and `depthRighting`
 * where it does not swing; `sinkDamping` dies at once.
 */
import type { LateralState, RawMode, VerticalState } from './modes.ts';

export type LateralKind = 'fall' | 'righting' | 'heading' | 'rollDamping' | 'swing' | 'secondSwing';
export type VerticalKind =
  | 'pitchFall'
  | 'speed'
  | 'porpoise'
  | 'secondPorpoise'
  | 'pitchRighting'
  | 'depthRighting'
  | 'sinkDamping';

/** Roots slower than this, 1/s, are a matter of heading or speed rather than of attitude. */
const SLOW = 0.5;

/** Names modes sorted by growth, fastest first. */
export function nameLateral(modes: ReadonlyArray<RawMode<LateralState>>) {
  const reals = modes.filter(({ imaginary }) => imaginary === 0);
  const pairs = modes.filter(({ imaginary }) => imaginary > 0);
  const names = new Map<RawMode<LateralState>, LateralKind>();
  const rest = [...reals];
  if (rest.length > 0 && rest[0]!.real > SLOW) names.set(rest.shift()!, 'fall');
  if (rest.length > 0) names.set(rest.pop()!, 'rollDamping');
  // Of what is left the heading mode turns more than it rolls.
  rest.sort((one, other) => turning(other) - turning(one));
  if (rest[0]) names.set(rest[0], 'heading');
  if (rest[1]) names.set(rest[1], 'righting');
  if (pairs[0]) names.set(pairs[0], 'swing');
  if (pairs[1]) names.set(pairs[1], 'secondSwing');
  return modes.map((mode) => ({ ...mode, kind: names.get(mode)! }));
}

function turning({ shape }: RawMode<LateralState>): number {
  return Math.abs(shape.r.real) / (Math.abs(shape.p.real) + 1e-12);
}

export function nameVertical(modes: ReadonlyArray<RawMode<VerticalState>>) {
  const reals = modes.filter(({ imaginary }) => imaginary === 0);
  const pairs = modes.filter(({ imaginary }) => imaginary > 0);
  const names = new Map<RawMode<VerticalState>, VerticalKind>();
  const rest = [...reals];
  if (rest.length > 0 && rest[0]!.real > SLOW) names.set(rest.shift()!, 'pitchFall');
  if (rest.length > 0) names.set(rest.pop()!, 'sinkDamping');
  rest.sort((one, other) => Math.abs(one.real) - Math.abs(other.real));
  const left: VerticalKind[] = ['speed', 'pitchRighting', 'depthRighting'];
  rest.forEach((mode, k) => {
    names.set(mode, left[k]!);
  });
  if (pairs[0]) names.set(pairs[0], 'porpoise');
  if (pairs[1]) names.set(pairs[1], 'secondPorpoise');
  return modes.map((mode) => ({ ...mode, kind: names.get(mode)! }));
}
