import type { BrowserContext, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { opened, openStage, type Stage } from './page.ts';
import { axeEverywhere } from './walk.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(async () => {
  await stage?.close();
});

const nameOf = (page: Page) => page.evaluate(() => document.querySelector('app-shell')!.session!.design.name);
const state = (page: Page) => page.locator('page-header .state');
const saved = (page: Page) => page.locator('page-header .state.saved').waitFor();

async function rename(page: Page, name: string): Promise<void> {
  const field = page.getByRole('textbox', { name: 'Name of the design' });
  await field.fill(name);
  await field.press('Enter');
}

/** Bends the tips by one key. */
const bend = (page: Page) => page.getByRole('slider', { name: 'Wing tip droop' }).press('ArrowDown');
const tipAngle = (page: Page) =>
  page.evaluate(
    () => (document.querySelector('app-shell')!.session!.design.wing.droop as { tipAngle: number }).tipAngle,
  );

/** A fresh visit. Nothing here asks for figures, so none are waited for. */
async function visit() {
  const context = await stage.browser.newContext({ viewport: { width: 1440, height: 1000 } });
  const page = await another(context);
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text());
  });
  return { page, faults, close: () => context.close() };
}

async function another(context: BrowserContext, prepare?: (page: Page) => Promise<unknown>): Promise<Page> {
  const page = await context.newPage();
  await prepare?.(page);
  await page.goto(stage.built.address);
  await opened(page);
  return page;
}

describe('the history', () => {
  it('survives a reload with the names of its steps, what was undone too', async () => {
    const { page, close } = await visit();
    await bend(page);
    await rename(page, 'One');
    await rename(page, 'Two');
    await page.getByRole('button', { name: 'Undo: name' }).click();
    await page.reload();
    await opened(page);
    expect(await nameOf(page)).toBe('One');
    await page.getByRole('button', { name: 'Redo: name' }).click();
    expect(await nameOf(page)).toBe('Two');
    for (const label of ['name', 'name', 'tip droop'])
      await page.getByRole('button', { name: `Undo: ${label}` }).click();
    expect(await tipAngle(page)).toBe(26);
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
    await close();
  });
});

describe('a kept design', () => {
  it('has the notes that were being typed when the page was left', async () => {
    const { page, faults, close } = await visit();
    await page.getByRole('button', { name: 'Keep beside' }).click();
    const notes = async () => {
      await page.getByRole('tab', { name: /^Beside/ }).click();
      const card = page.locator('kept-card');
      await card.locator('summary').click();
      return card.getByRole('textbox', { name: 'Notes' });
    };
    await (await notes()).fill('Steady in chop');
    await page.reload();
    await opened(page);
    await expect.poll(async () => (await notes()).inputValue()).toBe('Steady in chop');
    expect(faults).toEqual([]);
    await close();
  });
});

describe('two tabs', () => {
  it('with the same design notice each other, and both keep what they have made', async () => {
    const { page: one, faults, close } = await visit();
    const two = await another(one.context());
    await bend(one);
    const notice = two.locator('.notice.elsewhere');
    await notice.getByText('This design differs in another tab; the last step there: tip droop.').waitFor();
    expect(await axeEverywhere(two, '.notices')).toEqual([]);
    expect(await tipAngle(two)).toBe(26);
    await rename(two, 'Mine');
    await one.locator('.notice.elsewhere', { hasText: 'the last step there: name' }).waitFor();

    await one.reload(); // each finds its own again, and the difference is said again
    await two.reload();
    await Promise.all([opened(one), opened(two)]);
    expect([await tipAngle(one), await nameOf(one)]).toEqual([26.5, 'Aldersund sprint 74, curved']);
    expect([await tipAngle(two), await nameOf(two)]).toEqual([26, 'Mine']);

    await two.getByRole('button', { name: 'Take that version' }).press('Enter');
    await expect.poll(() => two.evaluate(() => document.activeElement?.className)).toBe('notices');
    expect([await tipAngle(two), await nameOf(two)]).toEqual([26.5, 'Aldersund sprint 74, curved']);
    expect(await notice.count()).toBe(0);
    await expect.poll(() => one.locator('.notice.elsewhere').count()).toBe(0); // both are the same
    await two.getByRole('button', { name: 'Undo: take the other tab’s version' }).click();
    expect(await nameOf(two)).toBe('Mine');
    await one.getByRole('button', { name: 'Go on with mine' }).click();
    await bend(two);
    await bend(one);
    expect(await one.locator('.notice.elsewhere').count()).toBe(0);
    expect([await tipAngle(one), await tipAngle(two)]).toEqual([27, 26.5]);
    expect(faults).toEqual([]);
    await close();
  });

  it('that are closed leave their versions to the next visit', async () => {
    const { page: one, close } = await visit();
    const context = one.context();
    const two = await another(context);
    await rename(one, 'Made in the first');
    await rename(two, 'Made in the second');
    await one.close();
    await two.close();
    const later = await another(context);
    expect(await nameOf(later)).toBe('Made in the second');
    const notice = later.locator('.notice.left');
    expect(await notice.textContent()).toContain('“Made in the first”, last changed');
    expect(await axeEverywhere(later, '.notices')).toEqual([]);
    await notice.getByRole('button', { name: 'Open it' }).click();
    expect(await nameOf(later)).toBe('Made in the first');
    await saved(later);
    await later.close();
    const last = await another(context);
    expect(await nameOf(last)).toBe('Made in the first');
    expect(await last.locator('.notice.left').count()).toBe(0);
    await last.getByRole('button', { name: 'Undo: open what another tab left' }).click();
    expect(await nameOf(last)).toBe('Made in the second');
    await close();
  });
});

describe('the browser’s storage', () => {
  /** Fills the small storage; the last bytes one by one. */
  const fill = (page: Page) =>
    page.evaluate(() => {
      for (let size = 1 << 22; size >= 1; size >>= 1) {
        try {
          for (let k = 0; ; k++) localStorage.setItem(`filling.${size}.${k}`, 'x'.repeat(size));
        } catch {
          // no room for as many
        }
      }
    });
  const empty = (page: Page) =>
    page.evaluate(() => {
      for (const key of Object.keys(localStorage))
        if (key.startsWith('filling.')) localStorage.removeItem(key);
    });

  it('that is full is said, with the way out; and no more once there is room again', async () => {
    const context = await stage.browser.newContext();
    const { origin } = new URL(stage.built.address);
    let grant = async (_quotaSize?: number) => {};
    // Before anything is written: the browser asks for the room there is at the first write and then reckons by itself.
    const page = await another(context, async (blank) => {
      const browser = await context.newCDPSession(blank);
      grant = async (quotaSize) => {
        await browser.send('Storage.overrideQuotaForOrigin', {
          origin,
          ...(quotaSize !== undefined && { quotaSize }),
        });
      };
      await grant(1);
    });
    await fill(page);
    await rename(page, 'Too much');
    const notice = page.locator('.notice.trouble', { hasText: 'This browser’s storage is full' });
    await notice.waitFor();
    expect(await state(page).textContent()).toBe('not saved');
    expect(await axeEverywhere(page, '.notices')).toEqual([]);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      notice.getByRole('button', { name: 'Save as a file' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('too-much.json');
    const asked = page.waitForEvent('dialog');
    await page.close({ runBeforeUnload: true });
    await (await asked).dismiss(); // the browser asks before it is lost: stay
    await empty(page);
    await grant(); // nothing is done on the page: it tries again by itself
    await notice.waitFor({ state: 'detached' });
    await page.reload();
    await opened(page);
    expect(await nameOf(page)).toBe('Too much');
    await context.close();
  });

  it('that is blocked as a whole is said; the page works', async () => {
    const { page, close } = await visit();
    await page.addInitScript(() => {
      const blocked = () => {
        throw new DOMException('blocked', 'SecurityError');
      };
      Object.defineProperty(window, 'indexedDB', { get: blocked });
      Object.defineProperty(window, 'localStorage', { get: blocked });
      Object.defineProperty(window, 'sessionStorage', { get: blocked });
      const refuse = async () => blocked();
      Object.assign(LockManager.prototype, { request: refuse, query: refuse }); // goes with the storage
    });
    await page.reload();
    await opened(page);
    await page.locator('.notice.trouble', { hasText: 'its storage is blocked or damaged' }).waitFor();
    await bend(page);
    await page.locator('.notice.trouble', { hasText: 'does not let the design be saved' }).waitFor();
    expect(await axeEverywhere(page, '.notices')).toEqual([]);
    expect(await tipAngle(page)).toBe(26.5);
    await close();
  });

  it('whose database alone is blocked keeps the design with its history all the same', async () => {
    const { page, close } = await visit();
    await page.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('blocked', 'SecurityError');
      };
    });
    await page.reload();
    await opened(page);
    await bend(page);
    await rename(page, 'Kept');
    await saved(page);
    await page.reload();
    await opened(page);
    expect(await nameOf(page)).toBe('Kept');
    await page.getByRole('button', { name: 'Undo: name' }).click();
    await page.getByRole('button', { name: 'Undo: tip droop' }).click();
    expect(await tipAngle(page)).toBe(26);
    await close();
  });

  it('whose copy is damaged opens the copy before it, says so and hands the damaged one out', async () => {
    const { page, faults, close } = await visit();
    await rename(page, 'Sound');
    await saved(page);
    await page.reload();
    await opened(page);
    await page.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open('downcurve');
          opening.onsuccess = () => {
            const store = opening.result.transaction('session', 'readwrite').objectStore('session');
            const asking = store.getAllKeys();
            asking.onsuccess = () => {
              const key = asking.result.find((each) => String(each).startsWith('design'))!;
              store.put({ version: 2, time: Date.now(), line: 'x', text: '{ torn', trail: null }, key);
              store.transaction.oncomplete = () => {
                opening.result.close();
                resolve();
              };
            };
          };
        }),
    );
    await page.reload();
    await opened(page);
    expect(await nameOf(page)).toBe('Sound');
    const notice = page.locator('.notice.trouble', { hasText: 'The copy saved last could not be read' });
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      notice.getByRole('button', { name: 'Save the unreadable copy' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('set-aside.json');
    expect(await axeEverywhere(page, '.notices')).toEqual([]);
    expect(faults).toEqual([]);
    await close();
  });
});
