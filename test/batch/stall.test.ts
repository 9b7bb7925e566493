import { describe, expect, it } from 'vitest';
import { runBatch } from '../../src/batch/batch.ts';
import type { Brief } from '../../src/solver/design/document.ts';
import { changed, goodDocument } from '../designs/change.ts';
import { memoryFiles } from './memory-files.ts';

const depths = { takeOff: 0.4, cruise: 0.6, top: 0.6 };
const deeper = JSON.stringify(changed(goodDocument(), { 'brief.depths': depths }));

interface Mark {
  alpha: number;
  CL: number;
  CLwing: number;
  eta: number;
  speed: number;
}

interface Answer {
  condition: { depth: number; speed: number; weightCarried: number };
  usable: Mark;
  first: Mark;
  greatest: Mark & { isPassed: boolean };
  angles: Array<{
    alpha: number;
    state: string;
    CL: number | null;
    speed: number | null;
    cl: number[] | null;
  }>;
  strips: Array<{ eta: number; y: number; usableCl: number; greatestCl: number }>;
}

const run = (words: string) => runBatch(`stall ${words}`.split(' '), memoryFiles({ 'deeper.json': deeper }));

describe('stall', { timeout: 60_000 }, () => {
  it('prints the marks in order, and every angle with its state', () => {
    const { code, output, error } = run('curved-race.json');
    expect([code, error]).toEqual([0, '']);
    const found = JSON.parse(output) as Answer;
    expect(found.usable.alpha).toBeLessThan(found.first.alpha);
    expect(found.greatest.isPassed).toBe(true);
    expect(found.greatest.speed).toBeLessThan(found.usable.speed);
    for (const { state, CL, speed, cl } of found.angles) {
      const isSettled = state === 'converged';
      expect(isSettled || state === 'did not settle').toBe(true);
      expect(CL === null).toBe(!isSettled);
      if (!isSettled) expect([speed, cl]).toEqual([null, null]);
      else expect(cl).toHaveLength(found.strips.length);
    }
    // The first strip passes its usable lift between two angles of the list.
    const over = found.angles.find(({ cl }) => cl?.some((value, k) => value > found.strips[k]!.usableCl))!;
    expect(over.alpha).toBeGreaterThan(found.usable.alpha);
    expect(over.alpha - found.usable.alpha).toBeLessThan(0.51);
  });

  it('takes the depth of the speed asked for', () => {
    const { takeOff, cruise } = (goodDocument().brief as Brief).speeds;
    const at = (words: string) => (JSON.parse(run(words).output) as Answer).condition.depth;
    expect(at('deeper.json')).toBe(depths.takeOff);
    expect(at(`deeper.json --speed ${takeOff}`)).toBe(depths.takeOff);
    expect(at(`deeper.json --speed ${cruise}`)).toBe(depths.cruise);
  });

  it('refuses a speed out of range in one line', () => {
    const { code, output, error } = run('curved-race.json --speed 99');
    expect([code, output]).toEqual([2, '']);
    expect(error).toBe('--speed: found 99, allowed 0.5 to 30 m/s');
  });
});
