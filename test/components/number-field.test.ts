import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { beforeAll, describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/components/choice-field.ts';
import type { ChoiceField } from '../../src/components/choice-field.ts';
import type { EditDetail } from '../../src/components/events.ts';
import '../../src/components/number-field.ts';
import type { NumberField } from '../../src/components/number-field.ts';
import '../../src/components/text-field.ts';
import type { TextField } from '../../src/components/text-field.ts';
import { prepareReader } from '../../src/session/quantity-on-demand.ts';
import type { Quantity, UnitSystem } from '../../src/session/units.ts';

/** Plays the page: notes each edit and puts the value back into the field. */
function listen(
  field: HTMLElement & { value: unknown },
  refuse: (value: unknown) => string | null = () => null,
) {
  const edits: EditDetail[] = [];
  field.addEventListener('design-edit', (event) => {
    const value = event.detail.changes[0]?.value;
    event.refusal = refuse(value);
    edits.push(event.detail);
    if (event.refusal === null && event.detail.phase !== 'cancelled') field.value = value ?? null;
  });
  return edits;
}

const boxOf = (field: HTMLElement) => field.shadowRoot!.querySelector('input')!;
const noteOf = (field: HTMLElement) => field.shadowRoot!.querySelector('.message')?.textContent ?? '';

async function type(field: HTMLElement, text: string, end = '{Enter}') {
  boxOf(field).select();
  await userEvent.keyboard(`${text}${end}`);
  await (field as NumberField).updateComplete;
}

// Loaded by the first test's field; here so that every other test may be run alone.
const ready = () => prepareReader();

interface Case {
  quantity: Quantity;
  units: UnitSystem;
  value: number;
  shown: string;
  typed: string;
  read: number;
  wrong: string;
  nudged: number; // after one ArrowUp from `value`
}

// One suite for every number field: each kind of quantity, in each system.
const CASES: Case[] = [
  {
    quantity: 'length',
    units: 'workshop',
    value: 0.74,
    shown: '740',
    typed: '27 in',
    read: 0.6858,
    wrong: '18 kn',
    nudged: 0.741,
  },
  {
    quantity: 'length',
    units: 'si',
    value: 0.74,
    shown: '0.74',
    typed: '0,68',
    read: 0.68,
    wrong: '5 kg',
    nudged: 0.741,
  },
  {
    quantity: 'length',
    units: 'imperial',
    value: 0.254,
    shown: '10',
    typed: '11',
    read: 0.2794,
    wrong: '10 °',
    nudged: 0.25527,
  },
  {
    quantity: 'area',
    units: 'workshop',
    value: 0.055,
    shown: '550',
    typed: '560 cm²',
    read: 0.056,
    wrong: '560 mm',
    nudged: 0.0555,
  },
  {
    quantity: 'speed',
    units: 'workshop',
    value: 9.26,
    shown: '18',
    typed: '9 m/s',
    read: 9,
    wrong: '9 m',
    nudged: 9.517222,
  },
  {
    quantity: 'angle',
    units: 'workshop',
    value: -1.2,
    shown: '\u22121.2',
    typed: '-2',
    read: -2,
    wrong: '2 mm',
    nudged: -0.7,
  },
  {
    quantity: 'mass',
    units: 'imperial',
    value: 90.718474,
    shown: '200',
    typed: '90 kg',
    read: 90,
    wrong: '90 N',
    nudged: 91.172066,
  },
  {
    quantity: 'temperature',
    units: 'imperial',
    value: 15,
    shown: '59',
    typed: '50',
    read: 10,
    wrong: '3 mm',
    nudged: 15.555556,
  },
  {
    quantity: 'share',
    units: 'workshop',
    value: 0.1,
    shown: '10',
    typed: '12 %',
    read: 0.12,
    wrong: '3 mm',
    nudged: 0.11,
  },
  {
    quantity: 'ratio',
    units: 'workshop',
    value: 2.4,
    shown: '2.4',
    typed: '5/2',
    read: 2.5,
    wrong: '2 kn',
    nudged: 2.45,
  },
];

describe('number field before its unit library has loaded', () => {
  it('takes plain numbers at once and the rest, once, as soon as it can', async () => {
    const field = await fixture<NumberField>(
      html`<number-field label="Span" path="a.b" quantity="length" .value=${0.74}></number-field>`,
    );
    const edits = listen(field);
    await type(field, '750');
    expect(edits.map(({ changes }) => changes[0]!.value)).to.deep.equal([0.75]);
    await type(field, '27 in');
    boxOf(field).blur();
    await waitUntil(() => edits.length > 1, 'the answer', { timeout: 10_000 });
    expect(edits).to.have.length(2);
    expect(edits[1]!.changes[0]!.value).to.be.closeTo(0.6858, 1e-9);
  });
});

describe.each(CASES)('number field: $quantity in $units units', (each) => {
  beforeAll(ready);
  const make = () =>
    fixture<NumberField>(html`<number-field
      label="Measure"
      path="a.b"
      .value=${each.value}
      .quantity=${each.quantity}
      .units=${each.units}
    ></number-field>`);

  it('has a name, a value and a unit, and is accessible', async () => {
    const field = await make();
    expect(boxOf(field).value).to.equal(each.shown);
    expect(Number(boxOf(field).getAttribute('aria-valuenow'))).to.be.closeTo(
      Number(each.shown.replace('\u2212', '-')),
      1e-4,
    );
    await expect(field).to.be.accessible();
  });

  it('takes typed text with Enter, once', async () => {
    const field = await make();
    const edits = listen(field);
    await type(field, each.typed);
    boxOf(field).blur();
    expect(edits).to.have.length(1);
    expect(edits[0]!.phase).to.equal('settled');
    expect(edits[0]!.label).to.equal('measure');
    expect(edits[0]!.changes[0]!.path).to.equal('a.b');
    expect(edits[0]!.changes[0]!.value).to.be.closeTo(each.read, 1e-6);
  });

  it('refuses the wrong kind, keeps the text and says why; Escape restores', async () => {
    const field = await make();
    const edits = listen(field);
    await type(field, each.wrong);
    expect(edits).to.have.length(0);
    expect(boxOf(field).value).to.equal(each.wrong);
    expect(boxOf(field).getAttribute('aria-invalid')).to.equal('true');
    expect(noteOf(field)).to.contain('is wanted');
    await expect(field).to.be.accessible();
    await userEvent.keyboard('{Escape}');
    await field.updateComplete;
    expect(boxOf(field).value).to.equal(each.shown);
    expect(noteOf(field)).to.equal('');
  });

  it('nudges by arrow keys: live while held, settled on letting go', async () => {
    const field = await make();
    const edits = listen(field);
    boxOf(field).focus();
    await userEvent.keyboard('{ArrowUp>3/}');
    expect(edits.map(({ phase }) => phase)).to.deep.equal(['live', 'live', 'live', 'settled']);
    const step = each.nudged - each.value;
    expect(edits[0]!.changes[0]!.value).to.be.closeTo(each.nudged, 1e-5);
    expect(edits[3]!.changes[0]!.value).to.be.closeTo(each.value + 3 * step, 1e-5);
  });
});

describe('number field', () => {
  beforeAll(ready);
  const make = (extra: Partial<NumberField> = {}) =>
    fixture<NumberField>(
      html`<number-field label="Unrolled length" path="wing.length.value"></number-field>`,
    ).then(async (field) => {
      Object.assign(field, { quantity: 'length', value: 0.74, min: 0.05, max: 5, ...extra });
      await field.updateComplete;
      return field;
    });

  it('goes ten times as far with Shift and a tenth with Alt', async () => {
    const field = await make();
    const edits = listen(field);
    boxOf(field).focus();
    await userEvent.keyboard('{Shift>}{ArrowDown}{/Shift}');
    expect(edits.at(-1)!.changes[0]!.value).to.be.closeTo(0.73, 1e-9);
    await userEvent.keyboard('{Alt>}{ArrowUp}{/Alt}');
    expect(edits.at(-1)!.changes[0]!.value).to.be.closeTo(0.7301, 1e-9);
  });

  it('says the range in the shown unit', async () => {
    const field = await make();
    const edits = listen(field);
    await type(field, '7 m');
    expect(noteOf(field)).to.equal('7\u202f000\u00a0mm is out of range: 50.0\u00a0mm to 5\u202f000\u00a0mm.');
    expect(edits).to.have.length(0);
  });

  it('stops at its range when nudged', async () => {
    const field = await make({ value: 4.9995 });
    const edits = listen(field);
    boxOf(field).focus();
    await userEvent.keyboard('{ArrowUp}');
    expect(edits.at(-1)!.changes[0]!.value).to.equal(5);
  });

  it('shows why the page refuses a value, without the key path', async () => {
    const field = await make();
    listen(field, () => 'wing.length.value: found 0.9, allowed less');
    await type(field, '900');
    expect(noteOf(field)).to.equal('Found 0.9, allowed less');
    expect(boxOf(field).value).to.equal('900');
  });

  it('gives a nudge up on Escape', async () => {
    const field = await make();
    const edits = listen(field);
    boxOf(field).focus();
    await userEvent.keyboard('{ArrowUp>}{Escape}{/ArrowUp}');
    expect(edits.map(({ phase }) => phase)).to.deep.equal(['live', 'cancelled']);
  });

  it('commits on leaving, and follows the design when it changes elsewhere', async () => {
    const field = await make();
    const edits = listen(field);
    await type(field, '750', '');
    expect(edits).to.have.length(0);
    boxOf(field).blur();
    expect(edits).to.have.length(1);
    field.value = 0.6;
    await field.updateComplete;
    expect(boxOf(field).value).to.equal('600');
  });

  it('sends nothing when nothing was changed', async () => {
    const field = await make();
    const edits = listen(field);
    await type(field, '740');
    expect(edits).to.have.length(0);
  });

  it('takes an emptied optional field out of the document', async () => {
    const field = await make({ optional: true, placeholder: 'as at cruise' });
    const edits = listen(field);
    boxOf(field).select();
    await userEvent.keyboard('{Delete}{Enter}');
    await field.updateComplete;
    expect(edits[0]!.changes[0]!.value).to.equal(undefined);
    expect(boxOf(field).value).to.equal('');
    await expect(field).to.be.accessible();
  });

  it('makes the changes it is told to make, or says why it cannot', async () => {
    const field = await make({
      toChanges: (value) =>
        value > 1 ? 'No tip chord gives that area.' : [{ path: 'other', value: 2 * value }],
    });
    const edits = listen(field);
    await type(field, '800');
    expect(edits[0]!.changes).to.deep.equal([{ path: 'other', value: 1.6 }]);
    await type(field, '1200');
    expect(noteOf(field)).to.equal('No tip chord gives that area.');
  });
});

describe('text field', () => {
  it('commits with Enter, shows a refusal, restores with Escape', async () => {
    const field = await fixture<TextField>(
      html`<text-field label="Formula" path="wing.chord.expression" value="0.1"></text-field>`,
    );
    const edits = listen(field, (value) =>
      String(value).includes('alert') ? 'wing.chord.expression: “alert” is not known' : null,
    );
    await expect(field).to.be.accessible();
    await type(field, '0.12 * eta');
    expect(edits[0]!.changes[0]).to.deep.equal({ path: 'wing.chord.expression', value: '0.12 * eta' });
    await type(field, 'alert(1)');
    expect(noteOf(field)).to.equal('“alert” is not known');
    await userEvent.keyboard('{Escape}');
    await field.updateComplete;
    expect(boxOf(field).value).to.equal('0.12 * eta');
  });
});

describe('choice field', () => {
  it('sends the choice, and goes back when it is refused', async () => {
    const field = await fixture<ChoiceField>(html`<choice-field
      label="Water"
      path="brief.water.kind"
      value="sea"
      .choices=${[{ value: 'sea', label: 'sea' }, { value: 'fresh', label: 'fresh' }]}
    ></choice-field>`);
    const edits = listen(field, () => 'Not now.');
    const select = field.shadowRoot!.querySelector('select')!;
    await expect(field).to.be.accessible();
    await userEvent.selectOptions(select, 'fresh');
    await field.updateComplete;
    expect(edits[0]!.changes[0]).to.deep.equal({ path: 'brief.water.kind', value: 'fresh' });
    expect(select.value).to.equal('sea');
    expect(noteOf(field)).to.equal('Not now.');
  });
});
