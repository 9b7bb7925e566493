/** What the page and the solver's worker say to each other; one definition for both sides. */
import type { Design } from '../solver/design/document.ts';
import type { ConditionOptions, Report } from '../solver/report.ts';

export interface SolveRequest {
  id: number;
  design: Design;
  options: ConditionOptions;
}

export type SolveReply =
  /** `isFirst`: by thin-airfoil theory, while the sections' own figures are worked out; another reply follows. */
  { id: number; ok: true; report: Report; isFirst?: true } | { id: number; ok: false; message: string };

/** Solves a design, or throws an Error whose message is a sentence for the user. */
export type Solve = (design: Design, options?: ConditionOptions) => Report;

/** Answers one request; never throws. */
export function answer(solve: Solve, { id, design, options }: SolveRequest): SolveReply {
  try {
    return { id, ok: true, report: solve(design, options) };
  } catch (error) {
    return { id, ok: false, message: error instanceof Error ? error.message : String(error) };
  }
}
