import { describe, expect, it } from 'vitest';
import {
  begunAt,
  bentTo,
  droppedTo,
  mostPower,
  shapedTo,
  shapeGrips,
  withPower,
} from '../../src/session/droop-drag.ts';
import type { DroopLaw, Planform } from '../../src/solver/design/document.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { demo } from './designs.ts';

const HALF = 0.37; // m, unrolled half length of the demo
const RADIANS = Math.PI / 180;
const wingWith = (droop: DroopLaw): Planform => ({ ...demo().wing, droop });
const surfaceWith = (droop: DroopLaw) => surfaceOf(wingWith(droop));

// A circular arc of length s that turns by t: radius s/t, height r (1 - cos t). Plane geometry of the circle.
const arcDrop = (degrees: number) => (HALF / (degrees * RADIANS)) * (1 - Math.cos(degrees * RADIANS));

const LAWS: Record<string, DroopLaw> = {
  flat: { kind: 'flat' },
  vee: { kind: 'vee', tipAngle: 10 },
  arc: { kind: 'arc', tipAngle: 26 },
  'arc by drop': { kind: 'arc', tipDrop: 0.08 },
  late: { kind: 'late', tipAngle: 40, from: 0.4, power: 1.5 },
  gull: { kind: 'gull', rootAngle: 8, tipAngle: 25, knee: 0.35 },
  points: {
    kind: 'points',
    at: [
      [0, 0],
      [0.5, 8],
      [1, 30],
    ],
  },
  formula: { kind: 'formula', expression: '26 * eta^2' },
};

describe.each(Object.entries(LAWS))('tip of a wing drooped by law: %s', (_name, law) => {
  it('hangs where the pointer puts it, up or down', () => {
    for (const drop of [0.1, 0.03, -0.05]) {
      const bent = droppedTo(wingWith(law), drop);
      // an angle is written to a tenth of a degree, which moves a tip 0.37 m out by up to 0.4 mm
      expect(surfaceWith(bent).tipDrop).toBeCloseTo(drop, 3);
      if (law.kind !== 'flat') expect(bent.kind).toBe(law.kind);
    }
  });

  it('stays within the document’s 90 degrees, however far it is pulled', () => {
    for (const drop of [5, -5]) {
      const surface = surfaceWith(droppedTo(wingWith(law), drop));
      expect(Math.abs(surface.amplitude)).toBeLessThanOrEqual(90.001 * RADIANS);
      expect(Math.abs(surface.tipDrop)).toBeGreaterThan(0.1);
    }
  });

  it('comes back from flat within one gesture, which always starts from the same law', () => {
    const wing = wingWith(law);
    const start = surfaceOf(wing).tipDrop;
    droppedTo(wing, 0);
    expect(surfaceWith(droppedTo(wing, start)).tipDrop).toBeCloseTo(start, 3);
  });
});

describe('tip droop', () => {
  it('makes a flat wing an arc, by the geometry of the circle', () => {
    expect(droppedTo(wingWith({ kind: 'flat' }), arcDrop(20))).toEqual({ kind: 'arc', tipAngle: 20 });
  });

  it('keeps a tip drop that the document gives, to the tenth of a millimetre asked for', () => {
    expect(droppedTo(wingWith({ kind: 'arc', tipDrop: 0.08 }), 0.0925)).toEqual({
      kind: 'arc',
      tipDrop: 0.0925,
    });
  });

  it('keeps keys it does not know', () => {
    const law = { kind: 'arc', tipAngle: 26, remark: 'mine' } as DroopLaw;
    expect(droppedTo(wingWith(law), 0.1)).toHaveProperty('remark', 'mine');
  });

  it('scales a formula without nesting factors, and out of nothing makes an arc', () => {
    const once = bentTo(wingWith({ kind: 'formula', expression: '26 * eta^2' }), 13);
    expect(once).toEqual({ kind: 'formula', expression: '0.5 * (26 * eta^2)' });
    expect(bentTo(wingWith(once), 52)).toEqual({ kind: 'formula', expression: '2 * (26 * eta^2)' });
    expect(bentTo(wingWith(once), 26)).toEqual({ kind: 'formula', expression: '26 * eta^2' });
    const gone = bentTo(wingWith(once), 0);
    expect(bentTo(wingWith(gone), 26)).toEqual({ kind: 'formula', expression: '26 * eta^2' });
    expect(bentTo(wingWith({ kind: 'formula', expression: '0' }), 20)).toEqual({
      kind: 'formula',
      expression: '20 * eta',
    });
  });

  it('holds back where the tip-to-tip span is kept and the wing would grow without bound', () => {
    const wing: Planform = {
      ...wingWith({ kind: 'vee', tipAngle: 10 }),
      length: { kind: 'tipToTip', value: 0.7 },
    };
    expect(bentTo(wing, 90)).toEqual({ kind: 'vee', tipAngle: 75 });
  });
});

describe('shape of the droop', () => {
  const gripOf = (law: DroopLaw) => shapeGrips(wingWith(law))[0]!;
  const heightAt = (law: DroopLaw, eta: number) => surfaceWith(law).point(eta).z;

  it.each(['vee', 'arc', 'late', 'points', 'gull'] as const)('leaves %s as it is when not moved', (name) => {
    const law = LAWS[name]!;
    const grip = gripOf(law);
    const same = shapedTo(wingWith(law), grip, heightAt(law, grip.eta));
    expect(same.kind).toBe(law.kind);
    for (const eta of [0.3, 0.6, 1]) expect(heightAt(same, eta)).toBeCloseTo(heightAt(law, eta), 3);
  });

  it('goes from vee over arc to late as the middle is lifted, the tip staying where it is', () => {
    const wing = wingWith({ kind: 'arc', tipAngle: 26 });
    const { tipDrop } = surfaceOf(wing);
    const grip = gripOf(wing.droop);
    // At mid span a vee hangs half as far as its tip, a gentle arc a quarter, a square law an eighth (small angles).
    const kinds = [0.5, 0.25, 0.14].map((share) => {
      const law = shapedTo(wing, grip, -share * tipDrop);
      expect(surfaceWith(law).tipDrop).toBeCloseTo(tipDrop, 3);
      return law.kind;
    });
    expect(kinds).toEqual(['vee', 'arc', 'late']);
  });

  it('passes at the height asked for', () => {
    const wing = wingWith(LAWS.late!);
    const grip = gripOf(wing.droop);
    for (const height of [-0.024, -0.015, -0.008]) {
      const law = shapedTo(wing, grip, height);
      expect(heightAt(law, grip.eta)).toBeCloseTo(height, 3);
    }
  });

  it('stops where no tip angle would still reach the drop', () => {
    const wing = wingWith({ kind: 'arc', tipAngle: 60 });
    const { tipDrop } = surfaceOf(wing);
    expect(mostPower(wing)).toBeLessThan(8);
    const steepest = surfaceWith(withPower(wing, 8));
    expect(steepest.tipDrop).toBeCloseTo(tipDrop, 3);
    expect(steepest.tipAngle / RADIANS).toBeLessThanOrEqual(90);
    expect(steepest.tipAngle / RADIANS).toBeGreaterThan(89);
  });

  it('begins a late droop further out, the tip staying where it is', () => {
    const wing = wingWith(LAWS.late!);
    const moved = begunAt(wing, 0.6);
    expect(moved).toMatchObject({ kind: 'late', from: 0.6, power: 1.5 });
    expect(surfaceWith(moved).tipDrop).toBeCloseTo(surfaceOf(wing).tipDrop, 3);
    expect(begunAt(wing, 2)).toHaveProperty('kind', 'late');
  });

  it('pulls a flat wing into an arc that passes the pointer', () => {
    const law = shapedTo(wingWith({ kind: 'flat' }), gripOf({ kind: 'flat' }), -0.02);
    expect(law.kind).toBe('arc');
    expect(heightAt(law, 0.5)).toBeCloseTo(-0.02, 3);
  });

  it('lifts the knee of a gull by its root angle', () => {
    const wing = wingWith(LAWS.gull!);
    const law = shapedTo(wing, gripOf(wing.droop), 0.02);
    expect(law).toMatchObject({ kind: 'gull', tipAngle: 25, knee: 0.35 });
    expect(heightAt(law, 0.35)).toBeCloseTo(0.02, 3);
  });

  it('moves one point of a law by points', () => {
    const wing = wingWith(LAWS.points!);
    const grips = shapeGrips(wing);
    expect(grips).toEqual([{ kind: 'point', eta: 0.5, index: 1 }]);
    const law = shapedTo(wing, grips[0]!, -0.03);
    expect(heightAt(law, 0.5)).toBeCloseTo(-0.03, 3);
    if (law.kind === 'points')
      expect([law.at[0], law.at[2]]).toEqual([
        [0, 0],
        [1, 30],
      ]);
  });
});
