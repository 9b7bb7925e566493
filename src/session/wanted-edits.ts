/** Edits of what a proposal is looked for with. The first one writes out what held silently, so that nothing else changes. */
import { TRIED_LAWS, type Wanted } from '../solver/design/wanted.ts';
import type { Plan, PlannedLimit, PlannedQuantity } from '../solver/studies/propose/plan.ts';
import type { Change } from './edits.ts';

type Limits = NonNullable<Wanted['limits']>;
type Free = NonNullable<Wanted['free']>;
type Laws = Wanted['laws'];

export type LawPlace = keyof typeof TRIED_LAWS;

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

/** Whether a search is asked to try this kind of law. */
export function isTried(laws: Laws, place: LawPlace, kind: string): boolean {
  return (laws?.[place] as readonly string[] | undefined)?.includes(kind) ?? false;
}

/** A kind of law tried beside the others, or no longer; where none is left the drawn law is the only one. */
export function lawChanges(laws: Laws, place: LawPlace, kind: string, tries: boolean): Change[] {
  const kinds = TRIED_LAWS[place].filter((one) => (one === kind ? tries : isTried(laws, place, one)));
  const { [place]: _before, ...others } = laws ?? {};
  return [{ path: 'wanted.laws', value: kinds.length > 0 ? { ...others, [place]: kinds } : others }];
}
