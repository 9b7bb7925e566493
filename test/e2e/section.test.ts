import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { outlinePoints } from '../../src/solver/geometry/outline.ts';
import { figures, openStage, type Stage, visit } from './page.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(async () => {
  await stage?.close();
});

const PATIENT = { timeout: 60_000 }; // a wait
const SLOW = { timeout: 180_000 }; // a test
const design = (page: Page) => page.evaluate(() => document.querySelector('app-shell')!.session!.design);
const report = (page: Page) => page.evaluate(() => document.querySelector('app-shell')!.session!.report!);

/** A section of the workshop as plain text: in millimetres, below first, with a comment. */
function coordinates(): string {
  const { x, y } = outlinePoints({ kind: 'naca4', code: '4412' }, 101);
  const lines = Array.from(x, (at, k) => `${(120 * at).toFixed(4)}\t${(120 * y[k]!).toFixed(4)}`).reverse();
  return ['Harbour twelve', '# measured on the bench', ...lines].join('\n');
}

async function openQuestion(page: Page, name: RegExp, panel: string) {
  await page.getByRole('tab', { name }).click();
  await page.locator(panel).waitFor();
}

describe('Section', () => {
  it(
    'takes a pasted section, solves the design anew and shows its flow; undo gives the old one back',
    SLOW,
    async () => {
      const { page, faults, close } = await visit(stage);
      const drawn = await design(page);
      const before = await report(page);
      await openQuestion(page, /^Section/, 'section-panel');
      const laminar = page.locator('section-panel .say').filter({ hasText: /side laminar/ });
      await laminar.waitFor(PATIENT);
      const said = await laminar.textContent();
      await page.getByText('Bring a section of your own').click();
      await page.getByRole('textbox', { name: /^Coordinates/ }).fill(coordinates());
      await page.getByRole('button', { name: 'Use this section' }).click();
      await page.getByText('“Harbour twelve” is now the section of the wing, root and tip').waitFor();
      await figures(page);
      const { root, tip } = (await design(page)).wing.section;
      expect(root).toEqual(tip);
      expect(root).toMatchObject({ kind: 'coordinates', name: 'Harbour twelve' });
      // Twice the camber lifts the same weight at a smaller angle: some 2 degrees of zero lift by thin-airfoil theory.
      const after = await report(page);
      expect(after.condition.alpha).toBeLessThan(before.condition.alpha - 1);
      expect(after.lift.total).toBeCloseTo(before.lift.total, 3);
      await expect.poll(() => laminar.textContent(), PATIENT).not.toBe(said);
      await page.getByRole('button', { name: /^Undo: section of the wing/ }).click();
      await figures(page);
      expect((await design(page)).wing.section).toEqual(drawn.wing.section);
      expect(faults).toEqual([]);
      await close();
    },
  );

  it('refuses bad coordinates with the line and leaves design and text as they were', SLOW, async () => {
    const { page, close } = await visit(stage);
    const before = await design(page);
    await openQuestion(page, /^Section/, 'section-panel');
    await page.getByText('Bring a section of your own').click();
    const box = page.getByRole('textbox', { name: /^Coordinates/ });
    const use = page.getByRole('button', { name: 'Use this section' });
    const lines = coordinates().split('\n');
    const bad = [
      [
        lines.map((line, k) => (k === 20 ? '0.5 oops' : line)).join('\n'),
        /Line 21: found "0\.5 oops", allowed two numbers, x and y/,
      ],
      [lines.slice(0, 70).join('\n'), /the ends are [\d.]+ % of the chord apart, allowed a closed outline/],
      [[...lines, ...lines.slice(3)].join('\n'), /x turns back again, allowed a single loop/],
    ] as const;
    for (const [text, message] of bad) {
      await box.fill(text);
      await use.click();
      await page.getByRole('alert').filter({ hasText: message }).waitFor();
      expect(await box.inputValue()).toBe(text);
      expect(await design(page)).toEqual(before);
    }
    await close();
  });

  it('draws a section thicker by its field, and the design follows', SLOW, async () => {
    const { page, close } = await visit(stage);
    await openQuestion(page, /^Section/, 'section-panel');
    const thickness = page.locator('section-panel').getByRole('spinbutton', { name: 'Thickness' }).first();
    await thickness.fill('13.2');
    await thickness.press('Enter');
    await figures(page);
    expect((await design(page)).wing.section.root).toEqual({
      kind: 'naca4',
      code: '2411',
      thicknessScale: 1.2,
    });
    await close();
  });
});

describe('Skin', () => {
  it(
    'tells the drag of a fault put on the surface, more when it stands higher, none when it is taken away',
    SLOW,
    async () => {
      const { page, faults, close } = await visit(stage);
      await openQuestion(page, /^Skin/, 'skin-panel');
      await page.getByRole('button', { name: 'Put on a bump' }).click();
      const drag = page.locator('skin-panel td.drag').first();
      const newtons = async () =>
        Number(/^([\d.]+)\s*N/.exec((await drag.textContent()) ?? '')?.[1] ?? Number.NaN);
      await expect.poll(newtons, PATIENT).toBeGreaterThan(0.02);
      expect((await design(page)).defects).toHaveLength(1);
      const tripped = await newtons();
      const height = page.locator('skin-panel').getByRole('spinbutton', { name: 'height, fault 1' });
      await height.fill('20'); // micrometres: below what the layer notices
      await height.press('Enter');
      await expect.poll(() => drag.textContent(), PATIENT).toContain('nothing');
      await height.fill('0.6 mm');
      await height.press('Enter');
      await expect.poll(newtons, PATIENT).toBeGreaterThan(tripped);
      await page.getByRole('button', { name: 'Take away fault 1' }).click();
      expect((await design(page)).defects).toBeUndefined();
      expect(faults).toEqual([]);
      await close();
    },
  );
});
