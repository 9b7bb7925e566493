import { expect, fixture, html } from '@open-wc/testing';
import { describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/components/head-on-view.ts';
import '../../web/tokens.css';
import { heeledFoil, layOutHeeled, MOST_HEEL } from '../../src/components/head-on-heel.ts';
import { layOutHeadOn } from '../../src/components/head-on-shapes.ts';
import type { HeadOnView } from '../../src/components/head-on-view.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { sample } from '../support/sample-report.ts';

/** A flat wing of 0.8 m at 0.2 m: its tip meets the surface where sin(heel) is 0.2 / 0.4, at 30 degrees. */
const flat = () =>
  sample('flat', {
    'wing.length': { kind: 'tipToTip', value: 0.8 },
    'wing.droop': { kind: 'flat' },
    'brief.depth': 0.2,
    'brief.depths': undefined,
    stabilizer: null,
  });

async function show(at = flat()) {
  const box = await fixture(
    html`<div style="width: 720px"><head-on-view .design=${at.design} .report=${at.report}></head-on-view></div>`,
  );
  const view = box.querySelector<HeadOnView>('head-on-view')!;
  await new Promise(requestAnimationFrame);
  await view.updateComplete;
  let edits = 0;
  view.addEventListener('design-edit', () => edits++);
  const root = view.shadowRoot!;
  const slide = root.querySelector<HTMLInputElement>('input[type="range"]')!;
  const heel = async (degrees: number) => {
    await userEvent.fill(slide, String(degrees));
    await view.updateComplete;
  };
  const said = () => root.querySelector('output')!.textContent!.replace(/\s+/g, ' ');
  return { view, root, slide, heel, said, edits: () => edits };
}

describe('the head-on view heeled', () => {
  it('says the heel at which a tip breaks the surface: asin(2 depth / span) for a flat wing', async () => {
    const { view, said } = await show();
    await expect(view).to.be.accessible();
    expect(said()).to.equal('The upper wing tip breaks the surface at 30° of heel.');
  });

  it('is a way of looking: no edit, and level again by its button', async () => {
    const { view, root, heel, said, edits } = await show();
    await heel(20);
    // depth - half span sin(20): 200 - 400 * 0.34202 = 63.2 mm
    expect(said()).to.contain('The port wing tip is 63.2');
    expect(said()).to.contain('below the surface');
    expect(root.querySelector('[data-handle]')).to.equal(null);
    await expect(view).to.be.accessible();
    await userEvent.click(root.querySelector<HTMLButtonElement>('.heel button')!);
    await view.updateComplete;
    expect(root.querySelector('[data-handle]')).to.exist;
    expect(edits()).to.equal(0);
  });

  it('shows the tip that breaches, the other one when heeled the other way', async () => {
    const { root, heel, said, slide } = await show();
    await heel(45);
    // half span sin(45) - depth = 282.8 - 200 mm
    expect(said()).to.contain('The port wing tip is 82.8');
    expect(said()).to.contain('out of the water');
    const mark = () => Number(root.querySelector('.tip-mark')!.getAttribute('cx'));
    expect(mark()).to.be.below(360);
    await heel(-45);
    expect(said()).to.contain('The starboard wing tip');
    expect(mark()).to.be.above(360);
    expect(slide.getAttribute('aria-valuetext')).to.equal('45 degrees, port down');
  });

  it('heels the ghost with it, and says when that breaks the surface', async () => {
    const { view, root, heel, said } = await show();
    // Half a metre across at 0.2 m of depth: 0.2 / 0.25 is the sine of 53.1 degrees.
    view.ghost = sample('flat', { 'wing.length': { kind: 'tipToTip', value: 0.5 }, stabilizer: null });
    await view.updateComplete;
    expect(said()).to.contain('30° of heel. The ghost’s wing does at 53°, 23° later.');
    await heel(20);
    const group = root.querySelector('path.ghost')!.parentElement!;
    expect(group.getAttribute('transform')).to.match(/^rotate\(20\.00 /);
    await expect(view).to.be.accessible();
    view.ghost = null;
    await view.updateComplete;
    expect(root.querySelector('path.ghost')).to.equal(null);
    expect(said()).to.not.contain('ghost');
  });

  it('goes by the arrow keys', async () => {
    const { slide, view } = await show();
    slide.focus();
    await userEvent.keyboard('{ArrowRight}{ArrowRight}');
    await view.updateComplete;
    expect(slide.value).to.equal('2');
  });

  it('keeps any heel inside the frame of the level drawing', () => {
    const { design } = flat();
    const wing = surfaceOf(design.wing);
    const level = layOutHeadOn({ width: 720, scale: 900, top: 0, low: 0, depth: 0.2, strutLength: 0.95 });
    const layout = layOutHeeled(heeledFoil(design, wing, null, 10)!, level);
    const swing = layout.scale * 0.4 * Math.sin((MOST_HEEL * Math.PI) / 180);
    expect(layout.originY - swing).to.be.above(0);
    expect(layout.originY + swing).to.be.below(layout.height);
    expect(layout.surfaceY! + 0.2 * layout.scale).to.be.closeTo(layout.originY, 1e-9);
  });

  it('has no slide in deep water', async () => {
    const deep = sample('flat', { 'brief.depth': null, 'brief.depths': undefined });
    const { slide } = await show(deep);
    expect(slide).to.equal(null);
  });
});
