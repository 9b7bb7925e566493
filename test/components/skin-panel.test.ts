import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { describe, it } from 'vitest';
import type { ChoiceField } from '../../src/components/choice-field.ts';
import type { DesignEditEvent } from '../../src/components/events.ts';
import '../../src/components/panels/skin-panel.ts';
import type { SkinPanel } from '../../src/components/panels/skin-panel.ts';
import { Studies } from '../../src/session/studies.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import type { Design } from '../../src/solver/design/document.ts';
import demo from '../../web/demos/curved-race.json';

const WAIT = { timeout: 60_000 };
const SLOW = { timeout: 90_000 };

const onPage = () =>
  new Studies({
    makeWorker: () => {
      throw new Error('none here');
    },
    loadStudies: async () => STUDIES,
  });

async function open(changes: Partial<Design> = {}) {
  const design = { ...(demo as Design), ...changes };
  const panel = await fixture<SkinPanel>(
    html`<skin-panel .design=${design} .studies=${onPage()}></skin-panel>`,
  );
  await waitUntil(
    () => text(panel).includes('Finish by finish') && text(panel).includes('pinhole'),
    'answers',
    WAIT,
  );
  const edits: DesignEditEvent[] = [];
  panel.addEventListener('design-edit', (event) => edits.push(event));
  return { panel, edits };
}

const text = (panel: SkinPanel) => panel.renderRoot.textContent!.replaceAll(/\s+/g, ' ');
const tableOf = (panel: SkinPanel, caption: string) =>
  [...panel.renderRoot.querySelectorAll('table')].find((table) =>
    table.caption?.textContent?.includes(caption),
  )!;

describe('skin-panel', () => {
  it('is accessible, and says where it turns, what it bears and what faults cost', SLOW, async () => {
    const { panel } = await open();
    await expect(panel).to.be.accessible();
    expect(text(panel)).to.match(/The upper side is laminar to \d+ % of the chord \([\d.]+.mm\)/);
    expect(text(panel)).to.match(/evenly spread roughness counts from \d+.µm on\. P\d+ is fine enough/);
    const notes = [...panel.renderRoot.querySelectorAll('figure-value')].map(({ note }) => note).join(' ');
    expect(notes).to.contain('common practice says about five');
    expect(notes).to.match(/Common practice says about 40 to 50.mm at race speed/);
    expect(tableOf(panel, 'Common faults').tBodies[0]!.rows).to.have.length(8);
    expect(text(panel)).to.contain('no sound limit is published');
  });

  it('a finish is an edit of the design, and its cost is said', SLOW, async () => {
    const { panel, edits } = await open({ finish: { grade: 180 } });
    expect(text(panel)).to.match(
      /The chosen finish, 16.µm high, costs [\d.]+ N, [\d.]+ %, at cruise and costs [\d.]+ N, [\d.]+ % at top speed/,
    );
    const grade = [...panel.renderRoot.querySelectorAll<ChoiceField>('choice-field')].find(
      ({ label }) => label === 'Last abrasive',
    )!;
    const select = grade.renderRoot.querySelector('select')!;
    select.value = '600';
    select.dispatchEvent(new Event('change', { bubbles: true }));
    expect(edits[0]!.detail.changes).to.deep.equal([{ path: 'finish.grade', value: 600 }]);
  });

  it(
    'a fault put on goes into the document at the place looked at; its drag stands beside it; it can be taken away',
    SLOW,
    async () => {
      const { panel, edits } = await open({
        defects: [
          { kind: 'bump', on: 'wing', eta: 0.2, side: 'upper', at: 0.1, height: 0.0004, width: 0.002 },
        ],
      });
      const table = panel.renderRoot.querySelector('defect-table')!;
      await waitUntil(
        () => /\d N, \d/.test(table.renderRoot.querySelector('td.drag')?.textContent ?? ''),
        'its drag',
        WAIT,
      );
      await expect(table).to.be.accessible();
      const button = (words: string) =>
        [...table.renderRoot.querySelectorAll('button')].find(
          (each) => each.textContent!.includes(words) || each.getAttribute('aria-label')?.includes(words),
        )!;
      button('Put on a step').click();
      const added = edits[0]!.detail.changes[0]!;
      expect(added.path).to.equal('defects');
      expect(added.value).to.have.length(2);
      expect((added.value as Design['defects'])![1]).to.include({
        kind: 'step',
        on: 'wing',
        eta: 0.2,
        side: 'upper',
      });
      button('Take away fault 1').click();
      expect(edits[1]!.detail.changes).to.deep.equal([{ path: 'defects', value: undefined }]);
    },
  );
});
