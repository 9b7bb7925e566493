import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, figures, openStage, type Stage, visit } from './page.ts';
import { axeEverywhere } from './walk.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(async () => {
  await stage?.close();
});

const design = (page: Page) => page.evaluate(() => document.querySelector('app-shell')!.session!.design);
const address = (page: Page) => page.evaluate(() => window.location.href);

/** Bends the tips by one key and renames: a design of the visitor's own. */
async function makeOwn(page: Page, name: string): Promise<void> {
  await page.getByRole('slider', { name: 'Wing tip droop' }).press('ArrowDown');
  const field = page.getByRole('textbox', { name: 'Name of the design' });
  await field.fill(name);
  await field.press('Enter');
  await figures(page);
}

/** The link to the design on screen, read from the browser's clipboard. */
async function copyLink(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Copy a link' }).click();
  await page.getByRole('button', { name: 'Link copied' }).waitFor();
  return page.evaluate(() => navigator.clipboard.readText());
}

const ALLOWED = { permissions: ['clipboard-read', 'clipboard-write'] };

describe('a share link', () => {
  it('opens in another browser as one step; undo brings its own design back, and a reload keeps both', async () => {
    const sender = await visit(stage, ALLOWED);
    await makeOwn(sender.page, 'From the sender');
    const [sent, link] = [await design(sender.page), await copyLink(sender.page)];
    expect(await axeFindings(sender.page)).toEqual([]);
    await sender.close();

    const { page, faults, close } = await visit(stage);
    await makeOwn(page, 'My own');
    const own = await design(page);
    const bare = await address(page);
    await page.goto('about:blank'); // else the address alone changes
    await page.goto(link);
    await figures(page);
    expect(await design(page)).toEqual(sent);
    expect(await address(page)).toBe(bare);
    await page.waitForTimeout(600); // kept by now
    await page.reload();
    await figures(page);
    expect(await design(page)).toEqual(sent);
    await page.getByRole('button', { name: 'Undo: open a link' }).click();
    expect(await design(page)).toEqual(own);
    await page.getByRole('button', { name: 'Redo: open a link' }).click();
    expect(await design(page)).toEqual(sent);
    await page.goto(link.replace(/#.*/, '#answers')); // other fragments are left alone
    expect(await address(page)).toContain('#answers');
    expect(faults).toEqual([]);
    await close();
  });

  it('that is broken gives a message and leaves the design', async () => {
    const { page, faults, close } = await visit(stage, ALLOWED);
    await makeOwn(page, 'My own');
    const [own, link, bare] = [await design(page), await copyLink(page), await address(page)];
    for (const broken of [link.slice(0, -40), `${bare}#design.7.abc`, `${bare}#design.1.`]) {
      await page.goto('about:blank');
      await page.goto(broken);
      await figures(page);
      await page.locator('.notice.trouble', { hasText: 'The link cannot be opened' }).waitFor();
      expect(await design(page)).toEqual(own);
      expect(await address(page)).toBe(bare);
    }
    expect(await page.getByRole('button', { name: 'Undo: name' }).count()).toBe(1);
    expect(await axeEverywhere(page, '.notices')).toEqual([]);
    expect(faults).toEqual([]);
    await close();
  });

  it('opens when pasted with the keyboard, but not into a field', async () => {
    const { page, close } = await visit(stage, ALLOWED);
    const demo = await design(page);
    const link = await copyLink(page);
    await makeOwn(page, 'My own');
    const own = await design(page);
    const name = page.getByRole('textbox', { name: 'Name of the design' });
    await name.focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.press('Control+v');
    expect(await name.inputValue()).toContain('#design.1.');
    await page.keyboard.press('Escape');
    expect(await design(page)).toEqual(own);
    await page.getByRole('button', { name: 'Copy a link' }).focus();
    await page.keyboard.press('Control+v');
    await page.getByRole('button', { name: 'Undo: open a pasted design' }).waitFor();
    expect(link).toContain('#design.1.');
    expect(await design(page)).toEqual(demo);
    await close();
  });
});

it('opens a file dropped anywhere, marks the page before, and refuses a broken one', async () => {
  const { page, faults, close } = await visit(stage, { viewport: { width: 390, height: 844 } });
  const demo = await design(page);
  const drop = (text: string, last: 'dragover' | 'drop') =>
    page.locator('side-view').evaluate(
      (target, [content, event]) => {
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([content], 'sent.json', { type: 'application/json' }));
        const parts = { dataTransfer, bubbles: true, composed: true, cancelable: true };
        target.dispatchEvent(new DragEvent('dragover', parts));
        if (event === 'drop') target.dispatchEvent(new DragEvent('drop', parts));
      },
      [text, last] as const,
    );
  await drop('', 'dragover');
  await page.getByText('Drop a design to open it').waitFor();
  expect(await axeEverywhere(page, '.drop-mark')).toEqual([]);
  await drop('{ "format": "downcurve-design",', 'drop');
  await page.locator('.notice.trouble', { hasText: 'sent.json' }).waitFor();
  expect(await page.locator('.drop-mark').count()).toBe(0);
  expect(await design(page)).toEqual(demo);
  await drop(JSON.stringify({ ...demo, name: 'Dropped' }), 'drop');
  await page.getByRole('button', { name: 'Undo: open sent.json' }).waitFor();
  await figures(page);
  expect((await design(page)).name).toBe('Dropped');
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  expect(faults).toEqual([]);
  await close();
});
