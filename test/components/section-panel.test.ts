import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { describe, it } from 'vitest';
import type { DesignEditEvent } from '../../src/components/events.ts';
import type { NumberField } from '../../src/components/number-field.ts';
import '../../src/components/panels/section-panel.ts';
import type { SectionPanel } from '../../src/components/panels/section-panel.ts';
import { Studies } from '../../src/session/studies.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import type { Design, Pair } from '../../src/solver/design/document.ts';
import { outlinePoints } from '../../src/solver/geometry/outline.ts';
import demo from '../../web/demos/curved-race.json';

const WAIT = { timeout: 30_000 };

const onPage = () =>
  new Studies({
    makeWorker: () => {
      throw new Error('none here');
    },
    loadStudies: async () => STUDIES,
  });

async function open(design = demo as Design) {
  const panel = await fixture<SectionPanel>(
    html`<section-panel .design=${design} .studies=${onPage()}></section-panel>`,
  );
  await waitUntil(
    () =>
      panel.renderRoot.textContent?.includes('Drag against lift') ||
      panel.renderRoot.querySelector('line-chart[heading]'),
    'answers',
    WAIT,
  );
  await waitUntil(() => panel.renderRoot.querySelectorAll('line-chart').length > 4, 'polars', WAIT);
  const edits: DesignEditEvent[] = [];
  panel.addEventListener('design-edit', (event) => edits.push(event));
  return { panel, edits };
}

const text = (panel: SectionPanel) => panel.renderRoot.textContent!.replaceAll(/\s+/g, ' ');
const fieldOf = (panel: SectionPanel, label: string, k = 0) =>
  [...panel.renderRoot.querySelectorAll<NumberField>('number-field')].filter(
    (field) => field.label === label,
  )[k]!;

async function type(field: NumberField, value: string) {
  const input = field.renderRoot.querySelector('input')!;
  input.focus();
  input.value = value;
  input.dispatchEvent(new Event('input'));
  input.dispatchEvent(new Event('change'));
  await waitUntil(() => !field.isTyping || field.renderRoot.querySelector('[role=alert]'), 'taken', WAIT);
}

describe('section-panel', () => {
  it('is accessible, and shows flow, marks and polars', { timeout: 60_000 }, async () => {
    const { panel } = await open();
    await expect(panel).to.be.accessible();
    expect(text(panel)).to.match(
      /Upper side laminar to \d+ % of the chord, lower side laminar to \d+ % of the chord/,
    );
    const labels = [...panel.renderRoot.querySelectorAll('figure-value')].map(({ label }) => label);
    expect(labels).to.include.members([
      'Nose radius',
      'Trailing edge',
      'Zero-lift angle',
      'Lift slope',
      'Lowest pressure, Cp',
    ]);
    expect(panel.renderRoot.querySelector('svg.flow')!.getAttribute('aria-label')).to.contain('laminar');
  });

  it('thickness and camber scale the section in the document; looking elsewhere edits nothing', {
    timeout: 60_000,
  }, async () => {
    const { panel, edits } = await open();
    await type(fieldOf(panel, 'Thickness'), '12.1');
    expect(edits[0]!.detail.changes).to.deep.equal([
      { path: 'wing.section.root.thicknessScale', value: 1.1 },
    ]);
    await type(fieldOf(panel, 'Camber', 1), '3');
    expect(edits[1]!.detail.changes).to.deep.equal([{ path: 'wing.section.tip.camberScale', value: 1.5 }]);
    await type(fieldOf(panel, 'Out from the root'), '50');
    await waitUntil(() => text(panel).includes('wing at 50 % of the half'), 'the station', WAIT);
    expect(edits).to.have.length(2);
  });

  it('a thickness out of reach is refused with what can be had', { timeout: 60_000 }, async () => {
    const { panel, edits } = await open();
    const field = fieldOf(panel, 'Thickness');
    await type(field, '60');
    expect(field.renderRoot.querySelector('[role=alert]')!.textContent).to.contain('2.2 % to 44 %');
    expect(edits).to.have.length(0);
  });

  it('a pasted section goes to the chosen ends; a bad one stays with its reason', {
    timeout: 60_000,
  }, async () => {
    const { panel, edits } = await open();
    const box = panel.renderRoot.querySelector('section-import')!;
    const area = box.renderRoot.querySelector('textarea')!;
    const use = [...box.renderRoot.querySelectorAll('button')].find((button) =>
      button.textContent!.includes('Use'),
    )!;
    const paste = async (pasted: string) => {
      area.value = pasted;
      area.dispatchEvent(new Event('input'));
      await box.updateComplete;
      use.click();
      await box.updateComplete;
    };
    await paste('one two\n1 0\n0.5 nonsense 3');
    expect(box.renderRoot.querySelector('[role=alert]')!.textContent).to.match(
      /Line 3: found "0.5 nonsense 3", allowed two numbers/,
    );
    expect(area.value).to.contain('nonsense');
    expect(edits).to.have.length(0);
    const { x, y } = outlinePoints({ kind: 'naca4', code: '0013' }, 81);
    const points = Array.from(x, (at, k): Pair => [at, y[k]!]);
    await paste(`Harbour 13\n${points.map((pair) => pair.join(' ')).join('\n')}`);
    expect(edits).to.have.length(1);
    const { changes } = edits[0]!.detail;
    expect(changes.map(({ path }) => path)).to.deep.equal(['wing.section.root', 'wing.section.tip']);
    expect((changes[0]!.value as { name: string }).name).to.equal('Harbour 13');
    await expect(box).to.be.accessible();
  });

  it('a speed that cannot be ridden is said in a sentence', { timeout: 60_000 }, async () => {
    const heavy = structuredClone(demo) as Design;
    heavy.brief.allUpMass = 400;
    heavy.brief.speeds.cruise = 2;
    const panel = await fixture<SectionPanel>(
      html`<section-panel .design=${heavy} .studies=${onPage()}></section-panel>`,
    );
    await waitUntil(() => panel.renderRoot.querySelector('.trouble'), 'trouble', WAIT);
    expect(panel.renderRoot.querySelector('.trouble')!.textContent).to.match(
      /no angle .*carries this weight/,
    );
  });
});
