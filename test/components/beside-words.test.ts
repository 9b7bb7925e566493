import { expect } from '@open-wc/testing';
import { describe, it } from 'vitest';
import { sayDifference } from '../../src/components/beside/difference-words.ts';
import { wordsOf } from '../../src/components/beside/key-words.ts';
import { differencesOf } from '../../src/session/differences.ts';
import { withValueAt } from '../../src/session/paths.ts';
import type { UnitSystem } from '../../src/session/units.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { RANGES } from '../../src/solver/design/ranges.ts';
import { BLOCKS } from '../designs/blocks.ts';
import { sampleDesign } from '../support/sample-report.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ').replaceAll('\u202f', ' ');

/** The lines between the demo with some values and with others: "wing span 680 mm → 720 mm". */
function lines(from: Record<string, unknown>, to: Record<string, unknown>, units: UnitSystem = 'workshop') {
  const put = (values: Record<string, unknown>) =>
    Object.entries(values).reduce(
      (design, [path, value]) => withValueAt(design, path, value),
      sampleDesign(),
    );
  return differencesOf(put(from), put(to)).map((difference) => {
    const { what, from: before, to: after } = sayDifference(difference, units);
    return plain(`${what} ${before} → ${after}`);
  });
}

describe('differences in words', () => {
  it('are in the units of the user', () => {
    const from = { 'wing.length': { kind: 'tipToTip', value: 0.68 } };
    const to = { 'wing.length': { kind: 'tipToTip', value: 0.72 } };
    expect(lines(from, to, 'si')).to.deep.equal(['wing span 0.680 m → 0.720 m']);
    expect(lines(from, to)).to.deep.equal(['wing span 680 mm → 720 mm']);
    expect(lines(from, to, 'imperial')).to.deep.equal(['wing span 26.8 in → 28.3 in']);
  });

  it('name the length by what is kept', () => {
    const unrolled = { 'wing.length': { kind: 'unrolled', value: 0.7 } };
    expect(lines(unrolled, { 'wing.length': { kind: 'unrolled', value: 0.72 } })).to.deep.equal([
      'wing length, unrolled 700 mm → 720 mm',
    ]);
    expect(lines(unrolled, { 'wing.length': { kind: 'tipToTip', value: 0.68 } })).to.deep.equal([
      'wing length 700 mm unrolled → 680 mm tip to tip',
    ]);
  });

  it('show as many decimals as tell two numbers apart', () => {
    const [line] = lines({ 'wing.incidence': 1.001 }, { 'wing.incidence': 1.002 });
    expect(line).to.equal('wing incidence 1.001° → 1.002°');
  });

  it('describe laws', () => {
    expect(
      lines(
        {
          'wing.droop': { kind: 'arc', tipAngle: 26 },
          'wing.chord': { kind: 'taper', root: 0.12, tip: 0.05 },
        },
        {
          'wing.droop': { kind: 'late', tipDrop: 0.06, from: 0.6, power: 1.5 },
          'wing.chord': { kind: 'formula', expression: '0.12 * sqrt(1 - eta^2)' },
        },
      ),
    ).to.deep.equal([
      'wing chord straight taper, 120 mm to 50.0 mm → formula 0.12 * sqrt(1 - eta^2)',
      'wing droop arc, 26.0° at the tip → late, tip drop 60.0 mm, from 60.0 % of the half, power 1.50',
    ]);
    const at = (middle: number) => ({
      kind: 'points',
      at: [
        [0, 0.12],
        [0.5, middle],
        [1, 0.04],
      ],
    });
    expect(lines({ 'wing.chord': at(0.1) }, { 'wing.chord': at(0.095) })).to.deep.equal([
      'wing chord at 50.0 % of the half 100 mm → 95.0 mm',
    ]);
  });

  it('tell what is there and what is not', () => {
    expect(lines({ 'brief.depth': 0.5 }, { 'brief.depth': null })).to.deep.equal([
      'depth 500 mm → deep water',
    ]);
    expect(lines({}, { stabilizer: null })[0]).to.match(
      /^stabilizer \d+ mm long, \d+ mm behind the wing → none$/,
    );
  });

  it('have words for every number of the document', () => {
    const holes = Object.keys(RANGES).filter((key) => {
      if (/^\*\.\*|\.points\.|\.length\.|Scale$|^marks|bench\.|asBuilt\.\*\.at|^defects/.test(key))
        return false; // told as a whole
      const path = key
        .replace('at.*.1', 'at.2.1')
        .replace(/^(wanted\.(?:limits|free)\..*)\*$/, '$1least')
        .replace('tipDrop.*', 'tipDrop.port')
        .replaceAll('*', 'wing');
      return wordsOf(path) === path;
    });
    expect(holes).to.deep.equal([]);
  });

  it('have words for every block', () => {
    for (const [path, value] of Object.entries(BLOCKS)) {
      const other = withValueAt(sampleDesign(), path, value) as Design;
      for (const difference of differencesOf(sampleDesign(), other))
        expect(sayDifference(difference, 'workshop').what, difference.path).to.not.match(
          /[a-z]\.[a-z]|[a-z][A-Z]/,
        );
    }
  });
});
