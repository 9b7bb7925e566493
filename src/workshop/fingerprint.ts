/** A short mark of a whole design document: the same on a printed sheet and beside the file it came from. */
import { sha256 } from '@noble/hashes/sha2.js';
import type { Design } from '../solver/design/document.ts';

const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'; // none that is taken for another

/** "7KQ2-M0XF": forty bits of the document, whatever the order of its keys; two designs agree by chance once in 1e12. */
export function fingerprint(design: Design): string {
  const hash = sha256(new TextEncoder().encode(JSON.stringify(inOrder(design))));
  let mark = '';
  for (let bit = 0; bit < 40; bit += 5) {
    const pair = (hash[bit >> 3]! << 8) | hash[(bit >> 3) + 1]!;
    mark += LETTERS[(pair >> (11 - (bit & 7))) & 31];
  }
  return `${mark.slice(0, 4)}-${mark.slice(4)}`;
}

function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([key, inner]) => [key, inOrder(inner)]));
}

/** What every file says of where it comes from. */
export interface Mark {
  fingerprint: string; // of the design document, whichever shape of it is built
  isToBuild: boolean; // the shape that loads bring to the drawn one
  date: Date;
  day: string; // 2027-03-21
  remark: string; // fingerprint, day, design name: one line, what matters first
}

export function markOf(design: Design, isToBuild: boolean, date: Date): Mark {
  const day = date.toISOString().slice(0, 10);
  const mark = fingerprint(design);
  const shape = isToBuild ? ', shape to build' : '';
  return {
    fingerprint: mark,
    isToBuild,
    date,
    day,
    remark: `Fingerprint ${mark}, ${day}${shape}: ${design.name}`,
  };
}
