/** The journey "check stabilizer sizing": a foil that exists typed in, is its stabilizer big enough, what would help. */
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Design } from '../../src/solver/design/document.ts';
import { figures, openStage, type Stage, visit } from './page.ts';

const SLOW = { timeout: 30_000 }; // a busy machine

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(async () => {
  await stage?.close();
});

const design = (page: Page): Promise<Design> =>
  page.evaluate(() => document.querySelector('app-shell')!.session!.design);
const margin = (page: Page) =>
  page.evaluate(() => document.querySelector('app-shell')!.session!.report!.stability.staticMargin);

/** Fields of the shape by label: the wing's come first, then the stabilizer's. */
async function typeShape(page: Page, label: string, place: number, text: string): Promise<void> {
  const field = page.locator('shape-panel').getByRole('spinbutton', { name: label, exact: true }).nth(place);
  await field.fill(text);
  await field.press('Enter');
}

async function openHold(page: Page): Promise<void> {
  await page.getByRole('tab', { name: /^Hold/ }).click();
  await settled(page);
}

/** Every study of the panel has answered. */
async function settled(page: Page): Promise<void> {
  await figures(page);
  await rows(page, 'Changes').last().waitFor();
  await expect.poll(() => page.locator('coupling-panel .wait').count(), SLOW).toBe(0);
}

const rows = (page: Page, caption: string) =>
  page.locator('stabilizer-sizing').getByRole('region', { name: caption }).locator('tbody tr');
const undo = (page: Page) => page.getByRole('button', { name: /^Undo:/ });

describe('check stabilizer sizing', () => {
  it('types in a foil that exists, learns what its stabilizer is worth, and takes a size that fits', async () => {
    const { page, faults, close } = await visit(stage);
    await typeShape(page, 'Unrolled length', 0, '760 mm');
    await typeShape(page, 'Unrolled length', 1, '14 in');
    await typeShape(page, 'Arm', 0, '0.58 m');
    const typed = await design(page);
    expect(typed.stabilizer!.length.value).toBeCloseTo(0.3556, 9);
    await openHold(page);
    const verdict = page.locator('stabilizer-sizing .say').first();
    await expect.poll(() => verdict.textContent(), SLOW).toMatch(/is not big enough: it has \d+.cm²/);
    expect(await page.locator('coupling-panel .caution').textContent()).toContain('no approval of strength');
    // The margin asked for, then the area that gives it.
    const wanted = page
      .locator('stabilizer-sizing')
      .getByRole('spinbutton', { name: 'Wanted static margin' });
    await wanted.fill('-10');
    await wanted.press('Enter');
    await expect.poll(() => verdict.textContent(), SLOW).toContain('For a static margin of −10 %');
    const before = await margin(page);
    await rows(page, 'Choices').filter({ hasText: 'margin, by area' }).getByRole('button').click();
    await settled(page);
    await expect.poll(() => verdict.textContent(), SLOW).toMatch(/is big enough/);
    expect(await margin(page)).toBeCloseTo(-0.1, 2);
    expect(before).toBeLessThan(-0.1);
    await undo(page).click();
    await figures(page);
    expect(await design(page)).toEqual(typed);
    expect(faults).toEqual([]);
    await close();
  });

  it('sees what a shim and a longer fuselage do, takes one by keyboard, and undo takes it back', async () => {
    const { page, faults, close } = await visit(stage);
    const before = await design(page);
    await openHold(page);
    const changes = rows(page, 'Changes');
    expect(await changes.filter({ hasText: 'nose up' }).locator('td').first().textContent()).toMatch(
      /mm aft/,
    );
    const take = changes.filter({ hasText: 'mm longer' }).getByRole('button');
    await take.focus();
    await page.keyboard.press('Enter');
    await settled(page);
    const longer = await design(page);
    expect(longer.stabilizer!.arm).toBeCloseTo(before.stabilizer!.arm + 0.05, 9);
    expect({ ...longer.stabilizer, arm: before.stabilizer!.arm }).toEqual(before.stabilizer);
    expect(await margin(page)).toBeGreaterThan(-0.43);
    await page.getByRole('button', { name: /^Undo: fuselage .* longer/ }).click();
    await figures(page);
    expect(await design(page)).toEqual(before);
    expect(faults).toEqual([]);
    await close();
  });

  it('says the coupling in words, and each mode in a sentence that follows the design', async () => {
    const { page, faults, close } = await visit(stage);
    await openHold(page);
    const panel = page.locator('coupling-panel');
    const sideways = panel.getByRole('region', { name: /^Sideways/ });
    expect(await sideways.textContent()).toContain('This is what the rider balances');
    const coupled = panel.getByRole('region', { name: /^Foil alone, about/ });
    const said = await coupled.textContent();
    expect(said).toContain('out of the turn');
    await page.getByRole('combobox', { name: 'Open a demo design' }).selectOption('flat-race');
    await settled(page);
    // A flat wing rolls into its turn; enough droop takes that away (C_lr changes its sign at the neutral droop).
    await expect.poll(() => coupled.textContent(), SLOW).toContain('starboard down, into the turn');
    expect(faults).toEqual([]);
    await close();
  });
});
