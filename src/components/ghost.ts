import type { Design } from '../solver/design/document.ts';
import type { Report } from '../solver/report.ts';

/** A second design that stays behind every curve and beside every figure. */
export interface Ghost {
  design: Design;
  report: Report | null;
}
