import { expect, fixture, html } from '@open-wc/testing';
import { describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/components/head-on-view.ts';
import { alongY, cutOf, layOutPlan, reachOf, spacedLabels } from '../../src/components/plan-shapes.ts';
import '../../src/components/plan-view.ts';
import type { PlanView } from '../../src/components/plan-view.ts';
import '../../web/tokens.css';
import { stabilizerSurface } from '../../src/session/foil-surfaces.ts';
import type { ChordLaw } from '../../src/solver/design/document.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { labelFaults } from '../support/labels.ts';
import { type Sample, sample } from '../support/sample-report.ts';
import { ViewPage } from '../support/view-page.ts';

const show = async ({ design, report }: Sample) => {
  const box = await fixture(
    html`<div style="width: 720px">
      <head-on-view .design=${design} .report=${report}></head-on-view>
      <plan-view .design=${design} .report=${report}></plan-view>
    </div>`,
  );
  const view = box.querySelector<PlanView>('plan-view')!;
  await new Promise(requestAnimationFrame);
  await view.updateComplete;
  return new ViewPage(view);
};
const textOf = (view: PlanView) => view.shadowRoot!.textContent!.replace(/\s+/g, ' ');
const wingOf = (page: ViewPage<PlanView>) => page.view.design!.wing;
const planform = (page: ViewPage<PlanView>) =>
  page.view.shadowRoot!.querySelector('.planform')!.getBoundingClientRect();

/** px per metre, from the drawing itself: its height of the arm's dimension in full length. */
function scaleOf(page: ViewPage<PlanView>): number {
  return planform(page).width / surfaceOf(wingOf(page)).span;
}

const CHORDS: [ChordLaw, string[]][] = [
  [{ kind: 'taper', root: 0.12, tip: 0.05 }, ['Wing root chord', 'Wing tip chord']],
  [{ kind: 'elliptic', root: 0.12 }, ['Wing root chord']],
  [{ kind: 'superelliptic', root: 0.12, n: 2.4, m: 2 }, ['Wing root chord', 'Fullness of the outline']],
  [
    {
      kind: 'points',
      at: [
        [0, 0.12],
        [0.6, 0.1],
        [1, 0.04],
      ],
    },
    ['Wing root chord', 'Wing tip chord', 'Wing chord at 60 %'],
  ],
  [{ kind: 'formula', expression: '0.12 * sqrt(1 - eta^2)' }, ['Wing root chord']],
];

describe('plan view', () => {
  it('is accessible and names what it shows', async () => {
    const { view } = await show(sample());
    await expect(view).to.be.accessible();
    expect(textOf(view)).to.contain('neutral point').and.to.contain('balance point 140 mm');
    expect(textOf(view)).to.contain('arm 610 mm');
    const summary = view.shadowRoot!.querySelector('[role="img"]')!.getAttribute('aria-label');
    expect(summary).to.contain('span 715').and.to.contain('Stabilizer arm 610');
  });

  it('has the scale of the head-on view: the tips stand under one another', async () => {
    const page = await show(sample());
    const headOn = new ViewPage(page.view.parentElement!.querySelector('head-on-view')!);
    const tip = headOn.placeOf('tip');
    expect(planform(page).right).to.be.closeTo(tip.x, 1);
  });

  it('puts wing and stabilizer in true position in full length', async () => {
    const page = await show(sample());
    page.view.shadowRoot!.querySelector<HTMLButtonElement>('button')?.click();
    await page.view.updateComplete;
    const isFull = !textOf(page.view).includes('is shortened');
    expect(isFull).to.equal(true);
    const tail = page.view.shadowRoot!.querySelector('.tailform')!.getBoundingClientRect();
    // Root leading edges: a quarter chord ahead of the quarter-chord points, which are an arm apart.
    const apart = 0.61 - 0.25 * 0.054 + 0.25 * 0.104;
    expect((tail.top - planform(page).top) / scaleOf(page)).to.be.closeTo(apart, 0.003);
    await expect(page.view).to.be.accessible();
  });

  it.each([
    ['no stabilizer', { stabilizer: null }],
    ['no strut', { strut: null }],
    ['no fuselage', { fuselage: null }],
    ['no figures yet', {}],
  ])('draws a design with %s', async (name, changes) => {
    const page = await show(sample('curved', changes));
    if (name === 'no figures yet') page.view.report = null;
    page.view.ghost = sample('downwind');
    await page.view.updateComplete;
    await expect(page.view).to.be.accessible();
    expect(page.view.shadowRoot!.querySelectorAll('.ghost')).to.have.length(2);
  });
});

describe('plan view: labels', () => {
  it.each([
    ['a whole foil', {}],
    ['no stabilizer', { stabilizer: null }],
    ['no stabilizer and no fuselage', { stabilizer: null, fuselage: null }],
    ['nothing but the wing', { stabilizer: null, fuselage: null, strut: null }],
    ['a wing swept back behind the stabilizer', { 'wing.sweep': { kind: 'straight', angle: 60 } }],
  ])('stand in the drawing with %s, and so do their marks', async (_name, changes) => {
    const { view } = await show(sample('curved', changes));
    expect(textOf(view)).to.contain('balance point 140 mm').and.to.contain('neutral point');
    expect(labelFaults(view)).to.deep.equal([]);
    const frame = view.shadowRoot!.querySelector('svg[viewBox]')!.getBoundingClientRect();
    for (const mark of view.shadowRoot!.querySelectorAll('.mark-ground'))
      expect(mark.getBoundingClientRect().bottom).to.be.at.most(frame.bottom);
  });

  it('stand in the order of their marks, both on the wing too', async () => {
    const { view } = await show(sample('curved', { 'brief.balance.x': 0.04, stabilizer: null }));
    const { neutralPoint } = view.report!.stability;
    expect(neutralPoint).to.be.lessThan(0.04);
    const text = textOf(view);
    expect(text.indexOf('neutral point')).to.be.lessThan(text.indexOf('balance point'));
    expect(labelFaults(view)).to.deep.equal([]);
  });

  it('leave a mark out that stands far off the foil', async () => {
    const { view } = await show(sample('curved', { 'brief.balance.x': 3 }));
    expect(textOf(view)).not.to.contain('balance point');
    expect(labelFaults(view)).to.deep.equal([]);
  });
});

describe('plan view: handles', () => {
  it.each(CHORDS)('has those that suit the chord law %o', async (chord, names) => {
    const page = await show(sample('curved', { 'wing.chord': chord }));
    await expect(page.view).to.be.accessible();
    const chords = page.sliderNames.filter((name) => /chord|Fullness/.test(name));
    expect(chords).to.have.length(names.length);
    for (const name of names) {
      const before = wingOf(page).chord;
      page.slider(name).focus();
      await userEvent.keyboard('{ArrowDown}');
      expect(wingOf(page).chord, name).not.to.deep.equal(before);
      expect(wingOf(page).chord.kind).to.equal(chord.kind);
      await page.view.updateComplete;
    }
  });

  it('moves the trailing edge with the pointer: three quarters of what the root chord grows', async () => {
    const page = await show(sample());
    await page.drag('root', 0, 15);
    const chord = surfaceOf(wingOf(page)).chord(0);
    expect(chord).to.be.closeTo(0.104 + 15 / scaleOf(page) / 0.75, 0.0006);
    expect(page.edits.at(-1)!.label).to.equal('wing root chord');
  });

  it('fills the outline out when its trailing edge is pulled aft', async () => {
    const page = await show(sample());
    await page.drag('fullness', 0, 6);
    const { chord } = wingOf(page);
    if (chord.kind !== 'superelliptic') throw new Error('another law');
    expect(chord.n).to.be.above(2.4);
  });

  it('takes span and rake at the tip, each by the direction that leads', async () => {
    const page = await show(sample());
    const { halfSpan } = surfaceOf(wingOf(page));
    const scale = scaleOf(page);
    await page.drag('tip', 30, 5);
    expect(surfaceOf(wingOf(page)).halfSpan).to.be.closeTo(halfSpan + 30 / scale, 0.001);
    const { sweep } = wingOf(page);
    const before = surfaceOf(wingOf(page)).x(1);
    const now = scaleOf(page);
    await page.drag('tip', 4, 20);
    expect(surfaceOf(wingOf(page)).x(1)).to.be.closeTo(before + 20 / now, 0.001);
    expect(wingOf(page).sweep).not.to.deep.equal(sweep);
    expect(page.edits.at(-1)!.label).to.equal('wing rake');
  });

  it('takes the angle of a raked line on its leading edge, and a straight sweep at the tip', async () => {
    const page = await show(sample());
    await page.drag('sweep', 0, 8);
    const { sweep } = wingOf(page);
    if (sweep.kind !== 'rake') throw new Error('another law');
    expect(sweep.angle).to.be.above(5);
    expect(sweep.tip).to.equal(0.025);

    const straight = await show(sample('curved', { 'wing.sweep': { kind: 'straight', angle: 8 } }));
    straight.slider('Wing sweep').focus();
    await userEvent.keyboard('{ArrowDown}');
    expect(wingOf(straight).sweep).to.deep.equal({ kind: 'straight', angle: 8.5 });
    expect(straight.sliderNames.filter((name) => name === 'Wing sweep')).to.have.length(1);
  });

  it('moves the stabilizer by its arm, by pointer and by keys', async () => {
    const page = await show(sample());
    const scale = scaleOf(page);
    const before = page.placeOf('arm').y;
    const pointer = page.grip('arm').press().move(0, 20);
    await page.view.updateComplete;
    expect(page.placeOf('arm').y - before).to.be.closeTo(20, 1);
    pointer.release();
    expect(page.view.design!.stabilizer!.arm).to.be.closeTo(0.61 + 20 / scale, 0.001);
    page.slider('Stabilizer arm').focus();
    await userEvent.keyboard('{ArrowUp}');
    expect(page.view.design!.stabilizer!.arm).to.be.closeTo(0.605 + 20 / scale, 0.001);
  });

  it('stretches the stabilizer', async () => {
    const page = await show(sample());
    await page.drag('stabilizer-tip', 15, 0);
    expect(page.view.design!.stabilizer!.length.value).to.be.closeTo(0.36 + 30 / scaleOf(page), 0.004);
  });
});

describe('plan shapes', () => {
  it('leave out bare fuselage only, and keep places in order', () => {
    const { design } = sample();
    const wing = surfaceOf(design.wing);
    const tail = stabilizerSurface(design)!;
    const cut = cutOf(design, wing, tail, [0.14])!;
    expect(cut.from).to.be.above(0.12 + 0.75 * 0.115); // the strut's trailing edge
    expect(cut.to).to.be.below(0.61 - 0.25 * 0.054);
    const layout = layOutPlan(720, 900, reachOf(design, wing, tail), cut);
    const places = [0, cut.from, cut.from + 0.05, cut.to, 0.61, 0.65].map((x) => alongY(layout, x));
    expect([...places].sort((a, b) => a - b)).to.deep.equal(places);
    expect(places[5]! - places[4]!).to.be.closeTo(0.04 * 900, 1e-6);
    expect(cutOf({ ...design, stabilizer: null }, wing, null, [])).to.equal(null);
  });

  it('push labels apart in their own order', () => {
    expect(spacedLabels([30, 10, 12], 16)).to.deep.equal([42, 10, 26]);
  });
});
