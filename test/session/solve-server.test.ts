/** Requests answered where the solver runs: in slices, the newest first. */
import { describe, expect, it } from 'vitest';
import type { SolveReply } from '../../src/session/messages.ts';
import { pause } from '../../src/session/pause.ts';
import { SolveServer, type SolveServerParts } from '../../src/session/solve-server.ts';
import type { Report } from '../../src/solver/report.ts';
import { demo } from './designs.ts';

const steps = (count: number) =>
  function* () {
    for (let k = 0; k < count; k++) yield k / count;
  };

function setUp(parts: Partial<SolveServerParts> = {}) {
  const told: SolveReply[] = [];
  const solved: string[] = [];
  const server = new SolveServer({
    solve: ({ name }, options) => {
      solved.push(`${name} ${options?.sections ?? 'real'}`);
      return { name } as unknown as Report;
    },
    prepare: steps(0),
    tell: (reply) => told.push(reply),
    slice: 0,
    patience: 0,
    ...parts,
  });
  const ask = (id: number) =>
    server.receive({ id, design: { ...demo(), name: `${id}` }, options: { neutralDroop: false } });
  return { told, solved, ask, server };
}

describe('solve server', () => {
  it('answers once where nothing has to be made', async () => {
    const { told, solved, ask } = setUp();
    await ask(1);
    expect(told).toEqual([{ id: 1, ok: true, report: { name: '1' } }]);
    expect(solved).toEqual(['1 real']);
  });

  it('gives first figures by thin-airfoil theory while sections are made, then the real ones', async () => {
    const { told, solved, ask } = setUp({ prepare: steps(5), patience: -1 });
    await ask(1);
    await ask(2);
    expect(solved).toEqual(['1 thin', '1 real', '2 thin', '2 real']);
    expect(told.map((reply) => reply.ok && reply.isFirst)).toEqual([true, undefined, true, undefined]);
  });

  it('gives the very first figures by thin-airfoil theory before it makes any section', async () => {
    const order: string[] = [];
    const { ask } = setUp({
      patience: 1e9,
      prepare: function* () {
        yield 0;
        order.push('made');
      },
      tell: (reply) => order.push(reply.ok && reply.isFirst ? 'first figures' : 'figures'),
    });
    await ask(1);
    expect(order).toEqual(['first figures', 'made', 'figures']);
    await ask(2);
    expect(order.slice(3)).toEqual(['made', 'figures']);
  });

  it('drops what is under way when a newer request comes', async () => {
    const { told, ask } = setUp({ prepare: steps(5), patience: 1e9 });
    await Promise.all([ask(1), ask(2)]);
    expect(told.map(({ id }) => id)).toEqual([1, 2, 2]); // first figures of both, then the newer one's own
  });

  it('gives first figures at once where sections change before they are made', async () => {
    const { solved, ask } = setUp({ prepare: steps(5), patience: 1e9 });
    await ask(1);
    await ask(2); // by itself it is given time
    expect(solved).toEqual(['1 thin', '1 real', '2 real']);
    await Promise.all([ask(3), ask(4)]);
    expect(solved.slice(3)).toEqual(['4 thin', '4 real']);
  });

  it('leaves a section that cannot be made to the solver, which says why', async () => {
    const { told, ask } = setUp({
      prepare: function* () {
        yield 0;
        throw new Error('no matter');
      },
      solve: () => {
        throw new Error('wing section: found a crossing');
      },
    });
    await ask(1);
    expect(told).toEqual([{ id: 1, ok: false, message: 'wing section: found a crossing' }]);
  });

  it('practises after a complete answer, without a word, until something is asked', async () => {
    const { told, solved, server } = setUp({ practice: 5 });
    const ask = (id: number, name: string, options = {}) =>
      server.receive({ id, design: { ...demo(), name }, options });
    const first = ask(1, 'first');
    await pause();
    await pause();
    await ask(2, 'dragged', { neutralDroop: false });
    await first;
    expect(solved.indexOf('dragged real')).toBeGreaterThan(1); // some practice came before it
    expect(solved.at(-1)).toBe('dragged real'); // and none after: a drag is practice enough
    await ask(3, 'at rest');
    await ask(4, 'later');
    expect(solved.filter((name) => name === 'later real')).toHaveLength(1); // it has had its five
    expect(solved.length - told.length).toBe(5);
    expect(told.map(({ id }) => id)).toEqual([1, 2, 3, 4]);
  });

  it('asks for no section where thin ones are wanted', async () => {
    let prepared = 0;
    const { told } = setUp();
    const server = new SolveServer({
      solve: () => ({}) as Report,
      prepare: function* () {
        prepared++;
        yield 1;
      },
      tell: (reply) => told.push(reply),
    });
    await server.receive({ id: 1, design: demo(), options: { sections: 'thin' } });
    expect([prepared, told.length]).toEqual([0, 1]);
  });
});
