/** What the builder chose for the workshop, defaults filled in. Lengths in m, as in the document. */
import type { Design } from '../solver/design/document.ts';
import { RANGES } from '../solver/design/ranges.ts';
import type { Slot } from '../solver/geometry/slot.ts';

export interface Choices {
  spacing: number; // of the stations along the unrolled half
  leastEdge: number; // thinnest trailing edge that ribs, solids and moulds get; 0: as the section draws it
  allowance: number; // laminate taken off the ribs all round
  slot: Slot | null;
  tolerance: number; // chord height of solids
}

export function choicesOf({ build = {} }: Design): Choices {
  return {
    spacing: build.spacing ?? RANGES['build.spacing'].default,
    leastEdge: build.leastEdge ?? RANGES['build.leastEdge'].default,
    allowance: build.allowance ?? RANGES['build.allowance'].default,
    slot: build.slot ?? null,
    tolerance: build.tolerance ?? RANGES['build.tolerance'].default,
  };
}
