/** The foil as a whole at a depth, and what depth it cannot have. */
import { describe, expect, it } from 'vitest';
import type { DroopLaw } from '../../../src/solver/design/document.ts';
import { atDepth, craftOf, sameSpanTwin } from '../../../src/solver/geometry/craft.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesigns, plainDesign, plainStabilizer } from '../../support/designs.ts';

const resolution = { strips: 20, stabilizerStrips: 10, rows: 1 };
const strut = { x: 0.1, length: 1, chord: 0.11, thickness: 0.013 };

describe('craft', () => {
  it('holds wing, stabilizer and strut of every document that must load', () => {
    for (const [name, design] of goodDesigns()) {
      const craft = craftOf(design, design.brief.depth, resolution);
      expect(craft.parts.wing.count, name).toBeGreaterThanOrEqual(20);
      expect(craft.parts.stabilizer === null, name).toBe(design.stabilizer === null);
      expectClose('strut top', craft.parts.strut!.nodeZ.at(-1)!, design.brief.depth ?? design.strut!.length, {
        within: 1e-12,
      });
    }
  });

  it('lets the strut reach the surface, or in deep water its full length', () => {
    const design = plainDesign({}, { strut });
    expectClose('to the surface', craftOf(design, 0.4, resolution).parts.strut!.nodeZ.at(-1)!, 0.4, {
      within: 1e-12,
    });
    expectClose('deep', craftOf(design, null, resolution).parts.strut!.nodeZ.at(-1)!, 1, { within: 1e-12 });
  });

  it('has a same-span twin of equal area, and leaves its strut behind at another depth', () => {
    const craft = craftOf(plainDesign({ droop: { kind: 'arc', tipAngle: 40 } }, { strut }), 0.4, resolution);
    const flat = sameSpanTwin(craft).parts.wing;
    const area = flat.chord.reduce((sum, chord, k) => sum + 2 * chord * flat.width[k]!, 0);
    expectClose('area', area, craft.wing.projectedArea, { share: 1e-9 });
    const deep = atDepth(craft, null);
    expect([deep.depth, deep.strut, deep.parts.strut]).toEqual([null, null, null]);
    expect(deep.parts.wing).toBe(craft.parts.wing);
  });
});

describe('depths that do not fit', () => {
  it('at or above the surface', () => {
    const message = (depth: number) =>
      `brief.depth: found ${depth} m, allowed above 0 to 5 m, or null for deep water`;
    for (const depth of [0, -0.2])
      expect(() => craftOf(plainDesign({}), depth, resolution)).toThrow(message(depth));
  });

  it('beyond the strut', () => {
    const design = plainDesign({}, { strut });
    expect(() => craftOf(design, 1.2, resolution)).toThrow(
      "brief.depth: found 1.2 m, allowed up to the strut's length, 1 m",
    );
  });

  it('a wing tip or stabilizer out of the water', () => {
    const raised = plainDesign({ droop: { kind: 'vee', tipAngle: -30 } });
    expect(() => craftOf(raised, 0.2, resolution)).toThrow(
      'wing: found a station 0.250 m above the origin, allowed below the surface at 0.2 m',
    );
    const high = plainDesign({}, { stabilizer: plainStabilizer({ height: 0.3 }) });
    expect(() => craftOf(high, 0.3, resolution)).toThrow(
      'stabilizer: found a station 0.300 m above the origin',
    );
    expect(() => craftOf(high, 0.31, resolution)).not.toThrow();
  });
});

describe('a stabilizer in the way of the wing', () => {
  const placed = (arm: number, height: number, droop: DroopLaw = { kind: 'flat' }) => {
    const sweep = { kind: 'straight', angle: 45 } as const;
    const drawn = plainDesign({ sweep, droop }, { stabilizer: plainStabilizer({ arm, height }) });
    return () => craftOf(drawn, null, resolution);
  };

  it('is refused where chords overlap and the surfaces are nearer than their thickness', () => {
    // A swept wing of 0.1 m chord in its own plane: its tip's quarter chord is 0.5 m aft, 0.5 m out.
    expect(placed(0.1, 0)).toThrow(/^stabilizer: found it touching the wing 0\.\d{3} m from the middle/);
    expect(placed(0.1, 0.02)).not.toThrow();
    expect(placed(0.3, 0)).not.toThrow(); // ends at y = 0.2, where the wing is 0.2 m aft
  });

  it('is found where a bent tip passes through its plane', () => {
    const steep: DroopLaw = { kind: 'vee', tipAngle: 60 };
    expect(placed(0.3, -0.26, steep)).toThrow('touching the wing');
    expect(placed(0.6, -0.26, steep)).not.toThrow();
  });
});
