/** The published checks one by one, for comparing a solver with a fault in it with the sound one. */
import { check } from './check.ts';
import { GROUPS } from './groups.ts';

export interface NamedCheck {
  name: string;
  run: () => boolean[]; // one a quantity: is it missed?
}

export const checks = (): NamedCheck[] =>
  GROUPS.flatMap(({ title, rows }) =>
    rows.map((row) => ({
      name: `${title}: ${row.quantities.join('; ')}, ${row.conditions}`,
      run: () => check(row).map(({ isMissed }) => isMissed),
    })),
  );
