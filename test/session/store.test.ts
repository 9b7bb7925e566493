import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EditDetail } from '../../src/session/edits.ts';
import { valueAt, withValueAt } from '../../src/session/paths.ts';
import { DesignStore } from '../../src/session/store.ts';
import { demo, readLoosely } from './designs.ts';

const edit = (path: string, value: unknown, phase: EditDetail['phase'], label = path): EditDetail => ({
  changes: [{ path, value }],
  label,
  phase,
});
const LENGTH = 'wing.length.value';
const newStore = () => new DesignStore(demo(), readLoosely);

describe('paths', () => {
  it('changes a copy, shares the rest and reaches into lists', () => {
    const before = { a: { b: [1, 2] }, c: { d: 3 } };
    const after = withValueAt(before, 'a.b.1', 9);
    expect(after).toEqual({ a: { b: [1, 9] }, c: { d: 3 } });
    expect(before.a.b[1]).toBe(2);
    expect(after.c).toBe(before.c);
  });

  it('gives the document itself back when nothing changes', () => {
    const before = { a: { b: 1 } };
    expect(withValueAt(before, 'a.b', 1)).toBe(before);
  });

  it('takes a key away, makes missing branches, finds nothing where there is nothing', () => {
    expect(withValueAt({ a: { b: 1, c: 2 } }, 'a.b', undefined)).toEqual({ a: { c: 2 } });
    expect(withValueAt({}, 'a.b', 1)).toEqual({ a: { b: 1 } });
    expect(valueAt({ a: null }, 'a.b.c')).toBeUndefined();
    expect(valueAt({}, 'constructor.name')).toBeUndefined();
  });
});

describe('store', () => {
  it('applies an edit, counts the revision and tells its subscribers', () => {
    const store = newStore();
    const heard: string[] = [];
    const leave = store.subscribe((change) => heard.push(change));
    expect(store.edit(edit(LENGTH, 0.8, 'settled'))).toBeNull();
    expect(store.design.wing.length.value).toBe(0.8);
    expect(store.revision).toBe(1);
    leave();
    store.undo();
    expect(heard).toEqual(['settled']);
  });

  it('refuses an edit with the reason and keeps the design', () => {
    const store = newStore();
    const before = store.design;
    expect(store.edit(edit(LENGTH, 70, 'settled'))).toContain('allowed 0.05 to 5');
    expect(store.design).toBe(before);
    expect(store.undoLabel).toBeNull();
  });

  it('makes one step of a drag, named after it', () => {
    const store = newStore();
    for (const value of [0.75, 0.76, 0.77]) store.edit(edit(LENGTH, value, 'live', 'wing span'));
    expect(store.undoLabel).toBeNull(); // not while it moves
    store.undo();
    expect(store.design.wing.length.value).toBe(0.77);
    store.edit(edit(LENGTH, 0.78, 'settled', 'wing span'));
    expect(store.undoLabel).toBe('wing span');
    store.undo();
    expect(store.design).toEqual(demo());
    expect(store.redoLabel).toBe('wing span');
    store.redo();
    expect(store.design.wing.length.value).toBe(0.78);
  });

  it('returns to the mark on Escape and leaves what could be redone', () => {
    const store = newStore();
    store.edit(edit(LENGTH, 0.8, 'settled', 'first'));
    store.undo();
    store.edit(edit(LENGTH, 0.9, 'live', 'second'));
    store.edit({ changes: [], label: 'second', phase: 'cancelled' });
    expect(store.design).toEqual(demo());
    expect(store.redoLabel).toBe('first');
  });

  it('keeps the last good state when a drag runs into a refusal', () => {
    const store = newStore();
    store.edit(edit(LENGTH, 4.9, 'live', 'drag'));
    expect(store.edit(edit(LENGTH, 5.1, 'settled', 'drag'))).not.toBeNull();
    expect(store.design.wing.length.value).toBe(4.9);
    expect(store.undoLabel).toBe('drag');
  });

  it('opens no gesture with a move that is refused: undo stays', () => {
    const store = newStore();
    store.edit(edit(LENGTH, 5, 'settled', 'longest'));
    expect(store.edit(edit(LENGTH, 5.1, 'live', 'nudge'))).not.toBeNull();
    expect(store.isMoving).toBe(false);
    expect(store.undoLabel).toBe('longest');
    store.undo();
    expect(store.design).toEqual(demo());
  });

  it('ends a gesture that was left open when another begins', () => {
    const store = newStore();
    store.edit(edit(LENGTH, 0.8, 'live', 'left open'));
    store.edit(edit('name', 'Other', 'settled', 'name'));
    store.undo();
    expect(store.undoLabel).toBe('left open');
  });

  it('makes no step of an edit that changes nothing', () => {
    const store = newStore();
    store.edit(edit('wing.droop', { kind: 'arc', tipAngle: 26 }, 'settled'));
    expect(store.undoLabel).toBeNull();
  });

  it('can take back the opening of another design', () => {
    const store = newStore();
    store.replace({ ...demo(), name: 'Opened' }, 'open a file');
    store.undo();
    expect(store.design.name).toBe(demo().name);
  });

  it('reads kept steps when it goes back to them, and leaves out one that no longer reads', () => {
    const kept = (value: number) => ({
      ...demo(),
      wing: { ...demo().wing, length: { kind: 'unrolled', value } },
    });
    const past = [0.6, 99, 0.7].map((value) => ({ label: `after ${value}`, state: kept(value) }));
    const store = new DesignStore(demo(), readLoosely, { past, future: [] });
    const heard: string[] = [];
    store.subscribe((change) => heard.push(change));
    store.undo();
    expect(store.design.wing.length.value).toBe(0.7);
    store.undo();
    expect(store.design.wing.length.value).toBe(0.7);
    expect(store.undoLabel).toBe('after 0.6');
    store.undo();
    expect(store.design.wing.length.value).toBe(0.6);
    expect(heard).toEqual(['replaced', 'unreadable', 'replaced']);
    store.redo();
    store.redo();
    expect(store.design).toEqual(demo());
  });

  it('goes back to the start and forward to the end through any edits', () => {
    const step = fc.record({
      value: fc.double({ min: -1, max: 6, noNaN: true }),
      phase: fc.constantFrom<EditDetail['phase']>('live', 'settled', 'cancelled'),
      label: fc.constantFrom('one', 'two'),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
        const store = newStore();
        for (const { value, phase, label } of steps) store.edit(edit(LENGTH, value, phase, label));
        store.edit(edit('name', 'end', 'settled', 'end'));
        const end = store.design;
        while (store.undoLabel !== null) store.undo();
        expect(store.design).toEqual(demo());
        while (store.redoLabel !== null) store.redo();
        expect(store.design).toEqual(end);
      }),
      { seed: 11, numRuns: 200 },
    );
  });
});
