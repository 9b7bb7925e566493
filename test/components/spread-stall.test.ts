/** The part of Spread that follows the sections to stall; and the marks of strips beyond their usable lift. */
import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { describe, it } from 'vitest';
import '../../src/components/panels/spread-panel.ts';
import type { SpreadPanel } from '../../src/components/panels/spread-panel.ts';
import { leastMargin, runsBeyond } from '../../src/components/spread/spread-reading.ts';
import '../../src/components/spread/stall-section.ts';
import type { SpreadStall } from '../../src/components/spread/stall-section.ts';
import { Studies } from '../../src/session/studies.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { solve } from '../../src/solver/solve.ts';
import { stallStudy } from '../../src/solver/studies/stall.ts';
import { finish } from '../../src/solver/studies/study.ts';
import '../../web/tokens.css';
import demo from '../../web/demos/curved-race.json';

const WAIT = { timeout: 60_000 };
const SLOW = { timeout: 90_000 };
const design = demo as unknown as Design;

const onPage = (stall: unknown = stallStudy) =>
  new Studies({
    makeWorker: () => {
      throw new Error('none here');
    },
    loadStudies: async () => ({ stall }) as never,
  });

async function open(changes: Partial<Design> = {}, width = 900, studies = onPage()) {
  const box = await fixture(html`<div style="width: ${width}px"></div>`);
  const part = document.createElement('spread-stall');
  Object.assign(part, { design: { ...design, ...changes }, studies });
  box.append(part);
  await part.updateComplete;
  return part;
}
const answered = (part: SpreadStall) =>
  waitUntil(() => part.renderRoot.querySelector('line-chart'), 'an answer', WAIT);
const text = (part: { renderRoot: { textContent: string | null } }) =>
  part.renderRoot.textContent!.replaceAll(/\s+/g, ' ');
const figure = (part: SpreadStall, label: string) =>
  [...part.renderRoot.querySelectorAll('figure-value')].find((each) => each.label.includes(label))!;

describe('spread-stall', () => {
  it(
    'says where, when and at what speed, as the study has it; every figure shows its working',
    SLOW,
    async () => {
      const part = await open();
      await answered(part);
      await expect(part).to.be.accessible();
      const study = finish(stallStudy(design));
      expect(text(part)).to.match(
        /first passes its usable lift at the root, at 1\d\.\d° and [\d.]+.kn: [\d.]+.kn below take-off/,
      );
      expect(figure(part, 'Usable lift').value).to.equal(study.usable!.CLwing);
      expect(figure(part, 'Greatest lift').value).to.equal(study.greatest!.CLwing);
      expect(figure(part, 'Speed at usable lift').value).to.equal(study.usable!.speed);
      const speed = figure(part, 'Speed at usable lift');
      speed.shadowRoot!.querySelector('summary')!.click();
      await waitUntil(() => speed.shadowRoot!.textContent!.includes('W, carried'), 'its working');
      await expect(part).to.be.accessible();
    },
  );

  it('draws strips against their sections at several angles, and lists how it spreads', SLOW, async () => {
    const part = await open();
    await answered(part);
    const [span] = [...part.renderRoot.querySelectorAll('line-chart')];
    const [usable, greatest, first, ...later] = span!.series;
    expect([usable!.name, greatest!.name]).to.deep.equal(['usable', 'greatest of the section']);
    expect(later.length).to.be.greaterThan(1);
    const overUsable = (line: { y: readonly number[] }) =>
      line.y.filter((cl, k) => cl > usable!.y[k]!).length;
    expect(overUsable(first!)).to.be.lessThan(overUsable(later.at(-2)!)); // it spreads
    const table = [...part.renderRoot.querySelectorAll('table')].at(-1)!;
    const last = (column: number) =>
      [...table.tBodies[0]!.rows].map((row) => row.cells[column]!.textContent!.trim());
    expect(last(5)).to.include('converged');
    expect(last(3)[0]).to.equal('0\u00a0%');
    expect(last(4)[0]).to.equal('–');
    expect(last(4).some((cell) => /^\d+ to \d+\u00a0mm/.test(cell))).to.equal(true);
    expect(Number.parseInt(last(3).filter(Boolean).at(-1)!, 10)).to.be.greaterThan(30);
    const button = [...span!.renderRoot.querySelectorAll('button')].find((each) =>
      each.textContent!.includes('As a table'),
    )!;
    button.click();
    await span!.updateComplete;
    expect(span!.renderRoot.querySelectorAll('tbody tr')).to.have.length(usable!.x.length);
  });

  it('says which angles did not converge', SLOW, async () => {
    const part = await open();
    await answered(part);
    const astray = finish(stallStudy(design)).points.filter(({ isSettled }) => !isSettled);
    expect(astray.length).to.be.greaterThan(0);
    expect(text(part)).to.contain('they did not converge at');
    expect(text(part)).to.contain('not converged');
  });

  it('warns where take-off asks for more than is counted on', SLOW, async () => {
    const speeds = { ...design.brief.speeds, takeOff: 3 };
    const part = await open({ brief: { ...design.brief, speeds } });
    await answered(part);
    expect(part.renderRoot.querySelector('.trouble')!.textContent).to.contain('is slower than');
  });

  it('hands on why there is no answer', async () => {
    const part = await open(
      {},
      900,
      onPage(() => {
        throw new Error('brief.depth: found 2 m');
      }),
    );
    await waitUntil(() => part.renderRoot.querySelector('.trouble'), 'the message');
    expect(text(part)).to.contain('brief.depth: found 2 m');
    await expect(part).to.be.accessible();
  });

  it('fits a phone', SLOW, async () => {
    const part = await open({}, 288);
    await answered(part);
    await new Promise(requestAnimationFrame);
    expect(part.scrollWidth).to.be.at.most(288);
  });
});

describe('strips beyond their usable lift', () => {
  const show = async (alpha: number) => {
    const report = solve(design, { alpha, neutralDroop: false });
    const panel = await fixture<SpreadPanel>(
      html`<spread-panel .design=${design} .report=${report}></spread-panel>`,
    );
    return { panel, report };
  };

  it('are marked in the chart and named', async () => {
    const { panel, report } = await show(13);
    const beyond = runsBeyond(report.strips.wing);
    expect(beyond.length).to.be.greaterThan(0);
    const chart = [...panel.renderRoot.querySelectorAll('line-chart')][1]!;
    expect(chart.series.map(({ name }) => name)).to.include.members(['usable, wing', 'beyond usable']);
    expect(text(panel)).to.contain('Beyond the usable lift of the section here');
    await expect(panel).to.be.accessible();
  });

  it('are none at cruise, where the distance to it is told', async () => {
    const { panel, report } = await show(2);
    expect(runsBeyond(report.strips.wing)).to.deep.equal([]);
    expect(leastMargin(report.strips.wing).margin).to.be.closeTo(report.sections.stallMargin, 1e-12);
    const chart = [...panel.renderRoot.querySelectorAll('line-chart')][1]!;
    expect(chart.series.map(({ name }) => name)).to.deep.equal(['wing', 'stabilizer']);
    expect(text(panel)).to.contain('Closest to its usable lift');
  });

  it('part into runs', () => {
    const strips = [1, 3, 3, 1, 3].map((cl) => ({ cl, usableCl: 2 })) as never;
    expect(runsBeyond(strips).map(({ length }) => length)).to.deep.equal([2, 1]);
  });
});
