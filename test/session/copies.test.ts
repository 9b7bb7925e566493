import { describe, expect, it } from 'vitest';
import { COPY_UPGRADES, COPY_VERSION, unpackCopy, unpackNote } from '../../src/session/copies.ts';
import { type UpgradeCase, unexercised } from '../support/upgrades.ts';

const text = '{"name":"Old"}';
const trail = { past: [{ label: 'a', state: { name: 'Before' } }], future: [] };

/** One case for each step: what was stored, and what it becomes. */
const CASES: readonly UpgradeCase[] = [
  { to: 2, before: { text, time: 7, trail }, after: { text, time: 7, trail, line: 'Old' } },
];

describe('stored copies of earlier versions', () => {
  it('have a case for every step', () => {
    expect(unexercised(COPY_UPGRADES, CASES)).toEqual([]);
    expect(COPY_UPGRADES.length).toBe(COPY_VERSION - 1);
  });

  it.each(CASES)('are brought up to version $to', ({ to, before, after }) => {
    expect(COPY_UPGRADES.find((step) => step.to === to)!.change(before)).toEqual(after);
  });

  it('of version 1 are read: a copy, and a note with its whole history', () => {
    const stored = { text, time: 7, trail };
    expect(unpackCopy(stored)).toEqual({ ok: true, copy: { text, time: 7, line: 'Old', trail } });
    const whole = {
      time: null,
      past: { from: 0, to: 0, more: trail.past },
      future: { from: 0, to: 0, more: [] },
    };
    expect(unpackNote(JSON.stringify(stored))).toEqual({
      ok: true,
      copy: { text, time: 7, line: 'Old', since: whole },
    });
    expect(unpackNote(JSON.stringify({ text, time: 7 }))).toMatchObject({ copy: { since: null } });
  });

  it.each([
    ['a document that is no JSON', '{'],
    ['a document without a name', '{}'],
    ['a list', '[]'],
  ])('with %s have no line, and the reader says what is wrong with it', (_what, broken) => {
    expect(unpackCopy({ text: broken, time: 7 })).toMatchObject({ ok: true, copy: { line: '' } });
  });
});
