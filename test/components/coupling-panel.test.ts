import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { beforeEach, describe, it } from 'vitest';
import type { ChoiceField } from '../../src/components/choice-field.ts';
import type { DesignEditEvent } from '../../src/components/events.ts';
import type { InertiaFields } from '../../src/components/hold/inertia-fields.ts';
import type { StabilizerSizing } from '../../src/components/hold/stabilizer-sizing.ts';
import type { NumberField } from '../../src/components/number-field.ts';
import '../../src/components/panels/coupling-panel.ts';
import type { CouplingPanel } from '../../src/components/panels/coupling-panel.ts';
import { withValueAt } from '../../src/session/paths.ts';
import { Studies } from '../../src/session/studies.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { readDesignValue } from '../../src/solver/design/read.ts';
import demo from '../../web/demos/curved-race.json';

beforeEach(() => localStorage.clear());

const LONG = { timeout: 60_000 };

/** Studies on the page itself: no worker in a component test. */
const onPage = () =>
  new Studies({
    makeWorker: () => {
      throw new Error('none here');
    },
    loadStudies: async () => STUDIES,
  });

async function open(design = demo as Design) {
  const panel = await fixture<CouplingPanel>(
    html`<coupling-panel .design=${design} .studies=${onPage()}></coupling-panel>`,
  );
  const sizing = panel.renderRoot.querySelector<StabilizerSizing>('stabilizer-sizing')!;
  await answered(panel, sizing);
  return { panel, sizing };
}

async function answered(panel: CouplingPanel, sizing: StabilizerSizing): Promise<void> {
  const waits = (root: HTMLElement | DocumentFragment) => root.querySelector('.wait') !== null;
  await waitUntil(() => !waits(panel.renderRoot) && !waits(sizing.renderRoot), 'answers', {
    timeout: 40_000,
  });
}

const text = (root: HTMLElement | DocumentFragment) => root.textContent!.replaceAll(/\s+/g, ' ');
const table = (root: HTMLElement | DocumentFragment, caption: string) =>
  [...root.querySelectorAll('table')].find((each) => each.caption?.textContent?.includes(caption))!;
const rowOf = (found: HTMLTableElement, name: string) =>
  [...found.tBodies[0]!.rows].find((row) => row.cells[0]!.textContent!.includes(name))!;
const numberIn = (cell: Element) => Number(cell.textContent!.replace('\u2212', '-').match(/-?[\d.]+/)![0]);

function type(field: NumberField, value: string): void {
  const input = field.renderRoot.querySelector('input')!;
  input.focus();
  input.value = value;
  input.dispatchEvent(new Event('input', { bubbles: true }));
  input.dispatchEvent(new Event('change', { bubbles: true }));
}

const fieldOf = (root: HTMLElement | DocumentFragment, label: string) =>
  [...root.querySelectorAll<NumberField>('number-field')].find((each) => each.label === label)!;

describe('coupling-panel', () => {
  it('is accessible, cautions, and says the coupling in words with the numbers behind it', LONG, async () => {
    const { panel } = await open();
    for (const details of panel.renderRoot.querySelectorAll('details')) details.open = true;
    await expect(panel).to.be.accessible();
    expect(text(panel.renderRoot)).to.contain('no approval of strength or safety');
    const foil = table(panel.renderRoot, 'Foil alone, about');
    expect(rowOf(foil, 'slips').cells[1]!.textContent).to.contain('to port, against the slip');
    expect(rowOf(foil, 'rolls').cells[2]!.textContent).to.contain('resists the roll');
    expect(rowOf(foil, 'slips').cells[1]!.textContent).to.match(/[\d.]+\sN[\s\S]*−0\.\d+ ± 0\.\d+/);
    expect(text(panel.renderRoot)).to.match(/The strut bears 9\d % of the side force/);
  });

  it('what the parts add comes to the whole', LONG, async () => {
    const { panel } = await open();
    const rows = [...table(panel.renderRoot, 'Craft, by part').tBodies[0]!.rows];
    expect(rows).to.have.length(9);
    for (const row of rows) {
      const [wing, stabilizer, strut, all] = [1, 2, 3, 4].map((k) => numberIn(row.cells[k]!)) as [
        number,
        number,
        number,
        number,
      ];
      // each is rounded to three digits of its own
      const rounding = 0.006 * Math.max(...[wing, stabilizer, strut, all].map(Math.abs)) + 2e-4;
      expect(wing + stabilizer + strut, row.cells[0]!.textContent!).to.be.closeTo(all, rounding);
    }
  });

  it('gives every mode a sentence, and draws how they move along the droop', LONG, async () => {
    const { panel } = await open();
    const sideways = table(panel.renderRoot, 'Sideways');
    expect(sideways.tBodies[0]!.rows.length).to.be.greaterThan(2);
    for (const row of sideways.tBodies[0]!.rows)
      expect(row.cells[0]!.querySelector('small')!.textContent).to.match(
        /(halves|doubles) in [\d.]+\ss|method/,
      );
    expect(panel.renderRoot.querySelectorAll('line-chart').length).to.equal(4);
    expect(text(panel.renderRoot)).to.match(/Over 500 random valid designs the hold index/);
  });

  it('axes are a question of its own, and turn C_lr', LONG, async () => {
    const { panel, sizing } = await open();
    const edits: DesignEditEvent[] = [];
    panel.addEventListener('design-edit', (event) => edits.push(event));
    const turning = () => rowOf(table(panel.renderRoot, 'Foil alone, by part'), 'Clr').cells[3]!.textContent!;
    const before = turning();
    const select = panel.renderRoot
      .querySelector<ChoiceField>('choice-field')!
      .renderRoot.querySelector('select')!;
    select.value = 'stream';
    select.dispatchEvent(new Event('change', { bubbles: true }));
    await panel.updateComplete;
    await waitUntil(() => turning() !== before, 'the other axes', { timeout: 20_000 });
    await answered(panel, sizing);
    expect(edits).to.have.length(0);
  });

  it(
    'an inertia typed is an edit of the document, and an emptied field takes it out again',
    LONG,
    async () => {
      const { panel } = await open();
      const edits: DesignEditEvent[] = [];
      panel.addEventListener('design-edit', (event) => edits.push(event));
      const fields = panel.renderRoot.querySelector<InertiaFields>('inertia-fields')!;
      type(fieldOf(fields.renderRoot, 'Board'), '7 kg');
      await waitUntil(() => edits.length > 0, 'an edit', { timeout: 20_000 });
      expect(edits[0]!.detail.changes).to.deep.equal([{ path: 'inertia.boardMass', value: 7 }]);
      fields.design = { ...(demo as Design), inertia: { boardMass: 7 } };
      await fields.updateComplete;
      const board = fieldOf(fields.renderRoot, 'Board');
      await board.updateComplete;
      type(board, '');
      await waitUntil(() => edits.length > 1, 'another edit', { timeout: 20_000 });
      expect(edits[1]!.detail.changes).to.deep.equal([{ path: 'inertia.boardMass', value: undefined }]);
    },
  );

  it('without a stabilizer and without a strut it still answers', LONG, async () => {
    const { panel, sizing } = await open({ ...(demo as Design), stabilizer: null, strut: null });
    expect(text(sizing.renderRoot)).to.contain('No stabilizer');
    expect(text(panel.renderRoot)).not.to.contain('The strut bears');
    expect(table(panel.renderRoot, 'Sideways')).to.exist;
  });

  it(
    'masses that cannot be are said in a sentence, with the fields to put them right beside it',
    LONG,
    async () => {
      const heavy = structuredClone(demo) as Design;
      heavy.inertia = { boardMass: 50, foilMass: 50 };
      const { panel } = await open(heavy);
      expect(panel.renderRoot.querySelector('.trouble')?.textContent).to.match(/found 50 kg of board/);
      const fields = panel.renderRoot.querySelector<InertiaFields>('inertia-fields')!;
      expect(fieldOf(fields.renderRoot, 'Board').value).to.equal(50);
    },
  );
});

describe('stabilizer-sizing', () => {
  it(
    'tells whether it is big enough for what is wanted, and a choice taken is one edit that gives it',
    LONG,
    async () => {
      const { panel, sizing } = await open();
      expect(text(sizing.renderRoot)).to.match(/not big enough: it has 153.cm², and that takes \d+.cm²/);
      const edits: DesignEditEvent[] = [];
      panel.addEventListener('design-edit', (event) => edits.push(event));
      type(fieldOf(sizing.renderRoot, 'Wanted static margin'), '-20');
      await waitUntil(() => text(sizing.renderRoot).includes('For a static margin of −20 %'), 'sized again', {
        timeout: 20_000,
      });
      expect(edits).to.have.length(0);
      const row = rowOf(table(sizing.renderRoot, 'Choices'), 'margin, by area');
      const area = numberIn(row.cells[1]!);
      row.querySelector('button')!.click();
      expect(edits).to.have.length(1);
      expect(edits[0]!.detail.phase).to.equal('settled');
      const taken = edits[0]!.detail.changes.reduce<unknown>(
        (design, { path, value }) => withValueAt(design, path, value),
        demo,
      );
      const reading = readDesignValue(taken);
      expect(reading.ok).to.equal(true);
      panel.design = (reading as { design: Design }).design;
      await waitUntil(() => text(sizing.renderRoot).includes('it is big enough'), 'the size taken', {
        timeout: 20_000,
      });
      const present = rowOf(table(sizing.renderRoot, 'Choices'), 'as drawn');
      expect(numberIn(present.cells[1]!)).to.be.closeTo(area, 1); // cm2: lengths are taken in tenths of a millimetre
      expect(numberIn(present.cells[5]!)).to.be.closeTo(-20, 1);
    },
  );

  it(
    'a shim, a longer fuselage and another size stand with what they do, and can be taken',
    LONG,
    async () => {
      const { panel, sizing } = await open();
      const edits: DesignEditEvent[] = [];
      panel.addEventListener('design-edit', (event) => edits.push(event));
      const changes = () => table(sizing.renderRoot, 'the wedge left as it is');
      expect(rowOf(changes(), 'nose up').cells[1]!.textContent).to.match(/mm aft/);
      type(fieldOf(sizing.renderRoot, 'Fuselage'), '80 mm');
      await waitUntil(() => text(changes()).includes('fuselage 80'), 'another length', { timeout: 20_000 });
      rowOf(changes(), 'longer').querySelector('button')!.click();
      const [{ path, value }] = edits[0]!.detail.changes as [{ path: string; value: unknown }];
      expect(path).to.equal('stabilizer');
      expect(value).to.deep.equal({ ...demo.stabilizer, arm: demo.stabilizer.arm + 0.08 });
    },
  );

  it('says so where any size would do', LONG, async () => {
    const forward = structuredClone(demo) as Design;
    forward.brief.balance.x = 0; // the neutral point lies far behind
    const { sizing } = await open(forward);
    expect(text(sizing.renderRoot)).to.contain('it is more than big enough');
    expect(text(sizing.renderRoot)).to.match(/neutral point lies [\d.]+.mm behind the balance point/);
  });

  it('a choice found for the design of a moment ago waits, and says so', LONG, async () => {
    const { panel, sizing } = await open();
    const edits: DesignEditEvent[] = [];
    panel.addEventListener('design-edit', (event) => edits.push(event));
    sizing.design = structuredClone(demo) as Design;
    sizing.design.stabilizer!.length.value *= 0.8;
    await sizing.updateComplete;
    rowOf(table(sizing.renderRoot, 'Choices'), 'margin, by area').querySelector('button')!.click();
    await sizing.updateComplete;
    expect(edits).to.have.length(0);
    expect(sizing.renderRoot.querySelector('[role="alert"]')!.textContent).to.contain('once they stand');
  });

  it('remembers what was wanted when it is opened again', LONG, async () => {
    const { sizing } = await open();
    type(fieldOf(sizing.renderRoot, 'Wanted static margin'), '15 %');
    await waitUntil(() => text(sizing.renderRoot).includes('a static margin of 15 %'), 'sized again', {
      timeout: 20_000,
    });
    const again = await open();
    expect(text(again.sizing.renderRoot)).to.contain('a static margin of 15 %');
    expect(fieldOf(again.sizing.renderRoot, 'Wanted static margin').value).to.equal(0.15);
  });
});
