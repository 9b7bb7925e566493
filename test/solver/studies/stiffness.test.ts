/** The compliance account, the strut under load, how thin, whistling edges, and the figures of the batch command. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { readDesign } from '../../../src/solver/design/read.ts';
import { complianceAccount, LOAD_CASES } from '../../../src/solver/studies/compliance.ts';
import { remedies } from '../../../src/solver/studies/remedies.ts';
import { sideTrim } from '../../../src/solver/studies/side-trim.ts';
import { makeRunner } from '../../../src/solver/studies/speed-study.ts';
import { stiffnessFigures } from '../../../src/solver/studies/stiffness.ts';
import { strutState } from '../../../src/solver/studies/strut-state.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import { spheroidGain, thinStudy, withThickness } from '../../../src/solver/studies/thin.ts';
import { tailFrequency, whistle } from '../../../src/solver/studies/whistle.ts';
import { goodDesigns } from '../../support/designs.ts';

function demo(name = 'curved-race'): Design {
  const reading = readDesign(
    readFileSync(new URL(`../../../web/demos/${name}.json`, import.meta.url), 'utf8'),
  );
  if (!reading.ok) throw new Error(reading.message);
  return reading.design;
}

const RIGID = { roll: 1e9, pitch: 1e9, yaw: 1e9 };
const L = demo().strut!.length;

describe('the compliance account', () => {
  it.each(goodDesigns())('of %s has shares that add up to the whole', (_name, design) => {
    const { cases, shares } = complianceAccount(design);
    for (const { give, shares: parts } of [...cases, { give: 1, shares }]) {
      expect(give).toBeGreaterThan(0);
      expect(Object.values(parts).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    }
  });

  it('of a strut on rigid joints gives W L^3/3EI to the side, with the twist of a lever ahead', () => {
    const base = demo();
    const design: Design = {
      ...base,
      fuselage: null,
      joints: { box: RIGID, strut: RIGID, wing: RIGID, stabilizer: RIGID },
    };
    const { EI, GJ } = strutState(design);
    const { cases, root } = complianceAccount(design);
    const side = cases.find(({ load }) => load === 'side')!;
    // The wing's root stands ahead of the strut: the load twists it as well.
    const skew = root.side.side - (100 * L ** 3) / (3 * EI!.side);
    expect(side.give).toBeCloseTo(root.side.side, 12);
    expect(skew).toBeGreaterThan(0);
    const lever = Math.sqrt((skew * GJ!) / (100 * L));
    expect(lever).toBeGreaterThan(0.1);
    expect(lever).toBeLessThan(0.16);
  });

  it('gives half as much where everything is twice as stiff', () => {
    const twice = (factor: number): Design => {
      const made = { modulus: 6e10 * factor, shear: 1e10 * factor };
      const spring = { roll: 5e3 * factor, pitch: 5e3 * factor, yaw: 5e3 * factor };
      return {
        ...demo(),
        laminate: { strut: made, fuselage: made, wing: made, stabilizer: made },
        joints: { box: spring, strut: spring, wing: spring, stabilizer: spring },
      };
    };
    const [one, two] = [complianceAccount(twice(1)), complianceAccount(twice(2))];
    LOAD_CASES.forEach((_, k) => {
      expect(one.cases[k]!.give / two.cases[k]!.give).toBeCloseTo(2, 9);
    });
  });

  it('names first the change that takes most of the give away', () => {
    const list = finish(remedies(demo()));
    expect(list[0]!.left).toBeLessThan(1);
    expect(list.map(({ left }) => left)).toEqual(list.map(({ left }) => left).sort((a, b) => a - b));
    const soft = demo();
    const softened = finish(remedies({ ...soft, joints: { wing: { roll: 200, pitch: 200, yaw: 200 } } }));
    const best = softened.reduce((one, other) => (other.byCase.roll < one.byCase.roll ? other : one));
    expect(best.label).toBe('wing joint twice as stiff');
  });
});

describe('the strut', () => {
  it('under the test load sinks by the closed form of a beam on a root spring', () => {
    const { EI, GJ, test } = strutState(demo());
    expect(test.foot!.side).toBeCloseTo((100 * L ** 3) / (3 * EI!.side) + (100 * L ** 2) / 8000, 6);
    expect(test.foot!.twist).toBeCloseTo((10 * L) / GJ! / (Math.PI / 180) + 10 / 4000 / (Math.PI / 180), 5);
    expect(test.ofWhichBox!.side).toBeCloseTo((100 * L ** 2) / 8000, 9);
  });

  it('half as thick on the same chord has an eighth of its bending stiffness', () => {
    const design = demo();
    const thin = { ...design, strut: withThickness(design.strut!, design.strut!.thickness / 2) };
    const [whole, half] = [strutState(design), strutState(thin)];
    expect(whole.EI!.side / half.EI!.side).toBeCloseTo(8, 9);
    expect(whole.GJ! / half.GJ!).toBeGreaterThan(7.7);
  });

  it('tapered to a thicker top gives less than an even one, more than one thick all along', () => {
    const design = demo();
    const { chord } = design.strut!;
    const tapered = { ...design, strut: { ...design.strut!, top: { chord, thickness: 0.017 } } };
    const thick = { ...design, strut: { ...design.strut!, thickness: 0.017 } };
    const side = (of: Design) => strutState(of).test.foot!.side;
    expect(side(tapered)).toBeLessThan(side(design));
    expect(side(tapered)).toBeGreaterThan(side(thick));
  });

  it('is strained at the box by M t/2EI', () => {
    const { test, EI } = strutState(demo());
    const { strain, from } = test.strains.find(({ part }) => part === 'strut')!;
    const moment = 100 * (L - from);
    expect(strain / ((moment * 0.0065) / EI!.side)).toBeCloseTo(1, 2);
    expect(from).toBeLessThan(0.05);
  });

  it('leans against the rig’s pull, with the leeway and side force that Speed finds', () => {
    const held = demo();
    held.brief = { ...held.brief, sidePull: { share: 0.2, height: 2 } };
    const { pulled, running } = strutState(held);
    const trim = sideTrim(makeRunner(held), held.brief.speeds.cruise, { by: 'heel', heel: 0 }, 'incidence', {
      strips: 20,
      stabilizerStrips: 10,
      rows: 1,
    });
    expect(pulled!.leeway).toBeCloseTo(trim.leeway, 9);
    expect(pulled!.strutForce).toBeCloseTo(trim.strutForce, 6);
    // The rig pulls to starboard, the foil holds to port: the foot goes to port.
    expect(running.foot!.side).toBeLessThan(0);
    expect(strutState(demo()).running.foot!.side).toBe(0);
    const unloaded = strutState(held, { side: { by: 'strut' } });
    expect(Math.abs(unloaded.pulled!.strutForce)).toBeLessThan(1);
    expect(unloaded.pulled!.heel).not.toBe(0);
  });

  it('bends under its own side force and the foil’s by moments about the box', () => {
    const design = demo();
    design.brief = { ...design.brief, sidePull: { share: 0.2, height: 2 } };
    const { pulled, running, EI } = strutState(design);
    const { strain, from } = running.strains.find(({ part }) => part === 'strut')!;
    // Foil and strut together hold the pull, the foil at the foot, the strut along its wetted length: the moment at the
    // box lies between that of the whole pull at the water and at the foot. Strain is M t/2EI.
    const pull = 0.2 * design.brief.allUpMass * 9.80665;
    const curvature = strain / 0.0065;
    expect(from).toBeLessThan(0.05);
    expect(curvature * EI!.side).toBeGreaterThan(pull * (L - design.brief.depth!));
    expect(curvature * EI!.side).toBeLessThan(pull * L);
    expect(Math.abs(pulled!.strutForce + pulled!.foilSideForce + pull)).toBeLessThan(0.01 * pull);
  });

  it('reserve falls with the safety factor', () => {
    const at = (safety: number) =>
      strutState({ ...demo(), laminate: { safety } }).running.strains.find(({ part }) => part === 'wing')!
        .reserve!;
    expect(at(2) / at(4)).toBeCloseTo(2, 9);
  });
});

describe('how thin', () => {
  const study = finish(thinStudy(demo()));

  it('the strut can be follows the cube law, and drag falls with thickness', () => {
    const { size, bending, deflection, drag, inception } = study.strut!.columns;
    const last = size.length - 1;
    expect(bending[last]! / bending[0]! / (size[last]! / size[0]!) ** 3).toBeCloseTo(1, 9);
    for (let k = 1; k <= last; k++) {
      expect(deflection[k]!).toBeLessThan(deflection[k - 1]!);
      expect(drag[k]!).toBeGreaterThan(drag[k - 1]!);
      expect(inception[k]!).toBeLessThan(inception[k - 1]!);
    }
  });

  it('is where the deflection passes the limit', () => {
    const { thinnest, limit } = study.strut!;
    const design = demo();
    const foot = strutState({ ...design, strut: withThickness(design.strut!, thinnest!) }).test.foot!;
    expect(foot.side).toBeCloseTo(limit, 5);
  });

  it('the fuselage can be follows the fourth power', () => {
    const { size, bending } = study.fuselage!.columns;
    const last = size.length - 1;
    expect(bending[last]! / bending[0]! / (size[last]! / size[0]!) ** 4).toBeCloseTo(1, 9);
    expect(study.fuselage!.thinnest).toBeGreaterThan(0);
  });

  it('takes the user’s mark and limits', () => {
    const limits = { strutThickness: 0.011, strutDeflection: 0.06 };
    const own = finish(thinStudy({ ...demo(), laminate: { limits } })).strut!;
    expect([own.mark, own.limit]).toEqual([0.011, 0.06]);
    expect(own.thinnest!).toBeLessThan(study.strut!.thinnest!);
    expect(study.strut!.mark).toBe(0.013); // common practice
  });

  it('water speeds up past a spheroid by Lamb’s coefficient', () => {
    // H. Lamb, Hydrodynamics, 6th ed. 1932, table in art. 115: k1 = 0.059 for a length of 5 diameters, 0.5 for a sphere.
    expect(spheroidGain(0.2)).toBeCloseTo(0.059, 3);
    expect(spheroidGain(0.9999)).toBeCloseTo(0.5, 3);
  });
});

describe('a trailing edge', () => {
  it('sheds at 0.2 V over edge and layer, and a thicker one lower', () => {
    const [root] = whistle(demo());
    expect(root!.tone.cruise).toBeCloseTo((0.2 * demo().brief.speeds.cruise) / (root!.edge + root!.layer), 6);
    const [blunt] = whistle({ ...demo(), build: { leastEdge: 0.002 } });
    expect(blunt!.tone.cruise).toBeLessThan(root!.tone.cruise);
    expect(blunt!.edge).toBe(0.002);
  });

  it('thinner than it can sing does not', () => {
    for (const place of whistle(demo()))
      if (place.edge < place.quietEdge) expect(place.mayWhistle).toBe(false);
  });

  it('of a tail twice as long and thick swings at half the frequency', () => {
    const [one, two] = [0.03, 0.06].map((length) =>
      tailFrequency(demo(), 'wing', length, 0.2 * length, 1025),
    );
    expect(one! / two!).toBeCloseTo(2, 9);
  });
});

describe('the batch figures', () => {
  it.each(goodDesigns())('of %s are numbers throughout', (_name, design) => {
    const figures = stiffnessFigures(design);
    expect(figures.strut === null).toBe(design.strut === null);
    expect(Object.keys(figures.compliance)).toEqual([
      'box',
      'strut',
      'strutJoint',
      'fuselage',
      'wingJoint',
      'wing',
      'stabilizerJoint',
      'stabilizer',
    ]);
    expect(Number.isFinite(figures.droop.built)).toBe(true);
    expect(Number.isFinite(figures.droop.flying)).toBe(true);
    expect(figures.caution).toContain('no approval');
  });

  it('keep the document’s tip angle as built, and lose droop in flight', () => {
    const { droop, strut } = stiffnessFigures(demo());
    expect(droop.built).toBeCloseTo(26, 9);
    expect(droop.flying!).toBeLessThan(26);
    expect(strut!.EI).toBeGreaterThan(0);
  });
});
