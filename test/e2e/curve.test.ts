/** Trading curvature against lost lift: the flat demo, the place where the price of hold passes the user's own, and back. */
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { figures, openStage, type Stage, visit } from './page.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(async () => {
  await stage?.close();
});

const SLOW = 120_000;
const PLACE = /At ([\d.]+)°, one more point of hold index costs 1\.00.%/;

const session = (page: Page) =>
  page.evaluate(() => {
    const { design, report } = document.querySelector('app-shell')!.session!;
    return { design, report: report! };
  });
const textOf = (page: Page, selector: string) =>
  page.locator(selector).evaluate((element) => element.shadowRoot!.textContent!.replaceAll(/\s+/g, ' '));

/** The flat demo with the Curve question open and answered, the price's interval included. */
async function openCurve(page: Page): Promise<void> {
  await page.getByRole('combobox', { name: 'Open a demo design' }).selectOption('flat-race');
  await figures(page);
  await page.getByRole('tab', { name: /^Curve/ }).click();
  await page.locator('curve-panel p', { hasText: 'the method’s own ±' }).waitFor({ timeout: SLOW });
}

describe('droop against lost lift', () => {
  it('reads where the price passes 1 %, clicks it: design, ledger and hold follow; undo brings the flat wing back', {
    timeout: SLOW,
  }, async () => {
    const { page, faults, close } = await visit(stage);
    await openCurve(page);
    const [ledger, hold] = [await textOf(page, 'ledger-panel'), await textOf(page, 'hold-panel')];
    const before = await session(page);
    expect(before.design.wing.droop).toEqual({ kind: 'flat' });
    const place = Number(PLACE.exec(await textOf(page, 'curve-panel'))![1]);

    const plot = page.locator('plot-grid').first().locator('small-plot', { hasText: 'Hold index' });
    const over = plot.locator('.u-over');
    await over.scrollIntoViewIfNeeded();
    const box = (await over.boundingBox())!;
    await page.mouse.click(box.x + (place / 90) * box.width, box.y + box.height / 2); // the sweep goes to 90 degrees
    await figures(page);

    const after = await session(page);
    expect(after.design.wing.droop.kind).toBe('arc');
    const { tipAngle } = after.design.wing.droop as { tipAngle: number };
    expect(Math.abs(tipAngle - place)).toBeLessThan(0.06); // the place is read to a tenth of a degree
    expect(after.design.wing.length).toEqual(before.design.wing.length);
    expect(before.report.stability.holdIndex).toBeCloseTo(0, 9);
    expect(after.report.stability.holdIndex!).toBeGreaterThan(0.5);
    expect(after.report.ledger.lostFraction!).toBeGreaterThan(0.02);
    expect(await textOf(page, 'ledger-panel')).not.toBe(ledger);
    expect(await textOf(page, 'hold-panel')).not.toBe(hold);
    const now = page
      .locator('plot-grid')
      .first()
      .getByRole('button', { name: `now ${tipAngle.toFixed(1)}` });
    await now.waitFor({ timeout: SLOW });

    await page.getByRole('button', { name: 'Undo: wing droop' }).click();
    await figures(page);
    expect((await session(page)).design).toEqual(before.design);
    expect(await textOf(page, 'ledger-panel')).toBe(ledger);
    expect(await textOf(page, 'hold-panel')).toBe(hold);
    expect(faults).toEqual([]);
    await close();
  });

  it('goes to the neutral droop and across the map by keyboard, each one step', {
    timeout: SLOW,
  }, async () => {
    const { page, faults, close } = await visit(stage);
    await openCurve(page);
    const flat = (await session(page)).design;
    const neutral = page
      .locator('plot-grid')
      .first()
      .getByRole('button', { name: /^neutral/ });
    await neutral.focus();
    await page.keyboard.press('Enter');
    await figures(page);
    const bent = await session(page);
    expect(Math.abs(bent.report.stability.foil.Clr)).toBeLessThan(5e-4); // 0.3 degrees' worth
    const map = page.getByRole('application');
    await page.locator('droop-map').scrollIntoViewIfNeeded(); // asked for only when it comes near
    await map.waitFor({ timeout: SLOW });
    await map.focus();
    for (const key of ['ArrowUp', 'ArrowUp', 'ArrowLeft', 'Enter']) await page.keyboard.press(key);
    await figures(page);
    const moved = await session(page);
    expect(moved.report.geometry.stabilizer!.projectedArea).toBeGreaterThan(
      bent.report.geometry.stabilizer!.projectedArea,
    );
    await page.keyboard.press('Control+z');
    expect((await session(page)).design).toEqual(bent.design);
    await page.keyboard.press('Control+z');
    expect((await session(page)).design).toEqual(flat);
    expect(faults).toEqual([]);
    await close();
  });
});
