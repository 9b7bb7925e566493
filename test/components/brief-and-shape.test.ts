import { expect, fixture, html } from '@open-wc/testing';
import { beforeAll, describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import type { ChoiceField } from '../../src/components/choice-field.ts';
import type { EditDetail } from '../../src/components/events.ts';
import type { NumberField } from '../../src/components/number-field.ts';
import '../../src/components/panels/brief-panel.ts';
import type { BriefPanel } from '../../src/components/panels/brief-panel.ts';
import '../../src/components/panels/shape-panel.ts';
import type { ShapePanel } from '../../src/components/panels/shape-panel.ts';
import { fuselageLength } from '../../src/session/parts.ts';
import { withValueAt } from '../../src/session/paths.ts';
import { prepareReader } from '../../src/session/quantity-on-demand.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { RANGES } from '../../src/solver/design/ranges.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { demo } from '../session/designs.ts';

/** A panel whose edits are put into its design, as the page does. */
async function setUp(design: Design = demo()) {
  const box = await fixture<HTMLElement>(
    html`<div>
      <brief-panel .brief=${design.brief}></brief-panel>
      <shape-panel .design=${design}></shape-panel>
    </div>`,
  );
  const brief = box.querySelector<BriefPanel>('brief-panel')!;
  const shape = box.querySelector<ShapePanel>('shape-panel')!;
  for (const part of shape.shadowRoot!.querySelectorAll('details')) part.open = true; // folded on a narrow screen
  const edits: EditDetail[] = [];
  box.addEventListener('design-edit', (event) => {
    edits.push(event.detail);
    for (const { path, value } of event.detail.changes) shape.design = withValueAt(shape.design, path, value);
    brief.brief = shape.design!.brief;
  });
  return { brief, shape, edits, design: () => shape.design! };
}

const fields = (panel: HTMLElement) => [
  ...panel.shadowRoot!.querySelectorAll<NumberField>('number-field, text-field, choice-field'),
];
const fieldNamed = (panel: HTMLElement, label: string, which = 0) => {
  const found = fields(panel).filter((field) => field.label === label)[which];
  if (!found) throw new Error(`no field “${label}”`);
  return found;
};
const type = async (field: HTMLElement, text: string) => {
  field.shadowRoot!.querySelector('input')!.select();
  await userEvent.keyboard(`${text}{Enter}`);
};
const choose = (field: HTMLElement, value: string) =>
  userEvent.selectOptions((field as unknown as ChoiceField).shadowRoot!.querySelector('select')!, value);
const press = (panel: HTMLElement, text: string) => {
  const button = [...panel.shadowRoot!.querySelectorAll('button')].find(
    (each) => each.textContent?.trim() === text,
  );
  if (!button) throw new Error(`no button “${text}”`);
  return userEvent.click(button);
};

beforeAll(prepareReader); // units are read at once from here on

describe('brief panel', () => {
  it('is accessible and shows every figure of the brief', async () => {
    const { brief } = await setUp();
    await expect(brief).to.be.accessible();
    const mass = fieldNamed(brief, 'All-up mass');
    expect(mass.value).to.equal(95);
    expect(fieldNamed(brief, 'Cruise').shadowRoot!.querySelector('input')!.value).to.equal('18');
  });

  it('goes to deep water and back to the depth that was set', async () => {
    const { brief, design } = await setUp();
    await choose(fieldNamed(brief, 'Water surface'), 'far');
    expect(design().brief.depth).to.equal(null);
    await brief.updateComplete;
    await choose(fieldNamed(brief, 'Water surface'), 'near');
    expect(design().brief.depth).to.equal(0.55);
  });

  it('sets and removes what is optional', async () => {
    const { brief, design } = await setUp();
    brief.shadowRoot!.querySelector<HTMLDetailsElement>('.more')!.open = true;
    await type(fieldNamed(brief, 'Depth at take-off'), '25 cm');
    expect(design().brief.depths).to.deep.equal({ takeOff: 0.25 });
    await type(fieldNamed(brief, 'Side pull of the rig'), '20');
    expect(design().brief.sidePull).to.deep.equal({ share: 0.2, height: 2 });
    await brief.updateComplete;
    await type(fieldNamed(brief, 'Side pull of the rig'), '{Delete}');
    expect(design().brief.sidePull).to.equal(undefined);
  });

  it('lets the drive act through the balance point or at a height', async () => {
    const { brief, design } = await setUp();
    await choose(fieldNamed(brief, 'Rig drives at'), 'balance');
    expect(design().brief.driveHeight).to.equal(null);
    await brief.updateComplete;
    await choose(fieldNamed(brief, 'Rig drives at'), 'height');
    expect(design().brief.driveHeight).to.equal(2.2);
  });
});

describe('shape panel', () => {
  it('is accessible', async () => {
    const { shape } = await setUp();
    await expect(shape).to.be.accessible();
  });

  it('sets either length and keeps the one chosen', async () => {
    const { shape, design } = await setUp();
    await type(fieldNamed(shape, 'Span, tip to tip'), '700');
    expect(design().wing.length.kind).to.equal('unrolled');
    expect(surfaceOf(design().wing).span).to.be.closeTo(0.7, 1e-6);
    await shape.updateComplete;
    await choose(fieldNamed(shape, 'Length kept in a bend'), 'tipToTip');
    expect(design().wing.length).to.deep.equal({ kind: 'tipToTip', value: 0.7 });
  });

  it('reads section codes and says them in words', async () => {
    const { shape, design } = await setUp();
    const field = fieldNamed(shape, 'Section at the root');
    expect(field.hint).to.equal('11 % thick, 2 % camber at 40 % of the chord');
    await type(field, 'NACA 3412');
    expect(design().wing.section.root).to.deep.equal({ kind: 'naca4', code: '3412' });
    await type(field, '23012');
    expect(field.shadowRoot!.textContent).to.contain('is no four-digit section');
  });

  it('sets the fuselage by its length and the strut by its place on it', async () => {
    const { shape, design } = await setUp();
    const { arm } = design().stabilizer!;
    const before = fuselageLength(design())!;
    await type(fieldNamed(shape, 'Length', 0), `${(before + 0.04) * 1000}`);
    expect(design().stabilizer!.arm).to.be.closeTo(arm + 0.04, 1e-5);
    await shape.updateComplete;
    await type(fieldNamed(shape, 'From the fuselage nose'), '300 mm');
    expect(design().strut!.x).to.be.closeTo(0.15, 1e-9);
  });

  it('tapers the strut to the board, and makes it even again', async () => {
    const { shape, design } = await setUp();
    const { chord, thickness } = design().strut!;
    await type(fieldNamed(shape, 'Thickness at the board'), '16 mm');
    expect(design().strut!.top).to.deep.equal({ chord, thickness: 0.016 });
    await shape.updateComplete;
    await type(fieldNamed(shape, 'Thickness at the board'), String(1000 * thickness));
    expect(design().strut).to.not.have.property('top');
  });

  it('keeps the upper strut turbulent as far down as is set; the usual depth leaves no key', async () => {
    const { shape, design } = await setUp();
    const field = () => fieldNamed(shape, 'Turbulent below the surface to');
    expect(field().value).to.equal(RANGES['strut.turbulentTo'].default);
    await type(field(), '25 cm');
    expect(design().strut!.turbulentTo).to.be.closeTo(0.25, 1e-9);
    await shape.updateComplete;
    await type(field(), '0');
    expect(design().strut!.turbulentTo).to.equal(0);
    await shape.updateComplete;
    await type(field(), '100 mm');
    expect(design().strut).to.not.have.property('turbulentTo');
  });

  it('takes the stabilizer away and puts the same one back', async () => {
    const { shape, design, edits } = await setUp();
    const before = design().stabilizer;
    await press(shape, 'Take the stabilizer away');
    expect(design().stabilizer).to.equal(null);
    await shape.updateComplete;
    await expect(shape).to.be.accessible();
    await press(shape, 'Add a stabilizer');
    expect(design().stabilizer).to.deep.equal(before);
    expect(edits.map(({ label }) => label)).to.deep.equal(['take the stabilizer away', 'add a stabilizer']);
  });

  it('adds parts to a design that never had them', async () => {
    const { shape, design } = await setUp({ ...demo(), stabilizer: null, fuselage: null, strut: null });
    for (const part of ['stabilizer', 'fuselage', 'strut'] as const) {
      await press(shape, `Add a ${part}`);
      await shape.updateComplete;
      expect(design()[part]).not.to.equal(null);
    }
    expect(surfaceOf(design().stabilizer!).projectedArea).to.be.above(0.005);
  });
});
