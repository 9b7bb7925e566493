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

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true };
const LONG = 180_000; // ms: a study of every step, and axe in eight looks

describe('the beach card', () => {
  it('opens from the workbench on a phone, steps in millimetres, prints on one page, is all in one address', {
    timeout: LONG,
  }, async () => {
    const { page, faults, close } = await visit(stage, PHONE);
    const foreign: string[] = [];
    page.on('request', (request) => {
      if (!request.url().startsWith(stage.built.address)) foreign.push(request.url());
    });
    await page.getByRole('link', { name: 'Beach card' }).click();
    const feet = page.locator('.strip strong').first();
    await feet.waitFor({ timeout: 60_000 });
    expect(await feet.textContent()).toBe('0\u00a0mm');
    await page.getByRole('button', { name: 'Shim under the stabilizer: 0.1° more' }).tap();
    await page.waitForFunction(
      () =>
        document.querySelector('beach-card')!.shadowRoot!.querySelector('.strip strong')!.textContent !==
        '0\u00a0mm',
    );
    expect(Number.parseFloat((await feet.textContent())!)).toBeGreaterThan(1);
    await page.getByText('How the figures come about').tap();
    await page.getByRole('button', { name: 'Table of single steps' }).tap();
    await page.locator('.single tbody tr').nth(10).waitFor({ timeout: 60_000 });
    expect(await axeEverywhere(page)).toEqual([]);
    await page.getByRole('button', { name: 'White on black' }).tap();
    expect(await axeEverywhere(page)).toEqual([]);
    await page.getByRole('button', { name: 'Table of single steps' }).tap();
    await page.getByText('How the figures come about').tap();
    expect(await leastTarget(page)).toBeGreaterThanOrEqual(48);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);

    await page.emulateMedia({ media: 'print' });
    expect(await page.evaluate(() => getComputedStyle(document.body).color)).toBe('rgb(0, 0, 0)'); // on paper, also when white on screen
    await page.emulateMedia({ media: null });
    const paper = (await page.pdf({ format: 'A4' })).toString('latin1');
    expect(paper.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);

    await page.evaluate(() => navigator.serviceWorker.ready);
    await page.context().setOffline(true); // the beach has no network
    await page.reload(); // the setting is kept in the address
    await page.getByText('+0.1° nose up').waitFor();
    await page.context().setOffline(false);
    await page.goto(`${stage.built.address}beach.html#design.1.AAAA`);
    await page.getByRole('alert').getByText('The link cannot be opened').waitFor();
    expect(await axeEverywhere(page)).toEqual([]);
    await page.getByRole('link', { name: 'To the workbench' }).tap();
    await figures(page);
    expect(foreign).toEqual([]);
    expect(faults).toEqual([]);
    await close();
  });
});

/** Height of the smallest thing to press on the card, px. */
const leastTarget = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const card = document.querySelector('beach-card')!.shadowRoot!;
    const steppers = [...card.querySelectorAll('setting-stepper')];
    const inside = steppers.flatMap((each) => [...each.shadowRoot!.querySelectorAll('button')]);
    const rest = card.querySelector('beach-rest')!.shadowRoot!;
    const outside = [card, rest].flatMap((root) => [...root.querySelectorAll('button, a, summary')]);
    const all = [...outside, ...inside];
    return Math.min(...all.map((each) => each.getBoundingClientRect().height));
  });

describe('the rider page', () => {
  it('is reached against another design, says five things, and opens again from its link', {
    timeout: LONG,
  }, async () => {
    const { page, faults, close } = await visit(stage, { ...PHONE, colorScheme: 'dark' });
    await page.getByRole('button', { name: 'Rider page' }).tap();
    await page.getByRole('link', { name: 'The same wing, flat' }).tap();
    const five = page.locator('.five li');
    await five.nth(4).waitFor({ timeout: 60_000 });
    expect(await five.count()).toBe(5);
    const said = await five.allTextContents();
    for (const sentence of said) expect(sentence).toMatch(/solved|estimated/);
    expect(await axeEverywhere(page)).toEqual([]);
    const link = page.url();
    expect(link).toMatch(/\/rider\.html#rider\.1\.[\w-]+\.[\w-]+$/);
    await page.getByRole('link', { name: 'Open the second' }).tap();
    await figures(page);
    expect(await page.evaluate(() => document.querySelector('app-shell')!.session!.design.name)).toContain(
      'flat',
    );
    expect(faults).toEqual([]);
    await close();

    const context = await stage.browser.newContext({ viewport: { width: 1024, height: 800 } });
    const other = await context.newPage();
    await other.goto(link);
    await other.locator('.five li').nth(4).waitFor({ timeout: 60_000 });
    expect(await other.locator('.five li').allTextContents()).toEqual(said);
    expect(await axeFindings(other)).toEqual([]);
    await other.goto(`${stage.built.address}rider.html#rider.1.AAAA`);
    await other.getByRole('alert').getByText('The link cannot be opened').waitFor();
    expect(await axeEverywhere(other)).toEqual([]);
    await context.close();
  });
});
