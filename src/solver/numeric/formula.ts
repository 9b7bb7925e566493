/**
 * Formulas in eta, as a user types them: parsed once, checked against a closed list, evaluated often.
 * Allowed: numbers, + - * / ^, comparisons, a ? b : c, eta, pi, sqrt abs min max sin cos tan exp log; radians.
 */
import {
  absDependencies,
  addDependencies,
  cosDependencies,
  create,
  divideDependencies,
  equalDependencies,
  expDependencies,
  type FactoryFunctionMap,
  largerDependencies,
  largerEqDependencies,
  logDependencies,
  type MathNode,
  maxDependencies,
  minDependencies,
  multiplyDependencies,
  parseDependencies,
  piDependencies,
  powDependencies,
  sinDependencies,
  smallerDependencies,
  smallerEqDependencies,
  sqrtDependencies,
  subtractDependencies,
  tanDependencies,
  unaryMinusDependencies,
  unaryPlusDependencies,
  unequalDependencies,
} from 'mathjs/number';

const math = create(
  {
    absDependencies,
    addDependencies,
    cosDependencies,
    divideDependencies,
    equalDependencies,
    expDependencies,
    largerDependencies,
    largerEqDependencies,
    logDependencies,
    maxDependencies,
    minDependencies,
    multiplyDependencies,
    parseDependencies,
    piDependencies,
    powDependencies,
    sinDependencies,
    smallerDependencies,
    smallerEqDependencies,
    sqrtDependencies,
    subtractDependencies,
    tanDependencies,
    unaryMinusDependencies,
    unaryPlusDependencies,
    unequalDependencies,
  } as Record<string, FactoryFunctionMap>,
  {},
);

const NAMES = new Set(['eta', 'pi']);
const FUNCTIONS = new Set(['sqrt', 'abs', 'min', 'max', 'sin', 'cos', 'tan', 'exp', 'log']);
const OPERATORS = new Set(['+', '-', '*', '/', '^', '<', '<=', '>', '>=', '==', '!=']);
const ALLOWED =
  'numbers, + - * / ^, comparisons, a ? b : c, eta, pi and sqrt abs min max sin cos tan exp log, angles in radians';
const LONGEST = 400;
const DEEPEST = 40;
const MOST_NODES = 200;

/** A formula that cannot be used; the message says what was found, where, and what is allowed. */
export class FormulaError extends Error {}

/** The formula as a function of eta. Throws FormulaError for anything outside the closed list. */
export function compileFormula(text: string): (eta: number) => number {
  const node = parseFormula(text);
  const code = node.compile();
  const scope = { eta: 0 };
  return (eta) => {
    scope.eta = eta;
    return Number(code.evaluate(scope));
  };
}

function parseFormula(text: string): MathNode {
  if (text.length > LONGEST)
    throw new FormulaError(`found a formula of ${text.length} characters, allowed up to ${LONGEST}`);
  let depth = 0;
  for (const char of text) {
    if (char === '(' || char === '[' || char === '{') depth++;
    if (char === ')' || char === ']' || char === '}') depth--;
    if (depth > DEEPEST) throw new FormulaError(`found brackets nested deeper than ${DEEPEST}`);
  }
  let node: MathNode;
  try {
    node = math.parse!(text) as MathNode;
  } catch (error) {
    throw new FormulaError(`cannot read "${text}": ${error instanceof Error ? error.message : String(error)}`);
  }
  let count = 0;
  node.traverse((part, path, parent) => {
    if (++count > MOST_NODES) throw new FormulaError(`found more than ${MOST_NODES} terms in one formula`);
    checkNode(part, path, parent);
  });
  return node;
}

function checkNode(node: MathNode, path: string, parent: MathNode): void {
  const refuse = (): never => {
    throw new FormulaError(`found "${node.toString().slice(0, 60)}", allowed ${ALLOWED}`);
  };
  const { type } = node;
  if (type === 'ConstantNode') {
    if (typeof (node as unknown as { value: unknown }).value !== 'number') refuse();
  } else if (type === 'SymbolNode') {
    const { name } = node as unknown as { name: string };
    const called = parent?.type === 'FunctionNode' && path === 'fn';
    if (!(called ? FUNCTIONS : NAMES).has(name)) refuse();
  } else if (type === 'OperatorNode') {
    if (!OPERATORS.has((node as unknown as { op: string }).op)) refuse();
  } else if (type === 'FunctionNode') {
    if (!(node as unknown as { args: unknown[] }).args.length) refuse();
  } else if (type !== 'ParenthesisNode' && type !== 'ConditionalNode' && type !== 'RelationalNode') refuse();
}
