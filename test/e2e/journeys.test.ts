/** The three journeys from first visit to answer, each by pointer, by keyboard alone and with a finger on a phone. */
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contextFor, type Hands, handsFor, WAYS, type Way } from './hands.ts';
import { figures, openStage, type Stage, visit } from './page.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(async () => {
  await stage?.close();
});

const PATIENCE = { timeout: 60_000 }; // a busy machine

interface Visitor {
  page: Page;
  hands: Hands;
}

async function travel(way: Way, journey: (visitor: Visitor) => Promise<void>): Promise<void> {
  const { page, faults, close } = await visit(stage, contextFor(way));
  await journey({ page, hands: handsFor(way, page) });
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  expect(faults).toEqual([]);
  await close();
}

const session = (page: Page) =>
  page.evaluate(() => {
    const { design, report } = document.querySelector('app-shell')!.session!;
    return { design, report: report! };
  });
const question = (page: Page, name: RegExp) => page.getByRole('tab', { name });
const field = (within: Locator, name: string, place = 0) =>
  within.getByRole('spinbutton', { name, exact: true }).nth(place);
/** What a figure shows, and its line to press for how it is worked out. */
const figure = (page: Page, panel: string, label: string) =>
  page.locator(`${panel} figure-value`).filter({ has: page.getByText(label, { exact: true }) });
const shown = (of: Locator) => of.locator('.value').first().textContent();

describe('trade curvature against lost lift', () => {
  it.each(WAYS)('%s', async (way) => {
    await travel(way, async ({ page, hands }) => {
      await hands.choose(page.getByRole('combobox', { name: 'Open a demo design' }), 'The same wing, flat');
      await figures(page);
      const flat = await session(page);
      const lost = figure(page, 'ledger-panel', 'Lost to the curve');
      const hold = figure(page, 'hold-panel', 'Hold index');
      const level = await shown(lost);
      expect(level).toMatch(/^0\.0/);
      const loose = await shown(hold);

      // What each degree costs and buys, and where it stops paying at the price one would pay.
      await hands.ask(question(page, /^Curve/));
      const panel = page.locator('curve-panel');
      await panel
        .getByText(/^Bent to|^The wing is flat/)
        .first()
        .waitFor(PATIENCE);
      await hands.write(field(panel, 'Most you would pay for a point of hold'), '0,3 %');
      const place = panel.getByRole('button', { name: /^your price/ }).first();
      await place.waitFor(PATIENCE);
      await hands.press(place);
      await figures(page);

      // The ledger and the hold beside the shape have followed, and say why.
      const bent = await session(page);
      expect(bent.report.ledger.lostFraction!).toBeGreaterThan(flat.report.ledger.lostFraction!);
      expect(bent.report.stability.holdIndex!).toBeGreaterThan(flat.report.stability.holdIndex!);
      expect(await shown(lost)).not.toBe(level);
      expect(await shown(hold)).not.toBe(loose);
      await hands.press(lost.locator('summary'));
      await lost.getByText(/Source:/).waitFor();
      await hands.press(page.getByRole('button', { name: /^Undo/ }));
      expect((await session(page)).design).toEqual(flat.design);
    });
  });
});

describe('design a downwind wing', () => {
  it.each(WAYS)('%s', { timeout: 240_000 }, async (way) => {
    await travel(way, async ({ page, hands }) => {
      await hands.ask(question(page, /^Propose/));
      const panel = page.locator('propose-panel');
      await hands.press(panel.getByRole('button', { name: 'Downwind wing' }));
      await hands.write(field(panel, 'How heavy, all up?'), '80');
      await hands.press(panel.getByRole('button', { name: 'Look for this wing' }));
      // Good enough soon enough: stopped under way, the best so far made whole.
      const cancel = panel.getByRole('button', { name: 'Cancel' });
      await hands.goTo(cancel);
      await panel.getByText(/best so far/).waitFor(PATIENCE);
      await hands.press(cancel);
      await hands.press(panel.getByRole('button', { name: 'Finish with the best so far' }));
      const take = panel.getByRole('button', { name: 'Take it' });
      await take.waitFor(PATIENCE);
      await hands.press(take);
      await figures(page);
      const proposed = await session(page);
      expect(proposed.design.brief.allUpMass).toBe(80);
      expect(proposed.report.lift.total / (80 * 9.80665)).toBeCloseTo(1, 6);

      // Further by hand.
      await hands.write(field(page.locator('shape-panel'), 'Root chord'), '130 mm');
      await figures(page);
      const edited = await session(page);
      expect(edited.report.geometry.wing.projectedArea).not.toBeCloseTo(
        proposed.report.geometry.wing.projectedArea,
        5,
      );
      expect(edited.report.lift.total).toBeCloseTo(proposed.report.lift.total, 6);
    });
  });
});

describe('check stabilizer sizing', () => {
  it.each(WAYS)('%s', async (way) => {
    await travel(way, async ({ page, hands }) => {
      const shape = page.locator('shape-panel');
      await hands.write(field(shape, 'Unrolled length'), '0,76 m');
      // On a phone a part's fields are folded away until asked for.
      if (!(await field(shape, 'Arm').isVisible()))
        await hands.press(shape.locator('summary', { hasText: 'Stabilizer' }));
      await hands.write(field(shape, 'Arm'), '58 cm');
      await hands.write(field(shape, 'Unrolled length', 1), '14 in');
      await figures(page);
      const { design } = await session(page);
      expect(design.stabilizer!.length.value).toBeCloseTo(14 * 0.0254, 9);
      expect(await shown(figure(page, 'hold-panel', 'Stabilizer volume'))).toMatch(/\d/);

      await hands.ask(question(page, /^Hold/));
      const sizing = page.locator('stabilizer-sizing');
      await sizing
        .getByText(/is (not )?big enough/)
        .first()
        .waitFor(PATIENCE);
      const changes = sizing.getByRole('region', { name: 'Changes' }).getByRole('row');
      await changes.filter({ hasText: 'nose up' }).first().waitFor(PATIENCE);
      const margin = (await session(page)).report.stability.staticMargin;
      await hands.press(changes.filter({ hasText: 'mm longer' }).getByRole('button'));
      await expect
        .poll(async () => (await session(page)).design.stabilizer!.arm, PATIENCE)
        .toBeCloseTo(0.63, 9);
      await figures(page);
      // A longer arm moves the neutral point aft (the usual tail volume goes with the arm).
      expect((await session(page)).report.stability.staticMargin).toBeGreaterThan(margin);
    });
  });
});
