import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { fixedProfile } from '../../../src/solver/forces/profile.ts';
import { waveDrag } from '../../../src/solver/forces/wave-drag.ts';
import { craftOf } from '../../../src/solver/geometry/craft.ts';
import { breachHeel } from '../../../src/solver/geometry/heel.ts';
import { outlinePoints } from '../../../src/solver/geometry/outline.ts';
import { surfaceOf } from '../../../src/solver/geometry/surface.ts';
import { besselOne, besselZero } from '../../../src/solver/numeric/bessel.ts';
import { lowestPressure, PressureWatch } from '../../../src/solver/studies/cavitation.ts';
import { cavitationStudy } from '../../../src/solver/studies/cavitation-study.ts';
import { depthStudy, heelStudy } from '../../../src/solver/studies/depth-heel.ts';
import { sideStudy } from '../../../src/solver/studies/side-study.ts';
import { sideTrim } from '../../../src/solver/studies/side-trim.ts';
import { LevelRunner } from '../../../src/solver/studies/speed.ts';
import { strutState } from '../../../src/solver/studies/strut-state.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import { carve } from '../../../src/solver/studies/turning.ts';
import { turningChoices } from '../../../src/solver/studies/turning-choices.ts';
import { heave, theodorsen } from '../../../src/solver/studies/unsteady.ts';
import { faceRide, type Waves, waveSwing } from '../../../src/solver/studies/waves.ts';
import { VortexSystem } from '../../../src/solver/vortex/system.ts';
import { inducedDrag } from '../../../src/solver/vortex/wake.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesign, plainDesign } from '../../support/designs.ts';

const resolution = { strips: 40, stabilizerStrips: 20, rows: 1 };
const coarse = { strips: 20, stabilizerStrips: 10, rows: 1 };
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
  const wakes = near.system.fillWakes();
  return {
    deep: inducedDrag(deep.system.fillWakes().free, deep.circulation),
    image: inducedDrag(wakes.free, near.circulation),
    wave: waveDrag(near.system, wakes, near.circulation, depth, speed),
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
    expectClose('heel', breachHeel(wing, 0.25)!, Math.PI / 6, { within: 1e-5 });
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
    const trim = sideTrim(runner(design), 9.5, { by: 'strut' }, 'incidence', coarse);
    expectClose('heel', trim.heel, (-Math.atan(0.2 / 0.9) * 180) / Math.PI, { within: 0.1 });
    expect(Math.abs(trim.strutForce)).toBeLessThan(0.01);
    expect(Math.abs(trim.residual.lift) + Math.abs(trim.residual.side)).toBeLessThan(1e-6);
  });

  it('upright, the leeway pushes the strut against the pull', () => {
    const design = goodDesign('curved-race');
    design.brief.sidePull = { share: 0.2, height: 2.2 };
    const trim = sideTrim(runner(design), 9.5, { by: 'heel', heel: 0 }, 'incidence', coarse);
    expect(trim.leeway).toBeGreaterThan(0); // the pull is to starboard: the water comes from there
    expectClose('sum of side forces', trim.strutForce + trim.foilSideForce, -0.2 * 92 * 9.80665, {
      share: 1e-6,
    });
  });
});

describe('the whole balance against a sideways pull', () => {
  const pulled = () => {
    const design = goodDesign('curved-race');
    design.brief.sidePull = { share: 0.2, height: 2.2 };
    return design;
  };

  it('balances lift, side force and pitch to 1e-6 by the stance or by the stabilizer', () => {
    for (const fix of ['stance', 'incidence'] as const)
      for (const rule of [{ by: 'strut' }, { by: 'heel', heel: -5 }] as const) {
        const { residual, stance, incidence } = sideTrim(runner(pulled()), 9.5, rule, fix, coarse);
        for (const miss of Object.values(residual)) expect(Math.abs(miss)).toBeLessThan(1e-6);
        const drawn = pulled();
        if (fix === 'stance') expect(stance).toBe(drawn.brief.balance.x);
        else expect(incidence).toBe(drawn.stabilizer!.incidence);
      }
  });

  it('without a pull it is the level running of the split system, in angle, stance and incidence', () => {
    const design = pulled();
    design.brief.sidePull = { share: 0, height: 2.2 };
    const level = new LevelRunner(design, coarse, fixedProfile);
    for (const fix of ['stance', 'incidence'] as const) {
      const state = level.run(9.5, fix);
      const trim = sideTrim(level, 9.5, { by: 'heel', heel: 0 }, fix, coarse);
      expectClose('angle', trim.alpha, (state.alpha * 180) / Math.PI, { within: 1e-3 });
      expectClose('stance', trim.stance, state.stance, { within: 1e-4 });
      expectClose('incidence', trim.incidence, state.incidence, { within: 1e-3 });
      expectClose('drag', trim.totalDrag, state.totalDrag, { share: 1e-4 });
      expectClose('leeway', trim.leeway, 0, { within: 1e-6 });
    }
  });

  it('held upright, the leeway is the one Stiffness bends the strut with', () => {
    const design = pulled();
    const trim = sideTrim(runner(design), 9.5, { by: 'heel', heel: 0 }, 'incidence', coarse);
    const { pulled: held } = strutState(design, { condition: { speed: 9.5 } });
    expectClose('leeway', held!.leeway, trim.leeway, { share: 1e-6 });
  });

  it('a rider who stays in line has no roll to balance; otherwise the shift balances it', () => {
    const inLine = sideTrim(runner(pulled()), 9.5, { by: 'roll' }, 'incidence', coarse);
    expectClose('shift', inLine.riderShift, 0, { within: 1e-5 });
    const held = sideTrim(runner(pulled()), 9.5, { by: 'heel', heel: 0 }, 'incidence', coarse);
    // Upright, the pull acts above the water and the strut answers below: the rider leans out, away from the pull.
    expect(held.riderShift).toBeLessThan(0);
  });

  it('more leeway, lower pressure on the strut; cl as by definition 2 circulation / chord', () => {
    const level = runner(pulled());
    const watch = new PressureWatch(level);
    const trim = sideTrim(level, 9.5, { by: 'heel', heel: 0 }, 'incidence', coarse);
    const slipping = watch.slipping(trim.strut, 9.5);
    const still = watch.slipping(
      trim.strut.map(({ depth }) => ({ depth, cl: 0 })),
      9.5,
    );
    slipping.forEach((point, k) => {
      expect(point.cpMin).toBeLessThan(still[k]!.cpMin);
    });
    // Shares run from the foot to the surface.
    expect(slipping[0]!.depth).toBeGreaterThan(slipping.at(-1)!.depth);
  });

  it('the three speeds are studied, and none without a pull', () => {
    const cases = finish(sideStudy(pulled(), { rule: { by: 'strut' }, fix: 'incidence' }));
    expect(cases.map(({ name }) => name)).toEqual(['takeOff', 'cruise', 'top']);
    for (const { trim, problem } of cases) expect(trim === null).toBe(problem !== null);
    const calm = goodDesign('curved-race');
    delete calm.brief.sidePull;
    expect(finish(sideStudy(calm, { rule: { by: 'strut' }, fix: 'incidence' }))).toEqual([]);
  });
});

describe('turning for the same hold', () => {
  it('a shorter fuselage keeps the sideways volume and asks less of the feet', () => {
    const design = goodDesign('curved-race');
    const choices = turningChoices(runner, design, 9.5);
    const present = choices.find(({ factor }) => factor === 1)!;
    const { stanceShift, radius } = carve(runner(design), 9.5, [present.heel])[0]!;
    expectClose('as drawn', present.shift, stanceShift, { share: 1e-9 });
    expectClose('radius as drawn', present.radius!, radius, { share: 1e-3 });
    for (const choice of choices)
      expectClose(`${choice.change} ${choice.factor}`, choice.sidewaysVolume, present.sidewaysVolume, {
        share: 1e-3,
      });
    const arms = choices.filter(({ change }) => change === 'arm');
    for (let k = 1; k < arms.length; k++) {
      expect(arms[k]!.shift).toBeGreaterThan(arms[k - 1]!.shift);
      expect(arms[k]!.radius!).toBeGreaterThan(arms[k - 1]!.radius!);
    }
  });

  it('pitch damping goes with area times arm squared: at the same hold the move of the feet goes nearly with the arm', () => {
    const choices = turningChoices(runner, goodDesign('curved-race'), 9.5);
    const [short, drawn] = [0.8, 1].map((factor) =>
      choices.find((choice) => choice.change === 'arm' && choice.factor === factor),
    );
    // B. Etkin and L. D. Reid, Dynamics of Flight, 1996, ch. 5 (from memory): Cm_q = -2 a_t V_H l_t / cbar, V_H kept.
    expectClose('share', short!.shift / drawn!.shift, 0.8, { within: 0.06 });
  });
});

describe('limits strip by strip', () => {
  it('the earliest strip of each surface is where the table says the surface boils', () => {
    const { strips, inception } = finish(cavitationStudy(goodDesign('curved-race')));
    for (const { place, speed } of strips) {
      const first = inception.find((each) => each.place === place);
      if (!first) continue;
      // Between 24 speeds by a straight line in 1/V^2; the table solves it.
      expectClose(place, Math.min(...speed), first.speed, { share: 0.01 });
    }
    expect(inception.map(({ speed }) => speed)).toEqual(
      inception.map(({ speed }) => speed).sort((a, b) => a - b),
    );
  });
});

describe('waves', () => {
  const swingAt = (speed: number, waves: Waves) => {
    const level = runner(goodDesign('downwind'));
    return waveSwing(level, new PressureWatch(level), speed, waves);
  };

  it('deep-water waves of 4 s: 24.98 m long, 6.25 m/s (omega^2 = g k; Lamb, art. 229)', () => {
    const swing = swingAt(6.2, { height: 0.5, period: 4, heading: 0 })!;
    expectClose('length', swing.length, (9.80665 * 16) / (2 * Math.PI), { share: 1e-9 });
    expectClose('celerity', swing.celerity, (9.80665 * 4) / (2 * Math.PI), { share: 1e-9 });
    // A foil that nearly keeps pace meets the wave slowly, so the lift follows almost in full.
    expect(swing.encounterPeriod).toBeGreaterThan(100);
    expect(swing.liftShare).toBeGreaterThan(0.99);
  });

  it('running against the waves shortens the period of encounter', () => {
    const against = swingAt(6.2, { height: 0.5, period: 4, heading: 180 })!;
    expect(against.encounterPeriod).toBeLessThan(4);
  });

  it('margins at the extremes are less than in flat water', () => {
    const level = runner(goodDesign('downwind'));
    const watch = new PressureWatch(level);
    const state = level.run(6.2, 'incidence');
    const swing = waveSwing(level, watch, 6.2, { height: 0.5, period: 4, heading: 90 })!;
    expect(swing.cavitationMargin).toBeLessThan(watch.worst(state).margin);
    expect(swing.stallMargin!).toBeLessThan(state.stallMargin);
    const calm = waveSwing(level, watch, 6.2, { height: 0, period: 4, heading: 90 })!;
    expectClose('calm', calm.cavitationMargin, watch.worst(state).margin, { within: 1e-9 });
  });

  it('a face at pace: slope kappa a, pull m g sin(slope), by hand', () => {
    const level = runner(goodDesign('downwind'));
    const ride = faceRide(level, { height: 0.6, period: 4, heading: 0 })!;
    const kappa = (Math.PI / 2) ** 2 / 9.80665; // omega = 2 pi / 4 s; omega^2 = g kappa
    const slope = Math.atan(kappa * 0.3);
    expectClose('slope', ride.slope, (slope * 180) / Math.PI, { share: 1e-9 });
    expectClose('pull', ride.pull, level.design.brief.allUpMass * 9.80665 * Math.sin(slope), { share: 1e-9 });
    expectClose('missing', ride.missingPower, (ride.drag - ride.pull) * ride.speed, { share: 1e-9 });
    expect(faceRide(level, { height: 0.6, period: 4, heading: 120 })).toBeNull();
  });
});
