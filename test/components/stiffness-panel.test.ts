import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { beforeAll, describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import type { EditDetail } from '../../src/components/events.ts';
import type { NumberField } from '../../src/components/number-field.ts';
import '../../src/components/panels/stiffness-panel.ts';
import type { StiffnessPanel } from '../../src/components/panels/stiffness-panel.ts';
import { withValueAt } from '../../src/session/paths.ts';
import { prepareReader } from '../../src/session/quantity-on-demand.ts';
import { Studies } from '../../src/session/studies.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import type { AnyStudies } from '../../src/session/study-server.ts';
import type { BenchReading, Design } from '../../src/solver/design/document.ts';
import demo from '../../web/demos/curved-race.json';

const LONG = { timeout: 60_000 };

/** The quick study alone: a test that needs a long one asks for it. */
const QUICK: AnyStudies = { stiffness: STUDIES.stiffness };

/** A panel whose edits are put into its design, as the page does; studies run on the page itself, without a worker. */
async function open(design = demo as Design, registry: AnyStudies = QUICK) {
  const studies = new Studies({
    makeWorker: () => {
      throw new Error('none here');
    },
    loadStudies: async () => registry,
  });
  const panel = await fixture<StiffnessPanel>(
    html`<stiffness-panel .design=${design} .studies=${studies}></stiffness-panel>`,
  );
  const edits: EditDetail[] = [];
  panel.addEventListener('design-edit', (event) => {
    edits.push(event.detail);
    for (const { path, value } of event.detail.changes) panel.design = withValueAt(panel.design, path, value);
  });
  await shows(panel, 'What gives');
  return { panel, edits };
}

const text = (root: ParentNode) => root.textContent!.replaceAll(/\s+/g, ' ');
const shows = (panel: StiffnessPanel, what: string) =>
  waitUntil(() => text(panel.renderRoot).includes(what), what, { timeout: 50_000 });
const tableOf = (root: ParentNode, caption: string) =>
  [...root.querySelectorAll('table')].find((each) => each.caption?.textContent?.includes(caption))!;
const fieldNamed = (root: ParentNode, label: string) =>
  [...root.querySelectorAll<NumberField>('number-field')].find((each) => each.label === label)!;
const type = async (field: NumberField, words: string) => {
  field.shadowRoot!.querySelector('input')!.select();
  await userEvent.keyboard(`${words}{Enter}`);
};
const benchOf = (panel: StiffnessPanel) => panel.renderRoot.querySelector('bench-table')!.renderRoot;
const press = (root: ParentNode, words: string) =>
  userEvent.click([...root.querySelectorAll('button')].find((each) => each.textContent!.trim() === words)!);

const withBench = (bench: BenchReading[]): Design => ({ ...(demo as Design), joints: { bench } });
const sideways = (station: number, deflection: number): BenchReading => ({
  pull: 'side',
  mass: 10,
  at: 0.95,
  station,
  deflection,
});

beforeAll(prepareReader); // units are read at once from here on

describe('stiffness-panel', () => {
  it('is accessible once everything is there, the caution first', LONG, async () => {
    const { panel } = await open(demo as Design, STUDIES);
    expect(panel.renderRoot.firstElementChild!.textContent).to.contain('no approval of strength');
    for (const what of ['What stiffens most', 'Modes at cruise', 'Trailing edges', 'To fly as drawn'])
      await shows(panel, what);
    await waitUntil(() => panel.renderRoot.querySelectorAll('progress').length === 0, 'no bar left');
    await expect(panel).to.be.accessible();
  });

  it('shares of a load in the account come to a hundred', LONG, async () => {
    const { panel } = await open();
    const rows = [...tableOf(panel.renderRoot, 'How far it gives').tBodies[0]!.rows];
    expect(rows).to.have.length(6);
    for (const row of rows) {
      const shares = [...row.cells].slice(2).map((cell) => Number.parseInt(cell.textContent!, 10) || 0);
      // Each is rounded to a whole percent, those below a half are written so.
      expect(shares.reduce((sum, share) => sum + share, 0)).to.be.within(96, 104);
    }
  });

  it('takes the thickness mark, the limits and the safety factor as edits', LONG, async () => {
    const { panel, edits } = await open(demo as Design, { ...QUICK, thin: STUDIES.thin });
    await shows(panel, 'Bending stiffness goes with the power 3.0');
    expect(fieldNamed(panel.renderRoot, 'Thickness mark').value).to.equal(0.013);
    await type(fieldNamed(panel.renderRoot, 'Thickness mark'), '14 mm');
    await type(fieldNamed(panel.renderRoot, 'Diameter mark'), '22');
    await type(fieldNamed(panel.renderRoot, 'Allowed deflection, strut'), '3 cm');
    await type(fieldNamed(panel.renderRoot, 'Safety factor'), '4');
    expect(edits.flatMap(({ changes }) => changes)).to.deep.equal([
      { path: 'laminate.limits.strutThickness', value: 0.014 },
      { path: 'laminate.limits.fuselageDiameter', value: 0.022 },
      { path: 'laminate.limits.strutDeflection', value: 0.03 },
      { path: 'laminate.safety', value: 4 },
    ]);
    await shows(panel, 'thinner than your mark of 14.0 mm');
    await shows(panel, 'reserve at 4 times');
  });

  it('says in a sentence when the foil gives way', LONG, async () => {
    const soft = { ...(demo as Design), laminate: { wing: { modulus: 1e8, shear: 1e7 } } };
    const { panel } = await open(soft);
    await shows(panel, 'gives way under its own load');
  });

  it('can be stopped and goes on', LONG, async () => {
    let isHeld = true;
    function* ride() {
      while (isHeld) yield 0.5;
      throw new Error('it went on');
    }
    const { panel } = await open(demo as Design, { ...QUICK, ride });
    const section = panel.renderRoot.querySelector('section[aria-labelledby=ride]')!;
    await waitUntil(() => section.querySelector('progress')?.value === 0.5, 'how far it has come');
    await press(section, 'Cancel');
    await waitUntil(() => text(section).includes('Stopped.'), 'stopped');
    isHeld = false;
    await press(section, 'Go on');
    await waitUntil(() => text(section).includes('it went on'), 'the end of it');
  });
});

describe('the bench', () => {
  it('adds readings station by station, and takes them out', LONG, async () => {
    const { panel, edits } = await open();
    await press(benchOf(panel), 'Add a pull to the side');
    await panel.updateComplete;
    await press(benchOf(panel), 'Add a pull to the side');
    expect(panel.design!.joints!.bench!.map(({ station }) => station)).to.deep.equal([0.95, 0.475]);
    expect(edits.map(({ label }) => label)).to.deep.equal(['add a bench reading', 'add a bench reading']);
    await waitUntil(
      () => text(benchOf(panel)).includes('Reading 2: a pull is read as a way'),
      'asks for it',
      {
        timeout: 20_000,
      },
    );
    const out = () => benchOf(panel).querySelector<HTMLButtonElement>('[aria-label="Take out reading 1"]');
    await userEvent.click(out()!);
    await panel.updateComplete;
    await userEvent.click(out()!);
    expect(panel.design!.joints!.bench).to.equal(undefined);
  });

  it('with one station says that box and strut cannot be told apart', LONG, async () => {
    const { panel } = await open(withBench([sideways(0.95, 0.04)]));
    expect(text(benchOf(panel))).to.contain('With one station, box and strut cannot be told apart');
    await expect(panel.renderRoot.querySelector('bench-table')!).to.be.accessible();
  });

  it('with three shows the fit and puts it to use', LONG, async () => {
    const { panel, edits } = await open(
      withBench([sideways(0.95, 0.047), sideways(0.6, 0.0243), sideways(0.3, 0.0085)]),
    );
    const rows = [...tableOf(benchOf(panel), 'What the readings say').tBodies[0]!.rows];
    expect(rows.map((row) => row.cells[0]!.textContent)).to.deep.equal([
      'strut, modulus along',
      'box in roll',
    ]);
    await press(benchOf(panel), 'Use these values');
    const paths = edits.flatMap(({ changes }) => changes.map(({ path }) => path));
    expect(paths).to.have.members(['laminate.strut.modulus', 'joints.box.roll']);
  });

  it('answers a slip with a message at its reading', LONG, async () => {
    const { panel } = await open(withBench([{ ...sideways(0.95, 0.04), at: 3 }, sideways(0.95, -0.04)]));
    expect(text(benchOf(panel))).to.contain('Reading 1: the weight hangs 3 m from the box, but the strut is');
    expect(text(benchOf(panel))).to.contain('fit no foil of this shape');
  });
});
