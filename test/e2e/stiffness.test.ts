/** A thinner strut gives more and says so; a bench test typed in is fitted and used. */
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openStage, type Stage, visit } from './page.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(async () => {
  await stage?.close();
});

async function openStiffness(...[options]: Parameters<typeof visit> extends [Stage, ...infer R] ? R : never) {
  const visited = await visit(stage, options);
  await visited.page.getByRole('tab', { name: /^Stiffness/ }).click();
  await account(visited.page).waitFor();
  return visited;
}

const panel = (page: Page) => page.locator('stiffness-panel');
const account = (page: Page) => panel(page).getByRole('region', { name: 'How far it gives' });
/** Millimetres that the wing gives under 100 N to the side. */
const sideGive = async (page: Page) =>
  Number.parseFloat(
    (await account(page)
      .getByRole('row', { name: /100 N to the side/ })
      .getByRole('cell')
      .first()
      .textContent())!,
  );
const type = async (page: Page, within: string, label: string, value: string) => {
  const field = page.locator(within).getByRole('spinbutton', { name: label, exact: true }).first();
  await field.fill(value);
  await field.press('Enter');
};
const design = (page: Page) => page.evaluate(() => document.querySelector('app-shell')!.session!.design);

describe('stiffness', () => {
  it('a thinner strut gives more to the side, and the caution stands beside it', async () => {
    const { page, faults, close } = await openStiffness();
    const before = await sideGive(page);
    await type(page, 'shape-panel', 'Thickness', '9 mm');
    await expect.poll(() => sideGive(page), { timeout: 20_000 }).toBeGreaterThan(before);
    // The strut's own part goes with the cube of 13/9 (Euler-Bernoulli), box and joints stay: between one and the cube.
    expect(await sideGive(page)).toBeLessThan(before * (13 / 9) ** 3);
    expect(await sideGive(page)).toBeGreaterThan(before * 1.5);
    await panel(page).getByText('no approval of strength').first().waitFor();
    await panel(page).getByText('thinner than that, thinner than your mark of 13.0 mm').waitFor();
    expect(faults).toEqual([]);
    await close();
  });

  it('a bench test is typed in, fitted, used and undone', async () => {
    const { page, faults, close } = await openStiffness();
    const bench = panel(page).locator('bench-table');
    // W (a x/k + x^2 (3 a - x)/6EI) of Euler-Bernoulli for 10 kg at the foot, EI 900 N m2 on a spring of 6000 N m/rad.
    for (const [k, deflection] of ['45.9 mm', '17.1 mm', '6.4 mm'].entries()) {
      await bench.getByRole('button', { name: 'Add a pull to the side' }).click();
      await type(page, 'bench-table', `deflection, reading ${k + 1}`, deflection);
      if (k === 0) await bench.getByText('With one station, box and strut cannot be told apart').waitFor();
    }
    const fit = bench.getByRole('region', { name: 'What the readings say' });
    await fit.getByRole('row', { name: /box in roll/ }).waitFor();
    await fit.getByRole('row', { name: /strut, modulus along/ }).waitFor();
    await bench.getByRole('button', { name: 'Use these values' }).click();
    const { joints, laminate } = await design(page);
    // Deflections to a tenth of a millimetre leave a tenth of the spring open.
    expect(joints!.box!.roll! / 6000).toBeGreaterThan(0.85);
    expect(joints!.box!.roll! / 6000).toBeLessThan(1.15);
    expect(laminate!.strut!.modulus).toBeGreaterThan(1e9);
    // Used, the values give the last reading back, within half a millimetre.
    const last = bench
      .getByRole('region', { name: 'Reading by reading' })
      .getByRole('row', { name: /reading 3/ });
    await expect
      .poll(async () => Number.parseFloat((await last.getByRole('cell').nth(1).textContent())!), {
        timeout: 20_000,
      })
      .toBeCloseTo(6.4, 0);
    await page.getByRole('button', { name: 'Undo: values of the bench test' }).click();
    expect((await design(page)).laminate?.strut?.modulus).toBeUndefined();
    expect((await design(page)).joints!.bench).toHaveLength(3);
    expect(faults).toEqual([]);
    await close();
  });
});
