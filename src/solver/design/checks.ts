/**
 * What the schema cannot say of a planform's laws: points that run from root to tip, formulas that compile and stay in
 * range, a chord that is there all the way to the tip.
 */
import { compileFormula, type Formula, FormulaError, LONGEST_FORMULA } from '../numeric/formula.ts';
import type { Design, Pair, Planform } from './document.ts';
import type { Problem } from './problem.ts';
import { describeRange, isWithin, RANGES, type Range } from './ranges.ts';

const SAMPLES = 200; // intervals of eta at which a formula is looked at, both ends included

const LAWS = {
  chord: RANGES['*.chord.at.*.1'],
  sweep: RANGES['*.sweep.at.*.1'],
  droop: RANGES['*.droop.at.*.1'],
  twist: RANGES['*.twist.at.*.1'],
} as const satisfies Record<string, Range>;

type LawName = keyof typeof LAWS;

/** The first law of the planform that breaks a rule; null when all hold. `path` is the planform's key. */
export function lawProblem(planform: Planform, path: string): Problem | null {
  for (const name of Object.keys(LAWS) as LawName[]) {
    const law = planform[name];
    const at = `${path}.${name}`;
    const problem =
      law.kind === 'points'
        ? pointsProblem(law.at, name, `${at}.at`)
        : law.kind === 'formula'
          ? formulaProblem(law.expression, name, `${at}.expression`)
          : null;
    if (problem) return problem;
  }
  return null;
}

/** Plies along and at 45 degrees that come to more than the whole laminate; null where they do not. */
export function laminateProblem({ laminate }: Design): Problem | null {
  for (const part of ['strut', 'fuselage', 'wing', 'stabilizer'] as const) {
    const { along, diagonal } = laminate?.[part] ?? {};
    if (along === undefined || diagonal === undefined || along + diagonal <= 1 + 1e-9) continue;
    const allowed = `shares along and at 45 degrees of up to 1 together (${along} is along)`;
    return { path: `laminate.${part}.diagonal`, found: `${diagonal}`, allowed };
  }
  return null;
}

function pointsProblem(points: readonly Pair[], name: LawName, path: string): Problem | null {
  for (const [k, [eta, value]] of points.entries()) {
    const before = points[k - 1]?.[0];
    const isLast = k === points.length - 1;
    if (k === 0 && eta !== 0)
      return { path: `${path}.0.0`, found: `${eta}`, allowed: '0, as points run from the root at eta 0' };
    if (before !== undefined && eta <= before)
      return {
        path: `${path}.${k}.0`,
        found: `${eta} after ${before}`,
        allowed: 'eta that rises from point to point',
      };
    if (isLast && eta !== 1)
      return { path: `${path}.${k}.0`, found: `${eta}`, allowed: '1, as points run to the tip at eta 1' };
    if (name === 'chord' && value === 0 && !isLast)
      return { path: `${path}.${k}.1`, found: '0', allowed: 'above 0 to 1 m, 0 at the tip only' };
  }
  return null;
}

function formulaProblem(expression: string, name: LawName, path: string): Problem | null {
  if (expression.length > LONGEST_FORMULA)
    return { path, found: `${expression.length} characters`, allowed: `up to ${LONGEST_FORMULA}` };
  let formula: Formula;
  try {
    formula = compileFormula(expression);
  } catch (error) {
    if (!(error instanceof FormulaError)) throw error;
    return { path, found: error.found, allowed: error.allowed };
  }
  const range: Range = LAWS[name];
  for (let k = 0; k <= SAMPLES; k++) {
    const eta = k / SAMPLES;
    const value = formula(eta);
    const found = `${value} at eta ${eta}`;
    if (!Number.isFinite(value)) return { path, found, allowed: 'a finite number at every eta from 0 to 1' };
    const isInside = isWithin(range, value) && !(name === 'chord' && value === 0 && k < SAMPLES);
    if (isInside) continue;
    const allowed =
      name === 'chord' ? 'above 0 to 1 m, 0 at the tip only' : `${describeRange(range)} at every eta`;
    return { path, found, allowed };
  }
  return null;
}
