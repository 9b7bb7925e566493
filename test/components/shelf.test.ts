/** The browser's own database: brought up from an earlier version, shared between tabs, let go for a newer page. */
import { expect, waitUntil } from '@open-wc/testing';
import { deleteDB, openDB } from 'idb';
import { beforeEach, describe, it } from 'vitest';
import { KeptDesigns } from '../../src/session/kept.ts';
import { browserKept, browserNotebook, browserShelf, keptChannel } from '../../src/session/shelf.ts';
import { readDesign, writeDesign } from '../../src/solver/design/read.ts';
import { sampleDesign } from '../support/sample-report.ts';

const NAME = 'downcurve';

const tab = () => {
  const parts = {
    kept: browserKept(),
    notebook: browserNotebook(),
    channel: keptChannel(),
    read: readDesign,
    write: writeDesign,
  };
  return new KeptDesigns(parts);
};

beforeEach(async () => {
  await deleteDB(NAME);
});

describe('the database', () => {
  it('of version 1 is brought up to hold kept designs, and loses nothing', async () => {
    const old = await openDB(NAME, 1, {
      upgrade: (base) => {
        base.createObjectStore('session');
      },
    });
    await old.put('session', { text: 'mine', time: 7 }, 'design');
    old.close();
    await browserKept().change('a', () => ({ name: 'First' }));
    expect(await browserShelf().read('design')).to.deep.equal({ text: 'mine', time: 7 });
    expect(await browserKept().all()).to.deep.equal([{ id: 'a', value: { name: 'First' } }]);
  });

  it('is let go when a newer page wants it, and says so rather than harming what that made', async () => {
    await browserShelf().write('design', 'mine');
    const newer = await openDB(NAME, 99, {
      upgrade: (base) => {
        base.createObjectStore('later');
      },
    });
    expect(await newer.get('session', 'design')).to.equal('mine');
    let refusal: unknown = null;
    await browserKept()
      .all()
      .catch((error: unknown) => {
        refusal = error;
      });
    expect((refusal as DOMException).name).to.equal('VersionError');
    newer.close();
    await deleteDB(NAME);
    await browserKept().change('a', () => 1);
    expect(await browserKept().all()).to.have.length(1);
  });

  it('changes a record in one go, so that two tabs that change it both count', async () => {
    const add = (present: unknown) => ((present as number | undefined) ?? 0) + 1;
    await Promise.all(Array.from({ length: 20 }, () => browserKept().change('count', add)));
    expect(await browserKept().all()).to.deep.equal([{ id: 'count', value: 20 }]);
    await browserKept().change('count', () => undefined);
    expect(await browserKept().all()).to.deep.equal([]);
  });

  it('holds kept designs for the other tab and for the next visit', async () => {
    const [one, other] = [tab(), tab()];
    const { kept } = await one.keep(sampleDesign());
    await waitUntil(() => other.list.length === 1, 'the other tab');
    other.mark(kept.id, 'hold', 4);
    await waitUntil(() => one.find(kept.id)?.marks.hold === 4, 'the mark');
    const next = tab();
    await next.load();
    expect(next.find(kept.id)).to.deep.include({ marks: { hold: 4 }, text: kept.text });
  });
});
