import { describe, expect, it } from 'vitest';
import type { Planform } from '../../../src/solver/design/document.ts';
import { outlinePoints } from '../../../src/solver/geometry/outline.ts';
import { etaOf, fillShell, makeShell, placeOf, type Shell } from '../../../src/solver/geometry/shell.ts';
import { skinOf } from '../../../src/solver/geometry/skin.ts';
import { surfaceOf } from '../../../src/solver/geometry/surface.ts';
import { volumeOf } from '../../../src/solver/geometry/triangles.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesigns, plainWing } from '../../support/designs.ts';

const SIZE = { rings: 40, around: 65 };

function shellOf(planform: Planform, size = SIZE): Shell {
  const shell = makeShell(size);
  fillShell(shell, skinOf(planform), planform);
  return shell;
}

const at = (values: ArrayLike<number>, k: number): [number, number, number] => [
  values[3 * k]!,
  values[3 * k + 1]!,
  values[3 * k + 2]!,
];

/** Cosine of the least angle between a triangle's own normal and those at its corners; slivers left out. */
function worstNormal({ positions, normals, corners }: Shell): number {
  let worst = 1;
  for (let k = 0; k < corners.length; k += 3) {
    const [a, b, c] = [0, 1, 2].map((n) => at(positions, corners[k + n]!)) as [number, number, number][];
    const u = b!.map((value, axis) => value - a![axis]!);
    const v = c!.map((value, axis) => value - a![axis]!);
    const cross = [0, 1, 2].map(
      (axis) => u[(axis + 1) % 3]! * v[(axis + 2) % 3]! - u[(axis + 2) % 3]! * v[(axis + 1) % 3]!,
    );
    const length = Math.hypot(...cross);
    if (length < 1e-7) continue;
    for (let n = 0; n < 3; n++) {
      const normal = at(normals, corners[k + n]!);
      worst = Math.min(worst, normal.reduce((sum, value, axis) => sum + value * cross[axis]!, 0) / length);
    }
  }
  return worst;
}

describe('shell', () => {
  it('of a plain wing holds the section’s area times the span', () => {
    const shell = shellOf(plainWing(), { rings: 10, around: 201 });
    const { x, y } = outlinePoints({ kind: 'naca4', code: '0010' }, 2001);
    let area = 0;
    for (let k = 0; k < x.length; k++) {
      const next = (k + 1) % x.length;
      area += (x[k]! * y[next]! - x[next]! * y[k]!) / 2;
    }
    const { positions, corners } = shell;
    const mesh = { points: Float64Array.from(positions), corners: Uint32Array.from(corners) };
    // 201 points leave less than a thousandth of the section out.
    expectClose('volume', volumeOf(mesh), area * 0.1 * 0.1 * 1, { share: 1e-3 });
  });

  it.each(goodDesigns())('of %s looks outward all over, mirrored to port', (_name, { wing, stabilizer }) => {
    for (const planform of [wing, stabilizer]) {
      if (!planform) continue;
      const shell = shellOf(planform);
      const { positions, normals } = shell;
      expect([...positions, ...normals].every(Number.isFinite)).toBe(true);
      // Within a right angle of its triangles at corners and edges, which are rounded off by the light alone.
      expect(worstNormal(shell)).toBeGreaterThan(0);
      const half = positions.length / 6;
      for (let k = 0; k < half; k++) {
        const [x, y, z] = at(positions, k);
        expect(at(positions, half + k)).toEqual([x, -y, z]);
      }
    }
  });

  it('ends where the wing ends and starts in the centre plane', () => {
    const [, { wing }] = goodDesigns()[0]!;
    const { positions, etas } = shellOf(wing);
    for (let k = 0; k < SIZE.around; k++) expect(positions[3 * k + 1]).toBe(0);
    expect(etas[etas.length - 1]).toBe(1);
    const most = Math.max(...positions.filter((_, k) => k % 3 === 1));
    // The upper side leans outward beyond the tip's quarter chord by less than the thickness there.
    expectClose('half span', most, surfaceOf(wing).halfSpan, { within: 0.006 });
  });

  it('puts a ring on each kink of a law', () => {
    const gull = plainWing({ droop: { kind: 'gull', rootAngle: 8, tipAngle: 25, knee: 0.37 } });
    expect([...shellOf(gull).etas]).toContain(0.37);
  });

  it('is filled anew in place', () => {
    const shell = shellOf(plainWing());
    const { positions, corners } = shell;
    const before = positions.slice();
    const bent = plainWing({ droop: { kind: 'arc', tipAngle: 30 } });
    fillShell(shell, skinOf(bent), bent);
    expect(shell.positions).toBe(positions);
    expect(shell.corners).toBe(corners);
    expect(positions).not.toEqual(before);
    expect(shell.positions).toEqual(shellOf(bent).positions);
  });

  it('knows places and etas from each other', () => {
    for (const eta of [0, 0.2, 0.77, 1]) expectClose('eta', etaOf(placeOf(eta)), eta, { within: 1e-12 });
    expect(placeOf(1.2)).toBe(1);
  });
});
