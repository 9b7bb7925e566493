/** Walks through the built page as the end-to-end tests do: every question, everything that opens, all that is said. */
import type { Page } from 'playwright';
import { figures } from './page.ts';

const PATIENCE = 60_000; // ms, for the studies of one question on a busy machine

/** Opens a question and waits until everything it asks has been answered. */
export async function openQuestion(page: Page, id: string): Promise<void> {
  await page.locator(`#tab-${id}`).click();
  await settled(page);
}

/** The figures are complete, and nothing in the open question is still being computed; some parts wait to be seen. */
export async function settled(page: Page): Promise<void> {
  await figures(page);
  await page.waitForFunction(
    () => {
      const panel = document.querySelector('question-tabs')?.shadowRoot?.querySelector('[role=tabpanel]');
      const waiting = (root: Element | ShadowRoot): Element | undefined => {
        for (const element of root.querySelectorAll('*')) {
          if (element.matches('.wait, progress')) return element;
          const inside = element.shadowRoot && waiting(element.shadowRoot);
          if (inside) return inside;
        }
        return undefined;
      };
      if (!panel?.firstElementChild?.shadowRoot?.childElementCount) return false;
      const found = waiting(panel);
      found?.scrollIntoView({ block: 'center' });
      return found === undefined;
    },
    undefined,
    { timeout: PATIENCE },
  );
}

/** Opens every disclosure and working below an element of the page, those inside others too. */
export async function openEverything(page: Page, within = 'body'): Promise<void> {
  for (let depth = 0; depth < 4; depth++) {
    const opened = await page.evaluate(async (within) => {
      let count = 0;
      const walk = (root: Element | ShadowRoot): void => {
        for (const element of root.querySelectorAll('*')) {
          if (element instanceof HTMLDetailsElement && !element.open) {
            element.open = true;
            count++;
          }
          if (element.shadowRoot) walk(element.shadowRoot);
        }
      };
      const root = document.querySelector(within)!;
      walk(root.shadowRoot ?? root);
      await new Promise((done) => setTimeout(done, 50));
      return count;
    }, within);
    if (opened === 0) break;
    await settled(page);
  }
}

/** Everything that is shown or said: text, and what stands in fields and labels; one entry a piece. */
export function shownTexts(page: Page, within = 'body'): Promise<string[]> {
  return page.evaluate((within) => {
    const texts: string[] = [];
    const SAID = ['aria-label', 'aria-valuetext', 'placeholder', 'title'];
    const walk = (node: Node): void => {
      if (node instanceof Text) {
        const text = node.data.replace(/\s+/g, ' ').trim();
        if (text) texts.push(text);
      }
      if (node instanceof Element) {
        if (node.matches('style, script') || !node.checkVisibility()) return;
        for (const name of SAID) texts.push(node.getAttribute(name) ?? '');
        if (node instanceof HTMLInputElement && node.type !== 'file') texts.push(node.value);
        if (node.shadowRoot) node.shadowRoot.childNodes.forEach(walk);
      }
      node.childNodes.forEach(walk);
    };
    walk(document.querySelector(within)!);
    return texts.filter((text) => text !== '');
  }, within);
}

/** Another size of the window, with everything laid out for it: charts follow a frame later. */
export async function resize(page: Page, width: number, height = 900): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.evaluate(async () => {
    for (let k = 0; k < 4; k++) await new Promise(requestAnimationFrame);
  });
}

/** What reaches beyond the window to the side: the page itself when it scrolls, or text cut off by its own box. */
export function sideways(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const width = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth > width)
      found.push(`the page is ${document.documentElement.scrollWidth} px wide in a window of ${width}`);
    const nameOf = (element: Element) =>
      `${element.localName}.${element.className} “${(element.textContent ?? '').trim().slice(0, 40)}”`;
    const walk = (root: Element | ShadowRoot, isSliding: boolean): void => {
      for (const element of root.children) {
        if (!element.checkVisibility() || element.matches('.visually-hidden, svg, canvas')) continue;
        const { overflowX } = getComputedStyle(element);
        const isOver = element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 1; // 1: for the ear only
        if (isOver && (overflowX === 'hidden' || overflowX === 'clip') && element.textContent!.trim())
          found.push(`cut off: ${nameOf(element)}`);
        const box = element.getBoundingClientRect();
        if (!isSliding && box.width > 0 && (box.right > width + 1 || box.left < -1))
          found.push(`beyond the edge: ${nameOf(element)}`);
        const slides = isSliding || overflowX === 'auto' || overflowX === 'scroll';
        walk(element, slides);
        if (element.shadowRoot) walk(element.shadowRoot, slides);
      }
    };
    walk(document.body, false);
    return [...new Set(found)];
  });
}

/** Shows every chart as its table, or as a drawing again; how many there were. */
export async function switchCharts(page: Page, within: string): Promise<number> {
  const count = await page.evaluate((within) => {
    let count = 0;
    const walk = (root: Element | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (
          element instanceof HTMLButtonElement &&
          /^As (a table|tables)$/.test(element.textContent!.trim())
        ) {
          element.click();
          count++;
        }
        if (element.shadowRoot) walk(element.shadowRoot);
      }
    };
    const root = document.querySelector(within)!;
    walk(root.shadowRoot ?? root);
    return count;
  }, within);
  await settled(page);
  return count;
}

/** Charts shown as tables that hold no figures, by their headings. */
export function tablesWithoutRows(page: Page, within: string): Promise<string[]> {
  return page.evaluate((within) => {
    const found: string[] = [];
    const walk = (root: Element | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.matches('line-chart, plot-grid') && !element.shadowRoot!.querySelector('tbody td'))
          found.push(element.shadowRoot!.textContent!.trim().slice(0, 40));
        if (element.shadowRoot) walk(element.shadowRoot);
      }
    };
    const root = document.querySelector(within)!;
    walk(root.shadowRoot ?? root);
    return found;
  }, within);
}
