/** Documents changed for tests, as plain data: the reader decides what they are. */
import { readFileSync } from 'node:fs';

export type PlainDocument = Record<string, unknown>;

/** A good document by file name, parsed. */
export function goodDocument(name = 'curved-race'): PlainDocument {
  return JSON.parse(readFileSync(new URL(`./good/${name}.json`, import.meta.url), 'utf8'));
}

/** A copy with dotted paths set; undefined takes the key away. */
export function changed(document: PlainDocument, changes: Record<string, unknown>): PlainDocument {
  const copy = structuredClone(document);
  for (const [path, value] of Object.entries(changes)) {
    const keys = path.split('.');
    const last = keys.pop()!;
    const holder = keys.reduce((branch, key) => branch[key] as PlainDocument, copy);
    if (value === undefined) delete holder[last];
    else holder[last] = value;
  }
  return copy;
}
