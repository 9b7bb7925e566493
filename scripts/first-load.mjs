// What a first visit fetches before anything is touched: script and style as they travel, compressed by gzip.
import { gzipSync } from 'node:zlib';

/**
 * Loads the page in a fresh tab and waits until it has been quiet. Sizes in bytes; `worker` is what the solver's worker
 * fetches, which the page does not wait for to be painted.
 */
export async function firstLoad(tab, address) {
  const files = [];
  const coming = [];
  tab.on('response', (response) => {
    const { pathname } = new URL(response.url());
    if (!/\.(?:js|css)$/.test(pathname)) return;
    const isWorker = /worker/.test(pathname);
    coming.push(
      response
        .body()
        .then((body) => files.push({ pathname, isWorker, size: gzipSync(body, { level: 9 }).length })),
    );
  });
  await tab.goto(address, { waitUntil: 'networkidle' });
  await tab.waitForFunction(() => document.querySelector('app-shell')?.session?.report);
  await tab.waitForLoadState('networkidle');
  await Promise.all(coming);
  const sum = (wanted) => files.filter(wanted).reduce((total, { size }) => total + size, 0);
  return { page: sum(({ isWorker }) => !isWorker), worker: sum(({ isWorker }) => isWorker), files };
}
