import { expect, fixture, html } from '@open-wc/testing';
import { describe, it } from 'vitest';
import { layOutSide, sideX, sideY } from '../../src/components/side-shapes.ts';
import '../../src/components/side-view.ts';
import type { SideView } from '../../src/components/side-view.ts';
import { stabilizerSurface } from '../../src/session/foil-surfaces.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import '../../web/tokens.css';
import { labelFaults } from '../support/labels.ts';
import { type Sample, sample } from '../support/sample-report.ts';

const show = async ({ design, report }: Sample, width = 720) => {
  const box = await fixture(
    html`<div style="width: ${width}px; font-family: system-ui"><side-view .design=${design} .report=${report}></side-view></div>`,
  );
  const view = box.querySelector<SideView>('side-view')!;
  await new Promise(requestAnimationFrame);
  await view.updateComplete;
  return view;
};
const textOf = (view: SideView) => view.shadowRoot!.textContent!.replace(/\s+/g, ' ');

describe('side view', () => {
  it('is accessible and labels arm, strut, depth, balance point and neutral point', async () => {
    const view = await show(sample());
    await expect(view).to.be.accessible();
    for (const label of [
      'arm 610 mm',
      'depth 550 mm',
      'strut 950 mm, 120 mm aft',
      'balance point 140 mm aft, 1 900 mm up',
      'neutral point',
    ])
      expect(textOf(view)).to.contain(label);
    expect(view.shadowRoot!.querySelector('svg')!.getAttribute('aria-label')).to.contain(
      'stabilizer arm 610',
    );
  });

  it('follows the unit system', async () => {
    const view = await show(sample());
    view.units = 'imperial';
    await view.updateComplete;
    expect(textOf(view)).to.contain('arm 24.0 in');
  });

  it.each([
    ['deep water', { 'brief.depth': null }],
    ['no stabilizer', { stabilizer: null }],
    ['no strut', { strut: null }],
    ['no fuselage', { fuselage: null }],
    ['a balance point ahead of the wing', { 'brief.balance.x': -0.2 }],
  ])('draws %s', async (_name, changes) => {
    const view = await show(sample('curved', changes));
    view.ghost = sample('flat');
    await view.updateComplete;
    await expect(view).to.be.accessible();
  });

  it.each([
    ['a downwind foil', {}],
    ['no stabilizer', { stabilizer: null }],
    ['nothing but the wing', { stabilizer: null, fuselage: null, strut: null }],
    ['a long nose', { 'fuselage.nose': 2 }],
    ['a short arm', { 'stabilizer.arm': 0.2, 'stabilizer.height': -0.2 }],
    ['a wide strut', { 'strut.chord': 1 }],
    ['the strut far aft', { 'strut.x': 3 }],
    ['the strut far ahead', { 'strut.x': -2 }],
    ['the balance point far aft', { 'brief.balance.x': 3 }],
    ['the balance point far ahead', { 'brief.balance.x': -3 }],
  ])('keeps every label inside the drawing, on a phone too, with %s', async (_name, changes) => {
    for (const width of [358, 720])
      expect(labelFaults(await show(sample('downwind', changes), width))).to.deep.equal([]);
  });

  it('is to one scale both ways', () => {
    const { design } = sample();
    const layout = layOutSide(
      design,
      surfaceOf(design.wing),
      stabilizerSurface(design),
      720,
      (_name, value) => value,
    );
    expect(sideX(layout, 0.61) - sideX(layout, 0)).to.be.closeTo(0.61 * layout.scale, 1e-9);
    expect(sideY(layout, 0) - layout.surfaceY!).to.be.closeTo(0.55 * layout.scale, 1e-9);
    expect(sideX(layout, -0.15)).to.be.at.least(0);
    expect(sideX(layout, 0.66)).to.be.at.most(720);
  });
});
