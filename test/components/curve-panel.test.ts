import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { beforeEach, describe, it } from 'vitest';
import type { PlotGrid } from '../../src/components/curve/plot-grid.ts';
import type { SmallPlot } from '../../src/components/curve/small-plot.ts';
import type { DesignEditEvent } from '../../src/components/events.ts';
import '../../src/components/panels/curve-panel.ts';
import type { CurvePanel } from '../../src/components/panels/curve-panel.ts';
import { withValueAt } from '../../src/session/paths.ts';
import { Studies } from '../../src/session/studies.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import curved from '../../web/demos/curved-race.json';
import flat from '../../web/demos/flat-race.json';

const SLOW = { timeout: 60_000 };

/** Studies on the page itself: no worker in a component test. */
const onPage = () =>
  new Studies({
    makeWorker: () => {
      throw new Error('none here');
    },
    loadStudies: async () => STUDIES,
  });

async function open(design = flat as Design): Promise<{ panel: CurvePanel; edits: DesignEditEvent[] }> {
  const panel = await fixture<CurvePanel>(
    html`<curve-panel .design=${design} .studies=${onPage()}></curve-panel>`,
  );
  const edits: DesignEditEvent[] = [];
  panel.addEventListener('design-edit', (event) => {
    edits.push(event);
    for (const { path, value } of event.detail.changes)
      panel.design = withValueAt(panel.design!, path, value);
  });
  await settled(panel);
  return { panel, edits };
}

const settled = (panel: CurvePanel) =>
  waitUntil(() => text(panel).includes('±'), 'the sweep and its band', { timeout: 50_000 });

const text = (panel: CurvePanel) => panel.renderRoot.textContent!.replaceAll(/\s+/g, ' ');
const grids = (panel: CurvePanel) => [...panel.renderRoot.querySelectorAll<PlotGrid>('plot-grid')];
const button = (grid: PlotGrid, name: RegExp) =>
  [...grid.renderRoot.querySelectorAll('button')].find((each) => name.test(each.textContent!))!;

beforeEach(() => localStorage.clear()); // the user's price is kept there

describe('curve-panel', () => {
  it('is accessible, and shows every figure that droop moves, each with its unit', SLOW, async () => {
    const { panel } = await open();
    await expect(panel).to.be.accessible();
    const headings = [...grids(panel)[0]!.renderRoot.querySelectorAll<SmallPlot>('small-plot')].map(
      ({ cell }) => [cell!.name, cell!.unit],
    );
    expect(headings).to.deep.include(['Lost lift at the same angle', '%']);
    expect(headings).to.deep.include(['Extra induced drag', 'N']);
    expect(headings).to.deep.include(['Extra total drag', 'N']);
    expect(headings).to.deep.include(['Extra angle, same lift', '°']);
    expect(headings.map(([name]) => name)).to.include.members(['Hold index', 'Effective droop']);
    expect(text(panel)).to.contain('no corner');
  });

  it(
    'one press bends the wing to where the price passes the user’s own, as one settled edit',
    SLOW,
    async () => {
      const { panel, edits } = await open();
      const said = Number(/At ([\d.]+)°, one more point of hold index costs 1.00/.exec(text(panel))![1]);
      button(grids(panel)[1]!, /your price/).click();
      expect(edits).to.have.length(1);
      const { changes, phase, label } = edits[0]!.detail;
      expect([phase, label]).to.deep.equal(['settled', 'wing droop']);
      expect(changes.map(({ path }) => path)).to.deep.equal(['wing.droop']); // the unrolled length is the document's own
      const { droop } = panel.design!.wing;
      expect(droop.kind).to.equal('arc');
      expect((droop as { tipAngle: number }).tipAngle).to.be.closeTo(said, 0.06);
    },
  );

  it('a higher price is passed at more droop', SLOW, async () => {
    const { panel } = await open();
    const placeOf = () => Number(/At ([\d.]+)°, one more point/.exec(text(panel))?.[1]);
    const before = placeOf();
    const field = [...panel.renderRoot.querySelectorAll('number-field')].find(({ label }) =>
      label.startsWith('Most you would pay'),
    )!;
    const input = field.renderRoot.querySelector('input')!;
    input.value = '1.3';
    input.dispatchEvent(new Event('input'));
    input.dispatchEvent(new Event('change'));
    await waitUntil(() => placeOf() > before, 'the place moves', { timeout: 50_000 });
  });

  it('a click on a curve bends the wing there', SLOW, async () => {
    const { panel, edits } = await open();
    const plot = grids(panel)[0]!.renderRoot.querySelectorAll<SmallPlot>('small-plot')[5]!;
    await waitUntil(() => plot.renderRoot.querySelector('.u-over'), 'drawn', { timeout: 20_000 });
    const over = plot.renderRoot.querySelector('.u-over')!.getBoundingClientRect();
    const at = { clientX: over.left + 0.5 * over.width, clientY: over.top + 20, bubbles: true };
    plot.renderRoot.querySelector('.u-over')!.dispatchEvent(new MouseEvent('click', at));
    expect(edits).to.have.length(1);
    const { tipAngle } = panel.design!.wing.droop as { tipAngle: number };
    expect(tipAngle).to.be.closeTo(45, 1); // half of a sweep to 90 degrees
  });

  it('by keyboard: the slider looks, Escape lets go, Enter bends', SLOW, async () => {
    const { panel, edits } = await open();
    const grid = grids(panel)[0]!;
    const slider = grid.renderRoot.querySelector<HTMLInputElement>('input[type=range]')!;
    const look = async (value: string) => {
      slider.value = value;
      slider.dispatchEvent(new Event('input'));
      await grid.updateComplete;
    };
    const press = (key: string) => slider.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
    await look('30');
    expect(slider.getAttribute('aria-valuetext')).to.match(/^30\.0°; Lost lift at the same angle [\d.]+ %/);
    press('Escape');
    press('Enter');
    expect(edits).to.have.length(0);
    await look('12');
    press('Enter');
    expect(edits).to.have.length(1);
    expect(panel.design!.wing.droop).to.deep.equal({ kind: 'arc', tipAngle: 12 });
  });

  it(
    'with the span held says that the induced price is negative, and moving keeps the span',
    SLOW,
    async () => {
      const { panel } = await open(curved as Design);
      const choice = panel.renderRoot.querySelector('choice-field')!;
      const select = choice.renderRoot.querySelector('select')!;
      select.value = 'tipToTip';
      select.dispatchEvent(new Event('change'));
      await waitUntil(() => text(panel).includes('the induced price is negative'), 'said', {
        timeout: 50_000,
      });
      expect(text(panel)).to.contain('Against custom the curve saves induced drag');
      const span = surfaceOf(panel.design!.wing).span;
      button(grids(panel)[0]!, /neutral/).click();
      expect(surfaceOf(panel.design!.wing).span).to.be.closeTo(span, 2e-4); // lengths are written to 0.1 mm
      expect(panel.design!.wing.droop).not.to.deep.equal(curved.wing.droop);
    },
  );

  it('one table holds every curve, and a figure of it is the plot’s', SLOW, async () => {
    const { panel } = await open();
    const grid = grids(panel)[0]!;
    button(grid, /As a table/).click();
    await grid.updateComplete;
    const table = grid.renderRoot.querySelector('table')!;
    expect(table.tBodies[0]!.rows).to.have.length(41);
    const column = [...table.tHead!.rows[0]!.cells].findIndex(
      ({ textContent }) => textContent === 'Hold index',
    );
    const { lines } = grid.cells.find(({ name }) => name === 'Hold index')!;
    expect(Number(table.tBodies[0]!.rows[20]!.cells[column]!.textContent)).to.be.closeTo(
      lines[0]!.y[20]!,
      0.005,
    );
  });

  it('behind a flat stabilizer counts by the degree and says why', SLOW, async () => {
    const design = structuredClone(flat) as Design;
    const { panel } = await open({
      ...design,
      stabilizer: { ...design.stabilizer!, droop: { kind: 'flat' } },
    });
    expect(text(panel)).to.contain('counted by the degree');
  });
});
