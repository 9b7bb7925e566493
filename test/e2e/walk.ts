/** Walks through the built page as the end-to-end tests do: every question, everything that opens, all that is said. */
import type { Page } from 'playwright';
import { axeFindings, figures } from './page.ts';

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

const LOOKS = [
  { width: 1440, colorScheme: 'light' },
  { width: 1440, colorScheme: 'dark' },
  { width: 390, colorScheme: 'dark' },
  { width: 390, colorScheme: 'light' },
] as const;

/** What axe finds, by all of its rules, on a laptop and on a phone in both schemes. The page ends light and as wide as before. */
export async function axeEverywhere(page: Page, within?: string): Promise<string[]> {
  const before = page.viewportSize()!;
  const found: string[] = [];
  for (const { width, colorScheme } of LOOKS) {
    await page.emulateMedia({ colorScheme });
    await resize(page, width);
    const findings = await axeFindings(page, within === undefined ? {} : { within });
    found.push(...findings.map((finding) => `${width} px, ${colorScheme}: ${finding}`));
  }
  await resize(page, before.width, before.height);
  return found;
}

/**
 * Writes what cannot be read into every field below an element of the page, so that each says why it refuses it; how many
 * did. `restoreFields` takes it all back.
 */
export async function refuseFields(page: Page, within: string): Promise<number> {
  await inFields(page, within, '?!', 'Enter');
  return page.evaluate((within) => {
    let count = 0;
    const walk = (root: Element | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.matches('number-field') && element.shadowRoot!.querySelector('[role=alert]')) count++;
        if (element.shadowRoot) walk(element.shadowRoot);
      }
    };
    const root = document.querySelector(within)!;
    walk(root.shadowRoot ?? root);
    return count;
  }, within);
}

export const restoreFields = (page: Page, within: string) => inFields(page, within, null, 'Escape');

async function inFields(page: Page, within: string, text: string | null, key: string): Promise<void> {
  await page.evaluate(
    async ({ within, text, key }) => {
      const walk = (root: Element | ShadowRoot): void => {
        for (const element of root.querySelectorAll('*')) {
          const input = element.matches('number-field') ? element.shadowRoot!.querySelector('input') : null;
          if (input && !input.disabled) {
            if (text !== null) input.value = text;
            if (text !== null)
              input.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
            input.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, composed: true }));
          }
          if (element.shadowRoot) walk(element.shadowRoot);
        }
      };
      const root = document.querySelector(within)!;
      walk(root.shadowRoot ?? root);
      await new Promise((done) => setTimeout(done, 500)); // what reads units may have to come first
    },
    { within, text, key },
  );
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

/** From now on, everything a screen reader is made to say is noted; the list is in `window.said`. */
export async function listen(page: Page): Promise<() => Promise<string[]>> {
  await page.evaluate(() => {
    const said: string[] = [];
    (window as unknown as { said: string[] }).said = said;
    const LIVE = '[role=status], [role=alert], [aria-live=polite], [aria-live=assertive]';
    const say = (element: Element) => {
      const text = (element.textContent ?? '').replace(/\s+/g, ' ').trim();
      if (text && text !== said.at(-1)) said.push(text);
    };
    const watch = (root: Document | ShadowRoot): void => {
      new MutationObserver((changes) => {
        for (const { target, addedNodes } of changes) {
          const element = target instanceof Element ? target : target.parentElement;
          const region = element?.closest(LIVE);
          if (region) say(region);
          for (const node of addedNodes)
            if (node instanceof Element) for (const each of node.querySelectorAll(LIVE)) say(each);
        }
      }).observe(root, { subtree: true, childList: true, characterData: true });
      for (const element of root.querySelectorAll('*')) if (element.shadowRoot) watch(element.shadowRoot);
    };
    watch(document);
  });
  return () => page.evaluate(() => (window as unknown as { said: string[] }).said);
}

/** What can be pressed or set by finger and is less than 24 px high or wide (WCAG 2.5.8). */
export function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const walk = (root: Element | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) walk(element.shadowRoot);
        if (!element.matches('button, summary, input, select, textarea, .grip') || !element.checkVisibility())
          continue;
        const { width, height } = element.getBoundingClientRect();
        // A grip's target is the wide, unseen line round a point.
        const reach = element.matches('.grip') ? Number.parseFloat(getComputedStyle(element).strokeWidth) : 0;
        const least = element.matches('.grip') ? 44 : 24;
        const label = element.closest('label')?.getBoundingClientRect();
        const [across, down] = [Math.max(width, label?.width ?? 0), Math.max(height, label?.height ?? 0)];
        if (width > 0 && (across + reach < least || down + reach < least))
          found.push(
            `${element.localName} “${element.textContent!.trim().slice(0, 30)}” ${across} by ${down}`,
          );
      }
    };
    walk(document.body);
    return found;
  });
}

const FOCUSABLE = [
  'a',
  'button',
  'input',
  'select',
  'summary',
  'tab',
  'slider',
  'region',
  'application',
] as const;

/** Goes through the page with Tab; kinds of parts whose looks do not change when they have the focus. */
export async function unseenFocus(page: Page): Promise<string[]> {
  const known = new Map<string, boolean>();
  for (let stop = 0; stop < 250 && known.size < FOCUSABLE.length; stop++) {
    await page.keyboard.press('Tab');
    const focused = await page.evaluateHandle(() => {
      let focused = document.activeElement;
      while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
      return focused;
    });
    const element = focused.asElement();
    if (!element) continue;
    const kind = await element.evaluate((each) => each.getAttribute('role') ?? each.localName);
    if (kind === 'body') break;
    if (known.has(kind)) continue;
    const box = (await element.boundingBox())!;
    const clip = {
      x: box.x - 8,
      y: box.y - 8,
      width: box.width + 16,
      height: Math.min(box.height, 200) + 16,
    };
    const view = page.viewportSize()!;
    if (clip.x < 0 || clip.y < 0 || clip.x + clip.width > view.width || clip.y + clip.height > view.height)
      continue;
    const seen = await page.screenshot({ clip });
    await element.evaluate((each) => (each as HTMLElement).blur());
    const unseen = await page.screenshot({ clip });
    await element.evaluate((each) => (each as HTMLElement).focus());
    known.set(kind, !seen.equals(unseen));
  }
  if (known.size < 6) return [`only ${[...known.keys()].join(', ')} were met`];
  return [...known].flatMap(([kind, isSeen]) => (isSeen ? [] : [kind]));
}
