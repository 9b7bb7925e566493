/** Wires the beach card: the address, the document's reader and the study worker into the card. */
import '../src/components/cards/beach-card.ts';
import { Studies } from '../src/session/studies.ts';
import { readDesign } from '../src/solver/design/read.ts';

const card = document.querySelector('beach-card')!;
card.studies = new Studies({
  makeWorker: () => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }),
  loadStudies: async () => (await import('../src/session/study-registry.ts')).STUDIES,
});
card.read = readDesign;
card.fragment = window.location.hash;
window.addEventListener('hashchange', () => {
  card.fragment = window.location.hash;
});
