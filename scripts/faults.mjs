// Puts deliberate faults into the solver, one at a time and only in memory, and lists the published checks that notice
// each; `npm run faults -- stubs` empties every solver file that the checks reach instead. Exit code 1 when something
// goes unnoticed.
import { relative } from 'node:path';
import { importBundled, root } from './bundle.mjs';

const CHECKS = 'test/published/run-faults.ts';
const SHOWN = 6; // checks named for each fault

const solverPath = (id) => {
  const path = relative(root, id.split('?')[0]).replaceAll('\\', '/');
  return path.startsWith('src/solver/') ? path.slice('src/solver/'.length) : null;
};

/** What the checks say of a solver whose files `change` rewrites (path, code) => code. */
async function verdictsWith(change) {
  const plugin = {
    name: 'fault',
    enforce: 'pre',
    transform(code, id) {
      const path = solverPath(id);
      return path ? change(path, code) : null;
    },
  };
  const { verdicts } = await importBundled(CHECKS, [plugin]);
  return verdicts();
}

/** Prints what notices one fault; true when something does. */
function report(name, sound, found) {
  const noticed = found.filter(({ isMissed }, k) => isMissed && !sound[k].isMissed);
  console.log(`${name}: ${noticed.length === 0 ? 'NOT NOTICED' : `noticed by ${noticed.length} checks`}`);
  for (const one of noticed.slice(0, SHOWN)) console.log(`  ${one.name}`);
  if (noticed.length > SHOWN) console.log(`  and ${noticed.length - SHOWN} more`);
  return noticed.length > 0;
}

const reached = new Map(); // path -> code
const sound = await verdictsWith((path, code) => {
  reached.set(path, code);
  return null;
});
let allNoticed = true;
for (const { name, replace } of process.argv[2] === 'stubs' ? stubs() : await faults()) {
  const found = await verdictsWith(replace).catch(() => null);
  if (found) allNoticed = report(name, sound, found) && allNoticed;
  else console.log(`${name}: noticed, no check can even be made`);
}
process.exitCode = allNoticed ? 0 : 1;

async function faults() {
  const { FAULTS } = await importBundled('test/published/faults.ts');
  return FAULTS.map(({ name, file, find, put }) => {
    const places = reached.get(file)?.split(find).length - 1;
    if (places !== 1)
      throw new Error(`${name}: “${find}” stands ${places || 'nowhere'} in ${file}, not once`);
    return {
      name: `${name} (${file})`,
      replace: (path, code) => (path === file ? code.replace(find, () => put) : null),
    };
  });
}

/** Every file with its exported functions and classes made to throw. */
function stubs() {
  return [...reached.entries()].flatMap(([file, code]) => {
    const functions = [...code.matchAll(/^export (?:async )?function\*? (\w+)/gm)].map((match) => match[1]);
    const classes = [...code.matchAll(/^export class (\w+)/gm)].map((match) => match[1]);
    if (functions.length + classes.length === 0) return []; // types and constants only
    const lines = [
      ...functions.map((one) => `// @ts-ignore\n${one} = () => { throw new Error('stub'); };`),
      ...classes.map(
        (one) => `// @ts-ignore\n${one} = class { constructor() { throw new Error('stub'); } };`,
      ),
    ];
    return [
      {
        name: `stub of ${file}`,
        replace: (path, text) => (path === file ? `${text}\n${lines.join('\n')}` : null),
      },
    ];
  });
}
