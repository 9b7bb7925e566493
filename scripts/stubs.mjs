/**
 * Empties every file of the solver in turn and asks the published checks whether they notice: its functions and classes
 * throw; where it has none, its constants are gone. A fresh copy of one bundle serves each, so that nothing computed before
 * lives on; only the checks that call the file are asked, the quickest first.
 */
import { noticing, solverFiles, withWatchedChecks } from './watched-checks.mjs';

const SHOWN = 2; // checks named for each file

/** One line a file; true when the checks notice every one of them. */
export const everyStubIsNoticed = () =>
  withWatchedChecks(async (watched) => {
    let allNoticed = true;
    for (const file of solverFiles()) {
      const [isNoticed, words] = await emptied(file, watched);
      console.log(`${file}: ${words}`);
      allNoticed &&= isNoticed;
    }
    return allNoticed;
  });

/** Whether anything notices that a file is empty, and what. */
async function emptied(file, { load, sound, callers }) {
  const asking = callers(file);
  if (!asking) return [false, 'NOT NOTICED, no check asks it'];
  globalThis.doors = (path, one) => (path === file ? hollow(one) : one);
  let made;
  try {
    made = (await load()).checks();
  } catch {
    return [true, 'noticed, no check can even be made'];
  }
  const found = noticing(made, sound, asking, SHOWN);
  if (found.length === 0) return [false, `NOT NOTICED, though ${asking.length} checks ask it`];
  return [true, `noticed by ${found.join('; ')}, of ${asking.length} that ask it`];
}

/** In place of an export of an emptied file. */
const hollow = (one) =>
  typeof one !== 'function'
    ? undefined
    : function stub() {
        throw new Error('stub');
      };
