// Puts deliberate faults into the solver, one at a time and only in memory, and lists published checks that notice each;
// `npm run faults -- stubs` empties every file of the solver instead. Exit code 1 when something goes unnoticed.
import { importBundled, solverPath } from './bundle.mjs';
import { everyStubIsNoticed } from './stubs.mjs';
import { CHECKS, noticing, withWatchedChecks } from './watched-checks.mjs';

const SHOWN = 6; // checks named for each fault; the search ends there

const everyFaultIsNoticed = () =>
  withWatchedChecks(async ({ sound, callers }) => {
    const { FAULTS } = await importBundled('test/published/faults.ts');
    let allNoticed = true;
    for (const { name, file, find, put } of FAULTS) {
      const asking = callers(file) ?? [];
      const { checks } = await importBundled(CHECKS, [faulty(name, file, find, put)]);
      const found = noticing(checks(), sound, asking, SHOWN);
      console.log(
        `${name} (${file}): ${found.length === 0 ? 'NOT NOTICED' : 'noticed'}, ${asking.length} checks ask it`,
      );
      for (const one of found) console.log(`  ${one}`);
      allNoticed &&= found.length > 0;
    }
    return allNoticed;
  });

/** The solver with one line of one file replaced. */
function faulty(name, file, find, put) {
  return {
    name: 'fault',
    enforce: 'pre',
    transform(code, id) {
      if (solverPath(id) !== file) return null;
      const places = code.split(find).length - 1;
      if (places !== 1)
        throw new Error(`${name}: “${find}” stands ${places || 'nowhere'} in ${file}, not once`);
      return code.replace(find, () => put);
    },
  };
}

process.exitCode = (await (process.argv[2] === 'stubs' ? everyStubIsNoticed() : everyFaultIsNoticed()))
  ? 0
  : 1;
