/** A chain of numbered steps, one per version, from any earlier version to the present one. */
import type { Plain } from './plain.ts';

export type PlainDocument = { [key: string]: Plain };

export interface Step {
  to: number; // the version this step arrives at, from the one before
  change(document: PlainDocument): PlainDocument; // a new document; unknown keys stay; throws where it cannot
}

/** Runs the steps a document of `from` still needs and puts the present version in it. */
export type Migration = (document: PlainDocument, from: number) => PlainDocument;

/** Throws at start when the steps do not lead from version 1 to `present` one by one. */
export function migrationChain(steps: readonly Step[], present: number): Migration {
  const reached = steps.map(({ to }) => to);
  const wanted = Array.from({ length: present - 1 }, (_, k) => k + 2);
  if (reached.join() !== wanted.join())
    throw new Error(
      `migration steps: found versions ${reached.join(', ') || 'none'}, allowed ${wanted.join(', ') || 'none'}`,
    );
  return (document, from) =>
    steps
      .filter(({ to }) => to > from)
      .reduce((earlier, step) => ({ ...step.change(earlier), version: step.to }), document);
}
