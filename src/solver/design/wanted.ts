/** What the user wants of a proposal: the document's `wanted` block, and what its schema alone cannot say of it. */
import * as v from 'valibot';
import type { Problem } from './problem.ts';
import type { RangeKey } from './ranges.ts';
import { choice, keys, number } from './schema-parts.ts';

type Held<Name extends string> = Extract<RangeKey, `wanted.${Name}.*`>;

/** Least and most of a figure, either or both. */
function limit(key: Held<`limits.${string}`>) {
  return v.exactOptional(keys({ least: v.exactOptional(number(key)), most: v.exactOptional(number(key)) }));
}

/** Between what and what a quantity may move. */
function free(key: Held<`free.${string}`>) {
  return v.exactOptional(keys({ least: number(key), most: number(key) }));
}

const LimitsSchema = keys({
  holdIndex: limit('wanted.limits.holdIndex.*'),
  rollFromYaw: limit('wanted.limits.rollFromYaw.*'),
  staticMargin: limit('wanted.limits.staticMargin.*'),
  span: limit('wanted.limits.span.*'),
  tipChord: limit('wanted.limits.tipChord.*'),
  thickness: limit('wanted.limits.thickness.*'),
  strutDeflection: limit('wanted.limits.strutDeflection.*'),
  takeOffSpeed: limit('wanted.limits.takeOffSpeed.*'),
  stallMargin: limit('wanted.limits.stallMargin.*'),
  cavitationMargin: limit('wanted.limits.cavitationMargin.*'),
  tipDepth: limit('wanted.limits.tipDepth.*'),
  rootMoment: limit('wanted.limits.rootMoment.*'),
  stanceShift: limit('wanted.limits.stanceShift.*'),
});

const FreeSchema = keys({
  length: free('wanted.free.length.*'),
  droop: free('wanted.free.droop.*'),
  droopFrom: free('wanted.free.droopFrom.*'),
  chords: free('wanted.free.chords.*'),
  taper: free('wanted.free.taper.*'),
  fullness: free('wanted.free.fullness.*'),
  area: free('wanted.free.area.*'),
  sweep: free('wanted.free.sweep.*'),
  rake: free('wanted.free.rake.*'),
  twist: free('wanted.free.twist.*'),
  stabilizerLength: free('wanted.free.stabilizerLength.*'),
  stabilizerDroop: free('wanted.free.stabilizerDroop.*'),
  stabilizerArea: free('wanted.free.stabilizerArea.*'),
  arm: free('wanted.free.arm.*'),
  stabilizerIncidence: free('wanted.free.stabilizerIncidence.*'),
  strutThickness: free('wanted.free.strutThickness.*'),
});

/** Kinds of law of the wing that a search can try. */
export const TRIED_LAWS = {
  droop: ['vee', 'arc', 'late'],
  chord: ['taper', 'elliptic', 'superelliptic'],
} as const;

const TRIED = 'a list of one or more kinds of law, each once';

function tried<const T extends string>(kinds: readonly T[]) {
  return v.exactOptional(
    v.pipe(
      v.array(choice(...kinds), TRIED),
      v.minLength(1, TRIED),
      v.check((list) => new Set(list).size === list.length, TRIED),
    ),
  );
}

export const WantedSchema = keys({
  weights: v.exactOptional(
    keys({
      takeOff: v.exactOptional(number('wanted.weights.*')),
      cruise: v.exactOptional(number('wanted.weights.*')),
      top: v.exactOptional(number('wanted.weights.*')),
    }),
  ),
  limits: v.exactOptional(LimitsSchema),
  free: v.exactOptional(FreeSchema),
  /** Laws of the wing to try beside one another; the drawn one when left out. */
  laws: v.exactOptional(
    keys({
      droop: tried(TRIED_LAWS.droop),
      chord: tried(TRIED_LAWS.chord),
    }),
  ),
});

export type Wanted = v.InferOutput<typeof WantedSchema>;
export type LimitName = keyof NonNullable<Wanted['limits']>;

/** The first thing wanted that cannot be; null when all can. */
export function wantedProblem(wanted: Wanted | undefined): Problem | null {
  if (!wanted) return null;
  const { weights, free, limits } = wanted;
  if (weights) {
    const all = [weights.takeOff, weights.cruise, weights.top];
    if (all.every((weight) => weight === 0))
      return { path: 'wanted.weights', found: 'nothing but 0', allowed: 'a weight above 0' };
  }
  for (const [block, entries] of [
    ['limits', limits],
    ['free', free],
  ] as const)
    for (const [name, entry] of Object.entries<{ least?: number; most?: number } | undefined>(
      entries ?? {},
    )) {
      const { least, most } = entry ?? {};
      if (least !== undefined && most !== undefined && most < least)
        return {
          path: `wanted.${block}.${name}.most`,
          found: `${most}`,
          allowed: `${least}, its least, or above`,
        };
    }
  return null;
}
