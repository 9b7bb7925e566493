/** docs/batch.md and the README's commands, run as they stand; every figure the page names is there. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { runBatch, runCommand } from '../../src/batch/batch.ts';
import { COMMANDS, LATE_COMMANDS } from '../../src/batch/commands.ts';
import { memoryFiles } from './memory-files.ts';

const root = new URL('../../', import.meta.url);
const textOf = (path: string) => readFileSync(fileURLToPath(new URL(path, root)), 'utf8');
const page = textOf('docs/batch.md');

/** Files as a user in the top folder has them; `design.json` stands for a design of one's own. */
function userFiles() {
  const files = memoryFiles();
  return {
    ...files,
    read: (path: string) => textOf(path === 'design.json' ? 'web/demos/curved-race.json' : path),
  };
}

const commandsOf = (text: string) =>
  [...text.matchAll(/^ *npm run -s batch -- (.+)$/gm)].map(([, words]) => words!.trim());

describe('the page about the batch command', () => {
  it.each([...commandsOf(page), ...commandsOf(textOf('README.md'))])(
    '%s',
    async (line) => {
      const files = userFiles();
      const { code, output, error } = await runCommand(line.split(/ +/), files);
      expect([code, error]).toEqual([0, '']);
      expect(output.length + files.written.size).toBeGreaterThan(0);
    },
    90_000, // propose solves some thousand designs
  );

  it('shows each command at work', () => {
    const shown = commandsOf(page).map((line) => line.split(' ')[0]);
    expect(new Set(shown)).toEqual(new Set(['help', ...Object.keys({ ...COMMANDS, ...LATE_COMMANDS })]));
  });

  it('names the columns of the speed table', () => {
    const words = ['speed', 'web/demos/curved-race.json', '--from', '8', '--to', '8', '--count', '1'];
    const [head] = runBatch(words, userFiles()).output.split('\n');
    for (const column of head!.split(',')) expect(page).toContain(`\`${column}\``);
  });

  const { output } = runBatch(['solve', 'web/demos/curved-race.json', '--strips', '8'], userFiles());
  const report: unknown = JSON.parse(output);
  const figures = [...page.matchAll(/^\| `([a-z]\w*(?:\.\w+)+)` \|/gm)].map(([, name]) => name!);
  const figureAt = (name: string) =>
    name.split('.').reduce<unknown>((branch, key) => (branch as Record<string, unknown>)?.[key], report);

  it('names figures that exist', () => {
    expect(figures.length).toBeGreaterThan(50);
    for (const name of figures) expect(figureAt(name), name).toBeDefined();
  });

  it('leaves none out', () => {
    const scalars = (value: unknown, name: string): string[] => {
      if (typeof value !== 'object' || value === null) return [name];
      return Object.entries(value).flatMap(([key, inner]) => scalars(inner, name ? `${name}.${key}` : key));
    };
    const { strips, ...rest } = report as { strips: { wing: object[] } };
    const isNamed = (name: string) => figures.some((known) => name === known || name.startsWith(`${known}.`));
    expect(scalars(rest, '').filter((name) => !isNamed(name))).toEqual([]);
    for (const key of Object.keys(strips.wing[0]!)) expect(page).toContain(`\`${key}\``);
    for (const key of ['CYbeta', 'Clbeta', 'Cnbeta', 'CYp', 'Clp', 'Cnp', 'CYr', 'Clr', 'Cnr'])
      expect(page).toContain(`\`${key}\``);
  });
});
