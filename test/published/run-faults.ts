/** What the published checks find, row by row, for comparing a solver with a fault in it with the sound one. */
import { type Checked, check } from './check.ts';
import { GROUPS } from './groups.ts';

export interface Verdict {
  name: string;
  isMissed: boolean;
}

const nameOf = (title: string, { quantity, row }: Checked) => `${title}: ${quantity}, ${row.conditions}`;

export function verdicts(): Verdict[] {
  return GROUPS.flatMap(({ title, rows }) =>
    rows.flatMap(check).map((one) => ({ name: nameOf(title, one), isMissed: one.isMissed })),
  );
}
