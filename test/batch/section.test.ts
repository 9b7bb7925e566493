import { describe, expect, it } from 'vitest';
import { runBatch } from '../../src/batch/batch.ts';
import { sectionPolar } from '../../src/solver/section/polar.ts';
import { memoryFiles } from './memory-files.ts';

const run = (line: string, texts: Record<string, string> = {}) =>
  runBatch(line.split(' '), memoryFiles(texts));

function table(line: string, texts?: Record<string, string>) {
  const { code, output, error } = run(line, texts);
  expect([code, error]).toEqual([0, '']);
  const [head, ...lines] = output.trimEnd().split('\n');
  expect(head).toBe('alpha,cl,cd,cm,cpMin,transitionUpper,transitionLower,state');
  return lines.map((text) => text.split(','));
}

/** The NACA 0012 from its trailing edge over the top to the nose and back below, y by Jacobs, NACA Report 460. */
const SYMMETRIC = Array.from({ length: 81 }, (_, k) => {
  const x = ((k - 40) / 40) ** 2;
  const half = 0.2969 * Math.sqrt(x) - 0.126 * x - 0.3516 * x ** 2 + 0.2843 * x ** 3 - 0.1015 * x ** 4;
  return `${x} ${Math.sign(40 - k) * 0.6 * half + 0}`;
}).join('\n');

describe('section', () => {
  it('prints a line an angle, both ends included', { timeout: 30_000 }, () => {
    const rows = table('section 2412 --reynolds 5e5 --alpha -2:6:5 --clarity coastal');
    expect(rows.map(([alpha]) => alpha)).toEqual(['-2', '0', '2', '4', '6']);
    const { points } = sectionPolar(
      { kind: 'naca4', code: '2412' },
      { reynolds: 5e5, clarity: 'coastal', alphas: [-2, 0, 2, 4, 6].map((deg) => deg * (Math.PI / 180)) },
    );
    rows.forEach((row, k) => {
      const { cl, cd, cm, cpMin, upper, lower } = points[k]!.figures!;
      expect(row.slice(1, 7).map(Number)).toEqual([cl, cd, cm, cpMin, upper.transition, lower.transition]);
      expect(row[7]).toBe('converged');
    });
  });

  it('takes one angle, and a trip', { timeout: 30_000 }, () => {
    const [free] = table('section 0012 --reynolds=6e6 --alpha=4:4:1');
    const [tripped] = table('section 0012 --reynolds=6e6 --alpha=4:4:1 --trip 0.05');
    expect(Number(tripped![5])).toBeCloseTo(0.05, 2);
    expect(Number(tripped![2])).toBeGreaterThan(Number(free![2]));
  });

  it('leaves cells empty where the flow does not settle, and says why', { timeout: 60_000 }, () => {
    const rows = table('section 0006 --reynolds 1e5 --alpha 0:30:11');
    const missing = rows.filter((row) => row[7] !== 'converged');
    expect(missing.length).toBeGreaterThan(0);
    for (const row of missing) {
      expect(row.slice(1, 7)).toEqual(['', '', '', '', '', '']);
      expect(['did not settle', 'not tried behind stall']).toContain(row[7]);
    }
  });

  it('reads a section from a file of coordinates', { timeout: 30_000 }, () => {
    const [row] = table('section mine.txt --reynolds 1e6 --alpha 2:2:1', { 'mine.txt': SYMMETRIC });
    expect(Number(row![1])).toBeCloseTo(0.22, 1); // 2 pi alpha: thin-airfoil theory
  });

  it.each([
    ['section --reynolds 1e6 --alpha 0:4:5', 'section: found no CODE_OR_FILE'],
    ['section 2412 0012 --reynolds 1e6 --alpha 0:4:5', 'section: found "0012" after the section'],
    ['section 2400 --reynolds 1e6 --alpha 0:4:5', 'section: found "2400", allowed four digits such as 2412'],
    ['section none.txt --reynolds 1e6 --alpha 0:4:5', 'none.txt: cannot be read (no such file or folder)'],
    ['section 2412 --alpha 0:4:5', '--reynolds: found none, allowed 10000 to 100000000'],
    ['section 2412 --reynolds 10 --alpha 0:4:5', '--reynolds: found 10, allowed 10000 to 100000000'],
    ['section 2412 --reynolds 1e6', '--alpha: found none, allowed FROM:TO:COUNT'],
    ['section 2412 --reynolds 1e6 --alpha 4', '--alpha: found "4", allowed FROM:TO:COUNT'],
    ['section 2412 --reynolds 1e6 --alpha 0:50:3', '--alpha: found "0:50:3", allowed'],
    ['section 2412 --reynolds 1e6 --alpha 0:5:0', '--alpha: found 0 as COUNT, allowed a whole number from 1'],
    [
      'section 2412 --reynolds 1e6 --alpha 0:5:2 --clarity muddy',
      '--clarity: found "muddy", allowed clean, coastal, silty',
    ],
    ['section 2412 --reynolds 1e6 --alpha 0:5:2 --trip 2', '--trip: found 2, allowed 0 to 1'],
    ['section flat.txt --reynolds 1e6 --alpha 0:5:2', /^flat\.txt: /],
  ])('%s', (line, message) => {
    const { code, output, error } = run(line, { 'flat.txt': '1 0\n0.5 0\n0 0\n' });
    expect([code, output]).toEqual([2, '']);
    if (typeof message === 'string') expect(error).toContain(message);
    else expect(error).toMatch(message);
  });
});
