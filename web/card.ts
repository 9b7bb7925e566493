/** Wires a page outside the workbench: the address, the document's reader and the study worker into its one element. */
import { recall } from '../src/components/preferences.ts';
import { workOffline } from '../src/session/newer.ts';
import { setDecimalMark } from '../src/session/number-format.ts';
import { startAhead } from '../src/session/start-ahead.ts';
import { Studies } from '../src/session/studies.ts';
import { type Reading, readDesign } from '../src/solver/design/read.ts';

interface Card {
  fragment: string;
  read: ((text: string) => Reading) | null;
  studies: Studies | null;
}

export function openCard(card: Card): void {
  setDecimalMark(recall('decimalMark', '.') === ',' ? ',' : '.');
  card.studies = new Studies({
    makeWorker: startAhead(() => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' })),
    loadStudies: async () => (await import('../src/session/study-registry.ts')).STUDIES,
  });
  card.read = readDesign;
  card.fragment = window.location.hash;
  window.addEventListener('hashchange', () => {
    card.fragment = window.location.hash;
  });
  // A card asks for nothing that is being worked on: the next opening brings the newer version by itself.
  const loaded = new Promise<void>((resolve) => window.addEventListener('load', () => resolve()));
  if (import.meta.env.PROD) void workOffline(new URL('./offline.js', document.baseURI), loaded, () => {});
}
