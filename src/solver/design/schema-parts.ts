/**
 * The pieces the document's schema is made of. Each message is the "allowed" part of a sentence; read.ts puts path and
 * finding before it.
 */
import * as v from 'valibot';
import { describeRange, isWithin, RANGES, type Range, type RangeKey } from './ranges.ts';

/** An object with these keys and any others, which are kept though the inferred type does not name them. */
export function keys<E extends v.ObjectEntries>(entries: E, orNull = '') {
  const required = Object.keys(entries).filter((key) => entries[key]!.type !== 'exact_optional');
  const whole = `an object${required.length > 0 ? ` with ${required.join(', ')}` : ''}${orNull}`;
  const message = (issue: v.BaseIssue<unknown>) => {
    const key = issue.path?.[0]?.key;
    return typeof key === 'string' && key in entries ? allowedOf(entries[key]!) : whole;
  };
  const schema = v.looseObject(entries, message) as unknown as v.ObjectSchema<E, typeof message>;
  const guarded: typeof schema = {
    ...schema,
    '~run'(dataset, config) {
      if (!Array.isArray(dataset.value)) return schema['~run'].call(this, dataset, config);
      v._addIssue(this, 'type', dataset, config); // the library takes a list for an object
      return dataset as unknown as ReturnType<(typeof schema)['~run']>;
    },
  };
  return guarded;
}

/** One of several objects told apart by their kind. */
export function kinds<const O extends v.VariantOptions<'kind'>>(...options: O) {
  const names = `one of ${options.map((option) => kindOf(option)).join(', ')}`;
  return v.variant('kind', options, (issue) => (issue.path ? names : `an object whose kind is ${names}`));
}

function kindOf(option: unknown): string {
  return allowedOf((option as { entries: { kind: unknown } }).entries.kind);
}

/** What a schema would say is allowed, for a key that is missing altogether. */
function allowedOf(schema: unknown): string {
  const { message, wrapped } = schema as { message?: unknown; wrapped?: unknown };
  if (wrapped) return allowedOf(wrapped);
  if (typeof message === 'string') return message;
  return typeof message === 'function' ? String(message({})) : 'a value';
}

export function number(key: RangeKey, orNull = '') {
  const range: Range = RANGES[key];
  const allowed = `${describeRange(range)}${orNull}`;
  return v.pipe(
    v.number(allowed),
    v.check((value) => isWithin(range, value), allowed),
  );
}

export function choice<const T extends string>(...options: T[]) {
  return v.picklist(options, `one of ${options.map((option) => `"${option}"`).join(', ')}`);
}

export function kind<const T extends string>(name: T) {
  return v.literal(name, `"${name}"`);
}
