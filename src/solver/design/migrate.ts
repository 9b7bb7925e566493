/**
 * Brings documents of earlier versions up to the present one, a numbered step per version. Version 1 is the present one,
 * so there are no steps yet; a new version adds one step here, and `test/designs/versions` a document of the version before
 * as it was stored, with what the step makes of it in the test.
 */
import { VERSION } from './document.ts';
import { type Migration, migrationChain, type Step } from './migration-chain.ts';

/** Exported for their tests. */
export const STEPS: readonly Step[] = [];

export const migrate: Migration = migrationChain(STEPS, VERSION);
