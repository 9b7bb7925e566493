/** The built page left alone with strangers and without a network: what it loads, what it lets in, what it needs. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { QUESTIONS } from '../../src/components/questions.ts';
import { makeLink, makePairLink } from '../../src/session/share-link.ts';
import { HOSTILE_DOCUMENTS, HOSTILE_LINKS, type Hostile, PACKED_DOCUMENTS } from '../session/hostile.ts';
import { StaticServer } from '../support/static-server.ts';
import { figures, opened, openStage, type Stage, visit } from './page.ts';
import { axeEverywhere } from './walk.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(async () => {
  await stage?.close();
});

const nameOf = (page: Page) => page.evaluate(() => document.querySelector('app-shell')!.session!.design.name);
const ask = (page: Page, label: RegExp) => page.getByRole('tab', { name: label }).click();

it('loads nothing from elsewhere and breaks no rule of its policy, whatever is asked', async () => {
  const context = await stage.browser.newContext({ viewport: { width: 1440, height: 1000 } });
  const foreign: string[] = [];
  context.on('request', (request) => {
    const address = request.url();
    if (!address.startsWith(stage.built.address) && !/^(data|blob):/.test(address)) foreign.push(address);
  });
  const broken: string[] = [];
  const page = await context.newPage();
  await page.exposeFunction('ruleBroken', (rule: string) => broken.push(rule));
  await page.addInitScript(() => {
    document.addEventListener(
      'securitypolicyviolation',
      ({ violatedDirective, blockedURI, sourceFile, sample }) =>
        (window as unknown as { ruleBroken: (rule: string) => void }).ruleBroken(
          `${location.pathname}: ${violatedDirective} ${blockedURI} ${sourceFile} ${sample}`,
        ),
    );
  });
  page.on('console', (message) => {
    if (message.text().includes('Content Security Policy')) broken.push(message.text());
  });
  await page.goto(stage.built.address);
  await figures(page);
  for (const { label } of QUESTIONS) {
    await page.getByRole('tab', { name: label }).click();
    const panel = page.locator('question-tabs').locator('[role="tabpanel"]');
    await expect
      .poll(() => panel.evaluate((element) => element.firstElementChild?.shadowRoot != null))
      .toBe(true);
    await page.waitForTimeout(400); // charts and first answers
  }
  await page.locator('solid-fold summary').first().click(); // the view to turn, with a library of its own
  await page.locator('solid-fold canvas').waitFor();
  const design = await page.evaluate(() => document.querySelector('app-shell')!.session!.design);
  for (const path of htmlFiles(stage.built.outDir)) await page.goto(stage.built.address + path);
  const [beach, rider] = [
    makeLink(design, `${stage.built.address}beach.html`),
    makePairLink([design, design], `${stage.built.address}rider.html`),
  ];
  for (const made of [beach, rider]) {
    await page.goto(made.ok ? made.link : made.message);
    await page.waitForTimeout(1500); // figures and drawings
  }
  expect(broken).toEqual([]);
  expect(foreign).toEqual([]);

  // The watch itself: a style in an attribute, a script in the page and a stranger's picture are all refused and seen.
  await page.goto(stage.built.address);
  await opened(page);
  await page.evaluate(() => {
    document.body.insertAdjacentHTML(
      'beforeend',
      '<p style="color: red"></p><img src="https://foils.example/x.png" alt="">',
    );
    const script = document.createElement('script');
    script.textContent = 'window.isOwned = true';
    document.body.append(script);
  });
  for (const rule of ['style-src', 'img-src https://foils.example/x.png', 'script-src'])
    await expect.poll(() => broken.some((each) => each.includes(rule))).toBe(true);
  expect(await page.evaluate(() => 'isOwned' in window)).toBe(false);
  await context.close();
});

function htmlFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.html'));
}

describe('what strangers send', () => {
  const LONGEST_ADDRESS = 1_900_000; // characters; the browser itself drops longer ones (from memory)

  /** Gives each text to the page and tells what went wrong: anything but one line of message. */
  const give = (page: Page, way: 'link' | 'paste' | 'file', sent: readonly Hostile[]) =>
    page.evaluate(
      async ([how, texts]) => {
        const session = document.querySelector('app-shell')!.session!;
        const input = document
          .querySelector('page-header')!
          .shadowRoot!.querySelector<HTMLInputElement>('input[type=file]')!;
        const ways = {
          link: (text: string) => {
            window.location.hash = new URL(text).hash;
          },
          paste: (text: string) => {
            const clipboardData = new DataTransfer();
            clipboardData.setData('text/plain', text);
            document.body.dispatchEvent(
              new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
            );
          },
          file: (text: string) => {
            const data = new DataTransfer();
            data.items.add(new File([text], 'sent.json', { type: 'application/json' }));
            input.files = data.files;
            input.dispatchEvent(new Event('change'));
          },
        };
        const before = session.design;
        const wrong: string[] = [];
        for (const { what, text } of texts) {
          session.say(null);
          ways[how](text);
          for (let wait = 0; session.notice === null && wait < 2000; wait++)
            await new Promise((resolve) => setTimeout(resolve));
          const { notice } = session;
          const isSaid = notice?.kind === 'trouble' && /^[^\n]{10,320}$/.test(notice.message);
          if (!isSaid) wrong.push(`${how}, ${what}: ${JSON.stringify(notice)}`);
          if (session.design !== before || session.store.undoLabel !== null)
            wrong.push(`${how}, ${what}: let in`);
        }
        return wrong;
      },
      [way, sent] as const,
    );

  it('by link, paste and file gives a message only, and the page goes on', async () => {
    const { page, faults, close } = await visit(stage);
    const links = [...HOSTILE_LINKS, ...PACKED_DOCUMENTS].filter(({ text }) => text.length < LONGEST_ADDRESS);
    const isEven = (_: unknown, k: number) => k % 2 === 0;
    const pasted = HOSTILE_DOCUMENTS.filter(isEven).filter(({ text }) => text.trim()); // pasting nothing is no matter
    const files = HOSTILE_DOCUMENTS.filter((each) => !pasted.includes(each));
    expect(links.length + HOSTILE_DOCUMENTS.length).toBeGreaterThan(300);
    expect(await give(page, 'link', links)).toEqual([]);
    expect(await give(page, 'paste', pasted)).toEqual([]);
    expect(await give(page, 'file', files)).toEqual([]);
    await page.locator('.notice.trouble').waitFor();
    expect(await axeEverywhere(page, '.notices')).toEqual([]);
    await page.getByRole('slider', { name: 'Wing tip droop' }).press('ArrowDown');
    await figures(page);
    await page.getByRole('button', { name: 'Undo: tip droop' }).click();
    expect(await page.evaluate(() => ({}) as { isOwned?: boolean })).toEqual({});
    expect(faults).toEqual([]);
    await close();
  });
});

describe('without a network', () => {
  let folder: string;
  let server: StaticServer;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'downcurve-served-'));
    cpSync(stage.built.outDir, folder, { recursive: true });
    server = new StaticServer(folder);
    await server.start();
  });
  afterAll(async () => {
    await server?.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  /** A newer version is put out: another head of the page, and a panel's file gone. */
  function putOutNewer(): void {
    const change = (file: string, from: string | RegExp, to: string) => {
      const path = join(folder, file);
      const text = readFileSync(path, 'utf8');
      const changed = text.replace(from, to);
      expect(changed).not.toBe(text);
      writeFileSync(path, changed);
    };
    const panel = readdirSync(join(folder, 'assets')).find((name) => /^curve-panel-.*\.js$/.test(name))!;
    change('index.html', '<head>', '<head><meta name="edition" content="newer">');
    change('offline.js', /"version":"[0-9a-f]{16}"/, '"version":"00000000newer000"');
    change('offline.js', `"assets/${panel}",`, '');
    rmSync(join(folder, 'assets', panel));
  }

  it('everything is there after the first visit; a newer version is announced and never forced', async () => {
    const context = await stage.browser.newContext({ viewport: { width: 1440, height: 1000 } });
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    await page.goto(server.address);
    await figures(page);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
      while (!navigator.serviceWorker.controller) await new Promise((resolve) => setTimeout(resolve, 20));
    });
    await page.getByRole('slider', { name: 'Wing tip droop' }).press('ArrowDown');
    expect(await page.locator('.notice.newer').count()).toBe(0); // the first version is not a newer one

    await server.stop();
    await context.setOffline(true);
    await page.reload();
    await figures(page);
    await page.getByRole('button', { name: 'Undo: tip droop' }).waitFor();
    await page.getByRole('slider', { name: 'Wing tip droop' }).press('ArrowDown');
    await figures(page); // the solver's thread is there
    await ask(page, /^Speed/);
    await page.locator('speed-panel').getByRole('table').first().waitFor({ state: 'attached' });
    await ask(page, /^Build/);
    await page.locator('build-panel').getByRole('button').first().waitFor();
    await page.locator('solid-fold summary').first().click();
    await page.locator('solid-fold canvas').waitFor();
    for (const path of htmlFiles(stage.built.outDir)) {
      const response = await page.goto(server.address + path);
      expect(response?.fromServiceWorker(), path).toBe(true);
      expect(await page.title()).not.toBe('');
    }
    await page.goto(`${server.address}?from=a-message`);
    await opened(page);

    await context.setOffline(false);
    putOutNewer();
    await server.start();
    const name = page.getByRole('textbox', { name: 'Name of the design' });
    await name.fill('Being typed');
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      await registration?.update();
    });
    const notice = page.getByText('A newer version is ready: reload when it suits you.');
    await notice.waitFor();
    expect(await axeEverywhere(page, '.notices')).toEqual([]);
    expect(await name.inputValue()).toBe('Being typed');
    expect(await page.locator('meta[name=edition]').count()).toBe(0);
    await ask(page, /^Curve/); // its file is gone from the server, and the open page still finds it
    await page
      .locator('curve-panel')
      .locator('figure, table, svg, canvas')
      .first()
      .waitFor({ state: 'attached' });
    await page.getByRole('button', { name: 'Reload now' }).click();
    await page.locator('meta[name=edition]').waitFor({ state: 'attached' });
    await opened(page);
    expect(await nameOf(page)).toBe('Being typed');
    expect(faults).toEqual([]);
    await context.close();
  });
});
