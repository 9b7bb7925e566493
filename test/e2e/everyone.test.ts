/** The page for everyone: with a screen reader, in any scheme and size, figures written as one is used to. */
import { readdirSync } from 'node:fs';
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { firstLoad } from '../../scripts/first-load.mjs';
import type { FigureValue } from '../../src/components/figure-value.ts';
import { QUESTIONS } from '../../src/components/questions.ts';
import { overlaps } from './overlaps.ts';
import { axeFindings, figures, openStage, type Stage, visit } from './page.ts';
import {
  axeEverywhere,
  listen,
  openEverything,
  openQuestion,
  refuseFields,
  resize,
  restoreFields,
  settled,
  shownTexts,
  sideways,
  smallTargets,
  switchCharts,
  tablesWithoutRows,
  unseenFocus,
} from './walk.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(async () => {
  await stage?.close();
});

/** What axe finds in every look of the page, and what does not fit; the page ends light on a laptop. */
async function findingsIn(page: Page, within: string): Promise<string[]> {
  return [...(await axeEverywhere(page, within)), ...(await misfits(page, within))];
}

/** 720 px is a laptop's 1440 at 200 % zoom, 320 px the least that WCAG 1.4.10 names. */
async function misfits(page: Page, within?: string): Promise<string[]> {
  const found: string[] = [];
  for (const width of [390, 320, 720]) {
    await resize(page, width);
    const findings = [...(await sideways(page)), ...(within ? await overlaps(page, within) : [])];
    found.push(...findings.map((finding) => `${width} px: ${finding}`));
  }
  await resize(page, 1440);
  return found;
}

const NUMBER_WITH_POINT = /\d\.\d/;
/** The choice itself, the number of a table in a book, the lines of a file: these keep their point. */
const KEPT = /^1\.5 point$|table 1\.7;|^my section\s/;
const pointsIn = async (page: Page, within?: string) =>
  (await shownTexts(page, within)).filter((text) => NUMBER_WITH_POINT.test(text) && !KEPT.test(text));
const chooseMark = (page: Page, mark: string) =>
  page.getByRole('combobox', { name: 'Decimal mark' }).selectOption(mark);

describe('every question, all of it open', () => {
  let visited: Awaited<ReturnType<typeof visit>>;
  beforeAll(async () => {
    visited = await visit(stage);
  });
  afterAll(() => visited?.close());

  it.each(QUESTIONS.map(({ id }) => id))('%s', async (id) => {
    const { page, faults } = visited;
    const within = 'question-tabs';
    await openQuestion(page, id);
    await openEverything(page, within);
    expect(await findingsIn(page, within)).toEqual([]);
    await chooseMark(page, ',');
    await settled(page);
    expect(await pointsIn(page, within)).toEqual([]);
    await chooseMark(page, '.');
    const charts = await switchCharts(page, within);
    expect(await tablesWithoutRows(page, within)).toEqual([]);
    const refused = await refuseFields(page, within);
    if (charts > 0 || refused > 0) expect(await findingsIn(page, within)).toEqual([]);
    await restoreFields(page, within);
    await switchCharts(page, within);
    expect(faults).toEqual([]);
  });
});

describe('the page around the questions', () => {
  it('has no fault with everything open, a refused value, a notice and the hint, nor with the hint gone', async () => {
    const { page, faults, close } = await visit(stage);
    await openEverything(page, 'main');
    const length = page.locator('shape-panel').getByRole('spinbutton', { name: 'Unrolled length' }).first();
    await length.fill('18 kn');
    await length.press('Enter');
    await page.getByRole('alert').filter({ hasText: 'a length is wanted' }).waitFor();
    await page.locator('page-header input[type=file]').setInputFiles({
      name: 'torn.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{'),
    });
    await page.locator('.notice.trouble').waitFor();
    expect(await page.locator('.notice.hint').count()).toBe(1);
    await page.locator('solid-fold canvas').waitFor();
    expect(await findingsIn(page, 'body')).toEqual([]);
    await page.getByRole('button', { name: 'Understood' }).click();
    await page.getByRole('button', { name: 'Close' }).click();
    expect(await axeFindings(page)).toEqual([]);
    const unexplained = await page
      .locator('main figure-value')
      .evaluateAll((all) => (all as FigureValue[]).flatMap(({ working, label }) => (working ? [] : [label])));
    expect(unexplained).toEqual([]);
    expect(faults).toEqual([]);
    await close();
  });

  it('has no fault in what opens over it', async () => {
    const { page, faults, close } = await visit(stage);
    const dialog = page.locator('page-header').getByRole('dialog');
    await page.getByRole('button', { name: 'Rider page' }).click();
    await dialog.getByRole('link', { name: 'The same wing, flat' }).waitFor();
    expect([...(await axeEverywhere(page, 'page-header')), ...(await misfits(page))]).toEqual([]);
    await dialog.getByRole('button', { name: 'Close' }).click();
    await page.evaluate(() => {
      navigator.clipboard.writeText = () => Promise.reject(new Error('not here'));
    });
    await page.getByRole('button', { name: 'Copy a link' }).click();
    await dialog.getByText('copy it yourself').waitFor();
    expect([...(await axeEverywhere(page, 'page-header')), ...(await misfits(page))]).toEqual([]);
    expect(faults).toEqual([]);
    await close();
  });

  it('has no fault before the rest of it has come, nor when that does not come', async () => {
    const context = await stage.browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    let letGo = () => {};
    const held = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    await page.route(/shell-.*\.js$/, async (route) => {
      await held;
      await route.abort();
    });
    await page.goto(stage.built.address, { waitUntil: 'commit' });
    await page.getByRole('button', { name: 'Understood' }).waitFor();
    expect(await findingsIn(page, 'body')).toEqual([]);
    letGo();
    await page.getByRole('alert').getByText('could not be loaded whole').waitFor();
    expect(await findingsIn(page, 'body')).toEqual([]);
    await context.close();
  });

  it.each(readdirSync(new URL('../../docs', import.meta.url)))('help from %s', async (file) => {
    const context = await stage.browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    await page.goto(`${stage.built.address}help/${file.replace('.md', '.html')}`);
    await page.locator('h1').waitFor();
    expect(await misfits(page, 'body')).toEqual([]);
    await page.evaluate(() => {
      for (const row of document.querySelectorAll('tbody tr:nth-child(n + 9)')) row.remove(); // hundreds of the same kind
    });
    expect(await axeEverywhere(page)).toEqual([]);
    await context.close();
  });

  it('writes every figure with the decimal mark that was chosen, at once and after a reload', async () => {
    const { page, faults, close } = await visit(stage);
    await openEverything(page, 'main');
    await page.getByRole('combobox', { name: 'Units' }).selectOption('si'); // metres on the axis have decimals
    await settled(page);
    expect((await pointsIn(page)).length).toBeGreaterThan(50); // the walk sees figures
    const ink = () =>
      page
        .locator('spread-panel canvas')
        .first()
        .evaluate((canvas) => (canvas as HTMLCanvasElement).toDataURL());
    const drawn = await ink();
    await page.locator('spread-panel').scrollIntoViewIfNeeded();
    await chooseMark(page, ',');
    await expect.poll(ink).not.toBe(drawn); // the axes too
    expect(await pointsIn(page)).toEqual([]);
    const length = page.locator('shape-panel').getByRole('spinbutton', { name: 'Unrolled length' }).first();
    await length.fill('0,6825');
    await length.press('Enter');
    await figures(page);
    expect(await length.inputValue()).toBe('0,6825');
    await page.reload();
    await settled(page);
    expect(await pointsIn(page)).toEqual([]);
    expect(await length.inputValue()).toBe('0,6825');
    expect(faults).toEqual([]);
    await close();
  });
});

it('loads less than 250 kB of script and style at first, compressed, and nothing that only a question needs', async () => {
  const context = await stage.browser.newContext();
  const { page, worker, files } = await firstLoad(await context.newPage(), stage.built.address);
  expect(page).toBeGreaterThan(50_000); // what was fetched was seen
  expect(page).toBeLessThan(250_000);
  expect(worker).toBeGreaterThan(50_000);
  const names = files.map(({ pathname }) => pathname).join(' ');
  expect(names).not.toMatch(/pdf|dxf|curve-panel|propose-panel|quantity/);
  await context.close();
});

it('finds texts that lie on one another', async () => {
  const context = await stage.browser.newContext();
  const page = await context.newPage();
  await page.setContent('<body><div><p>Written once</p><p id="late">and once more</p></div></body>');
  expect(await overlaps(page, 'div')).toEqual([]);
  await page.evaluate(() => {
    document.querySelector<HTMLElement>('#late')!.style.marginTop = '-26px';
  });
  expect(await overlaps(page, 'div')).toEqual(['“Written once” and “and once more” lie on one another']);
  await context.close();
});

describe('without a mouse, or without seeing', () => {
  it.each(['none', 'active'] as const)(
    'shows where the focus is, with forced colours %s',
    async (forcedColors) => {
      const { page, close } = await visit(stage, { forcedColors });
      expect(await unseenFocus(page)).toEqual([]);
      await close();
    },
  );

  it('keeps the drawing and the charts to the colours of the system where they are forced', async () => {
    const { page, close } = await visit(stage, { forcedColors: 'active', colorScheme: 'dark' });
    const looks = await page.evaluate(() => {
      const probe = document.body.appendChild(document.createElement('span'));
      const system = (colour: string) => {
        probe.style.color = colour;
        return getComputedStyle(probe).color;
      };
      const view = document.querySelector('head-on-view')!.shadowRoot!;
      const of = (selector: string) => getComputedStyle(view.querySelector(selector)!);
      return {
        wing: [of('.wing').stroke, system('CanvasText')],
        water: [of('.water').fill, system('Canvas')],
        carry: [of('.carry').stroke, system('CanvasText')],
        dot: [of('.dot').stroke, system('LinkText')],
      };
    });
    for (const [part, [found, wanted]] of Object.entries(looks))
      expect(`${part} ${found}`).toBe(`${part} ${wanted}`);
    await page.locator('spread-panel canvas').first().waitFor();
    const hues = await page
      .locator('spread-panel canvas')
      .first()
      .evaluate((canvas) => {
        const { width, height } = canvas as HTMLCanvasElement;
        const { data } = (canvas as HTMLCanvasElement).getContext('2d')!.getImageData(0, 0, width, height);
        let [inked, coloured] = [0, 0];
        for (let k = 0; k < data.length; k += 4)
          if (data[k + 3]! > 200) {
            inked++;
            const rgb = [data[k]!, data[k + 1]!, data[k + 2]!];
            if (Math.max(...rgb) - Math.min(...rgb) > 12) coloured++;
          }
        return { inked, coloured };
      });
    expect(hues.inked).toBeGreaterThan(500);
    expect(hues.coloured).toBe(0); // black and white are this system's own
    await close();
  });

  it('says the figures once an edit has settled, politely, and nothing at every step of it', async () => {
    const { page, close } = await visit(stage);
    const heard = await listen(page);
    await page.getByRole('slider', { name: 'Wing tip droop' }).focus();
    for (let k = 0; k < 12; k++) {
      await page.keyboard.press('ArrowDown');
      await page.waitForTimeout(60);
    }
    await expect
      .poll(heard, { timeout: 10_000 })
      .toContainEqual(expect.stringMatching(/^Lost to the curve .* Hold index/));
    expect((await heard()).length).toBeLessThanOrEqual(2); // two where the machine is too busy to keep up
    expect(await page.locator('[aria-live=assertive]').count()).toBe(0);
    await close();
  });

  it('goes from the top of the page to figures and questions at once', async () => {
    const { page, close } = await visit(stage);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement!.textContent)).toBe('To the questions');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    expect(await page.getByRole('tab', { selected: true }).evaluate((tab) => tab.matches(':focus'))).toBe(
      true,
    );
    await close();
  });

  it('gives a finger 24 px everywhere and 44 at the handles', async () => {
    const { page, close } = await visit(stage, {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
    });
    await openEverything(page);
    expect(await smallTargets(page)).toEqual([]);
    await close();
  });
});
