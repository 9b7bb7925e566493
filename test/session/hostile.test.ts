import { describe, expect, it } from 'vitest';
import { Session } from '../../src/session/session.ts';
import { readDesign, readDesignValue, writeDesign } from '../../src/solver/design/read.ts';
import { memoryKept } from '../support/kept.ts';
import { memory } from '../support/memory.ts';
import { demo } from './designs.ts';
import { HOSTILE_DOCUMENTS, HOSTILE_LINKS, PACKED_DOCUMENTS, soundLink } from './hostile.ts';

/** A session that solves nothing and keeps nothing, with the user's own design open. */
function openSession(): Promise<Session> {
  const none = () => {
    throw new Error('none here');
  };
  return Session.open({
    demo: { ...demo(), name: 'Mine' },
    read: readDesign,
    readValue: readDesignValue,
    write: writeDesign,
    shelf: memory().shelf,
    notebook: null,
    kept: memoryKept(),
    channel: null,
    makeWorker: none,
    makeExportWorker: none,
    loadSolve: () => new Promise(() => {}),
    loadStudies: none,
    loadExport: none,
  });
}

/** One line that names the trouble; design, history and every prototype as they were. */
async function expectRefused(open: (session: Session) => unknown): Promise<void> {
  const session = await openSession();
  const before = session.design;
  await open(session);
  const { notice, store } = session;
  expect(notice?.kind).toBe('trouble');
  expect(notice?.message).toMatch(/^[^\n]{10,320}$/);
  expect(session.design).toBe(before);
  expect(store.undoLabel).toBeNull();
  expect(({} as { isOwned?: boolean }).isOwned).toBeUndefined();
}

describe('what strangers send', () => {
  it('comes in more than a hundred shapes, no two alike', () => {
    const texts = new Set(
      [...HOSTILE_DOCUMENTS, ...HOSTILE_LINKS, ...PACKED_DOCUMENTS].map(({ text }) => text),
    );
    expect(texts.size).toBeGreaterThan(300);
  });

  it.each(HOSTILE_LINKS)('a link with $what', ({ text }) =>
    expectRefused((session) => session.openLink(text)),
  );

  it.each(PACKED_DOCUMENTS)('$what', ({ text }) => expectRefused((session) => session.openLink(text)));

  it.each(HOSTILE_DOCUMENTS)('a file with $what', ({ text }) =>
    expectRefused((session) => session.openFile(new File([text], 'sent.json'))),
  );

  it.each([...HOSTILE_DOCUMENTS, ...HOSTILE_LINKS])('a pasted text with $what', ({ text }) =>
    expectRefused((session) => session.openText(text, 'pasted')),
  );
});

describe('what friends send', () => {
  it.each<[string, string, (session: Session) => void]>([
    ['a link in the address', 'open a link', (session) => session.openLink(new URL(soundLink()).hash)],
    ['a pasted link', 'open a pasted design', (session) => session.openText(`${soundLink()}\n`, 'pasted')],
    [
      'a dropped document',
      'open a dropped design',
      (session) => session.openText(`\n${writeDesign(demo())}`, 'dropped'),
    ],
  ])('%s opens as one step, and undo brings the earlier design back', async (_what, label, open) => {
    const session = await openSession();
    const before = session.design;
    open(session);
    expect(session.design).toEqual(demo());
    expect(session.notice?.kind).toBe('news');
    expect(session.store.undoLabel).toBe(label);
    session.store.undo();
    expect(session.design).toBe(before);
    expect(session.store.undoLabel).toBeNull();
  });

  it('takes back what a gesture under way had changed as a step of its own', async () => {
    const session = await openSession();
    session.edit({ changes: [{ path: 'name', value: 'Half typed' }], label: 'name', phase: 'live' });
    session.openLink(soundLink());
    session.store.undo();
    expect(session.design.name).toBe('Half typed');
    session.store.undo();
    expect(session.design.name).toBe('Mine');
  });

  it.each(['My new wing', '<svg/>', '7', 'https://foils.example/'])(
    'says what it found in %s',
    async (text) => {
      const session = await openSession();
      session.openText(text, 'pasted');
      expect(session.notice?.message).toBe(
        `The pasted text, ${JSON.stringify(text)}, is neither a design document nor a link to a design.`,
      );
    },
  );
});
