/** The built page in a real browser, for the end-to-end tests. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright';
import { inject } from 'vitest';
import { CHROME_FLAGS, findChrome } from '../../scripts/find-chrome.mjs';
import { type BuiltPage, servePage } from '../../scripts/serve-built.mjs';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface Stage {
  built: BuiltPage;
  browser: Browser;
  close: () => Promise<void>;
}

export async function openStage(): Promise<Stage> {
  const executablePath = await findChrome();
  const built = await servePage(inject('builtPage'));
  const browser = await chromium.launch({ ...(executablePath && { executablePath }), args: CHROME_FLAGS });
  return {
    built,
    browser,
    close: async () => {
      await browser.close();
      await built.close();
    },
  };
}

/** A fresh visit: storage is empty, the first figures are there. `faults` collects what the console complains of. */
export async function visit({ built, browser }: Stage, options: BrowserContextOptions = {}) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 1000 }, ...options });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    const isFault = message.type() === 'error' || message.type() === 'warning';
    // A browser without a graphics card remarks on its own slowness.
    if (isFault && !message.text().includes('GL Driver Message')) faults.push(message.text());
  });
  await page.goto(built.address);
  await figures(page);
  return { page, faults, close: () => context.close() };
}

/** Waits until the design is open; its figures are still to come. */
export async function opened(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector('app-shell')?.session != null);
  await page.locator('page-header .state').waitFor();
}

/** Waits until the complete figures of the design on screen are shown. */
export async function figures(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const session = document.querySelector('app-shell')?.session;
    return session?.report != null && session.isCurrent && !session.isPending;
  });
}

interface AxeOptions {
  /** A selector of the page: only what lies below it. */
  within?: string;
}

/** What axe finds wrong, one line each: WCAG 2.2 AA and what it calls best practice. */
export async function axeFindings(page: Page, { within }: AxeOptions = {}): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axeSource);
  return page.evaluate(
    async ({ within }) => {
      interface Finding {
        id: string;
        nodes: { target: unknown; failureSummary: string }[];
      }
      const { axe } = window as unknown as {
        axe: { run: (context: unknown, options: unknown) => Promise<{ violations: Finding[] }> };
      };
      const { violations } = await axe.run(within ? { include: [within] } : document, {
        resultTypes: ['violations'],
        rules: { 'target-size': { enabled: true } },
      });
      return violations.flatMap(({ id, nodes }) =>
        nodes.map(({ target, failureSummary }) => `${id} ${JSON.stringify(target)}: ${failureSummary}`),
      );
    },
    { within },
  );
}
