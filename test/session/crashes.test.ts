/**
 * Tabs that are closed, killed, reloaded and duplicated at any moment, while the database is slow or refuses some of what
 * it is asked. A settled edit is found again by undo, redo or among what was left; a tab that is reloaded has the history
 * it had.
 */
import { expect, it } from 'vitest';
import { dice } from '../support/dice.ts';
import { Browser, Tab } from './dying-tabs.ts';

class Visit {
  readonly made: number[] = [];
  #count = 0;

  constructor(
    readonly browser: Browser,
    readonly open: Tab[],
  ) {}

  #next(): number {
    return (500 + ++this.#count) / 1000;
  }

  async act(tab: Tab): Promise<void> {
    const { browser, made, open } = this;
    const part = browser.roll();
    if (part < 0.1 && open.length < 4) open.push(new Tab(browser, browser.roll() < 0.5 ? tab.id : null));
    else if (!tab.session) return;
    else if (part < 0.55) {
      made.push(this.#next());
      tab.edit(made.at(-1)!, 'settled');
    } else if (part < 0.65) tab.edit(this.#next(), 'live');
    else if (part < 0.7) tab.session.takeElsewhere();
    else if (part < 0.75) tab.session.openLeft();
    else if (part < 0.85) this.#end(tab, browser.roll() < 0.5 ? 'close' : 'crash');
    else await this.#reload(tab);
  }

  #end(tab: Tab, how: 'close' | 'crash'): void {
    tab.die(how);
    this.open.splice(this.open.indexOf(tab), 1);
  }

  /** A tab that has changed something has a copy of its own to come back to. */
  async #reload(tab: Tab): Promise<void> {
    const { history, hasChanged } = tab;
    this.#end(tab, 'close');
    const next = new Tab(this.browser, tab.id);
    this.open.push(next);
    if (!hasChanged) return;
    const { past, future, now } = (await next.opened()).history;
    // What closed tabs have left may stand before the oldest step.
    expect({ past: past.slice(past.length - history.past.length), future, now }).toEqual(history);
  }

  /** Opens what was left, one after the other; the visit after that has taken its steps up. */
  async last(): Promise<Tab> {
    const { browser } = this;
    browser.refuses = false;
    for (const tab of this.open) tab.die('crash');
    await browser.rest();
    const tab = await new Tab(browser).opened();
    while (tab.session!.keeping.left.length > 0) {
      tab.session!.openLeft();
      await browser.rest();
    }
    tab.die('crash');
    await browser.rest();
    return new Tab(browser).opened();
  }
}

it.each(['answers', 'refuses some'])(
  'loses no edit and no step while the database %s',
  async (how) => {
    for (let seed = 1; seed <= 60; seed++) {
      const browser = new Browser(dice(seed * 7919));
      const visit = new Visit(browser, [new Tab(browser)]);
      for (let turn = 0; turn < 40; turn++) {
        const tab = browser.pick(visit.open);
        browser.refuses = how !== 'answers' && browser.roll() < 0.5;
        if (tab) await visit.act(tab);
        else visit.open.push(new Tab(browser));
        await browser.go(Math.floor(6 * browser.roll()));
      }
      const { reachable } = await visit.last();
      expect(
        visit.made.filter((length) => !reachable.includes(length)),
        `seed ${seed}`,
      ).toEqual([]);
    }
  },
  60_000,
);
