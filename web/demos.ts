/** The demo designs: invented riders, an imaginary harbour. The page opens on the first one; the others are read when asked for. */
import type { Demo } from '../src/components/page-header.ts';
import type { Design } from '../src/solver/design/document.ts';
import { readDesignValue } from '../src/solver/design/read.ts';
import curvedRace from './demos/curved-race.json';
import downwind from './demos/downwind.json';
import flatRace from './demos/flat-race.json';

export const DEMOS: readonly Demo[] = [
  demo('curved-race', 'Curved race wing', curvedRace),
  demo('flat-race', 'The same wing, flat', flatRace),
  demo('downwind', 'Downwind wing', downwind),
];

function demo(id: string, label: string, document: unknown): Demo {
  let design: Design | null = null;
  return {
    id,
    label,
    get design() {
      design ??= read(id, document);
      return design;
    },
  };
}

function read(id: string, document: unknown): Design {
  const reading = readDesignValue(document);
  if (!reading.ok) throw new Error(`demo ${id}: ${reading.message}`);
  return reading.design;
}
