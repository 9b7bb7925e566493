/** How wide the figures of a question stand: opened by the keyboard, solved only then, and said with where it is from. */
import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/components/band-list.ts';
import type { BandList } from '../../src/components/band-list.ts';
import { QUESTION_BANDS } from '../../src/components/question-bands.ts';
import { QUESTIONS } from '../../src/components/questions.ts';
import { Studies } from '../../src/session/studies.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import type { Design } from '../../src/solver/design/document.ts';
import demo from '../../web/demos/curved-race.json';

const LONG = { timeout: 60_000 };

async function opened(question: string) {
  let asked = 0;
  const studies = new Studies({
    makeWorker: () => {
      throw new Error('none here');
    },
    loadStudies: async () => {
      asked++;
      return { bands: STUDIES.bands };
    },
  });
  const list = await fixture<BandList>(
    html`<band-list .design=${demo as Design} .studies=${studies} question=${question}></band-list>`,
  );
  const isAsked = () => asked > 0;
  expect(isAsked(), 'nothing is worked out for a closed list').to.equal(false);
  await expect(list).to.be.accessible();
  list.renderRoot.querySelector('summary')!.focus();
  await userEvent.keyboard('{Enter}');
  await waitUntil(() => list.renderRoot.querySelector('dl'));
  return { list, isAsked };
}

const text = (list: BandList) => list.renderRoot.textContent!.replaceAll(/\s+/g, ' ');

describe('the bands of a question', () => {
  it('are solved once opened, with the width of the sections where those decide', LONG, async () => {
    const { list, isAsked } = await opened('speed');
    expect(text(list)).to.include('Drag at cruise working …');
    await waitUntil(() => !text(list).includes('working'), 'bands', { timeout: 55_000 });
    expect(isAsked()).to.equal(true);
    for (const label of ['Drag at cruise', 'Drag at top speed', 'Lowest take-off speed'])
      expect(text(list)).to.match(
        new RegExp(`${label} method ±[\\d.]+ \\S+ .*?sections ±[\\d.]+ \\S+ \\(scatter of measured ones\\)`),
      );
    expect(text(list)).not.to.include('not known');
    await expect(list).to.be.accessible();
  });

  it(
    'that measured values state ask for no study, and say how many values and what is not known',
    LONG,
    async () => {
      const { list, isAsked } = await opened('section');
      expect(text(list)).to.match(/Drag, cd method ±8 % \(root mean square of 17 measured drag/);
      expect(text(list)).to.include('no measured place of transition');
      expect(isAsked()).to.equal(false);
    },
  );

  it('stand under every question but that of designs kept', () => {
    const without = QUESTIONS.map(({ id }) => id).filter((id) => !(id in QUESTION_BANDS));
    expect(without).to.deep.equal(['beside']);
  });
});
