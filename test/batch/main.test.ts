/** The command as a user starts it: through npm, from any folder. */
import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
const folder = fileURLToPath(new URL('../designs/good/', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'downcurve-batch-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

interface Ended {
  code: number;
  output: string;
  error: string;
}

function npm(words: string[], cwd: string): Promise<Ended> {
  const isWindows = process.platform === 'win32';
  return new Promise((resolve) => {
    execFile(
      isWindows ? 'npm.cmd' : 'npm',
      ['--prefix', root, 'run', '-s', 'batch', '--', ...words],
      { cwd, shell: isWindows, maxBuffer: 1 << 26 },
      (fault, output, error) =>
        resolve({ code: typeof fault?.code === 'number' ? fault.code : 0, output, error }),
    );
  });
}

describe('npm run -s batch', () => {
  it('finds files against the caller’s folder and keeps standard output clean', async () => {
    const { code, output, error } = await npm(
      ['solve', 'flat-race.json', '--alpha', '-2', '--strips=8'],
      folder,
    );
    expect([code, error]).toEqual([0, '']);
    expect(JSON.parse(output)).toMatchObject({ condition: { alpha: -2, depth: 0.55 } });
  }, 60_000);

  it('ends in code 2 with one line on standard error', async () => {
    const { code, output, error } = await npm(['solve', 'nowhere.json'], folder);
    expect({ code, output, error }).toEqual({
      code: 2,
      output: '',
      error: 'nowhere.json: cannot be read (no such file or folder)\n',
    });
  }, 60_000);

  it('writes files against the caller’s folder', async () => {
    const file = join(folder, 'flat-race.json');
    const words = ['sweep', file, '--vary', 'wing.twist.tip=-2:0:3', '--strips', '8', '--out', 'table.csv'];
    expect(await npm(words, scratch)).toEqual({ code: 0, output: '', error: '' });
    expect(readFileSync(join(scratch, 'table.csv'), 'utf8').split('\n')).toHaveLength(5);
  }, 60_000);
});
