import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { fixedProfile } from '../../../src/solver/forces/profile.ts';
import { waveDrag } from '../../../src/solver/forces/wave-drag.ts';
import { craftOf } from '../../../src/solver/geometry/craft.ts';
import { outlinePoints } from '../../../src/solver/geometry/outline.ts';
import { surfaceOf } from '../../../src/solver/geometry/surface.ts';
import { besselOne, besselZero } from '../../../src/solver/numeric/bessel.ts';
import { lowestPressure, PressureWatch } from '../../../src/solver/studies/cavitation.ts';
import { breachHeel, depthStudy, heelStudy } from '../../../src/solver/studies/depth-heel.ts';
import { sideTrim } from '../../../src/solver/studies/side-trim.ts';
import { LevelRunner } from '../../../src/solver/studies/speed.ts';
import { carve } from '../../../src/solver/studies/turning.ts';
import { heave, theodorsen } from '../../../src/solver/studies/unsteady.ts';
import { waveSwing } from '../../../src/solver/studies/waves.ts';
import { VortexSystem } from '../../../src/solver/vortex/system.ts';
import { inducedDrag } from '../../../src/solver/vortex/wake.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesign, plainDesign } from '../../support/designs.ts';

const resolution = { strips: 40, stabilizerStrips: 20, rows: 1 };
const runner = (design: Design) => new LevelRunner(design, resolution, fixedProfile);

/** Drags per rho V^2 of an elliptic loading imposed on a flat wing of the given span. */
function ellipticDrags(span: number, depth: number, speed: number, strips = 40) {
  const design = plainDesign({
    length: { kind: 'unrolled', value: span },
    chord: { kind: 'elliptic', root: 0.1 },
  });
  const impose = (atDepth: number | null) => {
    const { parts } = craftOf(design, atDepth, { strips, stabilizerStrips: 20, rows: 1 });
    const system = new VortexSystem(strips, 0, 0, 1);
    system.load(parts, atDepth);
    const circulation = Float64Array.from(system.controlY, (y) => Math.sqrt(1 - ((2 * y) / span) ** 2));
    return { system, circulation };
  };
  const deep = impose(null);
  const near = impose(depth);
  const free = near.system.fillWake().slice();
  const lid = near.system.fillWake(-1).slice();
  return {
    deep: inducedDrag(deep.system.fillWake(), deep.circulation),
    image: inducedDrag(free, near.circulation),
    wave: waveDrag(near.system, { free, lid }, near.circulation, depth, speed),
  };
}

describe('wave drag (Wu 1953, Breslin 1957, from memory), against independently computed ratios and three limits', () => {
  it('elliptic wing 1.05 m at 0.3 m and 4 m/s: 1.36 of deep water, image alone 1.20', () => {
    const { deep, image, wave } = ellipticDrags(1.05, 0.3, 4);
    expectClose('with waves', (image + wave) / deep, 1.36, { within: 0.005 });
    expectClose('image alone', image / deep, 1.2, { within: 0.005 });
  });

  it('elliptic wing 0.74 m at 0.5 m and 10 m/s: 1.065, image alone 1.057', () => {
    const { deep, image, wave } = ellipticDrags(0.74, 0.5, 10);
    expectClose('with waves', (image + wave) / deep, 1.065, { within: 0.001 });
    expectClose('image alone', image / deep, 1.057, { within: 0.001 });
  });

  it('vanishes at high speed and in deep water', () => {
    const fast = ellipticDrags(0.74, 0.5, 200);
    expect(Math.abs(fast.wave) / fast.image).toBeLessThan(1e-4);
    const far = ellipticDrags(0.74, 20, 10);
    expect(Math.abs(far.wave) / far.deep).toBeLessThan(1e-3);
  });

  it('a very wide foil makes the two-dimensional waves: rho g circulation^2/V^2 exp(-2 g h/V^2) a metre (Lamb, art. 249)', () => {
    const [span, depth, speed] = [100, 0.3, 3];
    const nu = 9.80665 / speed ** 2;
    const { wave } = ellipticDrags(span, depth, speed, 800);
    // The mean square of an elliptic loading of height 1 is 2/3.
    expectClose('per metre', wave / ((2 / 3) * span), nu * Math.exp(-2 * nu * depth), { share: 0.03 });
  });
});

describe('unsteady theory', () => {
  it('Bessel functions (Abramowitz and Stegun 1964, tables 9.1)', () => {
    expectClose('J0(1)', besselZero(1).j, 0.7651976866, { within: 1e-7 });
    expectClose('Y0(1)', besselZero(1).y, 0.0882569642, { within: 1e-7 });
    expectClose('J1(5)', besselOne(5).j, -0.3275791376, { within: 1e-7 });
    expectClose('Y1(5)', besselOne(5).y, 0.1478631434, { within: 1e-7 });
  });

  it("Theodorsen's function (NACA Report 496, table I, from memory)", () => {
    for (const [k, f, g] of [
      [0.1, 0.8319, -0.1723],
      [0.2, 0.7276, -0.1886],
      [0.5, 0.5979, -0.1507],
      [1, 0.5394, -0.1003],
    ] as const) {
      expectClose(`F(${k})`, theodorsen(k).f, f, { within: 1e-4 });
      expectClose(`G(${k})`, theodorsen(k).g, g, { within: 1e-4 });
    }
  });

  it('heave: slow strokes are free of loss, fast ones lose half (Garrick, NACA Report 567)', () => {
    expectClose('slow', heave(0.1, 0.01, 0.01, 10, 1000).efficiency, 1, { within: 1e-3 });
    expectClose('fast', heave(0.1, 0.01, 1e5, 10, 1000).efficiency, 0.5, { within: 1e-3 });
    const one = heave(0.1, 0.01, 10, 10, 1000);
    expectClose(
      'thrust goes with the square of the stroke',
      heave(0.1, 0.02, 10, 10, 1000).thrust,
      4 * one.thrust,
      { share: 1e-12 },
    );
  });
});

describe('cavitation', () => {
  it('an ellipse at zero lift has Cp_min 1 - (1 + t/c)^2 exactly', () => {
    const count = 401;
    for (const ratio of [0.06, 0.12]) {
      const at = Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / (count - 1));
      const points = {
        x: Float64Array.from(at, (a) => 0.5 * (1 + Math.cos(a))),
        y: Float64Array.from(at, (a) => 0.5 * ratio * Math.sin(a)),
      };
      expectClose(`t/c ${ratio}`, lowestPressure(points)(0), 1 - (1 + ratio) ** 2, { within: 0.004 });
    }
  });

  it('NACA 0012 at zero lift: -0.411 (NACA Report 824, from memory) within 0.004', () => {
    expectClose('Cp_min', lowestPressure(outlinePoints({ kind: 'naca4', code: '0012' }, 161))(0), -0.412, {
      within: 0.004,
    });
  });

  it('cavitation number of a strip by the definition, and boiling sets in where it meets -Cp_min', () => {
    const level = runner(goodDesign('curved-race'));
    const watch = new PressureWatch(level);
    const found = watch.inceptionSpeed('strut', 9)!;
    const { point, speed } = found;
    const pressure = 0.5 * 1025.7476 * speed ** 2; // sea water at 16 C, ITTC 7.5-02-01-03
    expectClose('sigma', point.sigma, (101325 + 1025.7476 * 9.80665 * point.depth - 1781.5) / pressure, {
      share: 1e-3,
    });
    expectClose('margin', point.sigma + point.cpMin, 0, { within: 1e-3 });
  });

  it('a thicker strut boils earlier at the junction with the wing', () => {
    const design = goodDesign('curved-race');
    const speedOf = (thickness: number) =>
      new PressureWatch(runner({ ...design, strut: { ...design.strut!, thickness } })).inceptionSpeed(
        'wing junction',
        9,
      )!.speed;
    expect(speedOf(0.016)).toBeLessThan(speedOf(0.011));
  });
});

describe('depth, heel, carving, side pull', () => {
  it('lift grows with depth towards deep water, drag falls', () => {
    const rows = depthStudy(runner(goodDesign('curved-race')), 9.5, 1);
    for (let k = 1; k < rows.length; k++) {
      expect(rows[k]!.lift).toBeGreaterThan(rows[k - 1]!.lift);
      expect(rows[k]!.inducedDrag).toBeLessThan(rows[k - 1]!.inducedDrag);
    }
  });

  it('a flat wing breaches at asin(2 h / b), a short one never', () => {
    const wing = surfaceOf(plainDesign({}).wing); // half span 0.5 m
    expectClose('heel', breachHeel(wing, 0.25)!, 30, { within: 1e-3 });
    expect(breachHeel(wing, 0.6)).toBeNull();
  });

  it('the unsplit heeled system agrees with the split one when upright', () => {
    const design = goodDesign('curved-race');
    const level = runner(design);
    const state = level.run(9.5, 'incidence', 0.55);
    const [row] = heelStudy(design, 9.5, state.lift.total, [0], resolution);
    expectClose('angle', row!.alpha, (state.alpha * 180) / Math.PI, { share: 1e-4 });
    expectClose('drag', row!.inducedDrag, state.drag.wingInduced + state.drag.stabilizerInduced, {
      share: 1e-4,
    });
    expectClose('side force', row!.sideForce, 0, { within: 1e-6 });
  });

  it('a carve: radius V^2/(g tan heel), load 1/cos heel; at 45 degrees 1.414 g', () => {
    const row = carve(runner(goodDesign('curved-race')), 9.5, [45])[0]!;
    expectClose('radius', row.radius, 9.5 ** 2 / 9.80665, { share: 1e-9 });
    expectClose('load', row.loadFactor, Math.SQRT2, { share: 1e-9 });
    expect(row.stabilizerTurn!).toBeLessThan(0); // the tail must push down to keep the nose coming up
  });

  it('with the strut unloaded the lift leans by atan(pull / weight carried)', () => {
    const design = goodDesign('curved-race');
    design.brief.sidePull = { share: 0.2, height: 2.2 };
    const trim = sideTrim(design, 9.5, { by: 'strut' }, { strips: 20, stabilizerStrips: 10, rows: 1 });
    expectClose('heel', trim.heel, (-Math.atan(0.2 / 0.9) * 180) / Math.PI, { within: 0.1 });
    expect(Math.abs(trim.strutForce)).toBeLessThan(0.01);
    expect(Math.abs(trim.residual.lift) + Math.abs(trim.residual.side)).toBeLessThan(1e-6);
  });

  it('upright, the leeway pushes the strut against the pull', () => {
    const design = goodDesign('curved-race');
    design.brief.sidePull = { share: 0.2, height: 2.2 };
    const trim = sideTrim(
      design,
      9.5,
      { by: 'heel', heel: 0 },
      { strips: 20, stabilizerStrips: 10, rows: 1 },
    );
    expect(trim.leeway).toBeGreaterThan(0); // the pull is to starboard: the water comes from there
    expectClose('sum of side forces', trim.strutForce + trim.foilSideForce, -0.2 * 92 * 9.80665, {
      share: 1e-6,
    });
  });
});

describe('waves', () => {
  it('deep-water waves of 4 s: 24.98 m long, 6.25 m/s (omega^2 = g k; Lamb, art. 229)', () => {
    const swing = waveSwing(runner(goodDesign('downwind')), 6.2, { height: 0.5, period: 4, heading: 0 })!;
    expectClose('length', swing.length, (9.80665 * 16) / (2 * Math.PI), { share: 1e-9 });
    expectClose('celerity', swing.celerity, (9.80665 * 4) / (2 * Math.PI), { share: 1e-9 });
    // A foil that nearly keeps pace meets the wave slowly, so the lift follows almost in full.
    expect(swing.encounterPeriod).toBeGreaterThan(100);
    expect(swing.liftShare).toBeGreaterThan(0.99);
  });

  it('running against the waves shortens the period of encounter', () => {
    const against = waveSwing(runner(goodDesign('downwind')), 6.2, { height: 0.5, period: 4, heading: 180 })!;
    expect(against.encounterPeriod).toBeLessThan(4);
  });
});
