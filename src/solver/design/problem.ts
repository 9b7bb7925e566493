/** What is wrong with a document, said the same way everywhere: key path, what was found, what is allowed. */

export interface Problem {
  path: string; // dotted key path; empty for the document as a whole
  found: string;
  allowed: string;
}

/** "wing.chord.tip: found -0.02, allowed 0 to 1 m" */
export function sentence({ path, found, allowed }: Problem): string {
  return `${path || 'document'}: found ${found}, allowed ${allowed}`;
}

/** A value as a user would name it, on one line and short. */
export function describe(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string') return quote(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  if (typeof value === 'function' || typeof value === 'symbol') return `a ${typeof value}`;
  return String(value);
}

/** The text in quotation marks, line breaks escaped, cut where it is long. */
export function quote(text: string): string {
  return JSON.stringify(text.length > 40 ? `${text.slice(0, 40)}...` : text);
}

/** A path with one more key; keys that would blur it are quoted. */
export function join(path: string, key: string | number): string {
  const shown = typeof key === 'number' || /^[\w$-]{1,40}$/.test(key) ? String(key) : quote(key);
  return path ? `${path}.${shown}` : shown;
}
