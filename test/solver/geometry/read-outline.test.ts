/** Coordinates from plain text: the orders and dresses they come in, and what is refused, with its line. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pair } from '../../../src/solver/design/document.ts';
import { outlineProblem } from '../../../src/solver/geometry/contour.ts';
import { outlinePoints, thicknessRatio } from '../../../src/solver/geometry/outline.ts';
import { readOutline } from '../../../src/solver/geometry/read-outline.ts';

function loop(code = '2412', count = 81): Pair[] {
  const { x, y } = outlinePoints({ kind: 'naca4', code }, count);
  // Straight above each x, as published tables are: the thickness of a cambered code stands square to its mean line.
  return Array.from(x, (at, k): Pair => [at, y[k]!]);
}
const write = (points: readonly Pair[], separator = ' ') =>
  points.map(([x, y]) => `${x.toFixed(6)}${separator}${y.toFixed(6)}`).join('\n');

function read(text: string) {
  const reading = readOutline(text);
  if (!reading.ok) throw new Error(reading.message);
  return reading;
}
const refusal = (text: string): string => {
  const reading = readOutline(text);
  return reading.ok ? '' : reading.message;
};

const symmetric = loop('0012');
const [upper, lower] = [symmetric.slice(0, 41), symmetric.slice(40)];
const expected = read(write(symmetric)).outline.points;

function expectSame(text: string) {
  const { points } = read(text).outline;
  const isTurned = points[5]![1] < 0;
  const along = isTurned ? [...points].reverse() : points;
  expect(along).toHaveLength(expected.length);
  for (const [k, [x, y]] of along.entries()) {
    expect(x).toBeCloseTo(expected[k]![0], 5);
    expect(y).toBeCloseTo(expected[k]![1], 5);
  }
}

describe('a pasted section', () => {
  it('keeps the points as they are written when they stand on a unit chord', () => {
    const { outline, remarks } = read(`Harbour 12\n${write(symmetric)}`);
    expect(outline.name).toBe('Harbour 12');
    expect(outline.points).toEqual(symmetric.map(([x, y]) => [Number(x.toFixed(6)), Number(y.toFixed(6))]));
    expect(remarks).toEqual([]);
    expect(thicknessRatio(outline)).toBeCloseTo(0.12, 4);
  });

  it.each<[string, string]>([
    ['the other way round', write([...symmetric].reverse())],
    ['as two sides from the nose', `${write([...upper].reverse())}\n${write(lower)}`],
    ['as two sides from the tail', `${write(upper)}\n${write([...lower].reverse())}`],
    ['as two sides with a count of each above', `41. 41.\n${write([...upper].reverse())}\n${write(lower)}`],
    ['begun at the nose', write([...lower, ...upper.slice(0, -1)])],
    ['with tabs', write(symmetric, '\t')],
    ['with commas', write(symmetric, ', ')],
    ['with semicolons and decimal commas', write(symmetric, ';').replaceAll('.', ',')],
    ['with blanks and decimal commas', write(symmetric, '  ').replaceAll('.', ',')],
    [
      'with a third column of zeros',
      symmetric.map(([x, y]) => `${x.toFixed(6)} ${y.toFixed(6)} 0.0`).join('\r\n'),
    ],
    [
      'with comments',
      `# mine\n% a second\n\n${write(upper)} // the nose\n; other side\n! here\nlower surface\n${write(lower.slice(1))}`,
    ],
    ['in millimetres', write(symmetric.map(([x, y]): Pair => [150 * x + 20, 150 * y - 4]))],
    ['with the trailing edge closed by a point midway', write([[1, 0], ...symmetric, [1, 0]])],
  ])('%s is the same section', (_how, text) => expectSame(text));

  it('is turned onto its chord line and says so', () => {
    const [c, s] = [Math.cos(0.05), Math.sin(0.05)];
    const turned = symmetric.map(([x, y]): Pair => [120 * (c * x - s * y), 120 * (s * x + c * y)]);
    const text = write(turned);
    expectSame(text);
    expect(read(text).remarks.join(' ')).toMatch(/120 long.*2\.9°/);
  });

  it('of few points is taken with a remark', () => {
    expect(read(write(loop('0012', 21))).remarks.join()).toContain('Only 21 points');
  });
});

describe('a text that is no section', () => {
  const lines = write(symmetric).split('\n');
  const withLine = (k: number, text: string) => lines.map((line, i) => (i === k ? text : line)).join('\n');
  const crossed = symmetric.map(([x, y], k): Pair => [x, k < 12 ? -y - 0.01 : y]);

  it.each<[string, string, RegExp]>([
    ['nothing', '', /^found 0 points, allowed 10 to 1000$/],
    ['prose', 'a wing\nfor the lake\n', /^found 0 points/],
    [
      'a letter for a digit',
      withLine(11, '0.9x1 0.02'),
      /^line 12: found "0.9x1 0.02", allowed two numbers, x and y$/,
    ],
    ['a lone number', withLine(11, '0.95'), /^line 12: found "0.95" alone/],
    ['four numbers', withLine(11, '0.9 0.1 0 0'), /^line 12: found .* allowed two numbers/],
    ['a third number that changes', withLine(11, '0.95 0.01 7'), /^line 12: found a third number/],
    ['a figure out of all size', withLine(11, '1e300 0.02'), /^line 12: found 1e\+300/],
    ['five points', lines.slice(0, 5).join('\n'), /^found 5 points/],
    [
      'too many points',
      Array.from({ length: 1200 }, (_, k) => `${k} 1`).join('\n'),
      /^found 1200 points, allowed 10 to 1000/,
    ],
    ['one side', write(upper), /^found one side alone/],
    [
      'an open outline',
      lines.slice(0, 70).join('\n'),
      /^lines 1 and 70: the ends are .* apart, allowed a closed outline/,
    ],
    [
      'two loops',
      `${lines.join('\n')}\n${lines.slice(1).join('\n')}`,
      /^line 81: x turns back again, allowed a single loop/,
    ],
    [
      'an outline that crosses itself',
      write(crossed),
      /^lines 1\d and \d+: the outline crosses itself near x 0\.\d+/,
    ],
    ['a line without thickness', write(symmetric.map(([x, y]): Pair => [x, 0.001 * y])), /^found an area of/],
    ['points all at one x', write(symmetric.map(([, y]): Pair => [0.5, y])), /^found the same x/],
  ])('%s is refused in one sentence', (_what, text, message) => {
    expect(refusal(text)).toMatch(message);
    expect(refusal(text)).not.toContain('\n');
  });
});

describe('any text', () => {
  it('is answered by a section that a document can hold, or by one sentence', { timeout: 60_000 }, () => {
    const numbers = fc.array(fc.tuple(fc.double({ min: -2, max: 2 }), fc.double({ min: -1, max: 1 })), {
      maxLength: 60,
    });
    const torn = fc.tuple(fc.nat(80), fc.string({ unit: 'binary', maxLength: 12 }));
    const texts = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 400 }),
      numbers.map((pairs) => pairs.map(([x, y]) => `${x} ${y}`).join('\n')),
      torn.map(([at, piece]) => {
        const text = write(symmetric);
        return text.slice(0, 15 * at) + piece + text.slice(15 * at);
      }),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const reading = readOutline(text);
        if (reading.ok) expect(outlineProblem(reading.outline.points)).toBeNull();
        else expect(reading.message).toMatch(/^[^\n]+$/);
      }),
      { numRuns: 400 },
    );
  });

  it('of a section moved, turned and drawn at any size is that section', { timeout: 60_000 }, () => {
    const cases = fc.record({
      thickness: fc.integer({ min: 5, max: 20 }),
      size: fc.double({ min: 0.1, max: 500, noNaN: true }),
      turn: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
      x: fc.double({ min: -100, max: 100, noNaN: true }),
      isBack: fc.boolean(),
    });
    fc.assert(
      fc.property(cases, ({ thickness, size, turn, x, isBack }) => {
        const points = loop(`00${String(thickness).padStart(2, '0')}`, 121).map(
          ([at, y]): Pair => [
            x + size * (Math.cos(turn) * at - Math.sin(turn) * y),
            size * (Math.sin(turn) * at + Math.cos(turn) * y),
          ],
        );
        const text = (isBack ? points.reverse() : points).map(([a, b]) => `${a} ${b}`).join('\n');
        const reading = readOutline(text);
        if (!reading.ok) throw new Error(reading.message);
        expect(thicknessRatio(reading.outline)).toBeCloseTo(thickness / 100, 3);
      }),
      { numRuns: 150 },
    );
  });
});
