// Puts deliberate faults into the solver, one at a time and only in memory, and lists the published checks that notice
// each; `npm run faults -- stubs` empties every file of the solver instead. Exit code 1 when something goes unnoticed.
import { importBundled, solverPath } from './bundle.mjs';
import { everyStubIsNoticed } from './stubs.mjs';

const CHECKS = 'test/published/run-faults.ts';
const SHOWN = 6; // checks named for each fault

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
  const { checks } = await importBundled(CHECKS, [plugin]);
  return checks().map(({ name, run }) => ({ name, missed: run() }));
}

/** Prints what notices one fault; true when something does. */
function report(name, sound, found) {
  const noticed = found.filter(({ missed }, at) => missed.some((one, k) => one && !sound[at].missed[k]));
  console.log(`${name}: ${noticed.length === 0 ? 'NOT NOTICED' : `noticed by ${noticed.length} checks`}`);
  for (const one of noticed.slice(0, SHOWN)) console.log(`  ${one.name}`);
  if (noticed.length > SHOWN) console.log(`  and ${noticed.length - SHOWN} more`);
  return noticed.length > 0;
}

async function everyFaultIsNoticed() {
  const { FAULTS } = await importBundled('test/published/faults.ts');
  const reached = new Map(); // path -> code
  const sound = await verdictsWith((path, code) => {
    reached.set(path, code);
    return null;
  });
  let allNoticed = true;
  for (const { name, file, find, put } of FAULTS) {
    const places = reached.get(file)?.split(find).length - 1;
    if (places !== 1)
      throw new Error(`${name}: “${find}” stands ${places || 'nowhere'} in ${file}, not once`);
    const replace = (path, code) => (path === file ? code.replace(find, () => put) : null);
    allNoticed = report(`${name} (${file})`, sound, await verdictsWith(replace)) && allNoticed;
  }
  return allNoticed;
}

process.exitCode = (await (process.argv[2] === 'stubs' ? everyStubIsNoticed() : everyFaultIsNoticed()))
  ? 0
  : 1;
