/** `propose`: the written document against separate runs of the other commands, and the line that names a clash. */
import { describe, expect, it, vi } from 'vitest';
import { runBatch } from '../../src/batch/batch.ts';
import { changed, goodDocument } from '../designs/change.ts';
import { memoryFiles } from './memory-files.ts';

vi.setConfig({ testTimeout: 60_000 }); // some hundred designs, more slowly on a busy machine

const FREE = { length: { least: 0.6, most: 0.86 }, area: { least: 0.045, most: 0.085 } };

function run(line: string, wanted: Record<string, unknown>) {
  const files = memoryFiles({ 'mine.json': JSON.stringify(changed(goodDocument(), { wanted })) });
  return { ...runBatch(line.split(' '), files), written: files.written };
}

/** A column of the speed table of a document at one speed. */
function speedColumn(text: string, speed: number, fix: string, column: string): number {
  const files = memoryFiles({ 'one.json': text });
  const words = `speed one.json --from ${speed} --to ${speed} --count 1 --fix ${fix}`;
  const [head, row] = runBatch(words.split(' '), files).output.trim().split('\n');
  return Number(row!.split(',')[head!.split(',').indexOf(column)]);
}

describe('propose', () => {
  const limits = {
    holdIndex: { least: 9 },
    span: { most: 0.78 },
    stallMargin: { least: 0.05 },
    cavitationMargin: { least: -0.5 },
  };
  const free = { ...FREE, droop: { least: 5, most: 45 } };
  const { code, error, output, written } = run('propose mine.json --seed 2 --out out.json', { limits, free });
  const text = written.get('out.json') ?? '';
  const answer = JSON.parse(output || '{}');

  it('prints the table and the limits that bind, and writes the document', () => {
    expect([code, error]).toEqual([0, '']);
    expect(Object.keys(answer)).toEqual(
      expect.arrayContaining(['weights', 'table', 'binding', 'easings', 'seed', 'evaluations']),
    );
    expect(answer.seed).toBe(2);
    expect(answer.binding.map(({ figure }: { figure: string }) => figure)).toContain('holdIndex');
    expect(JSON.parse(text).wanted).toEqual({ limits, free });
  });

  it('holds every limit to a thousandth, by solve and speed on what it wrote', () => {
    const solved = JSON.parse(runBatch(['solve', 'one.json'], memoryFiles({ 'one.json': text })).output);
    const { takeOff, cruise, top } = JSON.parse(text).brief.speeds;
    expect(solved.stability.holdIndex).toBeGreaterThan(0.999 * limits.holdIndex.least);
    expect(solved.geometry.wing.span).toBeLessThan(1.001 * limits.span.most);
    for (const fix of ['stance', 'incidence']) {
      expect(speedColumn(text, takeOff, fix, 'stallMargin')).toBeGreaterThan(
        0.999 * limits.stallMargin.least,
      );
      expect(speedColumn(text, top, fix, 'cavitationMargin')).toBeGreaterThan(
        1.001 * limits.cavitationMargin.least,
      );
    }
    const drag = speedColumn(text, cruise, 'incidence', 'drag');
    expect(answer.table.drag.cruise.proposal / drag).toBeCloseTo(1, 4);
  });

  it('says in one line which limits clash, and writes nothing', () => {
    const clash = { holdIndex: { least: 40 }, span: { most: 0.7 } };
    const refused = run('propose mine.json --out out.json', { limits: clash, free: FREE });
    expect(refused).toMatchObject({ code: 2, output: '' });
    expect(refused.error).toMatch(/^wanted\.limits: found .*holdIndex at least 40.* at once, allowed limits/);
    expect(refused.written.size).toBe(0);
  });

  it('refuses a seed that is none', () => {
    expect(run('propose mine.json --seed 1.5', {}).error).toBe(
      '--seed: found 1.5, allowed a whole number from 0 to 1000000',
    );
  });
});
