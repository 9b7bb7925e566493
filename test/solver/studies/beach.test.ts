import { describe, expect, it } from 'vitest';
import { asDrawn, type BeachSetting, setUp } from '../../../src/solver/design/beach-setting.ts';
import type { Design } from '../../../src/solver/design/document.ts';
import { waterProperties } from '../../../src/solver/design/water.ts';
import { fixedProfile, type ProfileModel } from '../../../src/solver/forces/profile.ts';
import { solve } from '../../../src/solver/solve.ts';
import { type BeachFigures, beachStudy, beachTable } from '../../../src/solver/studies/beach.ts';
import { riderStudy } from '../../../src/solver/studies/rider.ts';
import { shimTable } from '../../../src/solver/studies/shims.ts';
import { LevelRunner } from '../../../src/solver/studies/speed.ts';
import { makeRunner } from '../../../src/solver/studies/speed-study.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import curved from '../../../web/demos/curved-race.json';
import downwind from '../../../web/demos/downwind.json';
import flat from '../../../web/demos/flat-race.json';
import { expectClose } from '../../support/close.ts';

const race = curved as Design;
const LONG = { timeout: 60_000 }; // the first flow round a section takes a while

const answer = (design: Design, change: Partial<BeachSetting>, make = makeRunner) =>
  finish(beachStudy(design, { setting: { ...asDrawn(design), ...change } }, make));
const cruise = ({ cruise: found }: BeachFigures) => found!;

/** A strip stalls at cl 1.2 whatever its Reynolds number, and lifts as thin airfoils do: then only weight and water count. */
const stalls: ProfileModel = {
  ...fixedProfile,
  cd: () => 0.008,
  clMax: () => 1.2,
};
const makeThin = (design: Design) =>
  new LevelRunner(design, { strips: 30, stabilizerStrips: 15, rows: 1, sections: 'thin' }, stalls);

describe('a setting on the beach', () => {
  it('as drawn changes nothing and balances at cruise by its very definition', LONG, () => {
    const { drawn, set } = answer(race, {});
    expect(set).toBe(drawn);
    expect(drawn.trimSpeed).toBe(race.brief.speeds.cruise);
  });

  it(
    'balances at the speed nearest to cruise where the stance does so at two, and at none where it does nowhere',
    LONG,
    () => {
      const wide = downwind as unknown as Design;
      const { drawn, set } = answer(wide, { strut: 0.001 });
      const wanted = cruise(drawn).balance - 0.001;
      const stanceAt = (speed: number) => makeRunner(wide).run(speed, 'incidence').stance;
      expectClose('stance', stanceAt(set.trimSpeed!), wanted, { within: 2e-5 });
      expect(Math.abs(set.trimSpeed! - wide.brief.speeds.cruise)).toBeLessThan(1);
      // A scan of the whole range finds no crossing for a foil moved so far that the stance is never wanted.
      const far = answer(wide, { strut: 0.02 });
      const speeds = Array.from({ length: 60 }, (_, k) => 3.601 + (k / 59) * (2 * 9.774 - 3.601));
      const crossings = speeds.filter(
        (speed, k) =>
          k > 0 &&
          (stanceAt(speed) - cruise(far.drawn).balance + 0.02) *
            (stanceAt(speeds[k - 1]!) - cruise(far.drawn).balance + 0.02) <
            0,
      );
      expect(far.set.trimSpeed === null).toBe(crossings.length === 0);
    },
  );

  it('is the edited document, and the feet stay on the board', () => {
    const set = setUp(race, { shim: 0.3, strut: 0.01, mass: -5, water: 'fresh', temperature: 8 });
    expect(set.stabilizer!.incidence).toBeCloseTo(-0.9, 12);
    expect(set.brief.balance.x).toBeCloseTo(0.13, 12);
    expect(set.brief.allUpMass).toBe(90);
    expect(set.brief.water).toEqual({ ...race.brief.water, kind: 'fresh', temperature: 8 });
    expect(set.wing).toBe(race.wing);
    expect(setUp(race, asDrawn(race))).toEqual(race);
  });

  it.each<[Partial<BeachSetting>, string]>([
    [{ mass: -80 }, 'brief.allUpMass: found 15, allowed 20 to 400 kg'],
    [{ temperature: -4 }, 'brief.water.temperature: found -4, allowed 0 to 35 deg C'],
    [{ strut: 4 }, 'brief.balance.x: found -3.86, allowed -3 to 3 m'],
    [{ shim: 40 }, 'stabilizer.incidence: found 38.8, allowed -30 to 30 deg'],
  ])('out of range (%o) says so', (change, message) => {
    expect(() => answer(race, change)).toThrow(message);
  });

  it('moves the feet one to one with the strut, and nothing that the water does', LONG, () => {
    const { drawn, set } = answer(race, { strut: 0.015 });
    expectClose('feet', cruise(set).feet - cruise(drawn).feet, 0.015, { within: 1e-12 });
    for (const key of ['balance', 'drag', 'staticMargin', 'holdIndex'] as const)
      expectClose(key, cruise(set)[key]!, cruise(drawn)[key]!, { within: 1e-9 });
    for (const key of ['takeOff', 'topDrag'] as const)
      expectClose(key, set[key]!, drawn[key]!, { within: 1e-9 });
    // With the feet left, the foil stands 15 mm further aft under them: it balances at the speed that wants that stance.
    const there = makeRunner(race).run(set.trimSpeed!, 'incidence').stance;
    expectClose('stance at the new speed of balance', there, cruise(drawn).balance - 0.015, { within: 2e-5 });
  });

  it('takes off at a speed that grows with the root of mass over density (same angle, same lift coefficient)', () => {
    const density = (kind: 'sea' | 'fresh', temperature: number) =>
      waterProperties(kind, temperature).density;
    const { drawn, set } = answer(race, { mass: 10, water: 'fresh', temperature: 5 }, makeThin);
    const root = Math.sqrt((105 / 95) * (density('sea', 15) / density('fresh', 5)));
    expectClose('take-off', set.takeOff! / drawn.takeOff!, root, { share: 1e-4 });
  });

  it('keeps to that root within 2 % with real sections, which stall earlier in colder water', LONG, () => {
    const heavier = answer(race, { mass: 10 });
    expectClose('mass', heavier.set.takeOff! / heavier.drawn.takeOff!, Math.sqrt(105 / 95), { share: 0.02 });
    const colder = answer(race, { temperature: 5 });
    expect(colder.set.takeOff!).toBeGreaterThan(colder.drawn.takeOff!);
  });

  it('has the hold index fall as the lift coefficient rises: by mass, and by lighter water', LONG, () => {
    const heavier = answer(race, { mass: 10 });
    expectClose('mass', cruise(heavier.set).holdIndex! / cruise(heavier.drawn).holdIndex!, 95 / 105, {
      share: 1e-9,
    });
  });

  it('moves the balance by a shim as the wedge table has it', LONG, () => {
    const row = finish(shimTable(makeRunner, race)).find(({ shim }) => shim === 0.5)!;
    const { set } = answer(race, { shim: 0.5 });
    expect(cruise(set).balance).toBe(row.stance);
    expect(cruise(set).feet).toBe(row.feet);
    expect(cruise(set).drag).toBe(row.total);
  });

  it('agrees with a solve of the edited document, stabilizer as it is set', LONG, () => {
    const setting = { shim: -0.4, strut: 0, mass: 8, water: 'fresh', temperature: 9 } as const;
    const changed = solve(setUp(race, setting), { neutralDroop: false });
    const { set } = answer(race, setting);
    expectClose('drag', cruise(set).drag, changed.drag.total, { share: 1e-6 });
    expectClose('hold index', cruise(set).holdIndex!, changed.stability.holdIndex!, { share: 1e-9 });
    const margin = (changed.stability.neutralPoint - cruise(set).balance) / changed.geometry.wing.meanChord;
    expectClose('static margin', cruise(set).staticMargin, margin, { within: 1e-6 });
  });

  it(
    'moves the balance by a shim as the vortex forces of a solve do, whose drags hardly change',
    LONG,
    () => {
      const stance = (shim: number) =>
        solve(setUp(race, { ...asDrawn(race), shim }), { neutralDroop: false }).pitch.trimStance!;
      const { drawn, set } = answer(race, { shim: -0.4 });
      const moved = cruise(set).balance - cruise(drawn).balance;
      expectClose('balance', moved, stance(-0.4) - stance(0), { within: 0.001 });
      expect(moved).toBeLessThan(-0.01); // forward, far more than the tolerance
    },
  );

  it(
    'solves several changes together: not the sum of the single ones, but the same as one after the other',
    LONG,
    () => {
      const changes = { shim: 0.5, strut: -0.02, mass: 10, water: 'fresh', temperature: 5 } as const;
      const { drawn, set } = answer(race, changes);
      const parts = Object.entries(changes).map(([key, value]) => answer(race, { [key]: value }).set);
      const added = parts.reduce((sum, part) => sum + part.trimSpeed! - drawn.trimSpeed!, drawn.trimSpeed!);
      expect(Math.abs(added - set.trimSpeed!)).toBeGreaterThan(0.1); // m/s
      const later = answer(setUp(race, { ...asDrawn(race), mass: 10 }), { ...changes, mass: 0 });
      expectClose('drag', cruise(later.set).drag, cruise(set).drag, { share: 1e-12 });
      expectClose('take-off', later.set.takeOff!, set.takeOff!, { share: 1e-12 });
    },
  );

  it('without a stabilizer there is nothing to shim', LONG, () => {
    const bare = { ...race, stabilizer: null };
    const { drawn, set } = answer(bare, { shim: 0.5 });
    expect(set.takeOff).toBe(drawn.takeOff);
    expect(set.cruise).toEqual(drawn.cruise);
  });

  it('that nothing carries says why and keeps the other figures', LONG, () => {
    const slow = { ...race, brief: { ...race.brief, speeds: { takeOff: 0.6, cruise: 0.7, top: 14 } } };
    const { set } = answer(slow, { mass: 1 });
    expect(set.cruise).toBeNull();
    expect(set.problem).toContain('carries this weight');
    expect(set.takeOff).toBeGreaterThan(4);
    expect(set.topDrag).toBeGreaterThan(50);
  });

  it('has a table of single changes for paper, each as if asked alone', LONG, () => {
    const cold = { ...race, brief: { ...race.brief, water: { ...race.brief.water, temperature: 7 } } };
    const rows = finish(beachTable(cold));
    expect(rows.map(({ changes }) => changes)).toEqual([
      null,
      ...Array(4).fill('shim'),
      ...Array(4).fill('strut'),
      ...Array(4).fill('mass'),
      'water',
      'temperature', // 5 colder; 10 colder would be ice
    ]);
    for (const { setting, figures } of [rows[0]!, rows[4]!, rows[13]!])
      expect(figures).toEqual(finish(beachStudy(cold, { setting })).set);
  });
});

describe('two foils for one rider', () => {
  it(
    'has the figures of both as `solve` has them, the second asked with the brief of the first',
    LONG,
    () => {
      const other = { ...(flat as Design), brief: { ...race.brief, allUpMass: 70, depth: 0.3 } };
      const found = finish(riderStudy(race, { against: other }));
      expect(found.isSameBrief).toBe(false);
      for (const [figures, design] of [
        [found.one, race],
        [found.other, { ...other, brief: race.brief }],
      ] as const) {
        const { stability } = solve(design, { neutralDroop: false });
        expectClose('roll from yaw', figures.rollFromYaw!, stability.rollFromYaw!, { share: 1e-9 });
        expectClose('hold index', figures.holdIndex!, stability.holdIndex!, { within: 1e-9 });
        const top = solve(design, { neutralDroop: false, speed: design.brief.speeds.top }).drag.total;
        expectClose('drag at top speed', figures.topDrag!, top, { share: 1e-6 });
        expect(figures.problem).toBeNull();
      }
    },
  );

  it('heels to breach as a straight wing does: sine of the heel is depth over half span', LONG, () => {
    const shallow = { ...(flat as Design), brief: { ...race.brief, depth: 0.2 } };
    const { one } = finish(riderStudy(shallow, { against: shallow }));
    expectClose('heel', one.breachHeel!, (Math.asin(0.2 / 0.37) * 180) / Math.PI, { within: 0.05 });
  });

  it('says why a foil cannot run in the other’s brief', LONG, () => {
    const short = { ...race, strut: { ...race.strut!, length: 0.4 } };
    const { other } = finish(riderStudy(race, { against: short }));
    expect(other.feet).toBeNull();
    expect(other.topDrag).toBeNull();
    expect(other.problem).toContain('allowed up to the strut’s length, 0.4 m'.replace('’', "'"));
  });
});
