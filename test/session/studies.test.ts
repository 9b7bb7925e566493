import { describe, expect, it } from 'vitest';
import { Studies, StudyLine } from '../../src/session/studies.ts';
import type { StudyNews, StudyOrder } from '../../src/session/study-messages.ts';
import { StudyServer } from '../../src/session/study-server.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { finish } from '../../src/solver/studies/study.ts';
import { eventually } from '../support/eventually.ts';
import { demo } from './designs.ts';

/** Counts to `options.count`, each step taking `options.each` ms; the answer is the count and the design's name. */
function* counting(
  design: Design,
  options: { count: number; each: number },
): Generator<number, string, void> {
  for (let k = 0; k < options.count; k++) {
    const until = performance.now() + options.each;
    while (performance.now() < until);
    yield (k + 1) / options.count;
  }
  return `${design.name} ${options.count}`;
}

const registry = {
  curve: counting,
  plain: (design: Design) => design.name,
  broken: () => {
    throw new Error('wing.chord: found nothing');
  },
};

/** A worker whose thread is a server on this one; deaf: it never hears a cancel. */
class NearWorker extends EventTarget {
  static made: NearWorker[] = [];
  isAlive = true;
  readonly #server: StudyServer;
  constructor(readonly isDeaf = false) {
    super();
    NearWorker.made.push(this);
    const post = (data: StudyNews) =>
      this.isAlive && this.dispatchEvent(new MessageEvent('message', { data: structuredClone(data) }));
    this.#server = new StudyServer(registry, post, { slice: 5 });
  }
  postMessage(order: StudyOrder): void {
    if (order.study === 'cancel' && this.isDeaf) return;
    setTimeout(() => this.isAlive && this.#server.receive(structuredClone(order)));
  }
  terminate(): void {
    this.isAlive = false;
  }
}

function setUp({ isDeaf = false, withoutWorker = false } = {}) {
  NearWorker.made = [];
  const studies = new Studies({
    makeWorker: () => {
      if (withoutWorker) throw new Error('no workers here');
      return new NearWorker(isDeaf) as unknown as Worker;
    },
    loadStudies: () => Promise.resolve(registry),
  });
  return studies;
}

function listen() {
  const heard: string[] = [];
  const shares: number[] = [];
  return {
    heard,
    shares,
    progress: (share: number) => void shares.push(share),
    done: (result: unknown) => void heard.push(`done ${result}`),
    failed: (message: string) => void heard.push(`failed ${message}`),
    cancelled: () => void heard.push('cancelled'),
  };
}

// The registry here stands in for the real one; its option and result types are its own.
const options = (count: number, each = 1) => ({ count, each }) as never;

describe('studies', () => {
  it('answers, and finds the answer again for the same design and options', async () => {
    const studies = setUp();
    const design = demo();
    const ear = listen();
    studies.start('curve', design, options(4), ear as never);
    await eventually(() => expect(ear.heard).toEqual([`done ${design.name} 4`]));
    expect(studies.known('curve', design, options(4))).toBe(`${design.name} 4`);
    expect(studies.known('curve', design, options(5))).toBeUndefined();
    expect(studies.known('curve', structuredClone(design), options(4))).toBeUndefined();
  });

  it('reports progress that rises, and hears a cancel on its way', async () => {
    const studies = setUp();
    const ear = listen();
    const cancel = studies.start('curve', demo(), options(4000), ear as never);
    await eventually(() => expect(ear.shares.length).toBeGreaterThan(1));
    expect([...ear.shares].sort((a, b) => a - b)).toEqual(ear.shares);
    cancel();
    await eventually(() => expect(ear.heard).toEqual(['cancelled']));
    expect(ear.shares.at(-1)).toBeLessThan(0.5); // `npm run bench -- map` has the time
  });

  it('lets one that stands behind begin only when the others are done', async () => {
    const studies = setUp();
    const order: string[] = [];
    const tell = (name: string) => ({ ...listen(), done: () => void order.push(name) }) as never;
    const behind = { ...listen(), done: () => void order.push('behind') };
    studies.start('curve', { ...demo(), name: 'behind' }, options(3), behind as never, true);
    studies.start('curve', demo(), options(60), tell('first'));
    studies.start('curve', demo(), options(90), tell('second'));
    await eventually(() => expect(order).toEqual(['first', 'second', 'behind']));
  });

  it('cancels one that waits behind the others', async () => {
    const studies = setUp();
    const ear = listen();
    const other = listen();
    const cancel = studies.start('curve', demo(), options(30), ear as never, true);
    studies.start('curve', demo(), options(300), other as never);
    await new Promise((resolve) => setTimeout(resolve, 20));
    cancel();
    await eventually(() => expect(ear.heard).toEqual(['cancelled']));
    expect(other.heard).toEqual([]);
    await eventually(() => expect(other.heard).toEqual([`done ${demo().name} 300`]));
  });

  it('replaces a worker that does not hear a cancel, and lets the other studies finish', async () => {
    const studies = setUp({ isDeaf: true });
    const ear = listen();
    const other = listen();
    const cancel = studies.start('curve', demo(), options(4000), ear as never);
    studies.start('curve', demo(), options(60), other as never);
    cancel();
    await eventually(() => expect(ear.heard).toEqual(['cancelled']));
    expect(NearWorker.made.map(({ isAlive }) => isAlive)).toEqual([false, true]);
    await eventually(() => expect(other.heard).toEqual([`done ${demo().name} 60`]));
  });

  it('works on the page where no worker starts', async () => {
    const studies = setUp({ withoutWorker: true });
    const ear = listen();
    studies.start('curve', demo(), options(20), ear as never);
    await eventually(() => expect(ear.heard).toEqual([`done ${demo().name} 20`]));
  });

  it('runs plain functions too, and hands on why a study failed', async () => {
    const studies = setUp();
    const ear = listen();
    studies.start('plain' as never, demo(), {} as never, ear as never);
    studies.start('broken' as never, demo(), {} as never, ear as never);
    studies.start('unheard' as never, demo(), {} as never, ear as never);
    await eventually(() => expect(ear.heard).toHaveLength(3));
    expect(ear.heard.slice(0, 2)).toEqual([`done ${demo().name}`, 'failed wing.chord: found nothing']);
    expect(ear.heard[2]).toMatch(/found "unheard", allowed curve/);
  });
});

describe('a line of studies', () => {
  const named = (name: string): Design => ({ ...demo(), name });

  it('lets the running one finish and then takes only the newest', async () => {
    const studies = setUp();
    const answers: unknown[] = [];
    const line = new StudyLine(studies, 'curve', () => {
      if (line.result !== null && line.result !== answers.at(-1)) answers.push(line.result);
    });
    for (const name of ['one', 'two', 'three']) line.ask(named(name), options(30));
    await eventually(() => expect(line.isCurrent).toBe(true));
    expect(answers).toEqual(['one 30', 'three 30']);
  });

  it('gives way at once when the running one is slow', async () => {
    const studies = setUp();
    const line = new StudyLine(studies, 'curve', () => {});
    line.ask(named('slow'), options(4000));
    await new Promise((resolve) => setTimeout(resolve, 450));
    line.ask(named('next'), options(3));
    await eventually(() => expect(line.result).toBe('next 3'));
  });

  it('stops at a cancel, keeps the last answer, and starts again when something changes or on request', async () => {
    const studies = setUp();
    const line = new StudyLine(studies, 'curve', () => {});
    line.ask(named('first'), options(3));
    await eventually(() => expect(line.result).toBe('first 3'));
    const second = named('second');
    line.ask(second, options(4000));
    line.halt();
    await eventually(() => expect(line.isRunning).toBe(false));
    line.ask(second, options(4000));
    expect([line.result, line.isRunning, line.isHalted, line.isCurrent]).toEqual([
      'first 3',
      false,
      true,
      false,
    ]);
    line.resume();
    expect(line.isRunning).toBe(true);
    line.halt();
    line.ask(second, options(5));
    await eventually(() => expect(line.result).toBe('second 5'));
  });

  it('shows a known answer at once', async () => {
    const studies = setUp();
    const line = new StudyLine(studies, 'curve', () => {});
    const design = named('known');
    line.ask(design, options(3));
    await eventually(() => expect(line.result).toBe('known 3'));
    line.ask(named('other'), options(3));
    await eventually(() => expect(line.result).toBe('other 3'));
    line.ask(design, options(3));
    expect([line.result, line.isCurrent]).toEqual(['known 3', true]);
  });
});

describe('finish', () => {
  it('runs a study to its end', () => {
    expect(finish(counting(demo(), { count: 3, each: 0 }))).toBe(`${demo().name} 3`);
  });
});
