/** Proposals of demo designs: limits held by the written file, costs, clashes, the same answer from any start. */
import { describe, expect, it, vi } from 'vitest';
import type { Design } from '../../../../src/solver/design/document.ts';
import { readDesign, writeDesign } from '../../../../src/solver/design/read.ts';
import type { Wanted } from '../../../../src/solver/design/wanted.ts';
import { solve } from '../../../../src/solver/solve.ts';
import { type Proposal, propose, settle } from '../../../../src/solver/studies/propose/proposal.ts';
import { better, type Found, searchFrom } from '../../../../src/solver/studies/propose/search.ts';
import { makeRunner } from '../../../../src/solver/studies/speed-study.ts';
import { finish } from '../../../../src/solver/studies/study.ts';
import { takeOff } from '../../../../src/solver/studies/take-off.ts';
import { goodDesign } from '../../../support/designs.ts';

vi.setConfig({ testTimeout: 60_000 }); // a search takes a second or so, more on a busy machine

const FEW: NonNullable<Wanted['free']> = {
  length: { least: 0.6, most: 0.86 },
  area: { least: 0.045, most: 0.085 },
  droop: { least: 0, most: 45 },
  stabilizerArea: { least: 0.009, most: 0.025 },
};

const drawn = goodDesign('curved-race');
const asking = (wanted: Wanted): Design => ({ ...drawn, wanted });

function found(design: Design, seed = 1): Extract<Proposal, { outcome: 'found' }> {
  const proposal = finish(propose(design, { seed }));
  if (proposal.outcome !== 'found') throw new Error(JSON.stringify(proposal));
  return proposal;
}

/** The same from the drawn design alone. */
function foundFromDrawn(design: Design, start = 0): Extract<Proposal, { outcome: 'found' }> {
  const end = finish(searchFrom(design, { seed: 1, start }));
  const proposal = finish(settle(design, { seed: 1, founds: end ? [end] : [] }));
  if (proposal.outcome !== 'found') throw new Error(JSON.stringify(proposal));
  return proposal;
}

/** The proposed document as any other program would meet it. */
function written({ design }: { design: Design }): Design {
  const reading = readDesign(writeDesign(design));
  if (!reading.ok) throw new Error(reading.message);
  return reading.design;
}

const least = (value: number) => value - 1e-3 * Math.abs(value);
const most = (value: number) => value + 1e-3 * Math.abs(value);

describe('a proposal without limits of its own', () => {
  const proposal = found(asking({ free: FEW }));
  const file = written(proposal);
  const [before, after] = [solve(drawn), solve(file)];

  it('keeps hold index, static margin and tip depth, by a separate solve', () => {
    expect(after.stability.holdIndex).toBeGreaterThan(least(before.stability.holdIndex!));
    expect(after.stability.staticMargin).toBeGreaterThan(least(before.stability.staticMargin));
    const tips = ({ condition, geometry }: typeof before) => condition.depth! + geometry.wing.tipDrop;
    expect(tips(after)).toBeGreaterThan(least(tips(before)));
  });

  it('keeps stall margin and take-off speed, by separate runs at speed', () => {
    const { takeOff: slow } = drawn.brief.speeds;
    for (const fix of ['stance', 'incidence'] as const) {
      const margin = (design: Design) => makeRunner(design).run(slow, fix).stallMargin;
      expect(margin(file)).toBeGreaterThan(least(margin(drawn)));
    }
    const speed = (design: Design) => takeOff(makeRunner, design)!.speed;
    expect(speed(file)).toBeLessThan(most(speed(drawn)));
  });

  it('has less weighted drag, and its table is what the speed runs say', () => {
    const { weightedDrag, drag } = proposal.table;
    expect(weightedDrag.proposal!).toBeLessThan(0.97 * weightedDrag.start!);
    for (const name of ['takeOff', 'cruise', 'top'] as const) {
      const run = makeRunner(file).run(file.brief.speeds[name], 'incidence');
      expect(drag[name].proposal! / run.totalDrag).toBeCloseTo(1, 4);
    }
    const hold = proposal.table.figures.find(({ name }) => name === 'holdIndex')!;
    expect(hold.proposal! / after.stability.holdIndex!).toBeCloseTo(1, 6);
  });

  it('moves nothing but what is free', () => {
    const { length, chord, droop, ...wing } = file.wing;
    expect(wing).toEqual({ ...drawn.wing, length: undefined, chord: undefined, droop: undefined, ...wing });
    const { sweep, twist, section, incidence } = drawn.wing;
    expect(wing).toEqual({ sweep, twist, section, incidence });
    const rest = ({ wing: _wing, stabilizer: _stabilizer, wanted: _wanted, ...others }: Design) => others;
    expect(rest(file)).toEqual(rest(drawn));
  });

  it('names what binds with the drag it costs: easing a limit saves that, solved again', () => {
    expect(proposal.binding.length).toBeGreaterThan(0);
    const limits = { holdIndex: { least: 8 }, takeOffSpeed: { most: 4.8 } };
    const held = foundFromDrawn(asking({ free: FEW, limits }));
    const bound = held.binding.find(({ figure }) => figure === 'holdIndex')!;
    const easier = foundFromDrawn(asking({ free: FEW, limits: { ...limits, holdIndex: { least: 7.9 } } }));
    const saved = held.table.weightedDrag.proposal! - easier.table.weightedDrag.proposal!;
    expect(saved / (bound.cost * 0.1)).toBeCloseTo(1, 0.7);
  });
});

describe('scattered starts', () => {
  it('end at the same drag within 1 %', () => {
    const design = asking({ free: FEW });
    const ends = [1, 2, 3, 4, 5].map((start) => finish(searchFrom(design, { seed: 11, start })));
    const drags = ends.filter((end): end is Found => end !== null).map(({ drag }) => drag);
    expect(drags).toHaveLength(5);
    expect(Math.max(...drags) / Math.min(...drags)).toBeLessThan(1.01);
  });

  it('come out the same for the same seed', () => {
    const design = asking({ free: FEW });
    const twice = [0, 1].map(() => finish(searchFrom(design, { seed: 5, start: 2 })));
    expect(twice[0]).toEqual(twice[1]);
  });
});

describe('a brief that cannot be met', () => {
  it('ends with the limits that clash and no wing', () => {
    const limits = { holdIndex: { least: 40 }, span: { most: 0.7 }, takeOffSpeed: { most: 5 } };
    const proposal = finish(propose(asking({ free: FEW, limits }), { seed: 1 }));
    if (proposal.outcome !== 'clash') throw new Error(proposal.outcome);
    const names = proposal.clash.limits.map(({ figure }) => figure);
    expect(names).toContain('holdIndex');
    expect(names).not.toContain('stanceShift');
    expect(proposal.clash.ranges).toContainEqual({ name: 'stabilizerArea', end: 'most' });
    expect(proposal).not.toHaveProperty('design');
  });

  it('is refused where nothing may move', () => {
    const nothing = asking({ free: { droopFrom: { least: 0.2, most: 0.6 } } });
    expect(() => finish(propose(nothing, { seed: 1 }))).toThrow(
      /^wanted\.free: found nothing that this design can move, allowed length, droop/,
    );
  });
});

describe('laws tried beside one another', () => {
  it('give the best of them', () => {
    const wanted: Wanted = { free: FEW, laws: { droop: ['arc', 'vee'] } };
    const both = finish(searchFrom(asking(wanted), { seed: 1, start: 0 }));
    const other = finish(searchFrom(asking(wanted), { seed: 1, start: 1 }));
    expect([both!.design.wing.droop.kind, other!.design.wing.droop.kind]).toEqual(['arc', 'vee']);
    expect(better(other, both)).toBe(both!.drag < other!.drag ? both : other);
    const alone = finish(searchFrom(asking({ free: FEW, laws: { droop: ['vee'] } }), { seed: 1, start: 0 }));
    expect(other!.drag / alone!.drag).toBeCloseTo(1, 6);
  });
});
