import { aTimeout, expect, fixture, html } from '@open-wc/testing';
import { css } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { describe, it } from 'vitest';
import { InSight } from '../../src/components/in-sight.ts';

const REST = 300; // ms

@customElement('seen-part')
class SeenPart extends InSight {
  static override styles = css`
    :host {
      display: block;
      height: 2rem;
    }
  `;

  @property() text = '';

  protected override render() {
    return html`${this.text}`;
  }
}

@customElement('resting-part')
class RestingPart extends SeenPart {
  protected override readonly rest = REST;
}

const press = (type: string) => window.dispatchEvent(new PointerEvent(type));
/** What is due at once: no clock has a say in it. */
const atOnce = async () => {
  for (let k = 0; k < 8; k++) await null;
};
const shown = (part: SeenPart) => part.shadowRoot!.textContent;

/** A part below the window's lower edge, and the observer told so. */
async function makeBelow(): Promise<SeenPart> {
  const stand = await fixture(
    html`<div><div style="height: 300vh"></div><seen-part text="first"></seen-part></div>`,
  );
  const part = stand.querySelector('seen-part') as SeenPart;
  await aTimeout(100);
  return part;
}

describe('a part out of sight', () => {
  it('is drawn at once when nothing is dragged', async () => {
    const part = await makeBelow();
    expect(shown(part)).to.equal('first');
    part.text = 'second';
    await atOnce();
    expect(shown(part)).to.equal('second');
  });

  it('waits under a drag, and shows the last there was once the pointer is let go', async () => {
    const part = await makeBelow();
    press('pointerdown');
    part.text = 'second';
    await atOnce();
    expect(shown(part)).to.equal('first');
    part.text = 'third';
    press('pointerup');
    await atOnce();
    expect(shown(part)).to.equal('third');
  });

  it('waits no longer than until it is seen', async () => {
    const part = await makeBelow();
    press('pointerdown');
    part.text = 'second';
    await atOnce();
    expect(shown(part)).to.equal('first');
    part.isInSight = true; // as the observer says
    await atOnce();
    expect(shown(part)).to.equal('second');
    press('pointerup');
  });

  it('goes on when a move tells of a release that was not', async () => {
    const part = await makeBelow();
    press('pointerdown');
    part.text = 'second';
    window.dispatchEvent(new PointerEvent('pointermove', { buttons: 1 }));
    await atOnce();
    expect(shown(part)).to.equal('first');
    window.dispatchEvent(new PointerEvent('pointermove', { buttons: 0 }));
    await atOnce();
    expect(shown(part)).to.equal('second');
  });

  it('follows a drag at once while it is in sight', async () => {
    const part = await fixture<SeenPart>(html`<seen-part text="first"></seen-part>`);
    await aTimeout(100);
    press('pointerdown');
    part.text = 'second';
    await atOnce();
    expect(shown(part)).to.equal('second');
    press('pointerup');
  });

  it('rests between two drawings of a drag, and shows the last there was', async () => {
    const part = await fixture<RestingPart>(html`<resting-part text="first"></resting-part>`);
    await aTimeout(REST + 50);
    press('pointerdown');
    part.text = 'second';
    await atOnce();
    expect(shown(part)).to.equal('second'); // it has rested
    part.text = 'third';
    await atOnce();
    expect(shown(part)).to.equal('second');
    await aTimeout(REST + 50);
    expect(shown(part)).to.equal('third'); // the pointer is still down
    part.text = 'fourth';
    press('pointerup');
    await atOnce();
    expect(shown(part)).to.equal('fourth');
    part.text = 'fifth';
    await atOnce();
    expect(shown(part)).to.equal('fifth'); // nothing is dragged
  });
});
