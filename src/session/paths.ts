/** Reading and changing a plain document by dotted key path ("wing.chord.at.2.1"), never in place. */

type Branch = Record<string, unknown> | unknown[];

const isBranch = (value: unknown): value is Branch => typeof value === 'object' && value !== null;

/** The value at the path; undefined where the path leads nowhere. */
export function valueAt(document: unknown, path: string): unknown {
  let value = document;
  for (const key of path.split('.')) {
    if (!isBranch(value) || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<string, unknown>)[key];
  }
  return value;
}

/**
 * A copy of the document with the value put at the path; branches beside the path are shared, and the document
 * itself comes back when nothing changes. `undefined` takes the key away. Missing branches are made.
 */
export function withValueAt<T>(document: T, path: string, value: unknown): T {
  return change(document, path.split('.'), value) as T;
}

function change(node: unknown, [key, ...rest]: string[], value: unknown): unknown {
  if (key === undefined) return value;
  const branch: Branch = isBranch(node) ? node : {};
  const present = Object.hasOwn(branch, key) ? (branch as Record<string, unknown>)[key] : undefined;
  const next = change(present, rest, value);
  if (Object.is(next, present) && isBranch(node)) return node;
  if (Array.isArray(branch)) {
    const copy = [...branch];
    copy[Number(key)] = next;
    return copy;
  }
  if (next === undefined) return Object.fromEntries(Object.entries(branch).filter(([name]) => name !== key));
  return { ...branch, [key]: next };
}
