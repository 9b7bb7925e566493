import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import type { ComparisonTable } from '../../src/components/beside/comparison-table.ts';
import type { KeptCard } from '../../src/components/beside/kept-card.ts';
import type { RiddenSection } from '../../src/components/beside/ridden-section.ts';
import '../../src/components/panels/beside-panel.ts';
import type { BesidePanel } from '../../src/components/panels/beside-panel.ts';
import { withValueAt } from '../../src/session/paths.ts';
import type { Session } from '../../src/session/session.ts';
import '../../web/tokens.css';
import { memoryKept } from '../support/kept.ts';
import { openSession, type SessionSetting } from '../support/open-session.ts';
import { sampleDesign } from '../support/sample-report.ts';

interface Stage {
  panel: BesidePanel;
  session: Session;
}

/** The panel as the page shows it: drawn again whenever the session has news. */
async function open(setting: SessionSetting = {}, width = 1000): Promise<Stage> {
  const session = await openSession(setting);
  const box = await fixture(
    html`<div style="width: ${width}px"><beside-panel .session=${session}></beside-panel></div>`,
  );
  const panel = box.querySelector<BesidePanel>('beside-panel')!;
  session.subscribe(() => {
    panel.tick++;
  });
  await waitUntil(() => session.report !== null && session.kept.isLoaded, 'figures');
  await panel.updateComplete;
  return { panel, session };
}

const bent = (tipAngle: number, name = `Bent ${tipAngle}`) => ({
  ...withValueAt(sampleDesign(), 'wing.droop', { kind: 'arc', tipAngle }),
  name,
});

/** Keeps a wing for each droop, in this order, and waits for their figures. */
async function keepAll({ session, panel }: Stage, droops: readonly number[]): Promise<string[]> {
  const ids: string[] = [];
  for (const droop of droops) {
    await session.keep(bent(droop));
    ids.push(session.kept.list.find(({ name }) => name === `Bent ${droop}`)!.id);
  }
  await waitUntil(
    () => session.kept.list.every((each) => !each.reading.ok || session.reports.of(each) !== null),
    'figures of the kept',
    { timeout: 8000 },
  );
  await panel.updateComplete;
  return ids;
}

const root = (element: { shadowRoot: ShadowRoot | null }) => element.shadowRoot!;
const cards = ({ panel }: Stage) => [...root(panel).querySelectorAll<KeptCard>('kept-card')];
const cardOf = (stage: Stage, name: string) => cards(stage).find(({ kept }) => kept?.name === name)!;
const button = (within: ShadowRoot | null, text: string) =>
  [...within!.querySelectorAll('button')].find((each) => each.textContent!.trim().startsWith(text))!;
const table = ({ panel }: Stage) => root(panel).querySelector<ComparisonTable>('comparison-table')!;
const rows = (stage: Stage) =>
  [...root(table(stage)).querySelectorAll('tbody tr')].map((row) => row.querySelector('.name')!.textContent!);
const text = (element: Element | ShadowRoot) => element.textContent!.replace(/\s+/g, ' ');

describe('Beside', () => {
  it('is accessible with nothing kept', async () => {
    const { panel } = await open();
    await expect(panel).to.be.accessible();
    expect(text(root(panel))).to.contain('Nothing is kept yet');
  });

  it.each([1000, 360])(
    'is accessible %i px wide with kept, ridden, damaged and taken-off designs and a ghost',
    async (width) => {
      const kept = memoryKept(new Map([['bad', { name: 'Wet paper', kept: 1, text: '{' }]]));
      const stage = await open({ kept }, width);
      const [first, second] = await keepAll(stage, [10, 30]);
      for (const { id } of stage.session.kept.list) stage.session.kept.mark(id, 'hold', 3);
      stage.session.ghosts.choose(first!);
      stage.session.kept.remove(second!);
      for (const card of cards(stage))
        for (const each of root(card).querySelectorAll('details')) each.open = true;
      await stage.panel.updateComplete;
      await expect(stage.panel).to.be.accessible();
    },
  );

  it('keeps the open design, with picture, figures and the time', async () => {
    const stage = await open();
    button(root(stage.panel), 'Keep the open design').click();
    await waitUntil(() => cards(stage).length === 1, 'a card');
    const [card] = cards(stage);
    await waitUntil(() => root(card!).querySelector('dl'), 'figures', { timeout: 5000 });
    expect(text(root(card!))).to.contain('Hold index');
    expect(root(card!).querySelector('.picture')!.getAttribute('aria-label')).to.contain('head-on: 715');
    expect(text(root(card!))).to.match(/Kept \d+ \w+ \d{4}/);
    expect(stage.session.notice!.message).to.contain('is kept: see Beside');
    button(root(stage.panel), 'Keep the open design').click();
    await waitUntil(() => stage.session.notice!.message.includes('kept already'));
    expect(cards(stage)).to.have.length(1);
  });

  it('renames by typing, refuses an empty name, one that is taken, and cuts off nothing', async () => {
    const stage = await open();
    await keepAll(stage, [10, 20]);
    const field = root(cardOf(stage, 'Bent 10')).querySelector('text-field')!;
    const input = root(field).querySelector('input')!;
    input.select();
    await userEvent.keyboard('Outer bay{Enter}');
    const names = () => stage.session.kept.list.map(({ name }) => name);
    expect(names()).to.include('Outer bay');
    input.select();
    await userEvent.keyboard('{Backspace}{Enter}');
    await field.updateComplete;
    expect(text(root(field))).to.contain('A kept design needs a name.');
    input.select();
    await userEvent.keyboard('Bent 20{Enter}');
    await field.updateComplete;
    expect(text(root(field))).to.contain('“Bent 20” stands on the shelf already');
    await userEvent.fill(input, 'x'.repeat(300));
    await userEvent.keyboard('{Enter}');
    await field.updateComplete;
    expect(text(root(field))).to.contain('Found 300 characters, allowed up to 200.');
    expect(input.value).to.have.length(300);
    expect(names()).to.have.members(['Outer bay', 'Bent 20']);
  });

  it('takes one off the shelf and brings it back, the focus following', async () => {
    const stage = await open();
    await keepAll(stage, [10, 20]);
    button(root(cardOf(stage, 'Bent 10')), 'Take off').click();
    await stage.panel.updateComplete;
    expect(cards(stage)).to.have.length(1);
    await waitUntil(() => root(stage.panel).activeElement?.id === 'bring-back', 'focus');
    await userEvent.keyboard('{Enter}');
    await stage.panel.updateComplete;
    expect(cards(stage)).to.have.length(2);
    expect(root(stage.panel).activeElement?.id).to.equal('shelf');
  });

  it('shows a damaged copy as such and offers no way to open it', async () => {
    const stage = await open({
      kept: memoryKept(new Map([['bad', { name: 'Wet paper', kept: 1, text: '{' }]])),
    });
    await waitUntil(() => cards(stage).length === 1, 'a card');
    const [card] = cards(stage);
    expect(text(root(card!))).to.contain('damaged and cannot be opened: not a JSON document');
    expect(button(root(card!), 'Open')).to.equal(undefined);
    expect(button(root(card!), 'Save as a file')).to.be.instanceOf(HTMLButtonElement);
  });

  it('makes one the ghost and lets it go', async () => {
    const stage = await open();
    await keepAll(stage, [10]);
    const card = cardOf(stage, 'Bent 10');
    button(root(card), 'Make it the ghost').click();
    await waitUntil(() => card.ghost, 'marked');
    expect(stage.session.ghosts.current!.name).to.equal('Bent 10');
    button(root(card), 'Let go of the ghost').click();
    await waitUntil(() => !card.ghost, 'let go');
    expect(stage.session.ghosts.current).to.equal(null);
  });

  it('opens one as a step that undo takes back', async () => {
    const stage = await open();
    await keepAll(stage, [10]);
    const before = stage.session.design;
    button(root(cardOf(stage, 'Bent 10')), 'Open').click();
    expect(stage.session.design.name).to.equal('Bent 10');
    expect(stage.session.store.undoLabel).to.equal('open kept Bent 10');
    stage.session.store.undo();
    expect(stage.session.design).to.equal(before);
  });

  it('sorts by any column, by pointer and keys, and says so', async () => {
    const stage = await open();
    await keepAll(stage, [20, 10, 30]);
    const head = (title: string) =>
      [...root(table(stage)).querySelectorAll('th[aria-sort]')].find((th) => text(th).includes(title))!;
    const drop = head('Tip drop');
    drop.querySelector('button')!.click();
    await table(stage).updateComplete;
    expect(drop.getAttribute('aria-sort')).to.equal('ascending');
    expect(rows(stage)).to.deep.equal(['Bent 10', 'Bent 20', sampleDesign().name, 'Bent 30']);
    drop.querySelector('button')!.focus();
    await userEvent.keyboard('{Enter}');
    await table(stage).updateComplete;
    expect(drop.getAttribute('aria-sort')).to.equal('descending');
    expect(rows(stage)[0]).to.equal('Bent 30');
    await userEvent.keyboard('{Enter}');
    await table(stage).updateComplete;
    expect(drop.getAttribute('aria-sort')).to.equal('none');
    expect(rows(stage)[0]).to.equal(sampleDesign().name);
  });

  it('copies the table as comma-separated values in the user’s units', async () => {
    const stage = await open();
    await keepAll(stage, [10]);
    stage.session.kept.rename(stage.session.kept.list[0]!.id, '=1+1, "flat"');
    await stage.panel.updateComplete;
    let copied = '';
    const { writeText } = navigator.clipboard;
    navigator.clipboard.writeText = async (value) => {
      copied = value;
    };
    button(root(table(stage)), 'Copy as CSV').click();
    await waitUntil(() => text(root(table(stage))).includes('Copied.'));
    navigator.clipboard.writeText = writeText;
    const [head, own, kept] = copied.split('\r\n');
    expect(head).to.match(/^Design,"Span, mm","Area, cm²",/);
    expect(own!.split(',').slice(0, 3).join(',')).to.equal(
      `"${sampleDesign().name.split(',')[0]},${sampleDesign().name.split(',')[1]} (open)",${own!.split(',')[2]}`,
    );
    expect(kept).to.match(/^"'=1\+1, ""flat""",7\d\d\.\d+,/);
  });

  it('leaves out what is not ticked', async () => {
    const stage = await open();
    await keepAll(stage, [10, 20]);
    const ticks = [...root(stage.panel).querySelectorAll<HTMLInputElement>('.chosen input')];
    expect(ticks).to.have.length(3);
    ticks[0]!.click();
    await stage.panel.updateComplete;
    await table(stage).updateComplete;
    expect(rows(stage)).to.deep.equal(['Bent 20', 'Bent 10']);
  });

  it('lists what differs, from any of them', async () => {
    const stage = await open();
    await keepAll(stage, [10, 30]);
    const list = root(stage.panel).querySelector('design-differences')!;
    await list.updateComplete;
    const differs = () => text(root(list).querySelector('.differences')!).replaceAll('\u00a0', ' ');
    expect(differs()).to.contain('wing tip angle, down 26.0° → 10.0°');
    const choice = root(list).querySelector('choice-field')!;
    const select = choice.shadowRoot!.querySelector('select')!;
    select.value = stage.session.kept.list.find(({ name }) => name === 'Bent 10')!.id;
    select.dispatchEvent(new Event('change'));
    await list.updateComplete;
    expect(differs()).to.contain('wing tip angle, down 10.0° → 30.0°');
  });

  it('takes marks and notes, and ranks from three marked designs on, without more than that', async () => {
    const stage = await open();
    await keepAll(stage, [10, 20, 30]);
    const section = () => root(stage.panel).querySelector<RiddenSection>('ridden-section')!;
    expect(text(root(section()))).to.contain('No kept design has marks yet');
    for (const [name, mark] of [
      ['Bent 10', '2'],
      ['Bent 20', '3'],
      ['Bent 30', '5'],
    ] as const) {
      const field = root(cardOf(stage, name)).querySelector('choice-field')!;
      const select = field.shadowRoot!.querySelector('select')!;
      select.value = mark;
      select.dispatchEvent(new Event('change'));
    }
    const notes = root(cardOf(stage, 'Bent 10'))
      .querySelector('notes-field')!
      .shadowRoot!.querySelector('textarea')!;
    notes.value = 'Loose.';
    notes.dispatchEvent(new Event('input'));
    notes.dispatchEvent(new Event('change'));
    expect(stage.session.kept.list.find(({ name }) => name === 'Bent 10')).to.deep.include({
      notes: 'Loose.',
      marks: { hold: 2 },
    });
    await waitUntil(() => text(root(section())).includes('Rank correlation of figures'), 'ranks');
    const said = text(root(section()));
    expect(said).to.contain(
      '3 ridden designs have a mark for hold: too few to say where good marks begin (8 or more)',
    );
    expect(said).to.match(/Hold index \+1\.00 \(n 3\)/);
    expect(said).to.contain('nothing is claimed of how sure it is');
    expect(said).not.to.match(/, p [0<]/);
  });

  it('says from eight on how likely chance is, and where good marks begin', async () => {
    const stage = await open();
    const ids = await keepAll(stage, [4, 8, 12, 16, 20, 24, 28, 32]);
    ids.forEach((id, k) => {
      stage.session.kept.mark(id, 'hold', [1, 2, 2, 3, 3, 4, 4, 5][k]!);
    });
    const section = root(stage.panel).querySelector<RiddenSection>('ridden-section')!;
    await waitUntil(() => /Hold index \+0\.9\d \(n 8, p (0\.\d+|< 0\.001)\)/.test(text(root(section))), 'p', {
      timeout: 8000,
    });
    const { band } = stage.session.ridden;
    expect(text(root(section))).to.contain(
      `begin between an index of ${band!.low.toFixed(2)} and ${band!.high.toFixed(2)}; none stands against it`,
    );
    expect(root(section).querySelector('.begins')).to.be.instanceOf(SVGRectElement);
  });

  it('says where the browser refuses, and offers a file', async () => {
    const full = {
      ...memoryKept(),
      change: () => Promise.reject(new DOMException('full', 'QuotaExceededError')),
    };
    const stage = await open({ kept: full });
    button(root(stage.panel), 'Keep the open design').click();
    await waitUntil(() => cards(stage).length === 1, 'a card');
    await waitUntil(() => stage.session.notice !== null);
    expect(stage.session.notice).to.deep.include({ kind: 'trouble' });
    expect(stage.session.notice!.message).to.contain('storage is full');
    expect(stage.session.notice!.offer!.label).to.equal('Save it as a file');
    await stage.panel.updateComplete;
    expect(text(root(cards(stage)[0]!))).to.contain('in this page only');
  });
});
