/** A worker started before it is asked for. */
import { describe, expect, it } from 'vitest';
import { startAhead } from '../../src/session/start-ahead.ts';

class FakeWorker extends EventTarget {}

function setUp(isRefused = () => false) {
  const made: FakeWorker[] = [];
  const makeWorker = startAhead(() => {
    if (isRefused()) throw new Error('workers are blocked');
    const worker = new FakeWorker();
    made.push(worker);
    return worker as unknown as Worker;
  });
  return { made, makeWorker };
}

describe('worker started ahead', () => {
  it('is there before anybody asks, and is the first one given out, once', () => {
    const { made, makeWorker } = setUp();
    expect(made.length).toBe(1);
    expect(makeWorker()).toBe(made[0]);
    expect(makeWorker()).toBe(made[1]);
    expect(made[0]).not.toBe(made[1]);
  });

  it('is not given out when it has failed: a new one tells its own failure to who asked for it', () => {
    const { made, makeWorker } = setUp();
    made[0]!.dispatchEvent(new Event('error'));
    expect(makeWorker()).toBe(made[1]);
  });

  it('is done without where the browser refuses workers; who asks meets the refusal', () => {
    let isRefused = true;
    const { makeWorker } = setUp(() => isRefused);
    expect(makeWorker).toThrow('blocked');
    isRefused = false;
    expect(makeWorker()).toBeInstanceOf(FakeWorker);
  });
});
