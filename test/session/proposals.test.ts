/** The search as the page follows it, with studies that only count. */
import { beforeEach, describe, expect, it } from 'vitest';
import { Proposals } from '../../src/session/proposals.ts';
import type { StudyNews, StudyOrder } from '../../src/session/study-messages.ts';
import { type AnyStudies, StudyServer } from '../../src/session/study-server.ts';
import type { Design } from '../../src/solver/design/document.ts';
import type { SettleOptions } from '../../src/solver/studies/propose/proposal.ts';
import type { StartOptions } from '../../src/solver/studies/propose/search.ts';
import { eventually } from '../support/eventually.ts';
import { demo as makeDemo } from './designs.ts';

const demo = makeDemo();

const STARTS = 4;
const named = (name: string): Design => ({ ...demo, name });
const gate = { open: STARTS }; // starts from here on wait

/** Start 2 is the lightest that holds every limit; start 3 is lighter still and holds none. */
function* start(_design: Design, { start: k }: StartOptions) {
  while (k >= gate.open) yield 0.5;
  return {
    start: k,
    variant: 0,
    x: Float64Array.of(k),
    drag: [90, 88, 86, 70][k]!,
    violation: k === 3 ? 1 : 0,
    isHeld: k !== 3,
    evaluations: 10,
    design: named(`start ${k}`),
  };
}

const registry: AnyStudies = {
  proposalPlan: (design: Design) => ({
    starts: STARTS,
    problem: design.name === 'stuck' ? 'wanted.free: found nothing' : null,
  }),
  proposalStart: start,
  proposal: (_design: Design, { seed, founds }: SettleOptions) => ({
    outcome: 'found',
    design: named('settled'),
    seed,
    evaluations: founds.length,
  }),
  frontEnds: (design: Design) =>
    design.name === 'stuck' ? null : { lightest: 'l', firmest: 'f', chains: [1, 2] },
  frontChain: (_design: Design, chain: number) => [chain * 10],
  front: (_design: Design, { chains }: { chains: number[][] }) => ({ points: chains.flat() }),
};

class NearWorker extends EventTarget {
  static alive = 0;
  static most = 0;
  #isAlive = true;
  readonly #server = new StudyServer(
    registry,
    (data: StudyNews) =>
      this.#isAlive && this.dispatchEvent(new MessageEvent('message', { data: structuredClone(data) })),
    { slice: 1 },
  );
  constructor() {
    super();
    NearWorker.most = Math.max(NearWorker.most, ++NearWorker.alive);
  }
  postMessage(order: StudyOrder): void {
    setTimeout(() => this.#isAlive && this.#server.receive(structuredClone(order)));
  }
  terminate(): void {
    if (this.#isAlive) NearWorker.alive--;
    this.#isAlive = false;
  }
}

const make = (cores = 2) =>
  new Proposals(
    {
      makeWorker: () => new NearWorker() as unknown as Worker,
      loadStudies: () => Promise.resolve(registry),
    },
    cores,
  );

beforeEach(() => {
  NearWorker.alive = 0;
  NearWorker.most = 0;
  gate.open = STARTS;
});

describe('a search', () => {
  it('runs on all cores, settles what it found, and lets its threads go', async () => {
    const proposals = make(3);
    await proposals.search(demo, 7);
    expect(proposals.proposal).toMatchObject({ outcome: 'found', seed: 7, evaluations: STARTS });
    expect(proposals.best?.name).toBe('settled');
    expect([proposals.activity, proposals.failure]).toEqual(['idle', null]);
    expect([NearWorker.most, NearWorker.alive]).toEqual([3, 0]);
  });

  it('shows the best so far that holds the limits, and how far it has come', async () => {
    gate.open = 2;
    const proposals = make(4);
    const done = proposals.search(demo, 1);
    await eventually(() => expect(proposals.bestDrag).toBe(88));
    expect(proposals.preview?.name).toBe('start 1');
    expect(proposals.share).toBeGreaterThan(0.3);
    expect(proposals.share).toBeLessThan(1);
    proposals.show(false);
    expect(proposals.preview).toBeNull();
    gate.open = STARTS;
    await done;
    expect(proposals.bestDrag).toBe(86);
  });

  it('cancelled keeps what it found, to be finished later', async () => {
    gate.open = 2;
    const proposals = make(4);
    void proposals.search(demo, 5);
    await eventually(() => expect(proposals.bestDrag).toBe(88));
    proposals.cancel();
    expect(proposals).toMatchObject({ activity: 'idle', isUnfinished: true, proposal: null });
    expect(proposals.preview?.name).toBe('start 1');
    expect(NearWorker.alive).toBe(0);
    await proposals.finish();
    expect(proposals.proposal).toMatchObject({ outcome: 'found', seed: 5, evaluations: 2 });
  });

  it('cancelled before anything was found leaves nothing', async () => {
    gate.open = 0;
    const proposals = make();
    void proposals.search(demo, 5);
    await eventually(() => expect(proposals.share).toBeGreaterThan(0));
    proposals.cancel();
    expect(proposals).toMatchObject({ activity: 'idle', isUnfinished: false, preview: null });
  });

  it('says why it cannot begin', async () => {
    const proposals = make();
    await proposals.search(named('stuck'), 1);
    expect(proposals).toMatchObject({
      failure: 'wanted.free: found nothing',
      proposal: null,
      activity: 'idle',
    });
  });

  it('gives way to a newer one', async () => {
    gate.open = 1;
    const proposals = make();
    void proposals.search(named('one'), 1);
    await eventually(() => expect(proposals.bestDrag).toBe(90));
    gate.open = STARTS;
    await proposals.search(named('two'), 2);
    expect(proposals.asked?.design.name).toBe('two');
    expect(proposals.proposal).toMatchObject({ seed: 2, evaluations: STARTS });
    expect(NearWorker.alive).toBe(0);
  });
});

describe('the front', () => {
  it('comes from its two ends', async () => {
    const proposals = make();
    await proposals.drawFront(demo);
    expect(proposals.front).toEqual({ points: [10, 20] });
    expect(proposals.frontDesign).toBe(demo);
  });

  it('says that there is none', async () => {
    const proposals = make();
    await proposals.drawFront(named('stuck'));
    expect(proposals.front).toBeNull();
    expect(proposals.failure).toMatch(/^No wing within the ranges/);
  });
});
