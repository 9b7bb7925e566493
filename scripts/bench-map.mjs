// The map of Curve on the page, in headless Chromium: how long it takes, the longest task of the main thread while it
// runs, and how soon a cancelled one has stopped.
import { chromium } from 'playwright';
import { CHROME_FLAGS, findChrome } from './find-chrome.mjs';
import { serveBuilt } from './serve-built.mjs';

const PATIENCE = 60_000; // ms
const VISITS = 3; // each meets no map that was kept

/** Times in ms, one a run; `longest` is 0 when no task of any run took over 50 ms. */
export async function benchMap() {
  const executablePath = await findChrome();
  const page = await serveBuilt();
  const browser = await chromium.launch({ ...(executablePath && { executablePath }), args: CHROME_FLAGS });
  try {
    const visits = [];
    for (let k = 0; k < VISITS; k++) visits.push(await visit(browser, page.address));
    return {
      times: visits.map(({ time }) => time),
      longest: Math.max(...visits.map(({ longest }) => longest)),
      cancels: visits.map(({ cancel }) => cancel),
    };
  } finally {
    await browser.close();
    await page.close();
  }
}

async function visit(browser, address) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
  const tab = await context.newPage();
  await tab.goto(address);
  await tab.waitForFunction(() => document.querySelector('app-shell')?.session?.report);
  await tab.getByRole('tab', { name: /^Curve/ }).click();
  await tab.locator('droop-map').scrollIntoViewIfNeeded({ timeout: PATIENCE });
  await tab.locator('contour-map .map').waitFor({ timeout: PATIENCE });
  await tab.waitForTimeout(1500);
  const found = await tab.evaluate(watchMap);
  await context.close();
  return found;
}

/** Runs in the page: another measure asks for another map; one more is cancelled under way. */
async function watchMap() {
  const find = (root, selector) => root.shadowRoot.querySelector(selector);
  const panel = find(document.querySelector('question-tabs'), 'curve-panel');
  const view = find(panel, 'droop-map');
  const choice = find(view, 'choice-field');
  const settled = (isSo) =>
    new Promise((resolve) => {
      const look = () => (isSo() ? resolve(performance.now()) : setTimeout(look, 2));
      look();
    });
  const ask = (measure) => {
    const select = find(choice, 'select');
    select.value = measure;
    select.dispatchEvent(new Event('change'));
    return performance.now();
  };
  const isWaiting = () => find(view, '.wait') !== null;

  const tasks = [];
  const observer = new PerformanceObserver((list) => tasks.push(...list.getEntries()));
  observer.observe({ type: 'longtask' });
  const asked = ask('arm');
  await settled(isWaiting);
  const done = await settled(() => !isWaiting());
  await new Promise((resolve) => setTimeout(resolve, 300));
  observer.disconnect();

  const { studies, design } = document.querySelector('app-shell').session;
  const cancel = await new Promise((resolve) => {
    let told = 0;
    const stop = studies.start(
      'droopMap',
      design,
      { measure: 'droop' },
      {
        progress: () => {
          if (told > 0) return;
          told = performance.now();
          stop();
        },
        cancelled: () => resolve(performance.now() - told),
        done: () => resolve(Number.NaN),
        failed: () => resolve(Number.NaN),
      },
    );
  });
  return {
    time: done - asked,
    longest: Math.max(0, ...tasks.map(({ duration }) => duration)),
    cancel,
  };
}
