/**
 * Expressions in eta: numbers, + - * / ^, comparisons (1 where they hold, else 0) and ?:, eta, pi and a closed list of
 * functions, angles in radians. The library parses; its tree is turned here into plain functions, so that a name
 * outside the list has nothing to reach: no scope, no objects, no factories. Length, depth and size are bounded.
 */
import {
  type ConditionalNode,
  type ConstantNode,
  create,
  type FactoryFunctionMap,
  type FunctionNode,
  type MathNode,
  type OperatorNode,
  type ParenthesisNode,
  parseDependencies,
  type RelationalNode,
  type SymbolNode,
} from 'mathjs/number';

export type Formula = (eta: number) => number;

/** A text that is no formula: what was found, where in the text, and what is allowed. */
export class FormulaError extends Error {
  constructor(
    readonly found: string,
    readonly allowed: string,
  ) {
    super(`found ${found}, allowed ${allowed}`);
  }
}

/** Characters a document may use; a study may wrap such a formula in a factor, hence the larger bound below. */
export const LONGEST_FORMULA = 400;
const LONGEST_WRAPPED = LONGEST_FORMULA + 60;
const DEEPEST = 40; // parentheses inside one another
const MOST_PARTS = 300; // numbers, names, operators and calls together

const ALLOWED =
  'numbers, + - * / ^, comparisons, ?:, parentheses, eta, pi, sqrt, abs, min, max, sin, cos, tan, exp and log';

const FUNCTIONS: Readonly<
  Record<string, { call: (...values: number[]) => number; fewest: number; most: number }>
> = {
  sqrt: { call: Math.sqrt, fewest: 1, most: 1 },
  abs: { call: Math.abs, fewest: 1, most: 1 },
  sin: { call: Math.sin, fewest: 1, most: 1 },
  cos: { call: Math.cos, fewest: 1, most: 1 },
  tan: { call: Math.tan, fewest: 1, most: 1 },
  exp: { call: Math.exp, fewest: 1, most: 1 },
  log: { call: Math.log, fewest: 1, most: 1 },
  min: { call: Math.min, fewest: 1, most: 20 },
  max: { call: Math.max, fewest: 1, most: 20 },
};

const OPERATORS: Readonly<Record<string, (a: number, b: number) => number>> = {
  add: (a, b) => a + b,
  subtract: (a, b) => a - b,
  multiply: (a, b) => a * b,
  divide: (a, b) => a / b,
  pow: (a, b) => a ** b,
  smaller: (a, b) => Number(a < b),
  smallerEq: (a, b) => Number(a <= b),
  larger: (a, b) => Number(a > b),
  largerEq: (a, b) => Number(a >= b),
  equal: (a, b) => Number(a === b),
  unequal: (a, b) => Number(a !== b),
};

// One word of the text: number, name, operator. Anything else is refused before the parser sees it.
const WORD = /[ \t]+|(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?|[A-Za-z_]\w*|[<>=!]=|[-+*/^(),?:<>]/y;

const math = create({ parseDependencies } as Record<string, FactoryFunctionMap>, {});

/**
 * Compiles a formula once; the result is a plain function that may answer NaN or infinity.
 * Throws FormulaError for anything outside the closed list.
 */
export function compileFormula(text: string): Formula {
  checkWords(text);
  return new Builder(text).build(parse(text));
}

function checkWords(text: string): void {
  if (text.length > LONGEST_WRAPPED)
    throw new FormulaError(`${text.length} characters`, `up to ${LONGEST_FORMULA}`);
  let depth = 0;
  for (let at = 0; at < text.length; at = WORD.lastIndex) {
    WORD.lastIndex = at;
    const word = WORD.exec(text)?.[0];
    if (word === undefined) throw refusal(quote(String.fromCodePoint(text.codePointAt(at)!)), at);
    if (/^[A-Za-z_]/.test(word) && !isKnown(word)) throw refusal(quote(word), at);
    if (word === '(' && ++depth > DEEPEST)
      throw new FormulaError(`parentheses ${depth} deep at place ${at + 1}`, `up to ${DEEPEST}`);
    if (word === ')') depth--;
  }
  if (text.trim() === '') throw new FormulaError('no text', ALLOWED);
}

function isKnown(name: string): boolean {
  return name === 'eta' || name === 'pi' || Object.hasOwn(FUNCTIONS, name);
}

function parse(text: string): MathNode {
  try {
    return math.parse!(text);
  } catch (error) {
    const at = (error as { char?: unknown }).char;
    if (typeof at !== 'number') throw new FormulaError(quote(text), ALLOWED);
    const found = text.slice(at - 1).trim();
    throw refusal(found ? `${quote(found)} where it does not belong` : 'an unfinished formula', at - 1);
  }
}

function refusal(found: string, at: number): FormulaError {
  return new FormulaError(`${found} at place ${at + 1}`, ALLOWED);
}

/** The text on one line in quotation marks, cut where it is long. */
function quote(text: string): string {
  return JSON.stringify(text.length > 24 ? `${text.slice(0, 24)}...` : text);
}

/** Turns the parser's tree into functions; each kind of node that is not named here is refused. */
class Builder {
  #parts = 0;

  constructor(private readonly text: string) {}

  build(node: MathNode): Formula {
    if (++this.#parts > MOST_PARTS)
      throw new FormulaError(`more than ${MOST_PARTS} numbers, names and operators`, `up to ${MOST_PARTS}`);
    switch (node.type) {
      case 'ConstantNode':
        return this.#constant(node as ConstantNode);
      case 'SymbolNode':
        return this.#name((node as SymbolNode).name);
      case 'ParenthesisNode':
        return this.build((node as ParenthesisNode).content);
      case 'OperatorNode':
        return this.#operator(node as OperatorNode);
      case 'RelationalNode':
        return this.#chain(node as RelationalNode);
      case 'FunctionNode':
        return this.#call(node as FunctionNode);
      case 'ConditionalNode': {
        const { condition, trueExpr, falseExpr } = node as ConditionalNode;
        const [test, yes, no] = [this.build(condition), this.build(trueExpr), this.build(falseExpr)];
        return (eta) => (test(eta) ? yes(eta) : no(eta));
      }
      default:
        throw this.#refuse(node);
    }
  }

  #constant(node: ConstantNode): Formula {
    const value: unknown = node.value;
    if (typeof value !== 'number' || !Number.isFinite(value)) throw this.#refuse(node);
    return () => value;
  }

  #name(name: string): Formula {
    if (name === 'eta') return (eta) => eta;
    if (name === 'pi') return () => Math.PI;
    throw new FormulaError(`"${name}" without its parentheses`, `${name}(...)`);
  }

  #operator(node: OperatorNode): Formula {
    const { fn, args, implicit } = node as OperatorNode & { implicit: boolean };
    if (implicit) throw new FormulaError(quote(node.toString()), 'a * between its parts');
    const a = this.build(args[0]!);
    if (fn === 'unaryMinus') return (eta) => -a(eta);
    if (fn === 'unaryPlus') return a;
    if (!Object.hasOwn(OPERATORS, fn)) throw this.#refuse(node);
    const combine = OPERATORS[fn]!;
    const b = this.build(args[1]!);
    return (eta) => combine(a(eta), b(eta));
  }

  /** "0.2 < eta <= 0.5" holds where each neighbouring pair does. */
  #chain({ conditionals, params }: RelationalNode): Formula {
    const values = params.map((param) => this.build(param));
    const tests = conditionals.map((name) => OPERATORS[name]!);
    return (eta) => Number(tests.every((test, k) => test(values[k]!(eta), values[k + 1]!(eta))));
  }

  #call(node: FunctionNode): Formula {
    const name = (node.fn as SymbolNode).name;
    if (!Object.hasOwn(FUNCTIONS, name)) throw this.#refuse(node);
    const { call, fewest, most } = FUNCTIONS[name]!;
    const count = node.args.length;
    if (count < fewest || count > most) {
      throw new FormulaError(
        `${name} with ${count} numbers`,
        fewest === most ? `${fewest}` : `${fewest} to ${most}`,
      );
    }
    const [a, ...others] = node.args.map((argument) => this.build(argument));
    if (others.length === 0) return (eta) => call(a!(eta));
    return (eta) => others.reduce((value, other) => call(value, other(eta)), a!(eta));
  }

  #refuse(node: MathNode): FormulaError {
    const shown = node.toString();
    const at = this.text.indexOf(shown);
    return at < 0 ? new FormulaError(quote(shown), ALLOWED) : refusal(quote(shown), at);
  }
}
