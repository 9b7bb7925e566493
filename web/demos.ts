/** The demo designs: invented riders, an imaginary harbour. The page opens on the first one. */
import type { Demo } from '../src/components/page-header.ts';
import { readDesignValue } from '../src/solver/design/read.ts';
import curvedRace from './demos/curved-race.json';
import downwind from './demos/downwind.json';
import flatRace from './demos/flat-race.json';

export const DEMOS: readonly Demo[] = [
  { id: 'curved-race', label: 'Curved race wing', document: curvedRace },
  { id: 'flat-race', label: 'The same wing, flat', document: flatRace },
  { id: 'downwind', label: 'Downwind wing', document: downwind },
].map(({ id, label, document }) => {
  const reading = readDesignValue(document);
  if (!reading.ok) throw new Error(`demo ${id}: ${reading.message}`);
  return { id, label, design: reading.design };
});
