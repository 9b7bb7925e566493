import { aTimeout, expect, fixture, html, waitUntil } from '@open-wc/testing';
import { describe, it } from 'vitest';
import type { FigureValue } from '../../src/components/figure-value.ts';
import { stretchesOf } from '../../src/components/ledger-bar.ts';
import '../../src/components/panels/hold-panel.ts';
import type { HoldPanel } from '../../src/components/panels/hold-panel.ts';
import '../../src/components/panels/ledger-panel.ts';
import type { LedgerPanel } from '../../src/components/panels/ledger-panel.ts';
import '../../src/components/panels/spread-panel.ts';
import type { SpreadPanel } from '../../src/components/panels/spread-panel.ts';
import { hardestStation, liftToMove } from '../../src/components/spread/spread-reading.ts';
import type { Report } from '../../src/solver/report.ts';
import { solve } from '../../src/solver/solve.ts';
import '../../web/tokens.css';
import { type Sample, sample } from '../support/sample-report.ts';

type Panel = HoldPanel | LedgerPanel | SpreadPanel;

async function show<P extends Panel>(tag: string, { design, report }: Sample, width = 320): Promise<P> {
  const box = await fixture(html`<div style="width: ${width}px"></div>`);
  const panel = document.createElement(tag) as P;
  Object.assign(panel, { design, report });
  box.append(panel);
  await panel.updateComplete;
  return panel;
}

const figures = (panel: Panel) => [...panel.shadowRoot!.querySelectorAll<FigureValue>('figure-value')];
const figure = (panel: Panel, label: string) => {
  const found = figures(panel).find((each) => each.label.includes(label));
  if (!found) throw new Error(`no figure "${label}"`);
  return found;
};
const textOf = (panel: Panel) => panel.shadowRoot!.textContent!.replace(/\s+/g, ' ');
const withLedger = (report: Report, changes: Partial<Report['ledger']>): Report => ({
  ...report,
  ledger: { ...report.ledger, ...changes },
});

// One suite for every panel that answers.
describe.each(['ledger-panel', 'hold-panel', 'spread-panel'])('%s', (tag) => {
  it('is accessible with figures, without, with a ghost, on a phone', async () => {
    const panel = await show(tag, sample());
    await expect(panel).to.be.accessible();
    panel.ghost = sample('flat');
    await panel.updateComplete;
    await expect(panel).to.be.accessible();
    const empty = await show(tag, { ...sample(), report: null as unknown as Report });
    await expect(empty).to.be.accessible();
    expect(textOf(empty)).to.contain('No figures yet.');
    const narrow = await show(tag, sample('downwind'), 288);
    await new Promise(requestAnimationFrame);
    expect(narrow.scrollWidth).to.be.at.most(288);
  });

  it('follows the unit system', async () => {
    const panel = await show(tag, sample());
    panel.units = 'imperial';
    await panel.updateComplete;
    await expect(panel).to.be.accessible();
  });

  it.each([
    ['no stabilizer', { stabilizer: null }],
    ['deep water', { 'brief.depth': null }],
    ['a flat wing', { 'wing.droop': { kind: 'flat' } }],
    ['tips bent upward', { 'wing.droop': { kind: 'arc', tipAngle: -15 } }],
  ])('answers for %s', async (_name, changes) => {
    const panel = await show(tag, sample('curved', changes));
    await expect(panel).to.be.accessible();
    expect(textOf(panel)).not.to.match(/NaN|undefined|null/);
  });
});

describe('ledger', () => {
  it('adds up: what the twin would lift, less what is met and leaned away, is carried', async () => {
    const panel = await show<LedgerPanel>('ledger-panel', sample());
    const value = (label: string) => figure(panel, label).value!;
    expect(value('twin would lift') - value('met at a smaller angle') - value('leaned away')).to.be.closeTo(
      value('the wing carries'),
      1e-6,
    );
    expect(value('Extra induced drag')).to.be.closeTo(value('the shorter span') + value('bent wake'), 1e-9);
    expect(value('The same in deep water') - value('Lost to the curve')).to.be.closeTo(
      value('Deeper tips give back'),
      1e-12,
    );
    expect(figure(panel, 'Pushed sideways').note).to.equal(
      'Port and starboard cancel; only what is leaned away is lost.',
    );
  });

  it('names a figure by its sign', async () => {
    const { design, report } = sample();
    const panel = await show<LedgerPanel>('ledger-panel', {
      design,
      report: withLedger(report, {
        metAtSmallerAngle: -5,
        lostFraction: -0.01,
        deepWater: { lostFraction: -0.02, flatLift: 900, verticalLift: 918 },
        sameLift: {
          ...report.ledger.sameLift,
          sameSpan: { ...report.ledger.sameLift.sameSpan, extraAlpha: 0.1, extraInducedDrag: 0.2 },
        },
      }),
    });
    expect(figure(panel, '+ met at a larger angle').value).to.equal(5);
    expect(figure(panel, 'Gained by the curve').value).to.equal(0.01);
    expect(figure(panel, 'Shallower tips cost').value).to.be.closeTo(0.01, 1e-12);
    expect(figure(panel, 'the bent wake costs').value).to.equal(0.2);
  });

  it('leaves depth out in deep water', async () => {
    const panel = await show<LedgerPanel>('ledger-panel', sample('curved', { 'brief.depth': null }));
    expect(figures(panel).some(({ label }) => label.includes('deep water'))).to.equal(false);
  });

  it('says so where the wing carries nothing upward', async () => {
    const { design } = sample();
    const panel = await show<LedgerPanel>('ledger-panel', { design, report: solve(design, { alpha: -8 }) });
    await expect(panel).to.be.accessible();
    expect(textOf(panel)).to.contain('nothing upward');
    expect(figure(panel, 'the curve').value).to.equal(null);
  });

  it('shows the working of every headline figure', async () => {
    const panel = await show<LedgerPanel>('ledger-panel', sample());
    for (const label of [
      'met at',
      'leaned away',
      'Lost to',
      'Extra angle',
      'Induced drag',
      'Span efficiency',
      'Least-drag',
    ]) {
      const working = figure(panel, label).working!();
      expect(working.numbers.length, label).to.be.above(1);
      expect([working.formula, working.source, working.trust].every(Boolean), label).to.equal(true);
    }
  });
});

describe('ledger bar', () => {
  const bar = (verticalLift: number, normalForce: number, flatLift: number) =>
    stretchesOf({ verticalLift, normalForce, flatLift } as Report['ledger']);

  it('shares out the twin’s lift, or the normal force where that is more', () => {
    expect(bar(900, 950, 1000)).to.deep.equal([
      { kind: 'carried', share: 0.9 },
      { kind: 'leaned', share: 0.05 },
      { kind: 'met', share: 0.05 },
    ]);
    expect(bar(900, 1000, 980)).to.deep.equal([
      { kind: 'carried', share: 0.88 },
      { kind: 'gained', share: 0.02 },
      { kind: 'leaned', share: 0.1 },
    ]);
  });

  it('always fills its length, and is left out where nothing is lifted', () => {
    for (const [z, n, flat] of [
      [900, 950, 1000],
      [100, 1000, 10],
      [882, 882, 882],
    ] as const) {
      const sum = bar(z, n, flat)!.reduce((total, { share }) => total + share, 0);
      expect(sum).to.be.closeTo(1, 1e-12);
    }
    expect(bar(-50, -60, -40)).to.equal(null);
    expect(bar(0, 0, 0)).to.equal(null);
  });
});

describe('hold', () => {
  it('multiplies out by hand: 1000 times roll term times yaw term', async () => {
    const { report, design } = sample();
    const panel = await show<HoldPanel>('hold-panel', { report, design });
    const terms = [...panel.shadowRoot!.querySelectorAll('.terms dd')].map((cell) =>
      Number(cell.textContent),
    );
    expect(1000 * terms[0]! * terms[1]!).to.be.closeTo(figure(panel, 'Hold index').value!, 0.02);
    expect(terms[2]).to.be.closeTo(report.geometry.stabilizer!.volume, 0.006);
  });

  it('says why there is none', async () => {
    const bare = await show<HoldPanel>('hold-panel', sample('curved', { stabilizer: null }));
    expect(figure(bare, 'Hold index').note).to.equal('No stabilizer: index 0.');
    expect(figure(bare, 'Hold index').value).to.equal(0);
    expect(figure(bare, 'Stabilizer volume').why).to.equal('no stabilizer');

    const flatTail = await show<HoldPanel>(
      'hold-panel',
      sample('curved', { 'stabilizer.droop': { kind: 'flat' } }),
    );
    expect(figure(flatTail, 'Hold index').note).to.contain('flat stabilizer');

    const { design } = sample();
    const down = await show<HoldPanel>('hold-panel', { design, report: solve(design, { alpha: -8 }) });
    expect(figure(down, 'Hold index').value).to.equal(null);
    expect(figure(down, 'Hold index').why).to.equal('none: no lift');
  });

  it('calls a ratio not resolved where its denominator is nearly nothing', async () => {
    const flat = sample('flat', { 'stabilizer.droop': { kind: 'flat' } });
    expect(Math.abs(flat.report.stability.foil.Cnr)).to.be.below(0.002);
    const panel = await show<HoldPanel>('hold-panel', flat);
    expect(figure(panel, 'Yaw from roll').value).to.equal(null);
    expect(figure(panel, 'Yaw from roll').why).to.equal('not resolved');
    const curved = await show<HoldPanel>('hold-panel', sample());
    expect(figure(curved, 'Yaw from roll').value).to.be.a('number');
  });

  it('keeps the neutral droop of a moment ago while it is found again, and marks it', async () => {
    const { design, report } = sample();
    const panel = await show<HoldPanel>('hold-panel', { design, report });
    const found = figure(panel, 'Neutral droop').value;
    expect(found).to.be.a('number');
    const quick = solve(design, { neutralDroop: false });
    Object.assign(panel, { report: quick, pending: true });
    await panel.updateComplete;
    expect(figure(panel, 'Neutral droop').value).to.equal(found);
    expect(figure(panel, 'Neutral droop').stale).to.equal(true);
    await expect(panel).to.be.accessible();
    panel.pending = false;
    await panel.updateComplete;
    expect(figure(panel, 'Neutral droop').value).to.equal(null);
    expect(figure(panel, 'Neutral droop').why).to.equal('none found up to 75°');
  });

  it('gives the balance in the shown unit, and warns of ranges known from aircraft', async () => {
    const panel = await show<HoldPanel>('hold-panel', sample());
    await figure(panel, 'Balance point').updateComplete;
    expect(figure(panel, 'Balance point').shadowRoot!.textContent).to.contain('140\u00a0mm');
    expect(figure(panel, 'static margin').note).to.contain('aircraft do not apply');
  });

  it('lists all nine derivatives of foil and craft on demand', async () => {
    const panel = await show<HoldPanel>('hold-panel', sample());
    panel.shadowRoot!.querySelector('details')!.open = true;
    await expect(panel).to.be.accessible();
    const table = panel.shadowRoot!.querySelector('derivatives-table')!;
    expect(table.shadowRoot!.querySelectorAll('td')).to.have.length(18);
    expect(table.shadowRoot!.textContent).to.contain('along the design’s own axes');
  });

  it('leaves the folded derivatives alone under a drag, and shows the last there were once unfolded', async () => {
    const panel = await show<HoldPanel>('hold-panel', sample('flat'));
    const table = panel.shadowRoot!.querySelector('derivatives-table')!;
    const cells = () => [...table.shadowRoot!.querySelectorAll('td')].map((cell) => cell.textContent).join();
    await waitUntil(() => !table.isUpdatePending);
    await aTimeout(100); // the observer is told that it is folded
    const [flat, { design, report }] = [cells(), sample('curved')];
    window.dispatchEvent(new PointerEvent('pointerdown'));
    Object.assign(panel, { design, report });
    await panel.updateComplete;
    await aTimeout(100);
    expect(table.stability).to.equal(report.stability);
    expect(cells()).to.equal(flat);
    panel.shadowRoot!.querySelector('details')!.open = true;
    table.scrollIntoView();
    await waitUntil(() => cells() !== flat);
    window.dispatchEvent(new PointerEvent('pointerup'));
  });
});

describe('spread', () => {
  it('draws wing, least-drag loading and stabilizer, in forces per span that add up to the lift', async () => {
    const { design, report } = sample();
    const panel = await show<SpreadPanel>('spread-panel', { design, report }, 900);
    const [lift, coefficients] = [...panel.shadowRoot!.querySelectorAll('line-chart')];
    expect(lift!.series.map(({ name }) => name)).to.deep.equal([
      'wing',
      'least drag for this curve',
      'stabilizer',
    ]);
    expect(coefficients!.series.map(({ name }) => name)).to.deep.equal(['wing', 'stabilizer']);
    const area = ({ x, y }: { x: readonly number[]; y: readonly number[] }) =>
      x.reduce(
        (sum, place, k) => sum + (k === 0 ? place * y[0]! : ((place - x[k - 1]!) * (y[k]! + y[k - 1]!)) / 2),
        0,
      ) / 1000; // N, from N/m over mm
    expect(2 * area(lift!.series[0]!)).to.be.closeTo(
      report.ledger.verticalLift,
      0.01 * report.ledger.verticalLift,
    );
    expect(2 * area(lift!.series[1]!)).to.be.closeTo(
      report.ledger.verticalLift,
      0.02 * report.ledger.verticalLift,
    );
  });

  it('says where the section works hardest', async () => {
    const panel = await show<SpreadPanel>('spread-panel', sample());
    expect(textOf(panel)).to.contain('works hardest at the root');
    const { report } = sample();
    const hardest = hardestStation(report.strips.wing)!;
    expect(Math.max(...report.strips.wing.map(({ cl }) => cl))).to.equal(hardest.cl);
    expect(hardestStation([])).to.equal(null);
  });

  it('measures how far the loading is from the best one', () => {
    const strip = { width: 1, droop: 0, circulation: 1, leastCirculation: 1 };
    const strips = (...loads: number[]) =>
      loads.map((circulation) => ({ ...strip, circulation })) as unknown as Report['strips']['wing'];
    expect(liftToMove(strips(1, 1))).to.equal(0);
    // Half a unit of two stands elsewhere: a quarter.
    expect(liftToMove(strips(1.5, 0.5))).to.equal(0.25);
  });

  it('adds the ghost, dashed', async () => {
    const panel = await show<SpreadPanel>('spread-panel', sample());
    panel.ghost = sample('flat');
    await panel.updateComplete;
    const [lift] = [...panel.shadowRoot!.querySelectorAll('line-chart')];
    const [wing, stabilizer] = lift!.series.slice(-2);
    expect(wing).to.include({ name: 'ghost: wing', colour: '--ghost' });
    expect(stabilizer).to.include({ name: 'ghost: stabilizer', colour: '--ghost' });
    expect(lift!.series.at(-1)!.dash).to.not.equal(undefined);
  });
});
