/** Wires storage, solver's worker, document reader and demos into the session. */
import { openAddress } from '../src/session/address.ts';
import { browserChannel } from '../src/session/neighbours.ts';
import { workOffline } from '../src/session/newer.ts';
import { Session } from '../src/session/session.ts';
import { browserKept, browserNotebook, browserShelf, keptChannel } from '../src/session/shelf.ts';
import { startAhead } from '../src/session/start-ahead.ts';
import { browserTabs } from '../src/session/tabs.ts';
import { readDesign, readDesignValue, writeDesign } from '../src/solver/design/read.ts';
import { DEMOS } from './demos.ts';

export async function openSession() {
  const makeWorker = startAhead(
    () => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }),
  );
  const session = await Session.open({
    demo: DEMOS[0]!.design,
    read: readDesign,
    readValue: readDesignValue,
    write: writeDesign,
    shelf: browserShelf(),
    notebook: browserNotebook(),
    kept: browserKept(),
    channel: keptChannel(),
    tabs: browserTabs(),
    tabChannel: browserChannel(),
    makeWorker,
    loadSolve: async () => (await import('../src/solver/solve.ts')).solve,
    makeExportWorker: () => new Worker(new URL('./export-worker.ts', import.meta.url), { type: 'module' }),
    loadExport: async () => (await import('../src/workshop/export.ts')).exportFile,
    loadStudies: async () => (await import('../src/session/study-registry.ts')).STUDIES,
  });
  openAddress(session);
  if (import.meta.env.PROD)
    void workOffline(new URL('./offline.js', document.baseURI), session.settle(), () => session.newerReady());
  return { demos: DEMOS, session };
}
