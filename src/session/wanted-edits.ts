/** Edits of what a proposal is looked for with. The first one writes out what held silently, so that nothing else changes. */
import type { Wanted } from '../solver/design/wanted.ts';
import type { Plan, PlannedLimit, PlannedQuantity } from '../solver/studies/propose/plan.ts';
import type { Change } from './edits.ts';

type Limits = NonNullable<Wanted['limits']>;
type Free = NonNullable<Wanted['free']>;

/** A limit set to a value, or let go with null. */
export function limitChanges(
  { limits }: Plan,
  { name, side }: Pick<PlannedLimit, 'name' | 'side'>,
  value: number | null,
): Change[] {
  const all: Limits = {};
  for (const limit of limits) {
    const held = limit.name === name && limit.side === side ? value : limit.held;
    if (held !== null) all[limit.name] = { ...all[limit.name], [limit.side]: held };
  }
  return [{ path: 'wanted.limits', value: all }];
}

/** A quantity set free within a range, or held with null. */
export function freeChanges(
  { quantities }: Plan,
  name: PlannedQuantity['name'],
  range: { least: number; most: number } | null,
): Change[] {
  const all: Free = {};
  for (const quantity of quantities) {
    const { least, most, isFree } = quantity;
    const here = quantity.name === name ? range : isFree ? { least, most } : null;
    if (here) all[quantity.name] = here;
  }
  return [{ path: 'wanted.free', value: all }];
}
