/** Scaling a formula by a factor without growing it: a factor written by an earlier scaling is taken up, not nested. */

const SCALED = /^(-?[\d.]+(?:e[-+]?\d+)?) \* \((.*)\)$/;

/** `factor` times the formula, as "1.25 * (26 * eta)"; a factor of one leaves the formula as it was typed. */
export function scaledFormula(expression: string, factor: number): string {
  const { factor: before, inner } = splitFactor(expression);
  return withFactor(inner, before * factor);
}

/** The formula under a factor written by `scaledFormula`, and that factor (one where there is none). */
export function splitFactor(expression: string): { factor: number; inner: string } {
  const match = SCALED.exec(expression);
  return match && isBalanced(match[2]!)
    ? { factor: Number(match[1]), inner: match[2]! }
    : { factor: 1, inner: expression };
}

export function withFactor(inner: string, factor: number): string {
  const short = Number(factor.toPrecision(6));
  return short === 1 ? inner : `${short} * (${inner})`;
}

/** Whether no bracket closes before it opens, so that the outer pair may be taken off. */
function isBalanced(text: string): boolean {
  let open = 0;
  for (const sign of text) {
    if (sign === '(') open++;
    if (sign === ')' && --open < 0) return false;
  }
  return open === 0;
}
