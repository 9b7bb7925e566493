/**
 * The order of imports: data flows one way, design -> geometry -> section -> vortex -> forces -> studies -> the front
 * doors -> batch and workshop. A file may import from its own part and from parts before it, types included. Session and
 * components show what the solver answers: they take its types, and values of design and geometry alone, so that a
 * dragged curve follows the pointer before the forces arrive.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const SOURCE = new URL('../../src/', import.meta.url);

/** Parts of the solver in order; the longest match counts, files before folders. */
const ORDER = [
  ['solver/numeric/', 'solver/report.ts'],
  ['solver/design/'],
  ['solver/geometry/'],
  ['solver/design/read.ts'], // the gate draws the surfaces to see that they fit the water
  ['solver/section/'],
  ['solver/structure/'], // beams and springs know nothing of the flow that loads them
  ['solver/vortex/'],
  ['solver/forces/'],
  ['solver/studies/'],
  ['solver/'],
  ['workshop/'],
  ['session/study-registry.ts'], // runs in the worker; the page takes its types
  ['batch/'],
];
const VIEWS = ['session/', 'components/'];
const OPEN_TO_VIEWS = ORDER.slice(0, 4).flat();

interface Import {
  from: string; // importing file, from src/
  to: string; // imported file from src/, or a package
  isType: boolean;
  isPackage: boolean;
}

function importsOf(file: string, text: string): Import[] {
  const lines = text.matchAll(
    /^\s*(?:import|export)\s+(type\s)?[^;'"]*?from\s+['"]([^'"]+)['"]|^\s*import\s+['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]/gm,
  );
  return [...lines].map(([, type, named, bare, lazy]) => {
    const target = named ?? bare ?? lazy ?? '';
    const isPackage = !target.startsWith('.');
    const to = isPackage ? target : new URL(target, `file:///${file}`).pathname.slice(1);
    return { from: file, to, isType: type !== undefined, isPackage };
  });
}

/** Place in the order, or -1 for a file outside it. */
function rankOf(file: string): number {
  const matches = ORDER.flat().filter((part) => file.startsWith(part));
  const longest = matches.reduce((best, part) => (part.length > best.length ? part : best), '');
  return ORDER.findIndex((parts) => parts.includes(longest));
}

const inViews = (file: string) => rankOf(file) < 0 && VIEWS.some((part) => file.startsWith(part));

/** Why an import is against the order; null when it is not. */
function violation({ from, to, isType, isPackage }: Import): string | null {
  const line = `${from} imports ${to}`;
  if (isPackage) return packageViolation(from, to) && `${line}: ${packageViolation(from, to)}`;
  if (inViews(from)) {
    if (inViews(to))
      return from.startsWith('session/') && to.startsWith('components/')
        ? `${line}: session comes first`
        : null;
    const rank = rankOf(to);
    const isOpen = rank >= 0 && ORDER[rank]!.some((part) => OPEN_TO_VIEWS.includes(part));
    return isType || isOpen ? null : `${line}: views take only types from here`;
  }
  const [own, other] = [rankOf(from), rankOf(to)];
  if (other < 0) return `${line}: outside the solver`;
  return other > own ? `${line}: it comes later` : null;
}

function packageViolation(from: string, to: string): string | null {
  if (to.startsWith('node:'))
    return from === 'batch/main.ts' ? null : 'the disk is met in batch/main.ts only';
  if (!from.startsWith('solver/')) return null;
  const allowed: Record<string, string> = {
    'mathjs/number': 'solver/numeric/formula.ts',
    quadprog: 'solver/numeric/',
    valibot: 'solver/design/',
  };
  return from.startsWith(allowed[to] ?? 'nowhere') ? null : 'the solver keeps outside code in one place';
}

const files = readdirSync(SOURCE, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => file.endsWith('.ts'));
const imports = files.flatMap((file) => importsOf(file, readFileSync(new URL(file, SOURCE), 'utf8')));

describe('imports', () => {
  it('are found in the source', () => {
    expect(imports.length).toBeGreaterThan(100);
    expect(imports).toContainEqual({
      from: 'solver/sweep.ts',
      to: 'solver/solve.ts',
      isType: false,
      isPackage: false,
    });
  });

  it('all follow the order', () => {
    expect(imports.map(violation).filter((line) => line !== null)).toEqual([]);
  });

  it.each<[string, string, string]>([
    ['solver/design/laws.ts', "import { surfaceOf } from '../geometry/surface.ts';", 'it comes later'],
    ['solver/design/laws.ts', "import type { Report } from '../solve.ts';", 'it comes later'],
    ['solver/geometry/strips.ts', "import { readDesign } from '../design/read.ts';", 'it comes later'],
    ['solver/forces/drag.ts', "export { study } from '../studies/speed.ts';", 'it comes later'],
    ['solver/studies/speed.ts', "import { solve } from '../solve.ts';", 'it comes later'],
    ['solver/solve.ts', "import { runBatch } from '../batch/batch.ts';", 'it comes later'],
    [
      'solver/vortex/flow.ts',
      "import type { DesignStore } from '../../session/store.ts';",
      'outside the solver',
    ],
    ['solver/vortex/flow.ts', "import { html } from 'lit';", 'the solver keeps outside code in one place'],
    [
      'solver/geometry/surface.ts',
      "import { parse } from 'mathjs/number';",
      'the solver keeps outside code in one place',
    ],
    ['batch/batch.ts', "import { readFileSync } from 'node:fs';", 'the disk is met in batch/main.ts only'],
    ['components/plan-view.ts', "import { solve } from '../solver/solve.ts';", 'views take only types'],
    [
      'components/plan-view.ts',
      "const flow = await import('../solver/vortex/flow.ts');",
      'views take only types',
    ],
    [
      'session/store.ts',
      "import type { AppShell } from '../components/app-shell.ts';",
      'session comes first',
    ],
  ])('against the order are told: %s with %s', (file, line, reason) => {
    expect(importsOf(file, line).map(violation)).toEqual([expect.stringContaining(reason)]);
  });

  it.each<[string, string]>([
    ['solver/geometry/surface.ts', "import type { Planform } from '../design/document.ts';"],
    ['solver/design/read.ts', "import { surfaceOf } from '../geometry/surface.ts';"],
    ['solver/sweep.ts', "import {\n  solve,\n} from './solve.ts';"],
    ['components/plan-view.ts', "import type { Report } from '../solver/report.ts';"],
    ['components/plan-view.ts', "import { surfaceOf } from '../solver/geometry/surface.ts';"],
    ['components/plan-view.ts', "import { valueAt } from '../session/paths.ts';"],
  ])('with the order are not: %s with %s', (file, line) => {
    expect(importsOf(file, line).map(violation)).toEqual([null]);
  });
});
