// A proposal and its front on the page, in headless Chromium, with the page's own threads: how long they take and the
// longest task of the main thread meanwhile.
import { chromium } from 'playwright';
import { CHROME_FLAGS, findChrome } from './find-chrome.mjs';
import { serveBuilt } from './serve-built.mjs';

const PATIENCE = 240_000; // ms
const SEEDS = [1, 2, 3];

/** For the design the page opens with: times in ms, one a seed, points of the front; `longest` is 0 when no task took over 50 ms. */
export async function benchProposal() {
  const executablePath = await findChrome();
  const page = await serveBuilt();
  const browser = await chromium.launch({ ...(executablePath && { executablePath }), args: CHROME_FLAGS });
  try {
    const tab = await browser.newPage({ viewport: { width: 1440, height: 1000 } });
    tab.setDefaultTimeout(PATIENCE);
    await tab.goto(page.address);
    await tab.waitForFunction(() => document.querySelector('app-shell')?.session?.report);
    await tab.getByRole('tab', { name: /^Propose/ }).click();
    await tab.getByRole('button', { name: 'Look for a wing' }).waitFor();
    await tab.waitForTimeout(1500);
    return await tab.evaluate(watchSearch, SEEDS);
  } finally {
    await browser.close();
    await page.close();
  }
}

/** Runs in the page. */
async function watchSearch(seeds) {
  const { session } = document.querySelector('app-shell');
  const { proposals, design } = session;
  const tasks = [];
  const observer = new PerformanceObserver((list) => tasks.push(...list.getEntries()));
  observer.observe({ type: 'longtask' });
  const timed = async (work) => {
    const start = performance.now();
    await work();
    if (proposals.failure) throw new Error(proposals.failure);
    return performance.now() - start;
  };
  const searches = [];
  for (const seed of seeds) searches.push(await timed(() => proposals.search(design, seed)));
  const free = proposals.proposal.table.quantities.filter(({ range }) => range !== null).length;
  const front = await timed(() => proposals.drawFront(design));
  await new Promise((resolve) => setTimeout(resolve, 300));
  observer.disconnect();
  return {
    searches,
    free,
    front,
    points: proposals.front.points.length,
    longest: Math.max(0, ...tasks.map(({ duration }) => duration)),
  };
}
