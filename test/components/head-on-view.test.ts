import { expect, fixture, html } from '@open-wc/testing';
import { describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/components/head-on-view.ts';
import '../../web/tokens.css';
import {
  arrowScale,
  arrowsOf,
  layOutHeadOn,
  silhouette,
  stationForces,
  yOf,
} from '../../src/components/head-on-shapes.ts';
import type { HeadOnView } from '../../src/components/head-on-view.ts';
import type { DroopLaw } from '../../src/solver/design/document.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { labelFaults } from '../support/labels.ts';
import { type Sample, sample } from '../support/sample-report.ts';
import { ViewPage } from '../support/view-page.ts';

const show = async ({ design, report }: Sample, refuse?: () => string | null, width = 720) => {
  const box = await fixture(
    html`<div style="width: ${width}px"><head-on-view .design=${design} .report=${report}></head-on-view></div>`,
  );
  const view = box.querySelector<HeadOnView>('head-on-view')!;
  await new Promise(requestAnimationFrame);
  await view.updateComplete;
  return new ViewPage(view, refuse);
};
const textOf = (view: HeadOnView) => view.shadowRoot!.textContent!.replace(/\s+/g, ' ');
const droopOf = (page: ViewPage<HeadOnView>) => page.view.design!.wing.droop;
const surfaceIn = (page: ViewPage<HeadOnView>) => surfaceOf(page.view.design!.wing);

const SIZE = { width: 720, scale: 900, top: 0, low: 0.08, depth: 0.55, strutLength: 0.95 };

describe('head-on shapes', () => {
  it('draw the depth to scale where it fits, else break the strut', () => {
    const shallow = layOutHeadOn({ ...SIZE, depth: 0.18 });
    expect(shallow.breakY).to.equal(null);
    expect(shallow.originY - shallow.surfaceY!).to.be.closeTo(0.18 * 900, 0.5);
    const deep = layOutHeadOn(SIZE);
    expect(deep.breakY).to.be.a('number');
    expect(deep.originY - deep.surfaceY!).to.be.below(0.55 * 900);
    const bottomless = layOutHeadOn({ ...SIZE, depth: null });
    expect(bottomless.surfaceY).to.equal(null);
  });

  it('lean each arrow with the normal, and show what is leaned away to the same scale', () => {
    const { design } = sample('curved', { 'wing.droop': { kind: 'vee', tipAngle: 30 } });
    const surface = surfaceOf(design.wing);
    const layout = layOutHeadOn(SIZE);
    const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const [starboard, port] = arrowsOf(
      [{ eta: 0.5, up: 1000 * cos, aside: 1000 * sin, normal: 1000 }],
      surface,
      layout,
      0.1,
    );
    // For a plain vee the force N leans by Gamma and N (1 - cos Gamma) is leaned away (plane trigonometry).
    expect(starboard!.y - starboard!.tipY).to.be.closeTo(100 * cos, 1e-9);
    expect(starboard!.tipX - starboard!.x).to.be.closeTo(100 * sin, 1e-9);
    expect(starboard!.tipY - starboard!.fullY).to.be.closeTo(100 * (1 - cos), 1e-9);
    expect(port!.x + starboard!.x).to.be.closeTo(720, 1e-9);
    expect(port!.tipX + starboard!.tipX).to.be.closeTo(720, 1e-9);
  });

  it('take stations that add up to the forces of the ledger', () => {
    const { report } = sample();
    const stations = stationForces(report.strips.wing, 200);
    const width = report.geometry.wing.unrolledLength / 200;
    const sum = (read: (station: (typeof stations)[0]) => number) =>
      stations.reduce((total, station) => total + read(station) * width, 0);
    expect(sum(({ up }) => up)).to.be.closeTo(report.ledger.verticalLift, 0.01 * report.ledger.verticalLift);
    expect(sum(({ aside }) => aside)).to.be.closeTo(
      report.ledger.pushedSideways,
      0.02 * report.ledger.pushedSideways,
    );
    expect(sum(({ normal, up }) => normal - up)).to.be.closeTo(
      report.ledger.leanedAway,
      0.03 * report.ledger.leanedAway,
    );
  });

  it('draw the wing as thick as its section', () => {
    const symmetric = { kind: 'naca4', code: '0012' } as const;
    const { design } = sample('flat', { 'wing.section': { root: symmetric, tip: symmetric } });
    const layout = layOutHeadOn(SIZE);
    const path = silhouette(surfaceOf(design.wing), design.wing.section, layout);
    const heights = [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((match) => Number(match[2]));
    // NACA 0012 is 12 % thick by definition (NACA Report 460).
    expect(Math.max(...heights) - Math.min(...heights)).to.be.closeTo(0.12 * 0.104 * 900, 0.15);
    expect((Math.max(...heights) + Math.min(...heights)) / 2).to.be.closeTo(yOf(layout, 0), 0.15);
  });

  it('scale arrows in steps, so that a heavier rider has longer ones', () => {
    expect(arrowScale(800, 0.7, 130)).to.equal(arrowScale(790, 0.7, 130));
    expect(arrowScale(1200, 0.7, 130)).to.be.below(arrowScale(800, 0.7, 130));
  });
});

describe('head-on view', () => {
  it('is accessible and says in words and figures what the marks mean', async () => {
    const { view } = await show(sample());
    await expect(view).to.be.accessible();
    const { ledger } = view.report!;
    const text = textOf(view);
    for (const [name, force] of [
      ['carries the rider', ledger.verticalLift],
      ['pushed sideways', ledger.pushedSideways],
      ['leaned away', ledger.leanedAway],
    ] as const)
      expect(text).to.match(new RegExp(`${name} ${Number(force.toPrecision(3))}.N`));
    expect(text).to.contain('Port and starboard cancel; only what is leaned away is lost.');
    expect(text).to.contain('tip drop 82.5 mm');
    const summary = view.shadowRoot!.querySelector('[role="img"]')!.getAttribute('aria-label');
    expect(summary).to.contain('below the surface').and.to.contain('is leaned away');
  });

  it('tells the three parts of a force apart by more than colour', async () => {
    const { view } = await show(sample());
    const looks = (name: string) => getComputedStyle(view.shadowRoot!.querySelector(`svg[role] .${name}`)!);
    expect(looks('carry').strokeDasharray).to.equal('none');
    expect(looks('thrown').strokeDasharray).not.to.equal('none');
    expect(looks('lean').fill).to.contain('lean-hatch');
    const colours = ['carry', 'thrown', 'lean'].map((name) => looks(name).stroke);
    expect(new Set(colours).size).to.equal(3);
  });

  it.each([
    ['deep water', { 'brief.depth': null }, 'deep water'],
    ['no stabilizer', { stabilizer: null }, 'carries the rider'],
    ['no strut and no fuselage', { strut: null, fuselage: null }, 'carries the rider'],
    ['a wing bent upward', { 'wing.droop': { kind: 'arc', tipAngle: -12 } }, 'tip drop \u2212'],
    ['a flat wing', { 'wing.droop': { kind: 'flat' } }, 'flat'],
  ])('draws %s', async (_name, changes, text) => {
    const { view } = await show(sample('curved', changes));
    await expect(view).to.be.accessible();
    expect(textOf(view)).to.contain(text);
  });

  it.each([
    ['a short span beside a wide stabilizer', { 'stabilizer.length.value': 3 }],
    ['a wing bent to a right angle', { 'wing.droop': { kind: 'arc', tipAngle: 90 } }],
    ['one bent up as far', { 'wing.droop': { kind: 'arc', tipAngle: -85 } }],
    ['a narrow vee', { 'wing.droop': { kind: 'vee', tipAngle: 80 } }],
  ])('tells the tip’s drop and angle apart on %s', async (_name, changes) => {
    for (const width of [720, 358]) {
      const { view } = await show(sample('curved', { 'brief.depth': null, ...changes }), undefined, width);
      expect(labelFaults(view)).to.deep.equal([]);
    }
  });

  it('draws the wing before the figures come, and the ghost behind it', async () => {
    const { view } = await show(sample());
    view.report = null;
    view.ghost = sample('flat');
    await view.updateComplete;
    await expect(view).to.be.accessible();
    expect(view.shadowRoot!.querySelectorAll('svg[role] .ghost')).to.have.length(2);
    expect(view.shadowRoot!.querySelector('svg[role] .carry')).to.equal(null);
  });
});

describe('head-on view: the tip', () => {
  it('follows the pointer down, the length staying as it is', async () => {
    const page = await show(sample());
    const before = page.placeOf('tip');
    await page.drag('tip', 3, 40);
    expect(page.placeOf('tip').y - before.y).to.be.closeTo(40, 1);
    expect(droopOf(page).kind).to.equal('arc');
    expect(page.view.design!.wing.length).to.deep.equal({ kind: 'unrolled', value: 0.74 });
    expect(page.phases).to.deep.equal(['live', 'live', 'live', 'live', 'settled']);
    expect(new Set(page.edits.map(({ label }) => label))).to.deep.equal(new Set(['tip droop']));
  });

  it('follows the pointer outward, the droop staying as it is', async () => {
    const page = await show(sample());
    const before = page.placeOf('tip');
    const pointer = page.grip('tip').press().move(10, 2).move(14, 2);
    await page.view.updateComplete;
    expect(droopOf(page)).to.deep.equal({ kind: 'arc', tipAngle: 26 });
    expect(page.placeOf('tip').x - before.x).to.be.closeTo(24, 1);
    pointer.release();
    expect(page.view.design!.wing.length.value).to.be.above(0.74);
    expect(page.edits.at(-1)!.label).to.equal('wing span');
  });

  it('takes both when the pointer strays far from the way the tip goes by itself', async () => {
    const page = await show(sample());
    await page.drag('tip', 60, 70);
    expect(surfaceIn(page).tipDrop).to.be.above(0.12);
    expect(page.view.design!.wing.length.value).to.be.above(0.75);
  });

  it('gives the length back when the pointer returns within the same drag', async () => {
    const page = await show(sample());
    const pointer = page.grip('tip').press().move(0, 20).move(70, 10);
    expect(page.view.design!.wing.length.value).to.be.above(0.75);
    pointer.move(-70, 5).release();
    expect(page.view.design!.wing.length).to.deep.equal({ kind: 'unrolled', value: 0.74 });
  });

  it('is held by either side', async () => {
    const page = await show(sample());
    await page.drag('tip', -24, 2, 'port');
    expect(page.view.design!.wing.length.value).to.be.above(0.74);
  });

  it('bends a flat wing into an arc, and upward no further than the surface', async () => {
    const page = await show(sample('flat', { 'brief.depth': 0.1 }));
    await page.drag('tip', 0, 40);
    expect(droopOf(page).kind).to.equal('arc');
    await page.drag('tip', 0, -400);
    expect(surfaceIn(page).tipDrop).to.be.closeTo(-0.09, 0.001);
  });

  it('moves by keys in the measure the document uses', async () => {
    const page = await show(sample());
    page.slider('Wing tip droop').focus();
    await userEvent.keyboard('{ArrowDown}');
    expect(droopOf(page)).to.deep.equal({ kind: 'arc', tipAngle: 26.5 });
    page.slider('Wing span').focus();
    await userEvent.keyboard('{ArrowRight}');
    expect(page.view.design!.wing.length).to.deep.equal({ kind: 'unrolled', value: 0.741 });

    const byDrop = await show(sample('curved', { 'wing.droop': { kind: 'arc', tipDrop: 0.08 } }));
    byDrop.slider('Wing tip droop').focus();
    await userEvent.keyboard('{Shift>}{ArrowDown}{/Shift}');
    expect(droopOf(byDrop)).to.deep.equal({ kind: 'arc', tipDrop: 0.09 });
  });

  it('goes back where it began on Escape', async () => {
    const page = await show(sample());
    page.grip('tip').press().move(0, 30);
    await page.view.updateComplete;
    expect(surfaceIn(page).tipDrop).to.be.above(0.1);
    await userEvent.keyboard('{Escape}');
    expect(page.phases).to.deep.equal(['live', 'cancelled']);
    expect(droopOf(page)).to.deep.equal({ kind: 'arc', tipAngle: 26 });
  });

  it('does not rescale the drawing while it moves', async () => {
    const page = await show(sample());
    const scaleNow = () => {
      const box = page.view.shadowRoot!.querySelector('svg[role]')!.getBoundingClientRect();
      return (page.placeOf('tip').x - box.x - box.width / 2) / surfaceIn(page).halfSpan;
    };
    const before = scaleNow();
    const pointer = page.grip('tip').press();
    pointer.move(60, 0);
    await page.view.updateComplete;
    expect(scaleNow()).to.be.closeTo(before, 0.5);
    pointer.release();
    await page.view.updateComplete;
    expect(scaleNow()).to.be.below(before);
  });

  it('shows why the page does not take an edit', async () => {
    const page = await show(sample(), () => 'wing: found a station above the surface');
    await page.drag('tip', 0, 20);
    expect(droopOf(page)).to.deep.equal({ kind: 'arc', tipAngle: 26 });
    expect(page.view.shadowRoot!.querySelector('.refusal')!.textContent).to.equal(
      'Found a station above the surface',
    );
    await expect(page.view).to.be.accessible();
  });
});

describe('head-on view: the shape of the curve', () => {
  const SHAPES: [string, DroopLaw, string[]][] = [
    ['flat', { kind: 'flat' }, ['Droop, bent from the middle']],
    ['vee', { kind: 'vee', tipAngle: 12 }, ['Droop shape']],
    ['arc', { kind: 'arc', tipAngle: 26 }, ['Droop shape']],
    ['late', { kind: 'late', tipAngle: 40, from: 0.4, power: 1.5 }, ['Droop begins at', 'Droop shape']],
    [
      'gull',
      { kind: 'gull', rootAngle: 8, tipAngle: 25, knee: 0.35 },
      ['Gull rise at the root', 'Gull knee'],
    ],
    [
      'points',
      {
        kind: 'points',
        at: [
          [0, 0],
          [0.5, 8],
          [1, 30],
        ],
      },
      ['Droop at 50 %'],
    ],
    ['formula', { kind: 'formula', expression: '26 * eta^2' }, []],
  ];

  it.each(SHAPES)('has handles that suit the law: %s', async (_name, droop, names) => {
    const page = await show(sample('curved', { 'wing.droop': droop }));
    await expect(page.view).to.be.accessible();
    const others = page.sliderNames.filter((name) => !/^Wing (tip droop|span)/.test(name));
    expect(others).to.have.length(names.length);
    names.forEach((name, k) => {
      expect(others[k]).to.contain(name);
    });
    for (const name of names) {
      const before = droopOf(page);
      page.slider(name).focus();
      await userEvent.keyboard('{ArrowRight}');
      expect(droopOf(page), name).not.to.deep.equal(before);
      await page.view.updateComplete;
    }
  });

  it('follows the pointer in the middle, the tip staying where it is', async () => {
    const page = await show(sample());
    const [middle, tip] = [page.placeOf('shape'), page.placeOf('tip')];
    await page.drag('shape', 0, -9);
    expect(droopOf(page).kind).to.equal('late');
    expect(page.placeOf('shape').y - middle.y).to.be.closeTo(-9, 1);
    expect(page.placeOf('tip').y).to.be.closeTo(tip.y, 1);
    await page.drag('shape', 0, 9);
    expect(page.placeOf('shape').y).to.be.closeTo(middle.y, 1.5);
    await page.drag('shape', 0, 60);
    expect(droopOf(page).kind).to.equal('vee');
    expect(page.edits.every(({ label }) => label === 'droop shape')).to.equal(true);
  });

  it('moves the knee of a gull both ways', async () => {
    const page = await show(
      sample('curved', { 'wing.droop': { kind: 'gull', rootAngle: 8, tipAngle: 25, knee: 0.35 } }),
    );
    await page.drag('shape', 30, -6);
    const law = droopOf(page);
    if (law.kind !== 'gull') throw new Error('no longer a gull');
    expect(law.knee).to.be.above(0.4);
    expect(law.rootAngle).to.be.above(8);
    expect(law.tipAngle).to.equal(25);
  });

  it('moves the place where a late droop begins', async () => {
    const page = await show(sample('downwind'));
    await page.drag('begin', 40, 0);
    const law = droopOf(page);
    if (law.kind !== 'late') throw new Error('no longer late');
    expect(law.from).to.be.above(0.45);
    expect(page.edits.at(-1)!.label).to.equal('where the droop begins');
  });
});
