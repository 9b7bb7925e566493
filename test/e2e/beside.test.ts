/** Two designs kept, compared, one made the ghost; a reload, another tab, a storage that refuses. */
import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeFindings, figures, openStage, type Stage, visit } from './page.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage?.close());

const keepBeside = (page: Page) => page.getByRole('button', { name: 'Keep beside' }).click();
const openBeside = (page: Page) => page.getByRole('tab', { name: /^Beside/ }).click();
const names = (page: Page) =>
  page.evaluate(() => document.querySelector('app-shell')!.session!.kept.list.map(({ name }) => name));

/** Waits until the page has stored what it shows on the shelf. */
const stored = (page: Page, count: number) =>
  page.waitForFunction((count) => {
    const { list } = document.querySelector('app-shell')!.session!.kept;
    return list.length === count && list.every(({ isStored }) => isStored);
  }, count);

/** The cell of a design in a column of the comparison. */
async function cell(page: Page, design: string, title: RegExp): Promise<string> {
  const table = page.getByRole('region', { name: 'Designs compared' });
  const heads = await table.getByRole('columnheader').allTextContents();
  const place = heads.findIndex((head) => title.test(head.trim()));
  expect(place, heads.join()).toBeGreaterThan(0);
  const row = table.getByRole('row').filter({ has: page.locator('.name', { hasText: design }) });
  return (await row
    .locator('td')
    .nth(place - 1)
    .textContent())!.trim();
}

test('two designs are kept, compared, one is the ghost, and all is there after a reload', {
  timeout: 240_000,
}, async () => {
  const { page, faults, close } = await visit(stage);
  await keepBeside(page);
  await page.getByText('is kept: see Beside.').waitFor();
  const droop = page.locator('shape-panel').getByRole('spinbutton', { name: 'Tip angle, down' }).first();
  await droop.fill('12');
  await droop.press('Enter');
  await page.getByRole('textbox', { name: 'Name of the design' }).fill('Flatter');
  await page.getByRole('textbox', { name: 'Name of the design' }).press('Enter');
  await figures(page);
  await keepBeside(page);
  await stored(page, 2);

  await openBeside(page);
  const table = page.getByRole('region', { name: 'Designs compared' });
  await expect.poll(() => cell(page, 'Aldersund', /^Hold index/), { timeout: 60_000 }).toMatch(/^\d/);
  const own = await page.evaluate(
    () => document.querySelector('app-shell')!.session!.report!.stability.holdIndex!,
  );
  await expect.poll(() => cell(page, 'Flatter', /^Hold index/), { timeout: 60_000 }).toBe(own.toFixed(2));
  await table.getByRole('button', { name: 'Hold index' }).press('Enter');
  expect(await table.getByRole('columnheader', { name: 'Hold index' }).getAttribute('aria-sort')).toBe(
    'ascending',
  );
  expect(await table.locator('tbody .name').last().textContent()).toContain('Aldersund');
  await page.getByText('12.0° → 26.0°').waitFor();
  expect(await axeFindings(page, { within: 'main' })).toEqual([]);

  await page.getByRole('button', { name: /^Make it the ghost: Aldersund/ }).click();
  const chip = page.locator('ghost-chip');
  await chip.getByText('Aldersund').waitFor();
  await page.locator('head-on-view path.ghost').first().waitFor({ state: 'attached' });
  await page
    .locator('hold-panel')
    .getByText(/^ghost \d/)
    .first()
    .waitFor({ timeout: 60_000 });

  await page.reload();
  await figures(page);
  await chip.getByText('Aldersund').waitFor();
  expect((await names(page)).sort()).toEqual(['Aldersund sprint 74, curved', 'Flatter']);
  await page
    .locator('hold-panel')
    .getByText(/^ghost \d/)
    .first()
    .waitFor({ timeout: 60_000 });
  await page.locator('#tab-spread').click();
  await expect
    .poll(
      () =>
        page
          .locator('spread-panel line-chart')
          .first()
          .evaluate((chart) =>
            (chart as HTMLElement & { series: { name: string }[] }).series.map(({ name }) => name),
          ),
      { timeout: 60_000 },
    )
    .toContain('ghost: wing');
  await chip.getByRole('button', { name: /^let go/i }).click();
  await page.locator('head-on-view path.ghost').first().waitFor({ state: 'detached' });

  await openBeside(page);
  await page.getByRole('button', { name: /^Open: Aldersund/ }).click();
  await figures(page);
  expect(await droop.inputValue()).toBe('26');
  await page.keyboard.press('Control+z');
  await expect.poll(() => droop.inputValue()).toBe('12');
  expect(faults).toEqual([]);
  await close();
});

test('another tab sees what is kept, marked and taken off, and what is taken off comes back', {
  timeout: 120_000,
}, async () => {
  const { page, faults, close } = await visit(stage);
  const other = await page.context().newPage();
  await other.goto(stage.built.address);
  await figures(other);
  await keepBeside(page);
  await stored(page, 1);
  await expect.poll(() => names(other)).toHaveLength(1);
  await openBeside(other);
  await other.getByText('Ridden? Marks and notes').click();
  await other.getByRole('combobox', { name: 'Hold', exact: true }).selectOption('4');
  await openBeside(page);
  await page.getByText('Ridden: hold 4').waitFor();
  await page.getByRole('button', { name: /^Take off the shelf/ }).click();
  await expect.poll(() => names(other)).toHaveLength(0);
  await page.getByRole('button', { name: 'Bring it back' }).press('Enter');
  await expect.poll(() => names(other)).toHaveLength(1);
  await page.getByText('Ridden: hold 4').waitFor();
  expect(faults).toEqual([]);
  await close();
});

test('a storage that is full says so, holds the design in the page and offers it as a file', {
  timeout: 120_000,
}, async () => {
  const { page, faults, close } = await visit(stage);
  await page.evaluate(() => {
    const refuse = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
    IDBObjectStore.prototype.put = refuse as typeof IDBObjectStore.prototype.put;
    Storage.prototype.setItem = refuse; // which would hold it for the next visit
  });
  await keepBeside(page);
  await page.getByText('This browser’s storage is full: what is kept now').first().waitFor();
  expect(await names(page)).toHaveLength(1);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save it as a file' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('aldersund-sprint-74-curved.json');
  await openBeside(page);
  await page.getByText('in this page only').waitFor();
  expect(await axeFindings(page, { within: 'main' })).toEqual([]);
  expect(faults).toEqual([]);
  await close();
});
