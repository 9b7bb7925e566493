import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { compileFormula, FormulaError, LONGEST_FORMULA } from '../../../src/solver/numeric/formula.ts';

vi.setConfig({ testTimeout: 60_000 });

describe('a formula', () => {
  // The usual rules of arithmetic: powers first and from the right, then signs, products, sums, comparisons.
  it.each<[string, number, number]>([
    ['2 + 3 * 4', 0, 14],
    ['(2 + 3) * 4', 0, 20],
    ['2^3^2', 0, 512],
    ['-eta^2', 3, -9],
    ['2^-1', 0, 0.5],
    ['8 / 4 / 2', 0, 1],
    ['7 - 4 - 2', 0, 1],
    ['- - eta', 0.5, 0.5],
    ['+eta', 0.5, 0.5],
    ['1.5e-1 + .5 + 2.', 0, 2.65],
    ['sqrt(16) + abs(-2)', 0, 6],
    ['min(3, eta, 2) + max(1, eta)', 0.25, 1.25],
    ['sin(pi / 2) + cos(0) + tan(0)', 0, 2],
    ['exp(log(3))', 0, 3],
    ['eta < 0.5 ? 1 : 2', 0.25, 1],
    ['eta < 0.5 ? 1 : 2', 0.5, 2],
    ['eta <= 0.5 ? 1 : 2', 0.5, 1],
    ['eta >= 0.5 ? 1 : 2', 0.5, 1],
    ['eta > 0.5 ? 1 : 2', 0.5, 2],
    ['eta == 0.5 ? 1 : 2', 0.5, 1],
    ['eta != 0.5 ? 1 : 2', 0.5, 2],
    ['0.2 < eta <= 0.5 ? 1 : 2', 0.5, 1],
    ['0.2 < eta <= 0.5 ? 1 : 2', 0.2, 2],
    ['eta < 0.3 ? 1 : eta < 0.6 ? 2 : 3', 0.5, 2],
    ['0.1 * (eta < 0.5) + 0.05 * (eta >= 0.5)', 0.7, 0.05],
  ])('%s at %d is %d', (text, eta, expected) => {
    expect(compileFormula(text)(eta)).toBeCloseTo(expected, 12);
  });

  it('answers with what arithmetic gives where it has no finite value', () => {
    expect(compileFormula('1 / eta')(0)).toBe(Number.POSITIVE_INFINITY);
    expect(compileFormula('sqrt(0 - 1)')(0)).toBeNaN();
  });
});

describe('anything else is refused', () => {
  it.each<[string, string, string]>([
    ['an assignment', 'eta = 1', 'found "=" at place 5'],
    ['a function definition', 'eta(x) = x', 'found "x" at place 5'],
    ['an unknown name', '0.1 * width', 'found "width" at place 7'],
    ['a name of the language below', 'constructor', 'found "constructor" at place 1'],
    ['the way to an object', 'eta.constructor', 'found "." at place 4'],
    ['a prototype', '__proto__', 'found "__proto__" at place 1'],
    ['a function of the parser', 'import(1)', 'found "import" at place 1'],
    ['a list', '[1, 2]', 'found "[" at place 1'],
    ['an object', '{a: 1}', 'found "{" at place 1'],
    ['a text', '"eta"', 'found "\\"" at place 1'],
    ['two statements', 'eta; eta', 'found ";" at place 4'],
    ['a line break', 'eta\neta', 'found "\\n" at place 4'],
    ['a comment', 'eta # note', 'found "#" at place 5'],
    ['a factorial', 'eta!', 'found "!" at place 4'],
    ['a percentage', '5%', 'found "%" at place 2'],
    ['a range', '1:2', 'found "1:2"'],
    ['a call of what is no function', 'eta(1)', 'found "eta(1)"'],
    ['a function without its parentheses', '2 * cos', 'found "cos" without its parentheses'],
    ['a product without a sign', '2 eta', 'found "2 eta"'],
    ['a number too large', '1e999', 'found "Infinity"'],
    ['a name for infinity', 'Infinity', 'found "Infinity" at place 1'],
    ['a truth', 'true', 'found "true" at place 1'],
    ['a number of another base', '0x10', 'found "x10" at place 2'],
    ['too few numbers', 'sqrt()', 'found sqrt with 0 numbers, allowed 1'],
    ['too many numbers', 'log(8, 2)', 'found log with 2 numbers, allowed 1'],
    ['a formula cut short', '2 * (eta', 'found an unfinished formula at place 9'],
    ['a word out of place', '1, 2', 'found ", 2" where it does not belong at place 2'],
    ['no text', '  ', 'found no text'],
    ['a letter of another alphabet', 'η', 'found "η" at place 1'],
    ['too many characters', '1+'.repeat(300), 'found 600 characters, allowed up to 400'],
    ['parentheses too deep', `${'('.repeat(50)}1${')'.repeat(50)}`, 'found parentheses 41 deep at place 41'],
    ['nothing but signs', '-'.repeat(390), 'found an unfinished formula'],
    ['too many signs', `${'-'.repeat(390)}1`, 'found more than 300 numbers, names and operators'],
  ])('%s', (_what, text, message) => {
    expect(() => compileFormula(text)).toThrow(FormulaError);
    expect(() => compileFormula(text)).toThrow(message);
  });

  it('names what is allowed', () => {
    expect(() => compileFormula('width')).toThrow(/allowed numbers, .*eta, pi, sqrt/);
  });
});

describe('hostile text', () => {
  const pieces = [
    'eta',
    'pi',
    'sqrt',
    'min',
    '(',
    ')',
    ',',
    '?',
    ':',
    '<',
    '^',
    '-',
    '*',
    '/',
    '1',
    '.',
    'e',
    ' ',
    '==',
  ];

  it('answers or refuses', () => {
    const texts = fc.oneof(
      fc.string({ maxLength: 500 }),
      fc.array(fc.constantFrom(...pieces), { maxLength: 200 }).map((words) => words.join('')),
      fc.tuple(fc.constantFrom(...pieces), fc.nat(200)).map(([word, count]) => word.repeat(count)),
    );
    fc.assert(
      fc.property(texts, (text) => {
        try {
          const value = compileFormula(text)(0.5);
          expect(typeof value).toBe('number');
          expect(text.length).toBeLessThanOrEqual(LONGEST_FORMULA + 60);
        } catch (error) {
          expect(error, text).toBeInstanceOf(FormulaError);
          expect((error as Error).message).toMatch(/^found .+, allowed .+$/);
        }
      }),
      { numRuns: 1500 },
    );
  });

  it('leaves nothing behind that a formula could change', () => {
    const formula = compileFormula('eta + 1');
    for (const text of ['pi = 3', 'sqrt(x) = 1', 'eta = 5']) expect(() => compileFormula(text)).toThrow();
    expect(formula(1)).toBe(2);
    expect(compileFormula('pi')(0)).toBe(Math.PI);
  });
});
