/** Three ways to do the same: with a mouse, with a finger, with nothing but the keyboard. */
import type { BrowserContextOptions, Locator, Page } from 'playwright';

export interface Hands {
  /** Where the next press will be, so that it comes at once. */
  goTo: (target: Locator) => Promise<void>;
  press: (target: Locator) => Promise<void>;
  /** Writes over what a field holds and confirms it. */
  write: (target: Locator, text: string) => Promise<void>;
  choose: (target: Locator, label: string) => Promise<void>;
  /** To a question. */
  ask: (target: Locator) => Promise<void>;
}

export const WAYS = ['by pointer', 'by keyboard alone', 'at phone width'] as const;
export type Way = (typeof WAYS)[number];

export const contextFor = (way: Way): BrowserContextOptions =>
  way === 'at phone width'
    ? { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 }
    : {};

export const handsFor = (way: Way, page: Page): Hands =>
  way === 'by keyboard alone' ? keys(page) : pointer(page, way === 'at phone width' ? 'tap' : 'click');

function pointer(page: Page, how: 'click' | 'tap'): Hands {
  const press = (target: Locator) => target[how]();
  return {
    goTo: (target) => target.hover(),
    press,
    ask: press,
    write: async (target, text) => {
      await press(target);
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    },
    choose: async (target, label) => {
      await press(target);
      await page.keyboard.press('Escape'); // the list itself is the system's
      await target.selectOption({ label });
    },
  };
}

const MOST_STOPS = 400;

/** Goes on with Tab until the target has the focus; an error when the whole way round does not come by it. */
async function reach(page: Page, target: Locator): Promise<void> {
  const wanted = await target.elementHandle();
  for (let stop = 0; stop < MOST_STOPS; stop++) {
    const isThere = await page.evaluate((wanted) => {
      let focused = document.activeElement;
      while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
      return focused === wanted;
    }, wanted);
    if (isThere) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never comes to ${target}`);
}

function keys(page: Page): Hands {
  return {
    goTo: (target) => reach(page, target),
    press: async (target) => {
      await reach(page, target);
      await page.keyboard.press('Enter');
    },
    write: async (target, text) => {
      await reach(page, target);
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    },
    choose: async (target, label) => {
      await reach(page, target);
      await page.keyboard.type(label.slice(0, 6)); // a list goes to what is typed
    },
    ask: async (target) => {
      await reach(page, page.getByRole('tab', { selected: true }));
      const wanted = await target.getAttribute('id');
      const chosen = () => page.getByRole('tab', { selected: true }).getAttribute('id');
      for (let stop = 0; stop < 30 && (await chosen()) !== wanted; stop++)
        await page.keyboard.press('ArrowRight');
    },
  };
}
