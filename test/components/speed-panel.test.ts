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
  await waitUntil(() => PARTS.every((name) => isAnswered(part(panel, name))), 'every part', {
    timeout: 30_000,
  });
  return panel;
}

const PARTS = ['speed-details', 'speed-side', 'speed-waves', 'speed-cavitation'] as const;
const part = (panel: SpeedPanel, name: (typeof PARTS)[number]) =>
  panel.renderRoot.querySelector(name)!.renderRoot;
const isAnswered = (root: ParentNode) => root.querySelector('h2') && !root.querySelector('progress');
const text = (panel: SpeedPanel) =>
  [panel.renderRoot, ...PARTS.map((name) => part(panel, name))]
    .map((root) => root.textContent!.replaceAll(/\s+/g, ' '))
    .join(' ');

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

  it('what it keeps is a question of its own, not an edit of the design', {
    timeout: 40_000,
  }, async () => {
    const panel = await open();
    const edits: DesignEditEvent[] = [];
    panel.addEventListener('design-edit', (event) => edits.push(event));
    const kept = panel.renderRoot.querySelector<ChoiceField>('choice-field');
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
  });

  it('marks best glide and least power in the charts', { timeout: 40_000 }, async () => {
    const panel = await open();
    const names = [...panel.renderRoot.querySelectorAll('line-chart')].flatMap(({ series }) =>
      series.map(({ name }) => name),
    );
    expect(names.some((name) => /^best glide, [\d.]+.kn$/.test(name))).to.equal(true);
    expect(names.some((name) => /^least power, [\d.]+.kn$/.test(name))).to.equal(true);
  });

  it('balances a sideways pull, at a heel of the user’s choice too, without an edit', {
    timeout: 60_000,
  }, async () => {
    const pulled = structuredClone(demo) as Design;
    pulled.brief.sidePull = { share: 0.2, height: 2.2 };
    const panel = await open(pulled);
    const edits: DesignEditEvent[] = [];
    panel.addEventListener('design-edit', (event) => edits.push(event));
    const side = part(panel, 'speed-side');
    expect(side.textContent).to.match(/At cruise it heels 1\d\.\d° to port/); // atan(0.2 / 0.9) is 12.5 degrees
    choose(side.querySelector<ChoiceField>('choice-field')!, 'heel');
    await waitUntil(() => side.textContent?.includes('At cruise it heels 0.00°'), 'upright', {
      timeout: 30_000,
    });
    expect(side.querySelector('number-field')).to.exist;
    expect(edits).to.have.length(0);
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
