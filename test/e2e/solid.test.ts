import { createHash } from 'node:crypto';
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

const SLOW = { timeout: 180_000 };
const PATIENT = { timeout: 30_000 };

const fold = (page: Page) => page.locator('solid-fold summary').filter({ hasText: 'Turn it round' });
const picture = (page: Page) => page.getByRole('img', { name: /^The foil in three dimensions/ });
const frames = (page: Page) =>
  page.evaluate(
    () =>
      document
        .querySelector('solid-fold')!
        .shadowRoot!.querySelector('solid-view')!
        .shadowRoot!.querySelector('solid-canvas')!.frames,
  );

/** What is on the screen once the eye is at rest. */
async function seen(page: Page): Promise<string> {
  let before = -1;
  const isStill = async () => {
    const now = await frames(page);
    const isSame = now > 0 && now === before;
    before = now;
    return isSame;
  };
  await expect.poll(isStill, { interval: 200, ...PATIENT }).toBe(true);
  return createHash('sha256')
    .update(await picture(page).screenshot())
    .digest('hex');
}

/** Performance remarks of software drawing are no faults of the page. */
const real = (faults: readonly string[]) =>
  faults.filter((fault) => !fault.includes('GPU stall due to ReadPixels'));

describe('Turn it round', () => {
  it(
    'is loaded when opened, turns by the keyboard, follows the tip and the scheme, and stays open',
    SLOW,
    async () => {
      const { page, faults, close } = await visit(stage, { reducedMotion: 'reduce' });
      const loaded: string[] = [];
      page.on('request', (request) => loaded.push(request.url()));
      expect(await page.evaluate(() => customElements.get('solid-view'))).toBeUndefined();
      await fold(page).focus();
      await page.keyboard.press('Enter');
      await picture(page).waitFor(PATIENT);
      expect(loaded.filter((url) => /solid-view-.*\.js$/.test(url))).toHaveLength(1);
      expect(await axeFindings(page)).toEqual([]);
      await picture(page).focus();
      const start = await seen(page);
      const drawn = await frames(page);
      await page.keyboard.press('ArrowDown');
      await expect.poll(() => picture(page).getAttribute('aria-label')).toContain('10° above');
      const turned = await seen(page);
      expect(turned).not.toBe(start);
      expect((await frames(page)) - drawn).toBe(1); // motion is reduced: no way between, and nothing after
      await page.keyboard.press('1');
      expect(await seen(page)).toBe(start);

      await page.getByRole('slider', { name: 'Wing tip droop' }).focus();
      const drooping = await seen(page);
      for (let k = 0; k < 5; k++) await page.keyboard.press('ArrowDown');
      await figures(page);
      const bent = await seen(page);
      expect(bent).not.toBe(drooping);
      await page.emulateMedia({ colorScheme: 'dark' });
      await expect.poll(() => seen(page)).not.toBe(bent);
      expect(await axeFindings(page)).toEqual([]);

      await page.reload();
      await figures(page);
      await picture(page).waitFor(PATIENT);
      await fold(page).click();
      await picture(page).waitFor({ state: 'detached' });
      expect(real(faults)).toEqual([]);
      await close();
    },
  );

  it('says when it could not be loaded, and tries again when asked', SLOW, async () => {
    const { page, close } = await visit(stage, { serviceWorkers: 'block' });
    await page.route(/solid-view-.*\.js$/, (route) => route.abort());
    await fold(page).click();
    await page.getByText('The view to turn could not be loaded').waitFor(PATIENT);
    expect(await axeEverywhere(page, 'solid-fold')).toEqual([]);
    await page.unroute(/solid-view-.*\.js$/);
    await page.getByRole('button', { name: 'Try again' }).click();
    await picture(page).waitFor(PATIENT);
    await close();
  });

  it('does not hold a finger that scrolls, and turns under one that goes sideways', SLOW, async () => {
    const { page, close } = await visit(stage, {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
      reducedMotion: 'reduce',
    });
    await fold(page).tap();
    await picture(page).waitFor(PATIENT);
    await picture(page).scrollIntoViewIfNeeded();
    await seen(page);
    const devtools = await page.context().newCDPSession(page);
    const touch = (
      type: 'touchStart' | 'touchMove' | 'touchEnd',
      ...touchPoints: { x: number; y: number }[]
    ) => devtools.send('Input.dispatchTouchEvent', { type, touchPoints });
    const swipe = async (dx: number, dy: number) => {
      const box = (await picture(page).boundingBox())!;
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await touch('touchStart', { x, y });
      for (let k = 1; k <= 10; k++) {
        await touch('touchMove', { x: x + (dx * k) / 10, y: y + (dy * k) / 10 });
        await page.waitForTimeout(16);
      }
      await touch('touchEnd');
    };
    const place = () => page.evaluate(() => Math.round(window.scrollY));
    const label = () => picture(page).getAttribute('aria-label');
    const [top, view] = [await place(), await label()];
    await swipe(120, 0);
    expect(await place()).toBe(top);
    await expect.poll(label).not.toBe(view);
    const after = await label();
    await swipe(0, -150);
    await expect.poll(place).toBeGreaterThan(top + 80);
    expect(await label()).toBe(after);
    await close();
  });
});
