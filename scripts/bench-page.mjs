// Size of the first load, and when its largest part is painted on a processor four times as slow.
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright';
import { CHROME_FLAGS, findChrome } from './find-chrome.mjs';
import { firstLoad } from './first-load.mjs';
import { serveBuilt } from './serve-built.mjs';

const SLOWER = 4; // times
const VISITS = 5; // the median of them counts
const REST = 1500; // ms after the first figures, by when nothing larger is painted

/** Sizes in bytes, the largest contentful paint and the first figures in ms after the visit began, how far things jump. */
export async function benchPage() {
  const executablePath = await findChrome();
  const built = await serveBuilt();
  const browser = await chromium.launch({ ...(executablePath && { executablePath }), args: CHROME_FLAGS });
  const fresh = async (visit) => {
    const context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
    const result = await visit(await context.newPage());
    await context.close();
    return result;
  };
  try {
    const { page, worker } = await fresh((tab) => firstLoad(tab, built.address));
    const paints = [];
    for (let k = 0; k < VISITS; k++) paints.push(await fresh((tab) => largestPaint(tab, built.address)));
    const middle = (key) => paints.map((paint) => paint[key]).sort((a, b) => a - b)[(VISITS - 1) / 2];
    const [paint, figures, shift] = ['time', 'figures', 'shift'].map(middle);
    const times = { paint: paints.map(({ time }) => time), figures: paints.map((one) => one.figures) };
    return { page, worker, paint, figures, shift, times, what: paints[0].what };
  } finally {
    await browser.close();
    await built.close();
  }
}

async function largestPaint(tab, address) {
  const session = await tab.context().newCDPSession(tab);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  await tab.addInitScript(() => {
    const note = () => {
      window.figuresAt ??= performance.now();
    };
    document.addEventListener('figures-shown', note, true);
    new PerformanceObserver((list) => {
      const { startTime, element } = list.getEntries().at(-1);
      window.largest = { startTime, what: element?.localName ?? 'gone' };
    }).observe({ type: 'largest-contentful-paint', buffered: true });
    window.shift = 0;
    new PerformanceObserver((list) => {
      for (const { value } of list.getEntries()) window.shift += value;
    }).observe({ type: 'layout-shift', buffered: true });
  });
  await tab.goto(address);
  await tab.waitForFunction(() => window.figuresAt);
  await tab.waitForTimeout(REST);
  return tab.evaluate(() => ({
    time: window.largest.startTime,
    what: window.largest.what,
    figures: window.figuresAt,
    shift: window.shift,
  }));
}

export const pageLines = ({ page, worker, paint, what, figures, shift }) => [
  `first load of script and style: ${(page / 1000).toFixed(0)} kB compressed (goal: below 250), the solver's worker ${(worker / 1000).toFixed(0)} kB more`,
  `largest contentful paint at a quarter of the speed: ${paint.toFixed(0)} ms (goal: below 1500; a ${what}), first figures after ${figures.toFixed(0)} ms, cumulative layout shift ${shift.toFixed(3)}`,
];

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  for (const line of pageLines(await benchPage())) console.log(line);
