import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { describe, it } from 'vitest';
import type { BuildFiles } from '../../src/components/build/build-files.ts';
import type { MeasuredTable } from '../../src/components/build/measured-table.ts';
import type { NotesField } from '../../src/components/build/notes-field.ts';
import type { PrintSheet } from '../../src/components/build/print-sheet.ts';
import type { ChoiceField } from '../../src/components/choice-field.ts';
import type { Change, DesignEditEvent } from '../../src/components/events.ts';
import type { NumberField } from '../../src/components/number-field.ts';
import '../../src/components/panels/build-panel.ts';
import type { BuildPanel } from '../../src/components/panels/build-panel.ts';
import { Exporter, type MakeFile } from '../../src/session/exporter.ts';
import { withValueAt } from '../../src/session/paths.ts';
import { Studies } from '../../src/session/studies.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { readDesignValue } from '../../src/solver/design/read.ts';
import '../../web/tokens.css';
import demo from '../../web/demos/curved-race.json';

const LONG = { timeout: 40_000 };

/** Studies and files on the page itself: no worker in a component test. */
const noWorker = (): Worker => {
  throw new Error('none here');
};
const onPage = () => new Studies({ makeWorker: noWorker, loadStudies: async () => STUDIES });
const exporterOf = (make: MakeFile) =>
  new Exporter({ makeExportWorker: noWorker, loadExport: async () => make });

interface Stage {
  panel: BuildPanel;
  changes: Change[][];
}

/** The panel with a page that takes its edits, as the real one does: refused where the document would be none. */
async function open(
  changed: Partial<Design> = {},
  make: MakeFile = () => new Promise(() => {}),
): Promise<Stage> {
  const design = { ...structuredClone(demo), ...changed } as Design;
  const panel = await fixture<BuildPanel>(
    html`<build-panel .design=${design} .studies=${onPage()} .exporter=${exporterOf(make)}></build-panel>`,
  );
  const changes: Change[][] = [];
  panel.addEventListener('design-edit', (event: DesignEditEvent) => {
    changes.push(event.detail.changes);
    const next = event.detail.changes.reduce(
      (made, { path, value }) => withValueAt(made, path, value),
      panel.design!,
    );
    const reading = readDesignValue(next);
    if (reading.ok) panel.design = reading.design;
    else event.refusal = reading.message;
  });
  await settled(panel);
  return { panel, changes };
}

async function settled(panel: BuildPanel): Promise<void> {
  await waitUntil(() => find<MeasuredTable>(panel, 'measured-table'), 'the overview', { timeout: 20_000 });
  await panel.updateComplete;
}

function find<T extends Element>(panel: BuildPanel, selector: string): T | null {
  return panel.renderRoot.querySelector<T>(selector);
}

const text = (element: { renderRoot: Element | DocumentFragment }) =>
  element.renderRoot.textContent!.replaceAll(/\s+/g, ' ');

function field(root: Element | DocumentFragment, label: string): NumberField {
  const found = [...root.querySelectorAll<NumberField>('number-field')].find((each) => each.label === label);
  if (!found) throw new Error(`no field "${label}"`);
  return found;
}

async function type(into: NumberField | NotesField, words: string): Promise<void> {
  const input = into.renderRoot.querySelector<HTMLInputElement>('input, textarea')!;
  input.value = words;
  input.dispatchEvent(new Event('input'));
  input.dispatchEvent(new Event('change'));
  await waitUntil(() => !into.isTyping || into.renderRoot.querySelector('[role=alert]'), 'taken or refused', {
    timeout: 20_000, // the unit library may still be loading
  });
}

describe('build-panel', () => {
  it('is accessible, on a phone too; says what stands in the way and where', LONG, async () => {
    const { panel } = await open();
    await expect(panel).to.be.accessible();
    expect(text(panel)).to.match(/wing: Trailing edge down to 0\.\d+ mm .* out along the curve/);
    expect(text(panel)).to.contain('no approval of strength');
    panel.style.width = '18rem';
    await panel.updateComplete;
    await expect(panel).to.be.accessible();
    expect(panel.scrollWidth).to.be.at.most(panel.offsetWidth);
  });

  it('answers for a foil without stabilizer, strut and fuselage', LONG, async () => {
    const { panel } = await open({ stabilizer: null, strut: null, fuselage: null });
    await expect(panel).to.be.accessible();
    expect(text(panel)).not.to.match(/NaN|undefined|null/);
    expect(find<BuildFiles>(panel, 'build-files')!.renderRoot.querySelector('[data-export=strut]')).to.equal(
      null,
    );
  });

  it('shows stations in the chosen units', LONG, async () => {
    const { panel } = await open();
    const tip = () =>
      [...panel.renderRoot.querySelectorAll('table')].find((each) =>
        each.caption?.textContent?.includes('Wing, root to tip'),
      )!.tBodies[0]!.rows;
    const along = () => Number([...tip()].at(-1)!.cells[1]!.textContent);
    expect(along()).to.equal(370); // half the unrolled length of 740 mm
    panel.units = 'imperial';
    await panel.updateComplete;
    expect(along()).to.be.closeTo(370 / 25.4, 0.0005); // the inch is 25.4 mm by definition
  });

  it('takes measurements by side, and takes them out again', LONG, async () => {
    const { panel, changes } = await open();
    const table = () => find<MeasuredTable>(panel, 'measured-table')!.renderRoot;
    const labels = [...table().querySelectorAll<NumberField>('number-field')].map(({ label }) => label);
    const label = labels.find((each) => each.startsWith('twist, port, S4'))!;
    await type(field(table(), label), '-1.2');
    expect(panel.design!.asBuilt?.wing?.at).to.have.length(1);
    await waitUntil(() => text(panel).includes('rolls the foil by'), 'the roll', { timeout: 20_000 });
    await type(field(table(), 'tip drop, port'), '80');
    expect(panel.design!.asBuilt?.wing?.tipDrop).to.deep.equal({ port: 0.08 });
    await type(field(table(), label), '');
    await type(field(table(), 'tip drop, port'), '');
    expect(panel.design!.asBuilt).to.equal(undefined);
    expect(changes).to.have.length(4);
    await waitUntil(() => text(panel).includes('Nothing is measured yet'), 'as drawn', { timeout: 20_000 });
  });

  it('edits the build block: slot made and taken away, settings back to usual', LONG, async () => {
    const { panel } = await open();
    await type(field(panel.renderRoot, 'Spar slot at'), '30');
    expect(panel.design!.build?.slot).to.deep.equal({ at: 0.3, width: 0.01, height: 0.004 });
    await type(field(panel.renderRoot, 'Slot width'), '');
    expect(panel.design!.build?.slot).to.equal(undefined);
    await type(field(panel.renderRoot, 'Cloth'), '300 g/m^2');
    expect(panel.design!.build?.ply?.weight).to.be.closeTo(0.3, 1e-12);
    await type(field(panel.renderRoot, 'Cloth'), '');
    expect(panel.design!.build?.ply?.weight).to.equal(undefined);
    await type(field(panel.renderRoot, 'Station spacing'), '900');
    expect(panel.design!.build?.spacing).to.equal(undefined);
    const { renderRoot } = field(panel.renderRoot, 'Station spacing');
    expect(renderRoot.querySelector('[role=alert]')?.textContent).to.contain('out of range');
  });

  it('prints what the user wrote, with fingerprint, three views and caution', LONG, async () => {
    const { panel } = await open();
    await type(find<NotesField>(panel, 'notes-field')!, 'two of twill,\nthen along');
    const sheet = find<PrintSheet>(panel, 'print-sheet')!;
    await waitUntil(() => sheet.sheet?.notes !== '', 'the sheet', { timeout: 20_000 });
    await sheet.updateComplete;
    expect(sheet.renderRoot.querySelector('.notes')!.textContent).to.equal('two of twill,\nthen along');
    for (const words of [
      'Brief',
      'Headline figures',
      'Hold index',
      'From ahead',
      'From the side',
      'no approval',
    ])
      expect(text(sheet)).to.contain(words);
    expect(text(sheet)).to.match(/Fingerprint [0-9A-Z]{4}-[0-9A-Z]{4}, \d{4}-\d\d-\d\d/);
    expect(getComputedStyle(sheet).display).to.equal('none'); // on paper alone
  });

  it('makes one file at a time, with progress, Cancel, and a word when it fails', LONG, async () => {
    let report: (share: number) => void = () => {};
    let fail: (reason: Error) => void = () => {};
    const { panel } = await open({}, (_design, _order, progress) => {
      report = progress;
      return new Promise((_resolve, reject) => {
        fail = reject;
      });
    });
    const files = find<BuildFiles>(panel, 'build-files')!;
    const button = (selector: string) => files.renderRoot.querySelector<HTMLButtonElement>(selector)!;
    const bar = () => files.renderRoot.querySelector('progress');
    button('[data-export=mould]').click();
    await files.updateComplete;
    expect(bar()?.hasAttribute('value')).to.equal(false);
    await waitUntil(() => {
      report(0.4);
      return bar()?.value === 0.4;
    }, 'progress');
    await expect(files).to.be.accessible();
    expect(button('[data-export=csv]').getAttribute('aria-disabled')).to.equal('true');
    [...files.renderRoot.querySelectorAll('button')].find((each) => each.textContent === 'Cancel')!.click();
    await files.updateComplete;
    expect(bar()).to.equal(null);
    expect(text(files)).to.contain('Moulds, STL: cancelled.');
    button('[data-export=stl]').click();
    await waitUntil(() => {
      fail(new Error('tolerance: too fine'));
      return files.renderRoot.querySelector('[role=alert]');
    }, 'the failure');
    expect(text(files)).to.contain('tolerance: too fine');
  });

  it('asks for the files as chosen, which is no edit of the design', LONG, async () => {
    const orders: unknown[] = [];
    const { panel, changes } = await open({}, async (_design, order) => {
      orders.push(order);
      throw new Error('seen');
    });
    const choose = (label: string, value: string) => {
      const found = [...panel.renderRoot.querySelectorAll<ChoiceField>('choice-field')].find(
        (each) => each.label === label,
      )!;
      const select = found.renderRoot.querySelector('select')!;
      select.value = value;
      select.dispatchEvent(new Event('change'));
      return panel.updateComplete;
    };
    await choose('Paper', 'letter');
    await choose('Solids', 'halves');
    const files = find<BuildFiles>(panel, 'build-files')!;
    await files.updateComplete;
    files.renderRoot.querySelector<HTMLButtonElement>('[data-export=pdf]')!.click();
    await waitUntil(() => orders.length > 0, 'the order');
    expect(orders[0]).to.include({
      kind: 'pdf',
      part: null,
      paper: 'letter',
      side: 'halves',
      fliesAsDrawn: false,
    });
    expect(changes).to.deep.equal([]);
  });
});
