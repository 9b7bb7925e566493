import { describe, expect, it } from 'vitest';
import { differencesOf } from '../../src/session/differences.ts';
import { withValueAt } from '../../src/session/paths.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { readDesignValue } from '../../src/solver/design/read.ts';
import { demo } from './designs.ts';

/** The demo with paths set, as long as the reader takes it. */
function changed(changes: Record<string, unknown>, start = demo()): Design {
  const made = Object.entries(changes).reduce(
    (design, [path, value]) => withValueAt(design, path, value),
    start,
  );
  const reading = readDesignValue(made);
  if (!reading.ok) throw new Error(reading.message);
  return reading.design;
}

const paths = (changes: Record<string, unknown>, start = demo()) =>
  differencesOf(start, changed(changes, start)).map(({ path }) => path);

describe('differences between documents', () => {
  it('are none between a document and its copy under another name', () => {
    expect(paths({ name: 'Another', marks: { hold: 3 }, 'notes.ride': 'fine' })).toEqual([]);
  });

  it('are told number by number, with both values', () => {
    const start = demo();
    expect(differencesOf(start, changed({ 'brief.allUpMass': 88, 'stabilizer.incidence': -1.25 }))).toEqual([
      { path: 'brief.allUpMass', from: start.brief.allUpMass, to: 88 },
      { path: 'stabilizer.incidence', from: start.stabilizer!.incidence, to: -1.25 },
    ]);
  });

  it('tell a law of the same kind by its numbers, of another kind as a whole', () => {
    const arc = changed({ 'wing.droop': { kind: 'arc', tipAngle: 20 } });
    expect(paths({ 'wing.droop': { kind: 'arc', tipAngle: 24 } }, arc)).toEqual(['wing.droop.tipAngle']);
    expect(paths({ 'wing.droop': { kind: 'arc', tipDrop: 0.05 } }, arc)).toEqual(['wing.droop']);
    expect(paths({ 'wing.droop': { kind: 'vee', tipAngle: 20 } }, arc)).toEqual(['wing.droop']);
  });

  it('tell points at the same places point by point, at others as a whole', () => {
    const at = [
      [0, 0.12],
      [0.5, 0.1],
      [1, 0.04],
    ];
    const start = changed({ 'wing.chord': { kind: 'points', at } });
    const moved = changed({ 'wing.chord.at.1.1': 0.095 }, start);
    expect(differencesOf(start, moved)).toEqual([
      { path: 'wing.chord.at.1.1', from: 0.1, to: 0.095, eta: 0.5 },
    ]);
    expect(paths({ 'wing.chord.at.1.0': 0.6 }, start)).toEqual(['wing.chord']);
  });

  it('tell a part that one of them lacks as one thing', () => {
    expect(paths({ stabilizer: null })).toEqual(['stabilizer']);
  });

  it('take a key left out for its usual value', () => {
    const { strut } = demo();
    const { x: _, ...without } = strut!;
    const start = changed({ strut: without });
    expect(paths({ 'strut.x': 0 }, start)).toEqual([]);
    expect(differencesOf(start, changed({ 'strut.x': 0.02 }, start))).toEqual([
      { path: 'strut.x', from: 0, to: 0.02 },
    ]);
    expect(paths({ laminate: { safety: 3 } })).toEqual([]);
    expect(paths({ laminate: { safety: 4 } })).toEqual(['laminate.safety']);
  });

  it('name keys that are not ours', () => {
    const start = demo();
    const marked = { ...start, hull: { colour: 'red' } } as Design;
    expect(differencesOf(start, marked)).toEqual([{ path: 'hull.colour', from: undefined, to: 'red' }]);
  });
});
