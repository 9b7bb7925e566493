import { describe, expect, it } from 'vitest';
import { answer, type SolveReply, type SolveRequest } from '../../src/session/messages.ts';
import { type Answer, SolveRunner } from '../../src/session/runner.ts';
import type { Report } from '../../src/solver/report.ts';
import { eventually } from '../support/eventually.ts';
import { demo } from './designs.ts';

/** A worker that answers when the test says so. */
class SlowWorker extends EventTarget {
  asked: SolveRequest[] = [];
  postMessage(request: SolveRequest): void {
    this.asked.push(request);
  }
  terminate(): void {}
  reply(reply: Partial<SolveReply> = {}): void {
    const { id } = this.asked.at(-1)!;
    const data = { id, ok: true, report: {} as Report, ...reply };
    this.dispatchEvent(new MessageEvent('message', { data }));
  }
}

function setUp() {
  const worker = new SlowWorker();
  const answers: Answer[] = [];
  const failures: string[] = [];
  const runner = new SolveRunner({
    makeWorker: () => worker as unknown as Worker,
    loadSolve: () => Promise.reject(new Error('not wanted here')),
    onAnswer: (given) => answers.push(given),
    onFailure: (message) => failures.push(message),
    quietTime: 5,
  });
  return { worker, runner, answers, failures };
}

describe('runner', () => {
  it('solves quickly first, then completely once it is quiet', async () => {
    const { worker, runner, answers } = setUp();
    runner.ask(demo(), 1);
    expect(worker.asked[0]?.options).toEqual({ neutralDroop: false });
    worker.reply();
    await eventually(() => expect(worker.asked).toHaveLength(2));
    expect(worker.asked[1]?.options).toEqual({});
    worker.reply();
    expect(answers.map(({ revision, isComplete }) => [revision, isComplete])).toEqual([
      [1, false],
      [1, true],
    ]);
  });

  it('lets the running solve finish and keeps only the newest waiting', () => {
    const { worker, runner, answers } = setUp();
    for (const revision of [1, 2, 3, 4]) runner.ask({ ...demo(), name: `${revision}` }, revision);
    expect(worker.asked).toHaveLength(1);
    worker.reply();
    expect(worker.asked.map(({ design }) => design.name)).toEqual(['1', '4']);
    worker.reply();
    expect(answers.map(({ revision }) => revision)).toEqual([1, 4]);
  });

  it('shows first figures, and lets a newer design take the place of sections under way', () => {
    const { worker, runner, answers } = setUp();
    runner.ask(demo(), 1);
    worker.reply({ isFirst: true });
    expect(answers.at(-1)).toMatchObject({ revision: 1, isComplete: false, isFirst: true });
    const [first] = worker.asked;
    runner.ask(demo(), 2); // at once, though the first is not answered in full
    expect(worker.asked).toHaveLength(2);
    worker.reply({ id: first!.id });
    expect(answers).toHaveLength(1);
    worker.reply();
    expect(answers.at(-1)).toMatchObject({ revision: 2, isFirst: false });
  });

  it('starts no complete solve while newer designs keep coming', async () => {
    const { worker, runner } = setUp();
    runner.ask(demo(), 1);
    worker.reply();
    runner.ask(demo(), 2);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(worker.asked.every(({ options }) => options.neutralDroop === false)).toBe(true);
  });

  it('drops the answer to a design that is no longer open, and answers with a foreign number', () => {
    const { worker, runner, answers } = setUp();
    runner.ask(demo(), 1);
    worker.reply({ id: 99 });
    runner.forget();
    runner.ask(demo(), 2);
    worker.reply();
    expect(answers).toHaveLength(0);
    worker.reply();
    expect(answers.map(({ revision }) => revision)).toEqual([2]);
  });

  it('passes an error on as a sentence and goes on', () => {
    const { worker, runner, answers, failures } = setUp();
    runner.ask(demo(), 1);
    runner.ask(demo(), 2);
    worker.reply({ ok: false, message: 'The tips reach above the surface.' } as Partial<SolveReply>);
    worker.reply();
    expect(failures).toEqual(['The tips reach above the surface.']);
    expect(answers.map(({ revision }) => revision)).toEqual([2]);
  });

  it.each(['cannot be made', 'breaks later'])('solves on the page when the worker %s', async (how) => {
    const worker = new SlowWorker();
    const answers: Answer[] = [];
    const runner = new SolveRunner({
      makeWorker: () => {
        if (how === 'cannot be made') throw new Error('blocked');
        return worker as unknown as Worker;
      },
      loadSolve: async () => (design) => ({ name: design.name }) as unknown as Report,
      onAnswer: (given) => answers.push(given),
      onFailure: () => {},
      quietTime: 1,
    });
    runner.ask({ ...demo(), name: 'here' }, 1);
    worker.dispatchEvent(new Event('error'));
    await eventually(() => expect(answers).toHaveLength(2));
    expect(answers[1]).toEqual({ revision: 1, report: { name: 'here' }, isComplete: true, isFirst: false });
  });

  it('turns whatever a solver throws into a reply', () => {
    const request = { id: 7, design: demo(), options: {} };
    const fail = () => {
      throw new Error('The depth is greater than the strut is long.');
    };
    expect(answer(fail, request)).toEqual({
      id: 7,
      ok: false,
      message: 'The depth is greater than the strut is long.',
    });
  });
});
