/** What the skin may be like and what its faults cost: against laws of plates and against the section tripped as a whole. */
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { type Fault, faultDrag, wedgeDrag } from '../../../src/solver/studies/defect-drag.ts';
import { faultStudy } from '../../../src/solver/studies/fault-study.ts';
import { finishHeight, finishStudy } from '../../../src/solver/studies/finish-study.ts';
import { Stations } from '../../../src/solver/studies/section-station.ts';
import { skinView } from '../../../src/solver/studies/skin-study.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import { TripCost } from '../../../src/solver/studies/trip-cost.ts';
import curved from '../../../web/demos/curved-race.json' with { type: 'json' };

const demo = curved as Design;
const SLOW = { timeout: 60_000 };
const NU = 1.1892e-6; // m2/s, sea water of 15 degrees: ITTC 7.5-02-01-03, table

/** A strut so thin that it is nearly a plate. */
const plate: Design = { ...demo, strut: { ...demo.strut!, chord: 0.25, thickness: 0.005 } };

const costAt = (part: 'wing' | 'strut', eta: number, speed: number, design = demo) =>
  new TripCost(new Stations(design).at({ part, eta }, speed));

describe('heights that a layer bears', SLOW, () => {
  // Exact Blasius layer with a critical Re_k of 600, 8 m/s, nu 1.1892e-6: published-checks group 8 (derived).
  it.each([
    [0.02, 126.0],
    [0.05, 155.2],
    [0.1, 183.1],
  ])(
    'on a strut as thin as a plate, %d m from its edge, a bump of %d micrometres within 10 %%',
    (x, height) => {
      const { upper, station } = skinView(plate, { part: 'strut', eta: 0.5, speed: 8 });
      const k = upper.x.findIndex((place) => place * station.chord >= x);
      expect(upper.isTurbulent[k]).toBe(0);
      expect(Math.abs((1e6 * upper.bump[k]!) / height - 1)).toBeLessThan(0.1);
    },
  );

  it('steps of 900 and gaps of 15 000 by the stream: 134 and 2230 micrometres at 8 m/s (Nenni and Gluyas 1966, from memory)', () => {
    const { upper } = skinView(demo, { part: 'strut', eta: 0.5, speed: 8 });
    expect(1e6 * upper.step[5]!).toBeCloseTo(134, -1);
    expect(Math.abs((1e6 * upper.gap[5]!) / 2230 - 1)).toBeLessThan(0.01);
  });

  it('evenly spread ones of 100 nu/u: 14.9 micrometres where the water passes at 8 m/s (Schlichting, from memory)', () => {
    const { upper, station } = skinView(demo, { part: 'strut', eta: 0.5, speed: 8 });
    const fastest = Math.min(...upper.spread);
    const local = (100 * station.viscosity) / fastest; // m/s
    expect(Math.abs(station.viscosity / NU - 1)).toBeLessThan(0.01);
    // The fastest place of a strut of this thickness: Cp_min -0.39 or so, a speed of 1.18.
    expect(local / 8).toBeGreaterThan(1.1);
    expect((1e6 * fastest * local) / 8).toBeCloseTo(14.9, 0);
  });

  it('friction follows the laminar plate ahead of transition and the turbulent one behind it, on a thin strut', () => {
    const { upper } = skinView(plate, { part: 'strut', eta: 0.5, speed: 8 });
    const at = (x: number) => upper.x.findIndex((place) => place >= x);
    const laminar = at(0.6 * upper.transition);
    const turbulent = at(0.97);
    expect(Math.abs(upper.friction[laminar]! / upper.laminarPlate[laminar]! - 1)).toBeLessThan(0.15);
    expect(upper.isTurbulent[turbulent]).toBe(1);
    expect(Math.abs(upper.friction[turbulent]! / upper.turbulentPlate[turbulent]! - 1)).toBeLessThan(0.35);
  });

  it('tells the friction ratio and the run of the strut beside common practice: about five, 40 to 50 mm at race speed', () => {
    const { frictionRatio, strutRun } = skinView(demo, { part: 'wing', eta: 0.2, speed: 9.26 });
    // Reported, not fitted: only their size is held.
    expect(frictionRatio!).toBeGreaterThan(3);
    expect(frictionRatio!).toBeLessThan(7);
    expect(strutRun.top!).toBeLessThan(strutRun.cruise!);
    expect(strutRun.top!).toBeGreaterThan(0.02);
    expect(strutRun.top!).toBeLessThan(0.09);
  });
});

describe('what a fault costs', SLOW, () => {
  const cost = costAt('wing', 0.2, 9.26);
  const { station } = cost;

  it('over the whole span: what the section tripped there costs, and nothing behind transition', () => {
    const tripped = cost.tripped(0.1, 1)!.figures.cd - cost.free.figures.cd;
    expect(Math.abs(cost.at('upper', 0.1) / tripped - 1)).toBeLessThan(0.05);
    expect(cost.at('upper', 0.9)).toBe(0);
    expect(cost.at('upper', 0.05)).toBeGreaterThan(cost.at('upper', 0.3));
  });

  it('of a wide step without a wedge is its share of the span; a wedge alone lies within its triangle', () => {
    const wide = wedgeDrag(cost, { side: 'upper', at: 0.1, width: 0.1, wedge: 0 });
    expect(wide).toBeCloseTo(0.1 * station.chord * station.pressure * cost.at('upper', 0.1), 12);
    const wedge = wedgeDrag(cost, { side: 'upper', at: 0.1, width: 0, wedge: 20 });
    // Tripped all over a strip as wide as the wedge grows it would cost more; by half the strip less.
    const grown = 2 * Math.tan(Math.PI / 18) * (cost.transition('upper') - 0.1) * station.chord;
    const strip = grown * station.chord * station.pressure * cost.at('upper', 0.1);
    expect(wedge).toBeGreaterThan(0.2 * strip);
    expect(wedge).toBeLessThan(strip);
  });

  const bump = (height: number, more: Partial<Fault> = {}) =>
    faultDrag(cost, { kind: 'bump', side: 'upper', at: 0.15, height, width: 0.002, wedge: 20, ...more });

  it('of a bump begins where it trips the layer', () => {
    const { critical } = bump(0.0001);
    expect(bump(0.95 * critical!).layer).toBe('calm');
    expect(bump(1.05 * critical!).layer).toBe('tripped');
    expect(bump(1.05 * critical!).low).toBeGreaterThan(10 * bump(0.95 * critical!).low);
    expect(bump(0.0003, { at: 0.8 }).layer).toBe('turbulent');
    expect(bump(0.0003, { at: 0.8 }).high).toBeLessThan(bump(0.0003).low);
  });

  it('of a cavity is a range, as no sound limit is published, unless it is shallow or as wide as a gap that counts', () => {
    const hole = (height: number, width: number) => bump(height, { kind: 'cavity', width });
    expect(hole(0.00002, 0.001)).toMatchObject({ layer: 'calm', high: 0 });
    const doubtful = hole(0.001, 0.001);
    expect(doubtful).toMatchObject({ layer: 'doubtful', low: 0 });
    expect(doubtful.high).toBeGreaterThan(0);
    expect(hole(0.001, 0.004).layer).toBe('tripped');
  });

  it('is told for common faults and for those of the document, at both speeds', () => {
    const design: Design = {
      ...demo,
      defects: [
        { kind: 'bump', on: 'strut', eta: 0.3, at: 0.1, height: 0.0003, width: 0.002 },
        { kind: 'bump', on: 'strut', eta: 0.3, at: 0.1, height: 0.0003, width: 0.002, wedge: 0 },
      ],
    };
    const { faults, defects, total } = finish(
      faultStudy(design, { part: 'wing', eta: 0.2, side: 'upper', at: 0.15 }),
    );
    expect(faults).toHaveLength(8);
    for (const { drag } of faults)
      for (const speed of ['cruise', 'top'] as const) {
        expect(drag[speed]!.low).toBeGreaterThanOrEqual(0);
        expect(drag[speed]!.high).toBeGreaterThanOrEqual(drag[speed]!.low);
        expect(drag[speed]!.high).toBeLessThan(total[speed]!);
      }
    expect(defects[0]!.cruise!.low).toBeGreaterThan(defects[1]!.cruise!.low);
    const bare = finish(
      faultStudy(
        { ...design, stabilizer: null, strut: null },
        { part: 'wing', eta: 0.2, side: 'upper', at: 0.15 },
      ),
    );
    expect(bare.defects).toEqual([
      { cruise: null, top: null },
      { cruise: null, top: null },
    ]);
  });
});

describe('what a finish costs', SLOW, () => {
  it('grows with the grain, is nothing below the smooth limit, and is told for the chosen one', () => {
    const design: Design = { ...demo, finish: { grade: 180 } };
    const { rows, chosen } = finish(finishStudy(design));
    const drags = rows.map(({ cruise }) => cruise!.extra);
    for (let k = 1; k < drags.length; k++) expect(drags[k]!).toBeLessThanOrEqual(drags[k - 1]! + 1e-9);
    expect(rows.at(-1)!.height).toBeLessThan(5e-6);
    expect(drags.at(-1)).toBeCloseTo(0, 9);
    expect(chosen!.cruise!.extra).toBeCloseTo(rows.find(({ name }) => name === 'P180')!.cruise!.extra, 9);
    const { wing, stabilizer, strut } = chosen!.cruise!.parts;
    expect(wing + stabilizer + strut).toBeCloseTo(chosen!.cruise!.extra, 12);
    expect(chosen!.top!.extra).toBeGreaterThan(chosen!.cruise!.extra);
  });

  it('takes a measured height before a grade, and none without either', () => {
    expect(finishHeight({ ...demo, finish: { grade: 400, roughness: 8e-6 } })).toBe(8e-6);
    expect(finishHeight({ ...demo, finish: { grade: 400 } })).toBeCloseTo(0.2 * 35e-6, 12); // P400: 35 micrometres, ISO 6344
    expect(finishHeight({ ...demo, finish: { grade: 400, grainShare: 1 } })).toBeCloseTo(35e-6, 12);
    expect(finishHeight(demo)).toBeNull();
  });

  it('is not told where the foil does not run level', () => {
    const heavy: Design = {
      ...demo,
      brief: { ...demo.brief, allUpMass: 400, speeds: { ...demo.brief.speeds, cruise: 2 } },
    };
    const { rows } = finish(finishStudy(heavy));
    expect(rows.every(({ cruise }) => cruise === null)).toBe(true);
    expect(rows[0]!.top).not.toBeNull();
  });
});
