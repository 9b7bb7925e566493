// Time from a pointer move on the tip handle to the painted frame that shows its figures, in headless Chromium.
import { setTimeout as pause } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright';
import { CHROME_FLAGS, findChrome } from './find-chrome.mjs';
import { serveBuilt } from './serve-built.mjs';

const MOVES = 600; // thirty above the 95th percentile
const WARM_UP = 20;
const REST = 2000; // ms after the first figures: a first visit also stores the page for use offline
const PAUSE = 24; // ms between moves at least, beside what sending one costs: an unhurried drag
const FRAME = 1000 / 60; // ms between display frames
const GOLDEN = (Math.sqrt(5) - 1) / 2; // steps of this share, each less its whole part, spread evenly

/** Median and 95th percentile in ms over the moves of one drag. */
export async function benchFrame() {
  const executablePath = await findChrome();
  const page = await serveBuilt();
  const browser = await chromium.launch({ ...(executablePath && { executablePath }), args: CHROME_FLAGS });
  try {
    const tab = await browser.newPage({ viewport: { width: 1440, height: 1000 } });
    await tab.goto(page.address);
    await tab.waitForFunction(() => document.querySelector('app-shell')?.session?.report);
    await tab.waitForTimeout(REST);
    await tab.evaluate(watchFrames);
    await dragTip(tab);
    const times = await tab.evaluate(() => window.frameTimes);
    if (times.length < 0.9 * MOVES) throw new Error(`only ${times.length} of ${MOVES} moves were followed`);
    return { ...percentiles(times.slice(WARM_UP)), moves: times.length };
  } finally {
    await browser.close();
    await page.close();
  }
}

/**
 * Moves come evenly at all times between two display frames. They go straight to the browser: with a button held, the
 * driver's own mouse runs scripts in the page at every move.
 */
async function dragTip(tab) {
  const browser = await tab.context().newCDPSession(tab);
  const tip = tab.locator('head-on-view [data-handle="tip"] .grip').last();
  const box = await tip.boundingBox();
  const x = box.x + box.width / 2;
  const y = box.y + box.height / 2;
  await tab.mouse.move(x, y);
  await tab.mouse.down();
  for (let k = 1; k <= MOVES + WARM_UP; k++) {
    const at = { x: x - 3 * Math.sin(k / 9), y: y + 40 * Math.sin(k / 14) };
    await browser.send('Input.dispatchMouseEvent', { type: 'mouseMoved', button: 'left', buttons: 1, ...at });
    await pause(PAUSE + FRAME * ((k * GOLDEN) % 1));
  }
  await tab.mouse.up();
  await tab.waitForTimeout(300);
}

/**
 * Runs in the page. A move counts from its own time stamp, set when the browser received it, to the end of the first
 * frame after the figures of the design it made have been rendered.
 */
function watchFrames() {
  const shell = document.querySelector('app-shell');
  const waiting = [];
  let moved = 0;
  window.frameTimes = [];
  for (const kind of ['pointermove', 'pointerrawupdate'])
    window.addEventListener(
      kind,
      ({ timeStamp }) => {
        moved = timeStamp;
      },
      true,
    );
  document.addEventListener('design-edit', ({ detail }) => {
    const { revision } = shell.session.store;
    if (detail.phase === 'live' && waiting.at(-1)?.revision !== revision)
      waiting.push({ revision, start: moved });
  });
  shell.addEventListener('figures-shown', ({ detail: revision }) => {
    const shown = waiting.filter((move) => move.revision <= revision);
    waiting.splice(0, shown.length);
    requestAnimationFrame(() => {
      const channel = new MessageChannel(); // the next task begins once this frame has been painted
      channel.port1.onmessage = () => {
        for (const { start } of shown) window.frameTimes.push(performance.now() - start);
      };
      channel.port2.postMessage(null);
    });
  });
}

function percentiles(times) {
  const sorted = [...times].sort((one, other) => one - other);
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  return { median: at(0.5), low: at(0.1), high: at(0.9), p95: at(0.95) };
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { median, p95, moves } = await benchFrame();
  console.log(
    `pointer move to painted frame: median ${median.toFixed(1)} ms, 95th percentile ${p95.toFixed(1)} ms, ${moves} moves`,
  );
}
