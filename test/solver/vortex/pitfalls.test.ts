/**
 * Six ways in which this method goes wrong, each without its cure and with it (docs/theory.md). The uncured variant is
 * rebuilt from the program's own pieces; every case states how wrong it is, so that it fails should the cure be lost.
 */
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { farField } from '../../../src/solver/forces/ledger.ts';
import { alphaLoads, loadsAt, mixAlpha } from '../../../src/solver/forces/loads.ts';
import { type Craft, craftOf } from '../../../src/solver/geometry/craft.ts';
import { cutStrips, cutStrut, spaceStations } from '../../../src/solver/geometry/strips.ts';
import { derivativesOf, lateralLoads } from '../../../src/solver/studies/derivatives.ts';
import {
  makeUnit,
  type SymmetricUnits,
  solveAntisymmetricUnits,
  solveSymmetricUnits,
  type Unit,
} from '../../../src/solver/vortex/causes.ts';
import { addVelocity } from '../../../src/solver/vortex/filament.ts';
import { FlowPool } from '../../../src/solver/vortex/flow.ts';
import { VortexSystem } from '../../../src/solver/vortex/system.ts';
import { inducedDrag } from '../../../src/solver/vortex/wake.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesign, plainDesign, plainStabilizer, taperedChord } from '../../support/designs.ts';

const ALPHA = 0.07; // rad
const THIN = 1e-6; // m, a core that leaves a bare line
const pool = new FlowPool();

const at = (strips: number, stabilizerStrips = 20) => ({ strips, stabilizerStrips, rows: 1 });

/** A wing alone, solved with a system that `change` has altered after loading. */
function solveWing(craft: Craft, change: (system: VortexSystem) => void = () => {}) {
  const system = new VortexSystem(craft.parts.wing.count, 0, 0, 1);
  system.load(craft.parts, craft.depth);
  change(system);
  system.fillInfluence(false);
  system.factorise(false);
  const unit = () => makeUnit(system);
  const units: SymmetricUnits = { ahead: unit(), up: unit(), pitchRate: unit(), incidence: unit() };
  solveSymmetricUnits(system, units, false);
  return { system, units };
}

function verticalForce({ system, units }: { system: VortexSystem; units: SymmetricUnits }): number {
  return loadsAt(alphaLoads(system, units), ALPHA)[0].z;
}

describe('pitfall 1: forces belong on the bound segment itself', () => {
  const design = plainDesign({
    chord: taperedChord(10, 0.4),
    droop: { kind: 'arc', tipAngle: 30 },
    sweep: { kind: 'straight', angle: 25 },
  });
  const forces = [30, 60, 120].map((strips) => {
    const craft = craftOf(design, null, at(strips));
    const { quarterX, controlY, controlZ } = craft.parts.wing;
    const atStations = (system: VortexSystem) => {
      system.spread.fill(THIN);
      system.placeX.set(quarterX);
      system.placeY.set(controlY);
      system.placeZ.set(controlZ);
    };
    return { cured: verticalForce(solveWing(craft)), uncured: verticalForce(solveWing(craft, atStations)) };
  });

  it('taken there, the force stands still from 30 to 120 strips', () => {
    for (const { cured } of forces) expectClose('force', cured, forces[2]!.cured, { share: 0.002 });
  });

  it('taken at the control stations, which lie off the segment, it grows without end', () => {
    expect(forces[0]!.uncured).toBeGreaterThan(5 * forces[0]!.cured);
    expect(forces[2]!.uncured).toBeGreaterThan(3 * forces[1]!.uncured);
  });
});

describe('pitfall 2: the far field belongs to the cosine mid-stations', () => {
  const efficiency = (strips: number, move: boolean) => {
    const craft = craftOf(plainDesign({}), null, at(strips));
    const system = new VortexSystem(strips, 0, 0, 1);
    system.load(craft.parts, null);
    const circulation = craft.parts.wing.controlY.map((y) => Math.sqrt(1 - 4 * y * y)); // elliptic: e = 1
    if (move)
      for (let k = 0; k < strips; k++)
        system.controlY[k] = 0.5 * (system.nodes[3 * k + 1]! + system.nodes[3 * k + 4]!);
    const lift = circulation.reduce((sum, value, k) => sum + 2 * value * system.alongY[k]!, 0);
    return lift ** 2 / ((Math.PI / 2) * inducedDrag(system.fillWakes().free, circulation));
  };

  it('there an elliptic loading has e = 1', () => {
    expectClose('span efficiency', efficiency(40, false), 1, { within: 1e-9 });
  });

  it('at the middles of the strips it comes out 1 % wrong', () => {
    expect(Math.abs(efficiency(40, true) - 1)).toBeGreaterThan(0.01);
  });
});

describe('pitfall 3: wakes of two surfaces share their strip edges', () => {
  const drag = (craft: Craft) => farField(pool.solve('pitfall', craft, 'angle'), ALPHA);
  const unshared = (
    design: Design,
    depth: number | null,
    strips: number,
    stabilizerStrips: number,
  ): Craft => {
    const craft = craftOf(design, depth, at(strips, stabilizerStrips));
    const wing = cutStrips(craft.wing, spaceStations(strips), 1);
    const stabilizer = cutStrips(craft.stabilizer!, spaceStations(stabilizerStrips), 1);
    return { ...craft, parts: { ...craft.parts, wing, stabilizer } };
  };
  const stabilizer = plainStabilizer({ incidence: -1 });
  const coplanar = plainDesign({ chord: taperedChord(10, 0.5) }, { stabilizer });
  const counts = [18, 19, 20, 21, 22];

  it('with shared edges one strip more or less of the stabilizer moves the drag by less than 0.5 %', () => {
    const drags = counts.map((count) => drag(craftOf(coplanar, null, at(40, count))));
    for (const value of drags) expectClose('induced drag', value, drags[2]!, { share: 0.005 });
  });

  it('with unrelated edges it moves the drag of coplanar surfaces by more than 30 %', () => {
    const truth = drag(craftOf(coplanar, null, at(160, 80)));
    const worst = Math.max(
      ...counts.map((count) => Math.abs(drag(unshared(coplanar, null, 40, count)) / truth - 1)),
    );
    expect(worst).toBeGreaterThan(0.3);
  });

  // The stabilizer's height, which the wing's wake sinks through as the wing bends; drag against the trend through the
  // neighbours one and two degrees away.
  const kinks = (cut: (design: Design) => Craft) => {
    const design = goodDesign('curved-race');
    design.stabilizer!.height = 0.004;
    design.stabilizer!.droop = { kind: 'flat' };
    const drags: number[] = [];
    for (let tipAngle = 0; tipAngle <= 20; tipAngle += 0.5) {
      design.wing.droop = { kind: 'arc', tipAngle: tipAngle - 8 };
      drags.push(drag(cut(design)));
    }
    let worst = 0;
    for (let k = 4; k + 4 < drags.length; k++) {
      const trend = (4 * (drags[k - 2]! + drags[k + 2]!) - drags[k - 4]! - drags[k + 4]!) / 6;
      worst = Math.max(worst, Math.abs(drags[k]! / trend - 1));
    }
    return worst;
  };

  it("with shared edges the drag does not jump as the wake passes the stabilizer's height", () => {
    expect(kinks((design) => craftOf(design, null, at(40)))).toBeLessThan(0.005); // found 0.0017; 0.057 with unrelated edges
  });

  it('with unrelated edges it does', () => {
    expect(kinks((design) => unshared(design, null, 40, 20))).toBeGreaterThan(0.02);
  });
});

describe('pitfall 4: no trailing leg may pass at a chance distance from a control station of the strut', () => {
  const side = (craft: Craft) => {
    const flow = pool.solve('strut', craft, 'whole');
    mixAlpha(flow.symmetric, ALPHA, flow.base);
    const reference = { area: craft.wing.projectedArea, span: craft.wing.span, x: 0, z: 1 };
    return derivativesOf(lateralLoads(flow.system, flow.base, flow.craft), reference).CYbeta;
  };
  const strut = { x: 0.5, length: 1, chord: 0.1, thickness: 0.013 };
  const unmatched = cutStrut(strut.x, strut.chord, 0.5, 20, 1, null);
  /** A stabilizer ahead of the strut whose root wake meets it `off` beside a control station. */
  const crossing = (off: number) => {
    const height = unmatched.controlZ[5]! + off;
    const stabilizer = plainStabilizer({ arm: 0.3, height, droop: { kind: 'vee', tipAngle: 20 } });
    const design = plainDesign(
      { chord: taperedChord(10, 0.5) },
      { stabilizer, strut, brief: { depth: 0.5 } },
    );
    return craftOf(design, 0.5, at(40));
  };
  const offsets = [-1e-3, -1e-4, -1e-5, 1e-5, 1e-4, 1e-3];

  it("with a node of the strut where the stabilizer's wake crosses it, side force does not care for a millimetre", () => {
    const sides = offsets.map((off) => side(crossing(off)));
    for (const value of sides) expectClose('C_Ybeta', value, sides[0]!, { share: 0.02 });
  });

  it('without it a tenth of a millimetre turns the side force round', () => {
    const sides = offsets.map((off) => {
      const craft = crossing(off);
      return side({ ...craft, parts: { ...craft.parts, strut: unmatched } });
    });
    expect(Math.max(...sides)).toBeGreaterThan(1);
    expect(Math.min(...sides)).toBeLessThan(-5);
  });

  const joined = (strips: number) => {
    const droop = { kind: 'arc', tipAngle: 20 } as const;
    const foot = { ...strut, x: 0 };
    return craftOf(
      plainDesign({ chord: taperedChord(10, 0.5), droop }, { strut: foot, brief: { depth: 0.5 } }),
      0.5,
      at(strips),
    );
  };

  it('a strut that meets the wing root node to node settles as strips double', () => {
    const sides = [20, 40, 80, 160].map((strips) => side(joined(strips)));
    const steps = sides.slice(1).map((value, k) => Math.abs(value - sides[k]!));
    expectClose('C_Ybeta', sides[1]!, sides[2]!, { share: 0.01 });
    expect(steps[1]!).toBeLessThan(0.6 * steps[0]!);
    expect(steps[2]!).toBeLessThan(0.6 * steps[1]!);
  });

  it("one whose stations lie beside the wing's wake does not know its own side force", () => {
    const lowered = [3e-3, 1e-3, 1e-4, 1e-5].map((gap) => {
      const craft = joined(40);
      const own = craft.parts.strut!;
      const shift = own.controlZ[0]! - gap;
      const moved = {
        ...own,
        nodeZ: own.nodeZ.map((z) => z - shift),
        controlZ: own.controlZ.map((z) => z - shift),
      };
      return side({ ...craft, parts: { ...craft.parts, strut: moved } });
    });
    expect(Math.min(...lowered) / Math.max(...lowered)).toBeGreaterThan(1.2);
  });
});

describe("pitfall 5: a bound line's x-velocity on itself is left out", () => {
  const bent = plainDesign({ chord: taperedChord(10, 0.4), droop: { kind: 'arc', tipAngle: 30 } });
  const flat = plainDesign({ chord: taperedChord(10, 0.4) });

  /** Adds to a unit's field the x-velocity that the wing's own bound segments make at their middles. */
  function keepBoundX(system: VortexSystem, unit: Unit): void {
    const count = system.foil;
    const line = { node: 0, column: 0, count, surface: 0, core: 0 };
    const row = () => new Float64Array(3 * count);
    for (let i = 0; i < count; i++)
      for (const half of [1, -1]) {
        const [all, legs] = [row(), row()];
        for (const [out, spread] of [
          [all, 0],
          [legs, THIN],
        ] as const) {
          const { nodes, placeX, placeY, placeZ } = system;
          const [x, y, z] = [placeX[i]!, half * placeY[i]!, placeZ[i]!];
          addVelocity(out, 0, line, nodes, x, y, z, 1, half, 1, 0, spread);
        }
        for (let j = 0; j < count; j++)
          unit.field.x[i]! += (all[3 * j]! - legs[3 * j]!) * unit.circulation[j]!;
      }
  }

  const lost = (strips: number, keep: boolean) => {
    const [own, twin] = [bent, flat].map((design) => {
      const solved = solveWing(craftOf(design, null, at(strips)));
      if (keep) for (const unit of [solved.units.ahead, solved.units.up]) keepBoundX(solved.system, unit);
      return verticalForce(solved);
    }) as [number, number];
    return 1 - own / twin;
  };

  it('without it lost lift stands still from 30 to 120 strips', () => {
    expectClose('lost share', lost(30, false), lost(120, false), { within: 1e-4 });
  });

  it('with it lost lift creeps on by as much at every doubling', () => {
    const [few, some, many] = [30, 60, 120].map((strips) => lost(strips, true)) as [number, number, number];
    expect(some - few).toBeGreaterThan(8e-4);
    expect(many - some).toBeGreaterThan(8e-4);
  });
});

describe('pitfall 6: a swept line acts on itself as if it had a chord', () => {
  const swept = (angle: number) =>
    plainDesign({ chord: taperedChord(8, 0.5), sweep: { kind: 'straight', angle } });

  /** C_np of the foil at 4 degrees; `spread` in m, null: the program's own. */
  function yawFromRoll(angle: number, strips: number, rows: number, spread: number | null): number {
    const craft = craftOf(swept(angle), null, { strips, stabilizerStrips: 0, rows });
    const system = new VortexSystem(strips, 0, 0, rows);
    system.load(craft.parts, null);
    if (spread !== null) system.spread.fill(spread);
    system.fillInfluence(true);
    system.factorise(true);
    const unit = () => makeUnit(system);
    const units: SymmetricUnits = { ahead: unit(), up: unit(), pitchRate: unit(), incidence: unit() };
    const sideways = { beta: unit(), rollRate: unit(), yawRate: unit() };
    const base = unit();
    solveSymmetricUnits(system, units, false);
    solveAntisymmetricUnits(system, sideways, false);
    mixAlpha(units, ALPHA, base);
    const reference = { area: craft.wing.projectedArea, span: craft.wing.span, x: 0, z: 0 };
    return derivativesOf(lateralLoads(system, base, sideways), reference).Cnp;
  }

  for (const angle of [30, -30]) {
    it(`${angle} degrees: with it yaw from roll stands still from 20 strips to 160`, () => {
      const fine = yawFromRoll(angle, 160, 1, null);
      for (const strips of [20, 40, 80])
        expectClose('C_np', yawFromRoll(angle, strips, 1, null), fine, { share: 0.002 });
    });

    it(`${angle} degrees: and is what twenty rows along the chord make of it, which need no core`, () => {
      expectClose('C_np', yawFromRoll(angle, 40, 1, null), yawFromRoll(angle, 24, 20, THIN), {
        share: 0.012,
      });
    });

    it(`${angle} degrees: without it yaw from roll creeps on by as much at every doubling`, () => {
      const [few, some, many] = [40, 80, 160].map((strips) => yawFromRoll(angle, strips, 1, THIN)) as [
        number,
        number,
        number,
      ];
      expectClose('next step', many - some, some - few, { share: 0.03 });
      expect(Math.abs(many / yawFromRoll(angle, 40, 1, null) - 1)).toBeGreaterThan(0.1);
    });
  }
});
