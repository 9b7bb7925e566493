import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { describe, it } from 'vitest';
import type { ChoiceField } from '../../src/components/choice-field.ts';
import type { DesignEditEvent } from '../../src/components/events.ts';
import '../../src/components/panels/speed-panel.ts';
import type { SpeedPanel } from '../../src/components/panels/speed-panel.ts';
import { Studies } from '../../src/session/studies.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import type { Design } from '../../src/solver/design/document.ts';
import demo from '../../web/demos/curved-race.json';

/** Studies on the page itself: no worker in a component test. */
const onPage = () =>
  new Studies({
    makeWorker: () => {
      throw new Error('none here');
    },
    loadStudies: async () => STUDIES,
  });

async function open(design = demo as Design): Promise<SpeedPanel> {
  const panel = await fixture<SpeedPanel>(
    html`<speed-panel .design=${design} .studies=${onPage()}></speed-panel>`,
  );
  await waitUntil(() => panel.renderRoot.textContent?.includes('Cavitation and air'), 'details', {
    timeout: 20_000,
  });
  return panel;
}

const text = (panel: SpeedPanel) => panel.renderRoot.textContent!.replaceAll(/\s+/g, ' ');

describe('speed-panel', () => {
  it('is accessible, and answers with best glide, take-off, the wedge and cavitation', {
    timeout: 40_000,
  }, async () => {
    const panel = await open();
    await expect(panel).to.be.accessible();
    expect(text(panel)).to.match(/It glides best at [\d.]+.kn, [\d.]+ to 1/);
    expect(text(panel)).to.match(/It lifts off at [\d.]+.kn/);
    expect(text(panel)).to.contain('outside the tested range');
    const charts = panel.renderRoot.querySelectorAll('line-chart');
    expect(charts.length).to.be.greaterThan(2);
  });

  it('the drag table adds up to its total', { timeout: 40_000 }, async () => {
    const panel = await open();
    const table = [...panel.renderRoot.querySelectorAll('table')].find((each) =>
      each.caption?.textContent?.includes('Drag by source'),
    )!;
    const cells = [...table.tBodies[0]!.rows].map((row) =>
      Number(row.cells[2]!.textContent!.replace('\u2212', '-')),
    );
    const total = cells.pop()!;
    expect(cells.reduce((sum, value) => sum + value, 0)).to.be.closeTo(total, 0.06 * cells.length); // each rounded to 0.1 N
  });

  it('what it keeps is a question of its own, not an edit of the design; a brief is an edit', {
    timeout: 40_000,
  }, async () => {
    const panel = await open();
    const edits: DesignEditEvent[] = [];
    panel.addEventListener('design-edit', (event) => edits.push(event));
    const [kept, briefs] = [...panel.renderRoot.querySelectorAll<ChoiceField>('choice-field')];
    choose(kept!, 'stance');
    await panel.updateComplete;
    expect(edits).to.have.length(0);
    await waitUntil(
      () => panel.renderRoot.querySelector('line-chart[heading="Stabilizer incidence that trims"]'),
      'the incidence asked for',
      {
        timeout: 20_000,
      },
    );
    choose(briefs!, 'kite race');
    expect(edits).to.have.length(1);
    expect(edits[0]!.detail.changes[0]!.path).to.equal('brief');
  });

  it('a speed that cannot be ridden is said in a sentence', { timeout: 40_000 }, async () => {
    const heavy = structuredClone(demo) as Design;
    heavy.brief.allUpMass = 300;
    const panel = await open(heavy);
    expect(panel.renderRoot.querySelector('.trouble')?.textContent).to.match(/At take-off/);
  });
});

function choose(field: ChoiceField, value: string): void {
  const select = field.renderRoot.querySelector('select')!;
  select.value = value;
  select.dispatchEvent(new Event('change', { bubbles: true }));
}
