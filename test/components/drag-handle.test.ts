import { expect, fixture, html } from '@open-wc/testing';
import { LitElement, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import { DragHandles } from '../../src/components/drag-handle.ts';
import type { EditDetail } from '../../src/components/events.ts';
import { type Handle, linearGrab, type Slide } from '../../src/components/handle-model.ts';
import { handleStyles } from '../../src/components/handle-styles.ts';
import type { UnitSystem } from '../../src/session/units.ts';
import { Pointer } from '../support/pointer.ts';

/** A drawing with one handle of two directions: an angle downward, a length to the right. */
@customElement('handle-drawing')
class HandleDrawing extends LitElement {
  static override styles = handleStyles;
  @property({ attribute: false }) angle = 20;
  @property({ attribute: false }) span = 0.74;
  @property() units: UnitSystem = 'workshop';
  readonly handles = new DragHandles(this);

  get slides(): readonly [Slide, Slide] {
    return [
      {
        name: 'Droop',
        quantity: 'angle',
        value: this.angle,
        min: -90,
        max: 90,
        toward: 'down',
        label: 'droop',
        meaning: 'an even arc',
        changes: (value) => [{ path: 'angle', value }],
      },
      {
        name: 'Span',
        quantity: 'length',
        value: this.span,
        min: 0.05,
        max: 5,
        toward: 'right',
        label: 'span',
        changes: (value) => [{ path: 'span', value }],
      },
    ];
  }

  protected override render() {
    const [droop, span] = this.slides;
    const handle: Handle = {
      id: 'tip',
      x: 200,
      y: 60,
      mirrorAt: 50,
      slides: [droop, span],
      grab: linearGrab(span, 0.001, 0.001),
    };
    return html`<svg viewBox="0 0 300 120" width="300" height="120" role="group" aria-label="A drawing">
      ${svg`${this.handles.draw(this.slides, () => [handle], this.units)}`}
    </svg>`;
  }
}

async function make(refuse: (value: number) => string | null = () => null) {
  const view = await fixture<HandleDrawing>(html`<handle-drawing></handle-drawing>`);
  const edits: EditDetail[] = [];
  view.addEventListener('design-edit', (event) => {
    edits.push(event.detail);
    const change = event.detail.changes[0];
    if (!change) return;
    event.refusal = refuse(change.value as number);
    if (event.refusal === null) Object.assign(view, { [change.path]: change.value });
  });
  const [droop, span] = [...view.shadowRoot!.querySelectorAll<SVGGElement>('[role="slider"]')];
  const [port, starboard] = [...view.shadowRoot!.querySelectorAll('.grip')];
  return { view, edits, droop: droop!, span: span!, port: port!, starboard: starboard! };
}

const lastValue = (edits: EditDetail[]) => edits.at(-1)!.changes[0]?.value as number;

describe('handle: what it is', () => {
  it('is accessible: each direction a focusable slider with name, value, unit and range', async () => {
    const { view, droop, span } = await make();
    await expect(view).to.be.accessible();
    const read = (slider: Element, name: string) => slider.getAttribute(`aria-${name}`);
    expect([droop, span].map((slider) => slider.getAttribute('tabindex'))).to.deep.equal(['0', '0']);
    expect(['label', 'valuenow', 'valuemin', 'valuemax'].map((name) => read(span, name))).to.deep.equal([
      'Span',
      '740',
      '50',
      '5000',
    ]);
    expect(read(span, 'valuetext')).to.equal('740 millimetres');
    expect(read(droop, 'valuetext')).to.equal('20.0 degrees, an even arc');
    expect([read(droop, 'orientation'), read(span, 'orientation')]).to.deep.equal(['vertical', 'horizontal']);
    view.units = 'imperial';
    await view.updateComplete;
    expect(read(span, 'valuetext')).to.equal('29.1 inches');
  });

  it('offers the pointer a target of at least 24 px (WCAG 2.2, success criterion 2.5.8)', async () => {
    const { starboard, port } = await make();
    for (const grip of [starboard, port]) {
      const box = grip.getBoundingClientRect();
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      for (const [dx, dy] of [
        [11.9, 0],
        [-11.9, 0],
        [0, 11.9],
        [0, -11.9],
      ] as const) {
        const root = grip.getRootNode() as ShadowRoot;
        expect(root.elementFromPoint(x + dx, y + dy)).to.equal(grip);
      }
    }
  });

  it('shows where the keyboard is', async () => {
    const { droop, span, view } = await make();
    const mark = (slide: Element) => getComputedStyle(slide).markerMid;
    const shown = (slide: Element) =>
      view.shadowRoot!.querySelector(mark(slide).replace(/^url\("?(.*?)"?\)$/, '$1'));
    await userEvent.keyboard('{Tab}');
    droop.focus();
    expect(shown(droop)!.querySelector('.ring')).to.not.equal(null);
    expect(shown(droop)!.querySelector('.toward')).to.not.equal(null);
    expect(mark(span)).to.equal('none');
    span.focus();
    expect(mark(droop)).to.equal('none');
    expect(mark(span)).to.not.equal('none');
  });
});

describe('handle: keys', () => {
  it('moves the way the arrow points, and one held key is one step', async () => {
    const { droop, edits } = await make();
    droop.focus();
    await userEvent.keyboard('{ArrowDown>3/}');
    expect(edits.map(({ phase }) => phase)).to.deep.equal(['live', 'live', 'live', 'settled']);
    expect(lastValue(edits)).to.be.closeTo(21.5, 1e-9);
    expect(edits.every(({ label }) => label === 'droop')).to.equal(true);
    await userEvent.keyboard('{ArrowUp}');
    expect(lastValue(edits)).to.be.closeTo(21, 1e-9);
  });

  it('takes the other arrows too: right for more, left for less', async () => {
    const { droop, span, edits } = await make();
    droop.focus();
    await userEvent.keyboard('{ArrowRight}');
    expect(lastValue(edits)).to.be.closeTo(20.5, 1e-9);
    span.focus();
    await userEvent.keyboard('{ArrowUp}{ArrowRight}');
    expect(lastValue(edits)).to.be.closeTo(0.742, 1e-9);
  });

  it('goes ten times as far with Shift or a page, a tenth with Alt, and to the ends', async () => {
    const { span, edits } = await make();
    span.focus();
    for (const [keys, value] of [
      ['{Shift>}{ArrowRight}{/Shift}', 0.75],
      ['{Alt>}{ArrowLeft}{/Alt}', 0.7499],
      ['{PageUp}', 0.7599],
      ['{End}', 5],
      ['{Home}', 0.05],
      ['{ArrowLeft}', 0.05],
    ] as const) {
      await userEvent.keyboard(keys);
      expect(lastValue(edits), keys).to.be.closeTo(value, 1e-9);
    }
  });

  it('stays one step when Shift is let go while the arrow is held', async () => {
    const { droop, edits } = await make();
    droop.focus();
    const phases = () => edits.map(({ phase }) => phase);
    await userEvent.keyboard('{Shift>}{ArrowDown>}{/Shift}');
    expect(phases()).to.deep.equal(['live']);
    await userEvent.keyboard('{/ArrowDown}');
    expect(phases()).to.deep.equal(['live', 'settled']);
  });

  it('gives a held key up on Escape', async () => {
    const { droop, edits } = await make();
    droop.focus();
    await userEvent.keyboard('{ArrowDown>}{Escape}{/ArrowDown}');
    expect(edits.map(({ phase }) => phase)).to.deep.equal(['live', 'cancelled']);
    expect(edits[1]!.changes).to.deep.equal([]);
  });

  it('settles when the focus leaves, and lets other keys and the page’s shortcuts through', async () => {
    const { droop, edits } = await make();
    droop.focus();
    await userEvent.keyboard('{ArrowDown>}');
    droop.blur();
    expect(edits.map(({ phase }) => phase)).to.deep.equal(['live', 'settled']);
    droop.focus();
    await userEvent.keyboard('{/ArrowDown}{Control>}{ArrowDown}{/Control}x');
    expect(edits).to.have.length(2);
  });

  it('stays, and says why, where the page refuses', async () => {
    const { view, droop, edits } = await make((value) =>
      value > 20.6 ? 'wing.droop: found too much' : null,
    );
    droop.focus();
    await userEvent.keyboard('{ArrowDown}{ArrowDown}');
    expect(view.angle).to.equal(20.5);
    expect(view.handles.refusal).to.equal('Found too much');
    await userEvent.keyboard('{ArrowUp}');
    expect(view.handles.refusal).to.equal(null);
    expect(edits.at(-1)!.phase).to.equal('settled');
  });
});

describe('handle: pointer', () => {
  it('follows a move before its frame, once for each place, and leaves what comes too soon to the frame', async () => {
    const { starboard, edits } = await make();
    const pointer = new Pointer(starboard).press();
    const wait = () => new Promise((resolve) => setTimeout(resolve, 20));
    await wait();
    pointer.moveRaw(10, 0).move(0, 0);
    expect(edits.length).to.equal(1);
    expect(lastValue(edits)).to.be.closeTo(0.75, 1e-9);
    pointer.moveRaw(1, 0).moveRaw(1, 0);
    expect(edits.length).to.equal(1); // too soon
    pointer.move(0, 0);
    expect(lastValue(edits)).to.be.closeTo(0.752, 1e-9);
    await wait();
    pointer.moveRaw(8, 0).release();
    expect(edits.map(({ phase }) => phase)).to.deep.equal(['live', 'live', 'live', 'settled']);
  });

  it('sends live edits while it moves and settles the last one on release', async () => {
    const { starboard, edits, view } = await make();
    new Pointer(starboard).press().move(10, 0).move(10, 3).release();
    expect(edits.map(({ phase }) => phase)).to.deep.equal(['live', 'live', 'settled']);
    expect(edits.map(({ changes }) => changes[0]!.value)).to.deep.equal([0.75, 0.76, 0.76]);
    expect(view.span).to.equal(0.76);
    expect(view.handles.isDragging).to.equal(false);
  });

  it('is mirrored on the port side', async () => {
    const { port, edits } = await make();
    new Pointer(port).press().move(-10, 0).release();
    expect(lastValue(edits)).to.equal(0.75);
  });

  it('is given up by Escape and by a lost pointer, and then hears no more', async () => {
    for (const end of ['escape', 'lost']) {
      const { starboard, edits } = await make();
      const pointer = new Pointer(starboard).press().move(10, 0);
      if (end === 'escape') await userEvent.keyboard('{Escape}');
      else pointer.cancel();
      pointer.move(10, 0).release();
      expect(edits.map(({ phase }) => phase)).to.deep.equal(['live', 'cancelled']);
      expect(edits[1]!.label).to.equal('span');
    }
  });

  it('sends nothing for a press alone, and puts the keyboard on the handle', async () => {
    const { view, starboard, droop, edits } = await make();
    new Pointer(starboard).press().release();
    expect(edits).to.deep.equal([]);
    expect(view.shadowRoot!.activeElement).to.equal(droop);
  });

  it('keeps within the range', async () => {
    const { starboard, edits } = await make();
    new Pointer(starboard).press().move(-2000, 0).release();
    expect(lastValue(edits)).to.equal(0.05);
  });
});
