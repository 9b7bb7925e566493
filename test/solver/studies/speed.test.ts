import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import {
  fuselageDrag,
  junctionDrag,
  sprayDrag,
  strutFrictionDrag,
  turbulentFriction,
} from '../../../src/solver/forces/drag-sources.ts';
import { fixedProfile, type ProfileModel } from '../../../src/solver/forces/profile.ts';
import { depthAtSpeed } from '../../../src/solver/studies/condition.ts';
import { shimTable } from '../../../src/solver/studies/shims.ts';
import { bestSpeeds, LevelRunner, speedSeries } from '../../../src/solver/studies/speed.ts';
import { speedStudy } from '../../../src/solver/studies/speed-study.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import { takeOff } from '../../../src/solver/studies/take-off.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesign, goodDesigns, plainDesign, plainStabilizer } from '../../support/designs.ts';

const resolution = { strips: 40, stabilizerStrips: 20, rows: 1 };
const runner = (design: Design, profile: ProfileModel = fixedProfile) =>
  new LevelRunner(design, resolution, profile);

/** A strip stalls at cl 1.2 whatever its Reynolds number: a made-up section, so that take-off has a hand-made answer. */
const stallsAt = (clMax: number): ProfileModel => ({
  ...fixedProfile,
  cd: () => 0.008,
  clMax: () => clMax,
});

describe('drag correlations, worked by hand', () => {
  const stream = { speed: 10, density: 1000, viscosity: 1e-6 }; // q = 50 000 N/m2

  it('ITTC-1957 friction at Re 1e6 and 1e7 (8th ITTC, Madrid 1957: 0.075/(log10 Re - 2)^2)', () => {
    expectClose('Cf at 1e6', turbulentFriction(1e6), 0.0046875, { share: 1e-12 }); // 0.075/16
    expectClose('Cf at 1e7', turbulentFriction(1e7), 0.003, { share: 1e-12 }); // 0.075/25
  });

  it('junction and spray of a strut 13 mm thick, chord 115 mm (Hoerner 1965, from memory)', () => {
    // t/c 0.113043; 17 (t/c)^2 - 0.05 = 0.167240; q t^2 = 50000 * 0.000169 = 8.45 N
    expectClose('junction', junctionDrag(0.013, 0.115, stream), 8.45 * 0.16724, { share: 1e-4 });
    expectClose('spray', sprayDrag(0.013, stream), 0.24 * 8.45, { share: 1e-12 });
    expect(junctionDrag(0.005, 0.115, stream)).toBe(0); // thinner than the fit reaches: never a thrust
  });

  it('strut and fuselage friction, each step written out', () => {
    // strut: Re 1e6 for a chord of 0.1 m, t/c 0.1: form 1 + 0.2 + 0.006 = 1.206; cd = 2 * 0.0046875 * 1.206
    const strut = { length: 1, chord: 0.1, thickness: 0.01 };
    expectClose('strut', strutFrictionDrag(strut, 0.5, stream), 2 * 0.0046875 * 1.206 * 0.1 * 0.5 * 50000, {
      share: 1e-12,
    });
    // fuselage 1 m by 0.04 m: d/l 0.04, form 1 + 1.5 * 0.008 + 7 * 0.000064 = 1.012448; Re 1e7: Cf 0.003
    expectClose(
      'fuselage',
      fuselageDrag({ diameter: 0.04, nose: 0 }, 1, stream),
      0.003 * 1.012448 * Math.PI * 0.04 * 50000,
      {
        share: 1e-9,
      },
    );
  });
});

describe('level running', () => {
  it('every good design balances force and moment to 1e-6 of the weight at every speed that it can run', () => {
    for (const [name, design] of goodDesigns()) {
      const level = runner(design);
      for (const fix of ['stance', 'incidence'] as const)
        for (const speed of [design.brief.speeds.cruise, design.brief.speeds.top]) {
          const state = level.run(speed, fix);
          expect(Math.abs(state.residual.lift), `${name} ${fix} ${speed}`).toBeLessThan(1e-6);
          expect(Math.abs(state.residual.pitch), `${name} ${fix} ${speed}`).toBeLessThan(1e-6);
          const sum = Object.values(state.drag).reduce((total, value) => total + value, 0);
          expectClose(`${name} sources sum to the total`, sum, state.totalDrag, { share: 1e-12 });
        }
    }
  });

  it('the example documents trim with the stabilizer between CL -0.3 and 0.3 at cruise once the stance is solved', () => {
    for (const [name, design] of goodDesigns()) {
      if (!design.stabilizer) continue;
      const { point } = speedSeries(runner(design), design.brief.speeds.cruise, 30, 1, 'incidence')[0]!;
      expect(Math.abs(point!.CLstabilizer!), name).toBeLessThan(0.3);
      expect(point!.isReachable, name).toBe(true);
    }
  });

  it('a hand-worked balance: elliptic wing, no stabilizer, drag and drive at their heights', () => {
    // Symmetric section, flat, deep: the lift W acts at the quarter chord, x = 0, at right angles to the stream, so along
    // the foil's axes it is (-W sin alpha, W cos alpha). Drag D acts at z = 0, the balance point is 1 m up, the drive 1.5 m
    // up. Nose-up moments about the balance point (x_b, 1): the lift gives x_b W cos alpha + 1 m * W sin alpha, the drag
    // -1 m * D, the drive (D forward, 0.5 m above it) -0.5 m * D. So x_b = 1.5 D / (W cos alpha) - tan alpha.
    const design = plainDesign({ chord: { kind: 'elliptic', root: 0.1 } }, { brief: { driveHeight: 1.5 } });
    const state = runner(design).run(10, 'incidence');
    const weight = 50 * 9.80665;
    const expected = (1.5 * state.totalDrag) / (weight * Math.cos(state.alpha)) - Math.tan(state.alpha);
    expectClose('stance', state.stance, expected, { within: 1e-4 });
    // Profile drag 0.008 on the unrolled area pi/4 * 0.1 * 1 at q = rho V^2/2.
    expectClose('profile drag', state.drag.wingProfile, 0.008 * (Math.PI / 4) * 0.1 * 0.5 * 999.1026 * 100, {
      share: 1e-3,
    });
  });

  it('a hand-worked balance: wing and stabilizer, the stance kept, each lift by statics', () => {
    // Symmetric sections, flat, deep. Wing at x = 0, stabilizer 0.6 m aft, balance point at x_b = 0.05 m, 1 m up, the drive
    // through it. W = 50 kg * 9.80665 = 490.33 N. Across the stream: L_w + L_s = W. About the balance point, nose up, with
    // the angle a that the solver found and each lift along (-sin a, cos a) of the foil's axes:
    //   wing        L_w (x_b cos a + 1 m sin a)
    //   stabilizer  L_s ((x_b - 0.6 m) cos a + 1 m sin a)
    //   drag        -1 m * D, as all of it acts at z = 0
    // Their sum is nothing: L_s 0.6 m cos a = W (x_b cos a + 1 m sin a) - D * 1 m.
    const design = plainDesign(
      { incidence: 2 },
      { stabilizer: plainStabilizer(), brief: { balance: { x: 0.05, height: 1 } } },
    );
    const { alpha, totalDrag, lift, incidence, drag } = runner(design).run(10, 'stance');
    const weight = 490.3325;
    const moment = weight * (0.05 * Math.cos(alpha) + Math.sin(alpha)) - totalDrag;
    expectClose('stabilizer', lift.stabilizer, moment / (0.6 * Math.cos(alpha)), { within: 0.3 });
    expectClose('wing', lift.wing, weight - lift.stabilizer, { within: 1e-3 });
    expect(incidence).not.toBe(0);
    // Profile drag: 0.008 on 0.1 m2 of wing and 0.02 m2 of stabilizer at q = 999.1026 * 100 / 2 = 49955 N/m2.
    expectClose('wing, profile', drag.wingProfile, 0.008 * 0.1 * 49955.13, { share: 1e-4 });
    expectClose('stabilizer, profile', drag.stabilizerProfile, 0.008 * 0.02 * 49955.13, { share: 1e-4 });
  });

  it('a stance that no rider can reach is no running state: not best, and without a shift', () => {
    const design = goodDesign('curved-race');
    design.stabilizer = { ...design.stabilizer!, incidence: -14 };
    const study = finish(speedStudy(design, { from: 5, to: 14, count: 12, fix: 'incidence' }));
    const { point } = study.named.cruise;
    expect(Math.abs(point!.stance - design.brief.balance.x)).toBeGreaterThan(study.reach);
    expect(point!.isReachable).toBe(false);
    expect([study.shift, study.lineUp]).toEqual([null, null]);
    for (const found of [study.best.bestGlide, study.best.leastPower])
      if (found) {
        const near = study.series.filter(({ speed }) => Math.abs(speed - found.speed) < 1);
        expect(near.some((each) => each.point?.isReachable)).toBe(true);
      }
  });

  it('a stabilizer asked for more than its section can give is known', () => {
    const design = goodDesign('curved-race');
    // At 5 m/s the drawn stance asks the stabilizer for CL above the 1.2 that a section is taken to carry.
    const { point } = speedSeries(runner(design), 5, 5, 1, 'stance')[0]!;
    expect(point!.CLstabilizer!).toBeGreaterThan(1.2);
    expect(point!.stabilizerMargin!).toBeLessThan(0);
    const cruise = speedSeries(runner(design), 9.5, 9.5, 1, 'stance')[0]!.point!;
    expect(cruise.stabilizerMargin!).toBeGreaterThan(1);
  });

  it('the surface takes of the lift what the split system takes, more when shallower, nothing when deep', () => {
    const share = (depth: number | null) => {
      const design = goodDesign('curved-race');
      delete design.brief.depths;
      const at = { ...design, brief: { ...design.brief, depth } };
      return finish(speedStudy(at, { from: 9, to: 10, count: 1, fix: 'incidence' })).surfaceShare;
    };
    expect(share(0.2)!).toBeGreaterThan(share(0.5)!);
    expect(share(0.5)!).toBeGreaterThan(0);
    expect(share(null)).toBeNull();
  });

  it('impossible running is said in a sentence, not shown as a result', () => {
    const heavy = plainDesign({}, { brief: { allUpMass: 400 } });
    const { point, problem } = speedSeries(runner(heavy), 1, 1, 1, 'incidence')[0]!;
    expect(point).toBeNull();
    expect(problem).toMatch(/no angle .* carries this weight/);
  });

  it('best glide: with a fixed drag coefficient induced and parasite drag are equal there (textbook parabola)', () => {
    const design = plainDesign({ chord: { kind: 'elliptic', root: 0.1 } });
    const cases = speedSeries(runner(design), 3, 12, 60, 'incidence');
    const { bestGlide, leastPower } = bestSpeeds(cases);
    const state = runner(design).run(bestGlide!.speed, 'incidence');
    expectClose('induced = parasite', state.drag.wingInduced, state.drag.wingProfile, { share: 0.02 });
    // Least power at 3^(-1/4) of the best-glide speed.
    expectClose('least power', leastPower!.speed / bestGlide!.speed, 3 ** -0.25, { share: 0.02 });
  });
});

describe('take-off and shims', () => {
  it('take-off of an elliptic wing follows from CL = clMax: V = sqrt(2 W / (rho S clMax))', () => {
    const design = plainDesign({ chord: { kind: 'elliptic', root: 0.1 } });
    const found = takeOff((one) => runner(one, stallsAt(1)), design)!;
    const area = (Math.PI / 4) * 0.1;
    const expected = Math.sqrt((2 * 50 * 9.80665) / (999.1026 * area * 1));
    expectClose('take-off speed', found.speed, expected, { share: 0.02 }); // the extended line's loading is not quite elliptic
    expectClose('10 kg more', found.perTenKilograms, found.speed * (Math.sqrt(1.2) - 1), { share: 0.03 });
    expect(found.perTenPercentArea).toBeLessThan(0);
  });

  it('no greatest lift, no take-off speed', () => {
    expect(takeOff((one) => runner(one, stallsAt(Number.POSITIVE_INFINITY)), plainDesign({}))).toBeNull();
  });

  it('more stabilizer incidence moves the feet aft and the trim speed down', () => {
    const design = plainDesign(
      { incidence: 2 },
      { stabilizer: plainStabilizer(), brief: { balance: { x: 0.05, height: 1 } } },
    );
    const rows = finish(shimTable((one) => runner(one), design));
    expect(rows).toHaveLength(13);
    for (let k = 1; k < rows.length; k++) expect(rows[k]!.stance).toBeGreaterThan(rows[k - 1]!.stance);
  });
});

describe('depth by speed', () => {
  const { brief } = plainDesign({}, { brief: { depth: 0.5, depths: { takeOff: 0.2, top: 0.6 } } });
  it('meets the named speeds, `depth` at cruise, and holds beyond the ends', () => {
    expect(depthAtSpeed(brief, 5)).toBe(0.2);
    expect(depthAtSpeed(brief, 10)).toBe(0.5);
    expect(depthAtSpeed(brief, 14)).toBe(0.6);
    expect(depthAtSpeed(brief, 2)).toBe(0.2);
    expect(depthAtSpeed(brief, 30)).toBe(0.6);
    const between = depthAtSpeed(brief, 7)!;
    expect(between).toBeGreaterThan(0.2);
    expect(between).toBeLessThan(0.5);
  });
});
