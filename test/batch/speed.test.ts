import { describe, expect, it } from 'vitest';
import { runBatch } from '../../src/batch/batch.ts';
import { changed, goodDocument } from '../designs/change.ts';
import { memoryFiles } from './memory-files.ts';

const pulled = JSON.stringify(changed(goodDocument(), { 'brief.sidePull': { share: 0.2, height: 2.2 } }));
const files = () => memoryFiles({ 'pulled.json': pulled });

function table(line: string): { head: string[]; rows: Array<Record<string, number>> } {
  const { code, output, error } = runBatch(line.split(' '), files());
  expect([code, error]).toEqual([0, '']);
  const [head, ...lines] = output.trimEnd().split('\n');
  const names = head!.split(',');
  return {
    head: names,
    rows: lines.map((text) =>
      Object.fromEntries(text.split(',').map((cell, k) => [names[k]!, Number(cell)])),
    ),
  };
}

const SOURCES =
  'wingInduced stabilizerInduced wingProfile stabilizerProfile strutProfile fuselage junctions spray wave'.split(
    ' ',
  );

describe('speed', () => {
  it('has the columns of the contract in order, extra ones only before liftToDrag', () => {
    const { head } = table('speed curved-race.json --from 8 --to 10 --count 2');
    const first = 'speed alpha incidence stance CLwing stallMargin'.split(' ');
    const last = ['liftToDrag', ...SOURCES, 'drag', 'cavitationMargin'];
    expect(head.slice(0, first.length)).toEqual(first);
    expect(head.slice(-last.length)).toEqual(last);
  });

  it('drags of every row add up to its drag, whose moments and power follow', () => {
    const { rows } = table('speed curved-race.json --from 6 --to 14 --count 3');
    expect(rows.map(({ speed }) => speed)).toEqual([6, 10, 14]);
    for (const row of rows) {
      const sum = SOURCES.reduce((total, name) => total + row[name]!, 0);
      expect(sum).toBeCloseTo(row.drag!, 9);
      expect(row.power!).toBeCloseTo(row.drag! * row.speed!, 9);
      expect(row.stance!).toBe(0.14); // kept, unless told otherwise
    }
  });

  it('balances the sideways pull when asked: the strut unloaded leans the lift by atan(0.2 / 0.9)', () => {
    const { rows, head } = table('speed pulled.json --from 9 --to 9 --count 1 --side strut');
    expect(head).toContain('leeway');
    expect(rows[0]!.heel!).toBeCloseTo((-Math.atan(0.2 / 0.9) * 180) / Math.PI, 1);
    expect(Math.abs(rows[0]!.strutForce!)).toBeLessThan(0.01);
    const upright = table('speed pulled.json --from 9 --to 9 --count 1 --side 0').rows[0]!;
    expect(upright.heel).toBe(0);
    expect(upright.leeway!).toBeGreaterThan(0);
  });

  it('leaves the cells of a speed empty that cannot be run, and says where no rider can stand', () => {
    const { output } = runBatch('speed curved-race.json --from 0.5 --to 0.5 --count 1'.split(' '), files());
    const [head, row] = output.split('\n');
    expect(row).toMatch(/^0\.5,+$/);
    expect(row!.split(',')).toHaveLength(head!.split(',').length);
    const { rows } = table('speed curved-race.json --from 9 --to 9 --count 1 --fix incidence');
    expect(rows[0]!.reachable).toBe(1);
  });

  it.each([
    ['--from 8 --to 9', /^--count: found ""/],
    ['--from 8 --to 31 --count 2', '--to: found 31, allowed 0.5 to 30 m/s'],
    ['--from 8 --to 9 --count 2 --fix feet', '--fix: found "feet", allowed stance or incidence'],
    [
      '--from 8 --to 9 --count 2 --side 70',
      '--side: found 70, allowed strut, roll or a heel from -60 to 60 degrees',
    ],
    [
      '--from 8 --to 9 --count 2 --side up',
      '--side: found "up", allowed strut, roll or a heel from -60 to 60 degrees',
    ],
  ])('refuses %s with one line', (words, message) => {
    const { code, output, error } = runBatch(`speed curved-race.json ${words}`.split(' '), files());
    expect([code, output]).toEqual([2, '']);
    if (typeof message === 'string') expect(error).toBe(message);
    else expect(error).toMatch(message);
  });
});
