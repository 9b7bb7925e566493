/** A demo design to work on, and a reader that stands in for the document reader where a test wants a say in it. */

import type { Design } from '../../src/solver/design/document.ts';
import type { Reading } from '../../src/solver/design/read.ts';
import curved from '../../web/demos/curved-race.json' with { type: 'json' };

export const demo = (): Design => structuredClone(curved) as unknown as Design;

/** Refuses unrolled lengths outside 0.05..5 m, as the document does. */
export function readLoosely(value: unknown): Reading {
  const design = value as Design;
  const length = design?.wing?.length?.value;
  return length >= 0.05 && length <= 5
    ? { ok: true, design }
    : { ok: false, message: `wing.length.value: found ${length}, allowed 0.05 to 5` };
}

export function readTextLoosely(text: string): Reading {
  try {
    return readLoosely(JSON.parse(text));
  } catch {
    return { ok: false, message: 'not JSON' };
  }
}
