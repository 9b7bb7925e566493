import { describe, expect, it, vi } from 'vitest';
import { Ghosts } from '../../src/session/ghost.ts';
import { KeptDesigns } from '../../src/session/kept.ts';
import { Proposals } from '../../src/session/proposals.ts';
import { Reports } from '../../src/session/reports.ts';
import { Studies } from '../../src/session/studies.ts';
import { readDesign, writeDesign } from '../../src/solver/design/read.ts';
import type { Report } from '../../src/solver/report.ts';
import { eventually } from '../support/eventually.ts';
import { memoryKept } from '../support/kept.ts';
import { demo } from './designs.ts';

/** A page with a shelf, whose reports say no more than the mass they were made for. */
function page(store = memoryKept(), noted = new Map<string, string>()) {
  const makeWorker = () => {
    throw new Error('none here');
  };
  const report = (design: { brief: { allUpMass: number } }) =>
    ({ lift: { total: design.brief.allUpMass } }) as unknown as Report;
  const parts = { makeWorker, loadStudies: async () => ({ report }) };
  const kept = new KeptDesigns({
    kept: store,
    notebook: null,
    channel: null,
    read: readDesign,
    write: writeDesign,
  });
  const proposals = new Proposals(parts, 1);
  const changed = vi.fn();
  const notebook = {
    getItem: (key: string) => noted.get(key) ?? null,
    setItem: (key: string, value: string) => void noted.set(key, value),
    removeItem: (key: string) => void noted.delete(key),
  };
  const studies = new Studies(parts);
  const reports = new Reports(studies, () => ghosts.look());
  const ghosts: Ghosts = new Ghosts({ kept, proposals, studies, reports, notebook, changed });
  return { kept, proposals, ghosts, changed };
}

describe('the ghost', () => {
  it('is a kept design with its figures, until let go', async () => {
    const { kept, ghosts } = page();
    const { kept: mine } = await kept.keep(demo());
    ghosts.choose(mine.id);
    expect(ghosts.current).toMatchObject({ name: demo().name, report: null });
    await eventually(() => expect(ghosts.current!.report!.lift.total).toBe(demo().brief.allUpMass));
    ghosts.letGo();
    expect(ghosts.current).toBeNull();
  });

  it('is the same object while nothing about it changes', async () => {
    const { kept, ghosts, changed } = page();
    const { kept: mine } = await kept.keep(demo());
    ghosts.choose(mine.id);
    await eventually(() => expect(ghosts.current!.report).not.toBeNull());
    const { current } = ghosts;
    changed.mockClear();
    kept.annotate(mine.id, 'note');
    await kept.keep({ ...demo(), name: 'Another' });
    expect(ghosts.current).toBe(current);
    expect(changed).not.toHaveBeenCalled();
  });

  it('is known as the chosen one also while a proposal stands in its place', async () => {
    const { kept, proposals, ghosts } = page();
    const { kept: mine } = await kept.keep(demo());
    ghosts.choose(mine.id);
    proposals.proposal = { outcome: 'found', design: { ...demo(), name: 'Found' } } as never;
    proposals.show(true);
    expect(ghosts.current).toMatchObject({ id: null, name: 'the proposal' });
    expect(ghosts.kept).toMatchObject({ id: mine.id });
    expect(ghosts.kept).toBe(ghosts.kept);
  });

  it('keeps its figures under another name', async () => {
    const { kept, ghosts } = page();
    const { kept: mine } = await kept.keep(demo());
    ghosts.choose(mine.id);
    await eventually(() => expect(ghosts.current!.report).not.toBeNull());
    const { report } = ghosts.current!;
    kept.rename(mine.id, 'Called otherwise');
    expect(ghosts.current).toMatchObject({ name: 'Called otherwise' });
    expect(ghosts.current!.report).toBe(report);
  });

  it('is there again after a reload', async () => {
    const store = memoryKept();
    const noted = new Map<string, string>();
    const before = page(store, noted);
    const { kept: mine } = await before.kept.keep(demo());
    before.ghosts.choose(mine.id);
    const after = page(store, noted);
    expect(after.ghosts.current).toBeNull();
    await after.kept.load();
    expect(after.ghosts.current).toMatchObject({ id: mine.id });
    after.ghosts.letGo();
    const last = page(store, noted);
    await last.kept.load();
    expect(last.ghosts.current).toBeNull();
  });

  it('goes with the kept design when that is taken off the shelf', async () => {
    const { kept, ghosts } = page();
    const { kept: mine } = await kept.keep(demo());
    ghosts.choose(mine.id);
    kept.remove(mine.id);
    expect([ghosts.current, ghosts.chosen]).toEqual([null, null]);
  });

  it('makes way for a proposal that is shown, and comes back behind it', async () => {
    const { kept, proposals, ghosts } = page();
    const { kept: mine } = await kept.keep(demo());
    ghosts.choose(mine.id);
    const proposed = { ...demo(), name: 'Found' };
    proposals.proposal = { outcome: 'found', design: proposed } as unknown as typeof proposals.proposal;
    proposals.show(true);
    expect(ghosts.current).toMatchObject({ id: null, design: proposed, name: 'the proposal' });
    ghosts.letGo();
    expect(ghosts.current).toMatchObject({ id: mine.id });
    expect(proposals.isShown).toBe(false);
  });
});
