/**
 * Empties every file of the solver in turn and asks the published checks whether they notice: its functions and classes
 * throw; where it has none, its constants are gone. One bundle serves all: a door at the end of each file, which a fresh
 * copy of the bundle asks once as it loads, so that nothing computed before lives on. A first, sound copy notes which
 * checks call which file; the emptied file is then asked only of those, the quickest first.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { solverPath, withBundle } from './bundle.mjs';

const CHECKS = 'test/published/run-faults.ts';
const SOLVER = new URL('../src/solver/', import.meta.url).pathname;
const SHOWN = 2; // checks named for each file
const FUNCTION = /^export (?:async )?(?:function\*?|class) (\w+)/gm;
const CONSTANT = /^export const (\w+)(?::[^=]+)? =\s*(?!\s|['"])/gm; // but for words
const MADE = /^export const (\w+)[^=]*= (?:\(|\w+\()/gm; // a function, or what one returns

const hasFunctions = (code) => code.search(FUNCTION) >= 0;

/** One line a file of the solver; true when the checks notice every one of them. */
export async function everyStubIsNoticed() {
  const files = readdirSync(SOLVER, { recursive: true })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts'));
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
    const { asked, found, called } = await soundPass(load);
    const callers = (file) => called.get(file) ?? callersOfConstants(file, importers, called);
    let allNoticed = true;
    for (const file of files.filter((path) => namesIn(readFileSync(join(SOLVER, path), 'utf8')).length > 0)) {
      const [isNoticed, words] = await emptied(load, file, asked, found, callers(file));
      console.log(`${file}: ${words}`);
      allNoticed &&= isNoticed;
    }
    return allNoticed;
  });
}

/** What each check says of the sound solver and how long that takes; which checks call which file. */
async function soundPass(load) {
  const called = new Map();
  let now = null;
  globalThis.doors = (file, one) =>
    watched(one, () => {
      if (!called.has(file)) called.set(file, new Set());
      called.get(file).add(now);
    });
  const { checks } = await load();
  const asked = [];
  const found = checks().map(({ name, run }, at) => {
    now = at;
    const start = performance.now();
    const verdicts = run();
    asked.push({ at, name, took: performance.now() - start });
    return verdicts;
  });
  asked.sort((one, other) => one.took - other.took);
  return { asked, found, called };
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

/** Whether anything notices that a file is empty, and what. */
async function emptied(load, file, asked, found, callers) {
  if (!callers) return [false, 'NOT NOTICED, no check asks it'];
  globalThis.doors = (path, one) => (path === file ? hollow(one) : one);
  let made;
  try {
    made = (await load()).checks();
  } catch {
    return [true, 'noticed, no check can even be made'];
  }
  const noticing = [];
  for (const { at, name } of asked) {
    if (noticing.length === SHOWN) break;
    if (callers.has(at) && made[at].run().some((isMissed, k) => isMissed && !found[at][k]))
      noticing.push(name);
  }
  if (noticing.length === 0) return [false, `NOT NOTICED, though ${callers.size} checks ask it`];
  return [true, `noticed by ${noticing.join('; ')}, of ${callers.size} that ask it`];
}

/** In place of an export of an emptied file. */
const hollow = (one) =>
  typeof one !== 'function'
    ? undefined
    : function stub() {
        throw new Error('stub');
      };

/** What a file exports: functions and classes or, without any, constants. */
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
