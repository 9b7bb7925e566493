/** Demo designs with their figures, for the tests of what is drawn. */
import { withValueAt } from '../../src/session/paths.ts';
import type { Design } from '../../src/solver/design/document.ts';
import type { Report } from '../../src/solver/report.ts';
import { solve } from '../../src/solver/solve.ts';
import curved from '../../web/demos/curved-race.json' with { type: 'json' };
import downwind from '../../web/demos/downwind.json' with { type: 'json' };
import flat from '../../web/demos/flat-race.json' with { type: 'json' };

const DEMOS = { curved, downwind, flat };

export interface Sample {
  design: Design;
  report: Report;
}

/** A demo with some keys changed ("wing.droop.tipAngle"), and its report. */
export function sample(demo: keyof typeof DEMOS = 'curved', changes: Record<string, unknown> = {}): Sample {
  const start = structuredClone(DEMOS[demo]) as unknown as Design;
  const design = Object.entries(changes).reduce(
    (made, [path, value]) => withValueAt(made, path, value),
    start,
  );
  return { design, report: solve(design) };
}

/** A demo alone. */
export function sampleDesign(demo: keyof typeof DEMOS = 'curved'): Design {
  return structuredClone(DEMOS[demo]) as unknown as Design;
}
