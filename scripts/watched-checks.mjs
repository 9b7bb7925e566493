/**
 * The published checks with an eye on the solver below them: which check calls which of its files, and how long it takes.
 * A door at the end of each file is asked once as a copy of the bundle loads, for every function and class the file
 * exports, and for its constants where it has nothing else.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { root, solverPath, withBundle } from './bundle.mjs';

export const CHECKS = 'test/published/run-faults.ts';
const SOLVER = join(root, 'src/solver');
const FUNCTION = /^export (?:async )?(?:function\*?|class) (\w+)/gm;
const CONSTANT = /^export const (\w+)(?::[^=]+)? =\s*(?!\s|['"])/gm; // but for words
const MADE = /^export const (\w+)[^=]*= (?:\(|\w+\()/gm; // a function, or what one returns

const LOADING = -1; // in place of the number of a check

const hasFunctions = (code) => code.search(FUNCTION) >= 0;

/** Every file of the solver that exports more than types and words. */
export const solverFiles = () =>
  readdirSync(SOLVER, { recursive: true })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts'))
    .filter((path) => namesIn(readFileSync(join(SOLVER, path), 'utf8')).length > 0);

/**
 * What `use` makes of the watched checks: `load()` is a fresh copy of them behind `globalThis.doors(file, export)`, `sound`
 * what a sound solver says, `callers(file)` which checks ask a file (undefined: none), the quickest first.
 */
export function withWatchedChecks(use) {
  const importers = new Map(); // constants are read, not called: who imports them
  const doors = {
    name: 'doors',
    enforce: 'pre',
    transform(code, id) {
      const file = solverPath(id);
      if (file) noteImports(importers, file, code);
      return file && withDoors(file, code);
    },
  };
  return withBundle(CHECKS, [doors], async (load) => {
    const { quickest, sound, called } = await soundPass(load);
    const callers = (file) => {
      const asking = called.get(file) ?? callersOfConstants(file, importers, called);
      // A file asked while the checks load may have told any of them something.
      return asking && quickest.filter((at) => asking.has(at) || asking.has(LOADING));
    };
    return use({ load, sound, callers });
  });
}

/** The first checks that find something amiss which a sound solver has not; at most `most`. */
export function noticing(checks, sound, callers, most) {
  const found = [];
  for (const at of callers) {
    if (found.length === most) break;
    const { name, run } = checks[at];
    if (run().some((isMissed, k) => isMissed && !sound[at][k])) found.push(name);
  }
  return found;
}

async function soundPass(load) {
  const called = new Map();
  let now = LOADING;
  globalThis.doors = (file, one) =>
    watched(one, () => {
      if (!called.has(file)) called.set(file, new Set());
      called.get(file).add(now);
    });
  const { checks } = await load();
  const took = [];
  const sound = checks().map(({ run }, at) => {
    now = at;
    const start = performance.now();
    const verdicts = run();
    took.push([at, performance.now() - start]);
    return verdicts;
  });
  took.sort(([, one], [, other]) => one - other);
  return { quickest: took.map(([at]) => at), sound, called };
}

/** The same function or class, which says when it is used. */
function watched(one, note) {
  if (typeof one !== 'function') return one;
  return new Proxy(one, {
    apply: (target, self, given) => {
      note();
      return Reflect.apply(target, self, given);
    },
    construct: (target, given, as) => {
      note();
      return Reflect.construct(target, given, as);
    },
  });
}

function namesIn(code) {
  const named = (pattern) => [...code.matchAll(pattern)].map((match) => match[1]);
  return [...named(FUNCTION), ...named(hasFunctions(code) ? MADE : CONSTANT)];
}

/** The checks that call a file which imports one without functions; undefined when none does. */
function callersOfConstants(file, importers, called) {
  if (hasFunctions(readFileSync(join(SOLVER, file), 'utf8'))) return undefined;
  const all = [...(importers.get(file) ?? [])].flatMap((importer) => [...(called.get(importer) ?? [])]);
  return all.length > 0 ? new Set(all) : undefined;
}

function noteImports(importers, file, code) {
  for (const [, from] of code.matchAll(/^(?:import|\}) .*from '(\.[^']+)'/gm)) {
    const path = posix.join(posix.dirname(file), from);
    if (!importers.has(path)) importers.set(path, new Set());
    importers.get(path).add(file);
  }
}

function withDoors(file, code) {
  const names = namesIn(code);
  if (names.length === 0) return null;
  const open = names.reduce((text, name) => text.replace(`export const ${name}`, `export let ${name}`), code);
  const lines = names.map(
    (name) => `// @ts-ignore\n${name} = globalThis.doors(${JSON.stringify(file)}, ${name});`,
  );
  return `${open}\n${lines.join('\n')}\n`;
}
