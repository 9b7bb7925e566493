import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { describe, it } from 'vitest';
import type { DesignKeepEvent, EditDetail } from '../../src/components/events.ts';
import type { LineChart } from '../../src/components/line-chart.ts';
import '../../src/components/panels/propose-panel.ts';
import type { ProposePanel } from '../../src/components/panels/propose-panel.ts';
import type { GuidedStart } from '../../src/components/propose/guided-start.ts';
import type { WantedFields } from '../../src/components/propose/wanted-fields.ts';
import { withValueAt } from '../../src/session/paths.ts';
import { Proposals } from '../../src/session/proposals.ts';
import { Studies } from '../../src/session/studies.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import type { Design } from '../../src/solver/design/document.ts';
import type { Wanted } from '../../src/solver/design/wanted.ts';
import { solve } from '../../src/solver/solve.ts';
import { WEIGHTS } from '../../src/solver/studies/propose/problem.ts';
import { tableOf } from '../../src/solver/studies/propose/proposal.ts';
import { benchOf, FINE, problemFor } from '../../src/solver/studies/propose/search.ts';
import demo from '../../web/demos/curved-race.json';
import { falseDifferences, ghostCells, numberIn } from '../support/ghost-cells.ts';

/** Studies on the page itself: no worker in a component test. */
const parts = {
  makeWorker: () => {
    throw new Error('none here');
  },
  loadStudies: async () => STUDIES,
};

const FEW: Wanted = { free: { length: { least: 0.7, most: 0.8 }, area: { least: 0.055, most: 0.07 } } };
const SLOW = { timeout: 100_000 };

/** The panel on a page that takes its edits. */
async function open(wanted: Wanted | null = FEW) {
  const proposals = new Proposals(parts, 1);
  const design = structuredClone(demo) as Design;
  if (wanted) design.wanted = wanted;
  const panel = await fixture<ProposePanel>(
    html`<propose-panel .design=${design} .studies=${new Studies(parts)} .proposals=${proposals}></propose-panel>`,
  );
  const edits: EditDetail[] = [];
  panel.addEventListener('design-edit', ({ detail }) => {
    edits.push(detail);
    panel.design = detail.changes.reduce(
      (whole, { path, value }) => withValueAt(whole, path, value),
      panel.design!,
    );
  });
  await waitUntil(() => panel.renderRoot.querySelector('wanted-fields'), 'the plan', SLOW);
  const fields = panel.renderRoot.querySelector<WantedFields>('wanted-fields')!;
  await fields.updateComplete;
  return { panel, proposals, edits, fields };
}

function press(root: ParentNode, name: string): void {
  const found = [...root.querySelectorAll('button')].find((each) => each.textContent!.trim() === name);
  if (!found) throw new Error(`no button "${name}"`);
  found.click();
}

const textOf = (root: Node) => root.textContent!.replaceAll(/\s+/g, ' ');

function tick(fields: WantedFields, label: string): void {
  const found = [...fields.renderRoot.querySelectorAll('label')].find(
    (each) => textOf(each).trim() === label,
  );
  if (!found) throw new Error(`no tick "${label}"`);
  found.querySelector('input')!.click();
}

describe('propose-panel', () => {
  it('looks, explains, and is taken by one click as one edit', SLOW, async () => {
    const limits = { holdIndex: { least: 3.4 }, takeOffSpeed: { most: 4.8 } };
    const { panel, proposals, edits } = await open({ ...FEW, limits });
    press(panel.renderRoot, 'Look for a wing');
    await waitUntil(() => proposals.proposal, 'the proposal', { timeout: 90_000 });
    await panel.updateComplete;
    const text = textOf(panel.renderRoot);
    expect(text).to.match(/[\d.]+.N less drag over the weighted speeds/);
    expect(text).to.contain('What binds, and what it costs:');
    expect(text).to.contain('The next cheapest change:');
    expect(proposals.preview).to.equal(proposals.best);
    await expect(panel).to.be.accessible();
    let kept: DesignKeepEvent | null = null;
    panel.addEventListener('design-keep', (event) => {
      kept = event;
    });
    press(panel.renderRoot, 'Keep beside');
    expect(kept!.detail).to.deep.equal({ design: proposals.best, name: `${demo.name}, proposal` });
    press(panel.renderRoot, 'Take it');
    expect(edits).to.have.length(1);
    expect(edits[0]).to.include({ label: 'the proposal', phase: 'settled' });
    expect(panel.design!.wing).to.equal(proposals.best!.wing);
    expect(panel.design!.brief).to.deep.equal(demo.brief);
    expect(proposals.preview).to.equal(null);
    await panel.updateComplete;
    expect(textOf(panel.renderRoot)).to.contain('Taken');
  });

  it('has the ghost on the front and under the proposal, weighed in this brief', SLOW, async () => {
    const { panel, proposals } = await open();
    const { design } = panel as { design: Design };
    const bench = benchOf(design, FINE);
    const wing = { ...design.wing, length: { ...design.wing.length, value: 0.74 } };
    const table = tableOf(design, { ...design, wing }, problemFor(design, 0, bench), bench);
    proposals.asked = { design, seed: 1 };
    proposals.proposal = {
      ...{ outcome: 'found', design: { ...design, wing }, variant: 0, weights: WEIGHTS, table, binding: [] },
      ...{ easings: [], seed: 1, evaluations: 1 },
    };
    const point = (holdIndex: number, drag: number) => ({ holdIndex, drag, x: new Float64Array(), design });
    proposals.front = { points: [point(1, 60), point(8, 70)], drawn: null, over: null };
    proposals.frontDesign = design;
    // A rider of twice the weight: the ghost is put under this brief's.
    const brief = { ...design.brief, allUpMass: 2 * design.brief.allUpMass };
    panel.ghost = { design: { ...design, brief }, report: null };
    proposals.show(true);
    const chart = () => panel.renderRoot.querySelector<LineChart>('line-chart');
    const mark = () => chart()?.series.find(({ name }) => name === 'ghost');
    await waitUntil(() => mark() && ghostCells(panel.shadowRoot!).length > 0, 'the ghost', SLOW);
    const { holdIndex } = solve(design).stability;
    expect((mark()!.x[0]! + mark()!.x[1]!) / 2 / holdIndex!).to.be.closeTo(1, 0.03); // on the search's coarse foil
    // It is as wide on a front that is hardly any.
    proposals.front = { points: [point(3.6, 60), point(3.61, 61)], drawn: null, over: null };
    proposals.show(true);
    await waitUntil(() => chart()?.series[0]?.x[0] === 3.6 && mark(), 'it on the other front', SLOW);
    expect((mark()!.x[1]! - mark()!.x[0]!) / holdIndex!).to.be.greaterThan(0.02);
    expect(textOf(panel.renderRoot)).to.match(
      /In this brief the ghost, [\d.]+ at [\d.]+.N, (pays|lies|holds) /,
    );
    const cells = ghostCells(panel.shadowRoot!);
    const drag = cells.find(({ row }) => row === 'Drag at cruise')!;
    expect(numberIn(drag.ghost)!.value).to.be.closeTo(table.drag.cruise.start!, 0.06);
    expect(cells.find(({ row }) => row === 'Wing length')!.difference).to.contain('mm');
    expect(falseDifferences(cells)).to.deep.equal([]);
    await expect(panel).to.be.accessible();
    panel.ghost = null;
    await panel.updateComplete;
    expect(ghostCells(panel.shadowRoot!)).to.have.length(0);
    expect(mark()).to.equal(undefined);
  });

  it('names the limits that clash', SLOW, async () => {
    const { panel, proposals } = await open({
      ...FEW,
      limits: { holdIndex: { least: 30 }, span: { most: 0.72 } },
    });
    press(panel.renderRoot, 'Look for a wing');
    await waitUntil(() => proposals.proposal, 'the answer', { timeout: 90_000 });
    await panel.updateComplete;
    const trouble = panel.renderRoot.querySelector('.trouble')!;
    expect(textOf(trouble)).to.contain('No wing within the ranges holds all of these at once:');
    expect(textOf(trouble)).to.contain('hold index at least 30');
    expect(
      [...panel.renderRoot.querySelectorAll('button')].some((each) => textOf(each).includes('Take it')),
    ).to.equal(false);
  });

  it('is cancelled by the user', SLOW, async () => {
    const { panel, proposals } = await open();
    press(panel.renderRoot, 'Look for a wing');
    await waitUntil(() => panel.renderRoot.querySelector('progress'), 'progress', { timeout: 30_000 });
    press(panel.renderRoot, 'Cancel');
    await panel.updateComplete;
    expect(proposals.activity).to.equal('idle');
    expect(panel.renderRoot.querySelector('progress')).to.equal(null);
  });

  it('writes what is ticked into the document, the limits that held silently with it', SLOW, async () => {
    const { panel, edits, fields } = await open(null);
    tick(fields, 'Span, tip to tip, at most');
    const limits = panel.design!.wanted!.limits!;
    expect(limits.span!.most).to.be.closeTo(0.715, 0.001);
    expect(limits.holdIndex!.least).to.be.closeTo(3.66, 0.01);
    await waitUntil(
      () => fields.plan!.limits.some(({ name, held }) => name === 'span' && held !== null),
      'it',
      SLOW,
    );
    await fields.updateComplete;
    tick(fields, 'Wing droop');
    expect(panel.design!.wanted!.free).to.not.have.property('droop');
    expect(panel.design!.wanted!.free).to.have.property('area');
    expect(edits.map(({ label }) => label)).to.deep.equal(['limit of span, tip to tip', 'wing droop held']);
  });

  it('tries laws side by side, each ticked kind in the document', SLOW, async () => {
    const { panel, fields, edits } = await open();
    const laws = fields.renderRoot.querySelector('tried-laws')!;
    const box = (kind: string) =>
      [...laws.renderRoot.querySelectorAll('label')].find((each) => textOf(each).trim() === kind)!;
    await expect(laws).to.be.accessible();
    const before = laws.starts;
    for (const kind of ['arc', 'late', 'elliptic', 'arc']) {
      box(kind).click();
      await panel.updateComplete;
      await fields.updateComplete;
      await laws.updateComplete;
    }
    expect(panel.design!.wanted!.laws).to.deep.equal({ droop: ['late'], chord: ['elliptic'] });
    box('arc').click();
    await waitUntil(() => laws.starts === 2 * before, 'the plan of two pairs', SLOW);
    expect(edits[0]).to.include({ label: 'droop of the wing to try', phase: 'settled' });
  });

  it('begins with a brief from five questions, as one edit', SLOW, async () => {
    const { panel, proposals, edits } = await open();
    const guided = panel.renderRoot.querySelector<GuidedStart>('guided-start')!;
    press(guided.renderRoot, 'Downwind wing');
    await guided.updateComplete;
    expect(guided.renderRoot.querySelectorAll('number-field, choice-field')).to.have.length(5);
    await expect(guided).to.be.accessible();
    const mass = guided.renderRoot.querySelector('number-field')!;
    const input = mass.renderRoot.querySelector('input')!;
    input.value = '72';
    input.dispatchEvent(new Event('input', { bubbles: true }));
    input.dispatchEvent(new Event('change', { bubbles: true }));
    await waitUntil(() => mass.value === 72, 'the mass', { timeout: 20_000 });
    expect(edits).to.have.length(0);
    press(guided.renderRoot, 'Look for this wing');
    expect(edits).to.have.length(1);
    expect(panel.design!.brief.allUpMass).to.equal(72);
    expect(panel.design!.wanted!.limits).to.have.property('holdIndex');
    await waitUntil(() => proposals.activity === 'searching', 'the search', { timeout: 20_000 });
    proposals.cancel();
  });
});
