import { expect, fixture, html } from '@open-wc/testing';
import { beforeEach, describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/components/brief-shelf.ts';
import type { BriefShelf } from '../../src/components/brief-shelf.ts';
import type { EditDetail } from '../../src/components/events.ts';
import { BRIEFS } from '../../src/session/briefs.ts';
import { readDesignValue } from '../../src/solver/design/read.ts';
import { demo } from '../session/designs.ts';

async function setUp() {
  const shelf = await fixture<BriefShelf>(
    html`<brief-shelf .brief=${{ ...demo().brief, allUpMass: 77 }}></brief-shelf>`,
  );
  shelf.renderRoot.querySelector('details')!.open = true;
  const edits: EditDetail[] = [];
  shelf.addEventListener('design-edit', (event) => edits.push(event.detail));
  return { shelf, edits };
}

const select = (shelf: BriefShelf) =>
  shelf.renderRoot.querySelector('choice-field')!.shadowRoot!.querySelector('select')!;
const names = (shelf: BriefShelf) => [...select(shelf).options].map(({ value }) => value).filter(Boolean);
const press = async (shelf: BriefShelf, text: string) => {
  const buttons = [...shelf.renderRoot.querySelectorAll('button')];
  await userEvent.click(buttons.find((each) => each.textContent?.trim() === text)!);
  await shelf.updateComplete;
};
const rename = async (shelf: BriefShelf, text: string) => {
  shelf.renderRoot.querySelector('text-field')!.shadowRoot!.querySelector('input')!.select();
  await userEvent.keyboard(`${text}{Enter}`);
  await shelf.updateComplete;
};

describe('brief-shelf', () => {
  beforeEach(() => localStorage.removeItem('downcurve.briefs'));

  it('is accessible, and offers briefs that every design can take over', async () => {
    const { shelf, edits } = await setUp();
    await expect(shelf).to.be.accessible();
    for (const { name, brief } of BRIEFS) {
      await userEvent.selectOptions(select(shelf), name);
      expect(edits.at(-1)!.changes).to.deep.equal([{ path: 'brief', value: brief }]);
      expect(readDesignValue({ ...demo(), brief }).ok, name).to.equal(true);
    }
  });

  it('keeps a brief of one’s own over a reload, under a name of one’s own, without an edit of the design', async () => {
    const { shelf, edits } = await setUp();
    await rename(shelf, 'harbour sprint');
    await press(shelf, 'Keep');
    expect(edits).to.have.length(0);
    const { shelf: later, edits: laterEdits } = await setUp();
    expect(names(later)).to.include('harbour sprint');
    await userEvent.selectOptions(select(later), 'harbour sprint');
    expect((laterEdits[0]!.changes[0]!.value as { allUpMass: number }).allUpMass).to.equal(77);
  });

  it('forgets one and can put it back', async () => {
    const { shelf } = await setUp();
    await press(shelf, 'Keep');
    await press(shelf, 'Forget');
    expect(names(shelf)).not.to.include('my brief');
    await press(shelf, 'Put it back');
    expect(names(shelf)).to.include('my brief');
  });

  it('does not cover a brief that comes with the program', async () => {
    const { shelf } = await setUp();
    await rename(shelf, 'kite race');
    const field = shelf.renderRoot.querySelector('text-field')!;
    expect(field.shadowRoot!.textContent).to.contain('comes with the program');
    await press(shelf, 'Keep');
    expect(names(shelf).filter((name) => name === 'kite race')).to.have.length(1);
  });
});
