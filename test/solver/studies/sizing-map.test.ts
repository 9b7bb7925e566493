/** Stabilizer sizing and the map of droop against stabilizer: every point is the design it stands for, solved. */
import { describe, expect, it, vi } from 'vitest';
import kept from '../../../src/components/hold/hold-report.json' with { type: 'json' };
import type { Design } from '../../../src/solver/design/document.ts';
import { Bender } from '../../../src/solver/geometry/bend.ts';
import { resizedStabilizer, type StabilizerMeasure } from '../../../src/solver/geometry/stabilizer-size.ts';
import { rankCorrelation } from '../../../src/solver/numeric/rank.ts';
import { solve } from '../../../src/solver/solve.ts';
import { droopMap } from '../../../src/solver/studies/droop-map.ts';
import { type HoldFigure, holdReport } from '../../../src/solver/studies/hold-report.ts';
import { shimTable } from '../../../src/solver/studies/shims.ts';
import { makeRunner } from '../../../src/solver/studies/speed-study.ts';
import { stabilizerChanges } from '../../../src/solver/studies/stabilizer-changes.ts';
import { sizeStabilizer } from '../../../src/solver/studies/stabilizer-sizing.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesign } from '../../support/designs.ts';

vi.setConfig({ testTimeout: 60_000 }); // polars are made once, more slowly on a busy machine

const MEASURES: StabilizerMeasure[] = ['area', 'arm', 'droop'];

/** The design of a point of the map. */
function designAt(design: Design, measure: StabilizerMeasure, droop: number, size: number): Design {
  return {
    ...design,
    wing: new Bender(design.wing, 'unrolled').at(droop),
    stabilizer: resizedStabilizer(design.stabilizer!, measure, size),
  };
}

describe('map of droop against stabilizer', () => {
  it.each(MEASURES)('by %s: its points are the reports of the designs they stand for', (measure) => {
    const design = goodDesign('curved-race');
    const map = finish(droopMap(design, { measure, columns: 4, rows: 3, to: 36 }))!;
    for (const [i, j] of [
      [0, 0],
      [2, 1],
      [3, 2],
    ] as const) {
      const k = j * 4 + i;
      const report = solve(designAt(design, measure, map.droop[i]!, map.size[j]!), { neutralDroop: false });
      expectClose('hold index', map.holdIndex[k]!, report.stability.holdIndex!, { within: 1e-6 });
      expectClose('drag', map.inducedDrag[k]!, report.inducedDrag.farField, { share: 1e-6 });
      expectClose('lost', map.lostFraction[k]!, report.ledger.lostFraction!, { within: 1e-6 });
      expectClose('margin', map.staticMargin[k]!, report.stability.staticMargin, { within: 1e-6 });
    }
  });

  it('with the span kept finds its flat twins between four of them, to a millionth', () => {
    const design = goodDesign('curved-race');
    const map = finish(droopMap(design, { measure: 'area', kept: 'tipToTip', columns: 6, rows: 2, to: 45 }))!;
    const wing = new Bender(design.wing, 'tipToTip').at(map.droop[3]!);
    const stabilizer = resizedStabilizer(design.stabilizer!, 'area', map.size[0]!);
    const report = solve({ ...design, wing, stabilizer }, { neutralDroop: false });
    expectClose('lost', map.lostFraction[3]!, report.ledger.lostFraction!, { within: 3e-6 });
  });

  it('stands on the present design', () => {
    const design = goodDesign('curved-race');
    const report = solve(design, { neutralDroop: false });
    const { present } = finish(droopMap(design, { measure: 'area', columns: 2, rows: 2 }))!;
    expectClose('droop', present.droop, 24, { within: 1e-9 });
    expectClose('area', present.size, report.geometry.stabilizer!.projectedArea, { share: 1e-9 });
  });

  it('has nothing to say without a stabilizer, and no value where the water forbids', () => {
    expect(
      finish(droopMap({ ...goodDesign('curved-race'), stabilizer: null }, { measure: 'arm' })),
    ).toBeNull();
    const shallow = goodDesign('curved-race');
    const up = { ...shallow, brief: { ...shallow.brief, depth: 0.06 } };
    const map = finish(droopMap(up, { measure: 'droop', columns: 2, rows: 2 }))!;
    expect(map.holdIndex[0]).toBeNaN(); // 30 degrees up: the stabilizer's tips leave the water
    expect(map.inducedDrag[2]).toBeGreaterThan(0);
  });
});

describe('stabilizer sizing', () => {
  it('finds the area and the arm that give the margin and the hold asked for', () => {
    const design = goodDesign('curved-race');
    const sizing = finish(sizeStabilizer(design, { staticMargin: 0.2, holdIndex: 4 }))!;
    for (const { goal, found, problem } of sizing.choices) {
      expect(problem).toBeNull();
      const stabilizer = { ...resizedStabilizer(design.stabilizer!, 'area', found!.area), arm: found!.arm };
      const { stability } = solve({ ...design, stabilizer }, { neutralDroop: false });
      expectClose('margin', found!.staticMargin, stability.staticMargin, { within: 1e-5 });
      expectClose('hold', found!.holdIndex!, stability.holdIndex!, { within: 1e-5 });
      if (goal.startsWith('margin')) expectClose(goal, stability.staticMargin, 0.2, { within: 1e-4 });
      if (goal.startsWith('hold')) expectClose(goal, stability.holdIndex!, 4, { within: 1e-3 });
    }
  });

  it('by hand: the hold index goes with the area and with the arm, all else as it was', () => {
    const design = goodDesign('curved-race');
    const { choices } = finish(sizeStabilizer(design, {}))!;
    const present = choices[0]!.found!;
    const twice = finish(sizeStabilizer(design, { holdIndex: 2 * present.holdIndex! }))!.choices;
    const byArea = twice.find(({ goal }) => goal === 'holdByArea')!.found!;
    expectClose('area', byArea.area, 2 * present.area, { share: 1e-4 });
    const byArm = twice.find(({ goal }) => goal === 'holdByArm')!.found!;
    expectClose('arm', byArm.arm, 2 * present.arm, { share: 1e-4 });
  });

  it('balances each choice: wing and stabilizer carry the weight together', () => {
    const design = goodDesign('curved-race');
    const weight = solve(design, { neutralDroop: false }).condition.weightCarried;
    for (const { found } of finish(sizeStabilizer(design, { staticMargin: 0.1 }))!.choices) {
      expectClose('lift', found!.lift + found!.wingLift, weight, { share: 1e-6 });
      expect(found!.totalDrag).toBeGreaterThan(found!.inducedDrag);
    }
  });

  it('left to itself asks for the neutral point level with the balance point, and one point more of hold', () => {
    const design = goodDesign('curved-race');
    const { wanted, choices } = finish(sizeStabilizer(design))!;
    const of = (goal: string) => choices.find((choice) => choice.goal === goal)!.found!;
    expect(wanted.staticMargin).toBe(0);
    const sized = resizedStabilizer(design.stabilizer!, 'area', of('marginByArea').area);
    const { stability } = solve({ ...design, stabilizer: sized }, { neutralDroop: false });
    expectClose('level', stability.neutralPoint, design.brief.balance.x, { within: 1e-5 });
    expectClose('hold', of('holdByArea').holdIndex! - of('present').holdIndex!, 1, { within: 1e-3 });
  });

  it('finds the incidence that trims: built with it, the foil runs level where the rider stands', () => {
    const design = goodDesign('curved-race');
    for (const { found } of finish(sizeStabilizer(design, { staticMargin: 0.1 }))!.choices) {
      const stabilizer = {
        ...resizedStabilizer(design.stabilizer!, 'area', found!.area),
        arm: found!.arm,
        incidence: found!.incidence,
      };
      const [present] = finish(stabilizerChanges({ ...design, stabilizer }))!.trials;
      // incidence enters as the tangent of its unit solution: a hundredth of a millimetre of stance
      expectClose('stance', present!.found!.stance, design.brief.balance.x, { within: 1e-5 });
      expectClose('drag', present!.found!.totalDrag, found!.totalDrag, { share: 1e-6 });
    }
  });

  it('looks for an arm only where the stabilizer is clear of a wing swept far back', () => {
    const design = goodDesign('curved-race');
    const swept = { ...design, wing: { ...design.wing, sweep: { kind: 'straight', angle: 35 } as const } };
    const arm = swept.stabilizer!.arm;
    const close = { ...swept, stabilizer: { ...swept.stabilizer!, arm: 0.15, height: 0 } };
    expect(() => solve(close, { neutralDroop: false })).toThrow(/touching the wing/);
    const present = finish(sizeStabilizer(swept))!.choices[0]!.found!;
    const { choices } = finish(sizeStabilizer(swept, { staticMargin: present.staticMargin }))!;
    expectClose('arm', choices.find(({ goal }) => goal === 'marginByArm')!.found!.arm, arm, { within: 1e-3 });
  });

  it('says in a sentence what cannot be had', () => {
    const design = goodDesign('flat-race');
    const { choices } = finish(sizeStabilizer(design, { staticMargin: 40, holdIndex: 5 }))!;
    const problems = choices.flatMap(({ problem }) => problem ?? []);
    expect(problems[0]).toMatch(/no area from 0.09 to 9 times/);
    expect(problems.at(-1)).toMatch(/wing or stabilizer is flat/);
  });
});

describe('changes to a foil that exists', () => {
  const design = goodDesign('curved-race');
  const trialsOf = (options = {}) => {
    const { trials } = finish(stabilizerChanges(design, options))!;
    return Object.fromEntries(trials.map(({ change, found }) => [change, found!]));
  };

  it('a shim that raises the nose of the stabilizer moves the stance aft, by as much as the shims of Speed say', () => {
    const { present, noseUp, noseDown } = trialsOf({ shim: 0.25 });
    expect(noseUp!.lift).toBeGreaterThan(present!.lift);
    const shims = finish(shimTable(makeRunner, design));
    for (const [shim, trial] of [
      [0.25, noseUp!],
      [0, present!],
      [-0.25, noseDown!],
    ] as const) {
      const row = shims.find((each) => Math.abs(each.shim - shim) < 1e-9)!;
      expectClose('stance', trial.stance, row.stance, { within: 1e-6 });
      expectClose('drag', trial.totalDrag, row.total, { share: 1e-6 });
    }
    expect(noseUp!.stance).toBeGreaterThan(present!.stance);
  });

  it('each is the design it stands for', () => {
    const { longer, larger } = trialsOf();
    const arm = design.stabilizer!.arm + 0.05;
    const stretched = solve(
      { ...design, stabilizer: { ...design.stabilizer!, arm } },
      { neutralDroop: false },
    );
    expectClose('margin', longer!.staticMargin, stretched.stability.staticMargin, { within: 1e-6 });
    expectClose('hold', longer!.holdIndex!, stretched.stability.holdIndex!, { within: 1e-6 });
    const area = solve(design, { neutralDroop: false }).geometry.stabilizer!.projectedArea;
    expectClose('area', larger!.area, 1.1 * area, { share: 1e-9 });
  });

  it('a longer fuselage and a larger stabilizer steady the foil in pitch and hold it better', () => {
    const { present, longer, larger, shorter, smaller } = trialsOf();
    for (const more of [longer!, larger!]) {
      expect(more.staticMargin).toBeGreaterThan(present!.staticMargin);
      expect(more.holdIndex!).toBeGreaterThan(present!.holdIndex!);
    }
    for (const less of [shorter!, smaller!]) expect(less.staticMargin).toBeLessThan(present!.staticMargin);
  });

  it('has nothing to change without a stabilizer', () => {
    expect(finish(stabilizerChanges({ ...design, stabilizer: null }))).toBeNull();
    expect(finish(sizeStabilizer({ ...design, stabilizer: null }))).toBeNull();
  });
});

describe('report on the hold index', () => {
  it('is the same for the same seed, and counts what it used', () => {
    const one = finish(holdReport(3, 12));
    expect(finish(holdReport(3, 12))).toEqual(one);
    expect(finish(holdReport(4, 12))).not.toEqual(one);
    expect(one.drawn).toBeGreaterThanOrEqual(12);
    for (const set of [one.index, one.rollTerm, one.yawTerm])
      for (const { value } of Object.values(set)) expect(Math.abs(value)).toBeLessThanOrEqual(1);
  });

  it('along one design bent further and further index and roll-from-yaw rank it alike', () => {
    const indices = [4, 12, 20, 28].map((tipAngle) => {
      const design = goodDesign('curved-race');
      const bent = { ...design, wing: { ...design.wing, droop: { kind: 'arc', tipAngle } as const } };
      const { stability } = solve(bent, { neutralDroop: false });
      return [stability.holdIndex!, -stability.rollFromYaw!] as const;
    });
    const by = (k: 0 | 1) => indices.map((pair) => pair[k]);
    expectClose('rank correlation', rankCorrelation(by(0), by(1)), 1, { within: 1e-12 });
  });

  it('kept for the page is still what the solver says; if not: npm run -s batch -- hold-report > src/components/hold/hold-report.json', () => {
    expect(kept.designs).toBe(500);
    const { first } = finish(holdReport(kept.seed, kept.first.designs));
    for (const [figure, { value }] of Object.entries(first.index))
      expectClose(figure, kept.first.index[figure as HoldFigure].value, value, { within: 0.02 });
  });
});
