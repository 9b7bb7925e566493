// What a first visit fetches before anything is touched: script and style as they travel, compressed by gzip.
import { gzipSync } from 'node:zlib';

/**
 * Loads the page in a fresh tab until its first chart is drawn, which is the last it fetches by itself. Sizes in bytes;
 * `worker` is what the solver's worker fetches, which the page does not wait for to be painted.
 */
export async function firstLoad(tab, address) {
  const files = [];
  const coming = [];
  const note = (response) => {
    const { pathname } = new URL(response.url());
    if (!/\.(?:js|css)$/.test(pathname)) return;
    const isWorker = /worker/.test(pathname);
    coming.push(
      response
        .body()
        .then((body) => files.push({ pathname, isWorker, size: gzipSync(body, { level: 9 }).length })),
    );
  };
  tab.on('response', note);
  await tab.goto(address);
  await tab.locator('spread-panel .uplot').first().waitFor();
  tab.off('response', note);
  await Promise.all(coming);
  const sum = (wanted) => files.filter(wanted).reduce((total, { size }) => total + size, 0);
  return { page: sum(({ isWorker }) => !isWorker), worker: sum(({ isWorker }) => isWorker), files };
}
