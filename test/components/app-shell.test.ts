import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { beforeEach, describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import type { AppShell } from '../../src/components/app-shell.ts';
import '../../src/components/app-shell.ts';
import { sayNotLoaded, showFirstWords } from '../../src/components/first-words.ts';
import type { TextField } from '../../src/components/text-field.ts';
import { Session } from '../../src/session/session.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import { readDesign, readDesignValue, writeDesign } from '../../src/solver/design/read.ts';
import { solve } from '../../src/solver/solve.ts';
import { DEMOS } from '../../web/demos.ts';
import { memoryKept } from '../support/kept.ts';
import { memory } from '../support/memory.ts';

interface Setting {
  write?: () => Promise<void>;
  keep?: () => Promise<void>;
  solve?: typeof solve;
}

/** The page on a session that solves on this thread and keeps nothing. */
async function openPage(setting: Setting = {}) {
  const session = await openSession(setting);
  const page = await fixture<AppShell>(html`<app-shell .demos=${DEMOS} .session=${session}></app-shell>`);
  await waitUntil(() => session.report !== null || session.failure !== null, 'first figures');
  await page.updateComplete;
  return { page, session };
}

const openSession = (setting: Setting = {}) =>
  Session.open({
    demo: DEMOS[0]!.design,
    read: readDesign,
    readValue: readDesignValue,
    write: writeDesign,
    shelf: { ...memory().shelf, ...(setting.write && { write: setting.write }) },
    notebook: null,
    kept: { ...memoryKept(), ...(setting.keep && { change: setting.keep }) },
    channel: null,
    makeWorker: () => {
      throw new Error('no worker here');
    },
    loadSolve: async () => setting.solve ?? solve,
    loadStudies: async () => STUDIES,
    makeExportWorker: () => {
      throw new Error('none here');
    },
    loadExport: async () => (await import('../../src/workshop/export.ts')).exportFile,
  });

const header = (page: AppShell) => page.querySelector('page-header')!;
const button = (page: AppShell, start: string) =>
  [...header(page).shadowRoot!.querySelectorAll('button')].find((each) =>
    each.textContent!.trim().startsWith(start),
  )!;
const rename = async (page: AppShell, name: string, end = '{Enter}') => {
  const field = header(page).shadowRoot!.querySelector<TextField>('text-field')!;
  const input = field.shadowRoot!.querySelector('input')!;
  input.select();
  await userEvent.keyboard(`${name}${end}`);
  await page.updateComplete;
  return input;
};

beforeEach(() => {
  localStorage.clear();
});

describe('page', () => {
  it('is accessible, with its hint, its figures and its caution', async () => {
    const { page } = await openPage();
    await expect(page).to.be.accessible();
    expect(page.querySelector('.hint')!.textContent).to.contain('finished wing');
    expect(page.querySelector('.caution')!.textContent).to.contain('no approval of strength or safety');
    expect(page.querySelector('headline-figures')!.shadowRoot!.textContent).to.contain('Hold index');
  });

  it('takes over the words that stand on it before it has a design', async () => {
    const page = await fixture<AppShell>(
      html`<app-shell .demos=${DEMOS}><div class="ahead"><header><h1>Downcurve</h1></header></div></app-shell>`,
    );
    const ahead = page.querySelector('.ahead')!;
    showFirstWords(ahead);
    const words = ahead.querySelector('.hint p')!.textContent!.replace(/\s+/g, ' ').trim();
    expect(words).to.contain('finished wing');
    await expect(page).to.be.accessible();
    page.session = await openSession();
    await page.updateComplete;
    expect(page.querySelector('.ahead')).to.equal(null);
    expect(page.querySelectorAll('.hint').length).to.equal(1);
    expect(page.querySelector('.hint p')!.textContent!.replace(/\s+/g, ' ').trim()).to.equal(words);
    expect(
      page.querySelector('shape-panel')!.shadowRoot!.querySelectorAll('number-field').length,
    ).to.be.above(15);
    expect(page.querySelector('footer a')).to.exist;
  });

  it('keeps the hint away that was answered before the page was there, and does not show it again', async () => {
    const page = await fixture<AppShell>(
      html`<app-shell .demos=${DEMOS}><div class="ahead"></div></app-shell>`,
    );
    const ahead = page.querySelector('.ahead')!;
    showFirstWords(ahead);
    ahead.querySelector<HTMLButtonElement>('.hint button')!.click();
    expect(ahead.querySelector('.hint')).to.equal(null);
    page.session = await openSession();
    await page.updateComplete;
    expect(page.querySelector('.hint')).to.equal(null);
    showFirstWords(page);
    expect(page.querySelector('.hint')).to.equal(null);
  });

  it('says in place of the hint when the rest of the page could not be loaded', async () => {
    const page = await fixture<AppShell>(
      html`<app-shell .demos=${DEMOS}><div class="ahead"></div></app-shell>`,
    );
    const ahead = page.querySelector('.ahead')!;
    showFirstWords(ahead);
    sayNotLoaded(ahead);
    expect(ahead.querySelector('.hint')).to.equal(null);
    expect(ahead.querySelector('[role=alert]')!.textContent).to.contain('Check the connection');
  });

  it('shows the hint until it is understood', async () => {
    const { page } = await openPage();
    page.querySelector<HTMLButtonElement>('.hint button')!.click();
    await page.updateComplete;
    expect(page.querySelector('.hint')).to.equal(null);
    const again = await openPage();
    expect(again.page.querySelector('.hint')).to.equal(null);
  });

  it('renames, undoes and redoes by name, by button and by key', async () => {
    const { page, session } = await openPage();
    const before = session.design.name;
    const input = await rename(page, 'Second thoughts');
    expect(session.design.name).to.equal('Second thoughts');
    expect(button(page, 'Undo').textContent!.trim()).to.equal('Undo: name');
    button(page, 'Undo').click();
    await page.updateComplete;
    expect(session.design.name).to.equal(before);
    button(page, 'Redo').click();
    expect(session.design.name).to.equal('Second thoughts');
    input.focus();
    await userEvent.keyboard('{Control>}z{/Control}'); // nothing is being typed: the page's undo
    expect(session.design.name).to.equal(before);
    await rename(page, 'half', '');
    await userEvent.keyboard('{Control>}z{/Control}'); // here the key belongs to the text
    expect(session.store.redoLabel).to.equal('name');
  });

  it('does not solve again for a new name', async () => {
    let solves = 0;
    const { page, session } = await openPage({
      solve: (design, options) => {
        solves++;
        return solve(design, options);
      },
    });
    await waitUntil(() => !session.isPending, 'complete figures');
    const before = solves;
    await rename(page, 'Other');
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect(solves).to.equal(before);
    expect(session.isCurrent).to.equal(true);
  });

  it('says why a shape has no figures, and shows them again for one that has', async () => {
    const { page, session } = await openPage({
      solve: (design, options) => {
        if (design.wing.length.value > 2) throw new Error('no angle carries this lift');
        return solve(design, options);
      },
    });
    session.edit({
      changes: [{ path: 'wing.length.value', value: 2.5 }],
      label: 'wing span',
      phase: 'settled',
    });
    await waitUntil(() => session.failure !== null);
    await page.updateComplete;
    expect(page.querySelector('.answers .trouble')!.textContent).to.contain(
      'No angle carries this lift. The figures here belong to the shape before it.',
    );
    await expect(page).to.be.accessible();
    session.store.undo();
    await waitUntil(() => session.failure === null);
    await page.updateComplete;
    expect(page.querySelector('.answers .trouble')).to.equal(null);
  });

  it('offers a file when the browser cannot keep the design', async () => {
    const { page } = await openPage({
      write: () => Promise.reject(new DOMException('', 'QuotaExceededError')),
    });
    await rename(page, 'Precious');
    await waitUntil(() => page.querySelector('.notice.trouble') !== null, 'the message', { timeout: 3000 });
    expect(page.querySelector('.notice.trouble')!.textContent).to.contain('storage is full');
    expect(page.querySelector('.notice.trouble button')!.textContent).to.contain('Save as a file');
    expect(header(page).shadowRoot!.querySelector('.state')!.textContent).to.equal('not saved');
    await expect(page).to.be.accessible();
  });

  it('has the browser ask before a kept design is left that it could not store', async () => {
    const { session } = await openPage({ keep: () => Promise.reject(new DOMException('', 'UnknownError')) });
    const leave = () => window.dispatchEvent(new Event('beforeunload', { cancelable: true }));
    expect(leave()).to.equal(true);
    await session.keep();
    expect(leave()).to.equal(false);
  });

  it('refuses a broken file, opens a good one, and takes that back', async () => {
    const { page, session } = await openPage();
    const before = session.design;
    await session.openFile(new File(['{ "format": 1 }'], 'odd.json'));
    await page.updateComplete;
    expect(page.querySelector('.notice.trouble')!.textContent).to.contain('odd.json: format');
    expect(session.design).to.equal(before);
    await session.openFile(new File([writeDesign(DEMOS[2]!.design)], 'good.json'));
    expect(session.design.name).to.equal(DEMOS[2]!.design.name);
    session.store.undo();
    expect(session.design).to.equal(before);
  });

  it('announces the headline figures after an edit has settled, not at first', async () => {
    const { page, session } = await openPage();
    const region = () => page.querySelector('p[role=status].visually-hidden')!.textContent!;
    await waitUntil(() => !session.isPending, 'complete figures');
    expect(region()).to.equal('');
    session.edit({
      changes: [{ path: 'wing.droop.tipAngle', value: 10 }],
      label: 'tip droop',
      phase: 'settled',
    });
    await waitUntil(() => region() !== '', 'the announcement', { timeout: 4000 });
    expect(region()).to.match(/^Lost to the curve .*Induced drag .*Hold index/);
  });

  it('shows everything in the units chosen and remembers them', async () => {
    const { page } = await openPage();
    const select = header(page).shadowRoot!.querySelector<HTMLSelectElement>('select[aria-label=Units]')!;
    await userEvent.selectOptions(select, 'imperial');
    await page.updateComplete;
    const brief = page.querySelector('brief-panel')!;
    await brief.updateComplete;
    expect(brief.shadowRoot!.querySelector('number-field')!.shadowRoot!.textContent).to.contain('lb');
    const again = await openPage();
    expect(again.page.querySelector('brief-panel')!.units).to.equal('imperial');
  });
});

describe('demo designs', () => {
  it.each(DEMOS.map(({ id, design }) => ({ id, design })))(
    '$id is valid and carries its rider',
    ({ design }) => {
      const report = solve(design, { neutralDroop: false });
      // weight less the rig's share, g = 9.80665 m/s2 (standard gravity, BIPM)
      const weight = design.brief.allUpMass * 9.80665 * (1 - design.brief.upwardPull);
      expect(report.lift.total).to.be.closeTo(weight, 1e-6 * weight);
      expect(report.strips.wing.every(({ cl }) => cl < 1)).to.equal(true);
    },
  );
});
