import type { PlainDocument, Step } from '../../src/solver/design/migration-chain.ts';

/** What was stored in the version before, and what the step makes of it. */
export interface UpgradeCase {
  to: number;
  before: PlainDocument;
  after: PlainDocument;
}

/** Versions whose step has no case: a step is not done before its before and after are written down. */
export function unexercised(steps: readonly Step[], cases: readonly UpgradeCase[]): number[] {
  return steps.map(({ to }) => to).filter((to) => !cases.some((each) => each.to === to));
}
