import { expect, fixture, html } from '@open-wc/testing';
import { beforeAll, describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import type { ChoiceField } from '../../src/components/choice-field.ts';
import type { EditDetail } from '../../src/components/events.ts';
import type { LawEditor } from '../../src/components/law-editor.ts';
import '../../src/components/law-editor.ts';
import type { LawName } from '../../src/components/law-fields.ts';
import type { NumberField } from '../../src/components/number-field.ts';
import { withValueAt } from '../../src/session/paths.ts';
import { prepareReader } from '../../src/session/quantity-on-demand.ts';
import type { Planform } from '../../src/solver/design/document.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { demo } from '../session/designs.ts';

/** An editor whose edits are put into the planform, as the page does. */
async function setUp(law: LawName, planform: Planform) {
  const editor = await fixture<LawEditor>(
    html`<law-editor .law=${law} .planform=${planform} path="wing"></law-editor>`,
  );
  const edits: EditDetail[] = [];
  editor.addEventListener('design-edit', (event) => {
    edits.push(event.detail);
    for (const { path, value } of event.detail.changes)
      editor.planform = withValueAt({ wing: editor.planform }, path, value).wing;
  });
  return { editor, edits };
}

const fieldNamed = (editor: LawEditor, label: string) => {
  const fields = [...editor.shadowRoot!.querySelectorAll<NumberField>('number-field, text-field')];
  const field = fields.find((each) => each.label === label);
  if (!field) throw new Error(`no field “${label}” among ${fields.map((each) => each.label).join(', ')}`);
  return field;
};
const type = async (field: HTMLElement, text: string) => {
  field.shadowRoot!.querySelector('input')!.select();
  await userEvent.keyboard(`${text}{Enter}`);
};
const choose = (editor: LawEditor, kind: string) =>
  userEvent.selectOptions(
    editor.shadowRoot!.querySelector<ChoiceField>('choice-field')!.shadowRoot!.querySelector('select')!,
    kind,
  );
const taperWing = (): Planform => ({
  ...demo().wing,
  droop: { kind: 'flat' },
  chord: { kind: 'taper', root: 0.1, tip: 0.05 },
});

beforeAll(prepareReader); // units are read at once from here on

describe('law editor', () => {
  it.each<[LawName, string[]]>([
    ['chord', ['taper', 'elliptic', 'superelliptic', 'points', 'formula']],
    ['sweep', ['straight', 'rake', 'points', 'formula']],
    ['droop', ['flat', 'vee', 'arc', 'late', 'gull', 'points', 'formula']],
    ['twist', ['linear', 'points', 'formula']],
  ])('offers every kind of %s, each drawable and accessible', async (law, kinds) => {
    const { editor, edits } = await setUp(law, demo().wing);
    for (const kind of [...kinds, kinds[0]!]) {
      await choose(editor, kind);
      await editor.updateComplete;
      expect(editor.planform![law].kind).to.equal(kind);
      expect(surfaceOf(editor.planform!).projectedArea).to.be.above(0.03);
      await expect(editor).to.be.accessible();
    }
    expect(edits.every(({ label }) => label === `wing ${law} law`)).to.equal(true);
  });

  it('solves the tip chord from an area, with the aspect ratio beside it', async () => {
    const { editor } = await setUp('chord', taperWing());
    await type(fieldNamed(editor, 'Area from above'), '518 cm^2');
    await editor.updateComplete;
    expect(editor.planform!.chord).to.deep.equal({ kind: 'taper', root: 0.1, tip: 0.04 });
    // aspect ratio: span squared over area, 0.74^2 / 0.0518
    expect(editor.shadowRoot!.textContent).to.contain('Aspect ratio 10.6');
  });

  it('says which areas are possible, and keeps the chord', async () => {
    const { editor, edits } = await setUp('chord', taperWing());
    const field = fieldNamed(editor, 'Area from above');
    await type(field, '100');
    await field.updateComplete;
    expect(field.shadowRoot!.textContent).to.contain('No tip chord gives 100');
    expect(edits).to.have.length(0);
  });

  it('sets the tip by drop while the design keeps the angle, and by angle', async () => {
    const { editor } = await setUp('droop', { ...demo().wing, droop: { kind: 'arc', tipAngle: 26 } });
    await type(fieldNamed(editor, 'Tip drop'), '60 mm');
    await editor.updateComplete;
    expect(Object.keys(editor.planform!.droop)).to.deep.equal(['kind', 'tipAngle']);
    expect(surfaceOf(editor.planform!).tipDrop).to.be.closeTo(0.06, 1e-6);
    await type(fieldNamed(editor, 'Tip angle, down'), '10');
    await editor.updateComplete;
    expect(editor.planform!.droop).to.deep.equal({ kind: 'arc', tipAngle: 10 });
  });

  it('switches what the design keeps and converts the value', async () => {
    const { editor } = await setUp('droop', { ...demo().wing, droop: { kind: 'arc', tipAngle: 26 } });
    const measure = [...editor.shadowRoot!.querySelectorAll<ChoiceField>('choice-field')].at(-1)!;
    const before = surfaceOf(editor.planform!).tipDrop;
    await userEvent.selectOptions(measure.shadowRoot!.querySelector('select')!, 'tipDrop');
    expect(editor.planform!.droop).to.have.property('tipDrop');
    expect(surfaceOf(editor.planform!).tipDrop).to.be.closeTo(before, 1e-6);
  });

  it('enters washout as the trade says it: positive is less angle at the tip', async () => {
    const { editor } = await setUp('twist', demo().wing);
    await type(fieldNamed(editor, 'Washout to the tip'), '2');
    expect(editor.planform!.twist).to.deep.equal({ kind: 'linear', tip: -2 });
  });

  it('adds and takes away points, on the curve', async () => {
    const { editor, edits } = await setUp('chord', {
      ...demo().wing,
      chord: {
        kind: 'points',
        at: [
          [0, 0.1],
          [0.2, 0.1],
          [1, 0.04],
        ],
      },
    });
    const table = () => editor.shadowRoot!.querySelector('points-table')!;
    const curve = surfaceOf(editor.planform!).chord;
    const buttons = () => [...table().shadowRoot!.querySelectorAll('button')];
    await userEvent.click(buttons().at(-1)!);
    await editor.updateComplete;
    await table().updateComplete;
    const added = (editor.planform!.chord as { at: number[][] }).at[2]!;
    expect(added[0]).to.equal(0.6);
    expect(added[1]).to.be.closeTo(curve(0.6), 1e-6);
    await expect(editor).to.be.accessible();
    await userEvent.click(buttons()[0]!);
    expect((editor.planform!.chord as { at: number[][] }).at.map(([eta]) => eta)).to.deep.equal([0, 0.6, 1]);
    expect(edits.map(({ label }) => label)).to.deep.equal([
      'wing chord: add a point',
      'wing chord: take a point away',
    ]);
  });

  it('edits a formula as text', async () => {
    const { editor } = await setUp('droop', {
      ...demo().wing,
      droop: { kind: 'formula', expression: '20 * eta' },
    });
    await type(fieldNamed(editor, 'Degrees down at eta'), '25 * eta^2');
    expect(editor.planform!.droop).to.deep.equal({ kind: 'formula', expression: '25 * eta^2' });
  });
});
