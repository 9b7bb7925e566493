/** From five questions to a wing, on the built page: what the proposal says is what the ledger and Speed then show. */
import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { FigureValue } from '../../src/components/figure-value.ts';
import { figures, openStage, type Stage, visit } from './page.ts';
import { axeEverywhere } from './walk.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

const PATIENCE = 110_000;

/** Start, proposal and what it was held to, of one line of the comparison. */
function rowOf(page: Page, name: string): Promise<string[]> {
  const row = page.getByRole('table', { name: 'Start against proposal' }).getByRole('row', { name });
  return row.first().getByRole('cell').allTextContents();
}

const numberIn = (text: string) =>
  Number(/-?[\d.]+/.exec(text.replace('\u2212', '-').replace('\u202f', ''))![0]);

test('the guided downwind start gives a wing whose figures agree everywhere', {
  timeout: 240_000,
}, async () => {
  const { page, faults, close } = await visit(stage);
  await page.getByRole('tab', { name: /^Propose/ }).click();
  await page.getByRole('button', { name: 'Downwind wing' }).click();
  const mass = page.getByRole('spinbutton', { name: 'How heavy, all up?' });
  await mass.fill('80');
  await mass.press('Enter');
  await page.getByRole('button', { name: 'Look for this wing' }).click();

  // The page answers while it runs: another question opens, and the search is still there on return.
  await page.getByRole('progressbar', { name: /Trying wings|Settling/ }).waitFor();
  await page.getByRole('tab', { name: /^Spread/ }).click();
  await page.locator('spread-panel').waitFor({ timeout: 10_000 });
  await page.getByRole('tab', { name: /^Propose/ }).click();
  await page.getByRole('button', { name: 'Take it' }).waitFor({ timeout: PATIENCE });
  expect(await axeEverywhere(page, 'question-tabs')).toEqual([]);
  const [, hold] = await rowOf(page, 'Hold index');
  const [, cruiseDrag] = await rowOf(page, 'Drag at cruise');
  const [, slowDrag] = await rowOf(page, 'Drag at take-off');
  const [, takeOff, heldTo] = await rowOf(page, 'Take-off speed');
  expect(heldTo).toContain('at most');

  await page.getByRole('button', { name: 'Take it' }).click();
  await figures(page);
  const report = await page.evaluate(() => {
    const { session } = document.querySelector('app-shell')!;
    const { report, design } = session!;
    return { index: report!.stability.holdIndex!, lift: report!.lift.total, mass: design.brief.allUpMass };
  });
  expect(report.mass).toBe(80);
  expect(report.lift / (80 * 9.80665)).toBeCloseTo(1, 6);
  expect(report.index).toBeCloseTo(numberIn(hold!), 1);
  const shown = await page
    .locator('hold-panel figure-value')
    .evaluateAll((all) => (all as FigureValue[]).find(({ label }) => label.startsWith('Hold index'))?.value);
  expect(shown).toBeCloseTo(numberIn(hold!), 1);

  await page.getByRole('tab', { name: /^Speed/ }).click();
  const lifts = page
    .locator('speed-panel')
    .getByText(/It lifts off at [\d.]+/)
    .first();
  await lifts.waitFor({ timeout: PATIENCE });
  const words = (await lifts.textContent())!;
  expect(numberIn(/It lifts off at ([\d.]+)/.exec(words)![1]!)).toBeCloseTo(numberIn(takeOff!), 0.7);
  const drags = await page
    .getByRole('table', { name: /Drag by source/ })
    .first()
    .getByRole('row')
    .last()
    .getByRole('cell')
    .allTextContents();
  const [slow, cruise] = drags.map(numberIn);
  expect(cruise).toBeCloseTo(numberIn(cruiseDrag!), 0.7);
  expect(slow).toBeCloseTo(numberIn(slowDrag!), 0.7);

  // One step takes the proposal back, one more the guided start.
  await page.getByRole('button', { name: /^Undo/ }).click();
  await page.getByRole('button', { name: /^Undo/ }).click();
  const name = await page.evaluate(
    () => document.querySelector('app-shell')!.session!.design.brief.allUpMass,
  );
  expect(name).not.toBe(80);
  expect(faults).toEqual([]);
  await close();
});
