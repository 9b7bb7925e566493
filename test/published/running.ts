/**
 * Level running and what is asked of it: balance, take-off, depth, heel, turns, side pull, what droop buys. No tank has
 * run these foils; what each study must say where its question has a closed answer.
 */
import { bandStudy } from '../../src/solver/bands.ts';
import { asDrawn } from '../../src/solver/design/beach-setting.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { fixedProfile, type ProfileModel } from '../../src/solver/forces/profile.ts';
import { scaledPlanform } from '../../src/solver/geometry/scale.ts';
import { solve } from '../../src/solver/solve.ts';
import { beachStudy } from '../../src/solver/studies/beach.ts';
import { curveStudy } from '../../src/solver/studies/curve-study.ts';
import { droopMap } from '../../src/solver/studies/droop-map.ts';
import { priceBand } from '../../src/solver/studies/price-band.ts';
import { riderStudy } from '../../src/solver/studies/rider.ts';
import { sideStudy } from '../../src/solver/studies/side-study.ts';
import { bestSpeeds, LevelRunner, speedSeries } from '../../src/solver/studies/speed.ts';
import { speedDetails } from '../../src/solver/studies/speed-details.ts';
import { makeRunner, speedStudy } from '../../src/solver/studies/speed-study.ts';
import { stabilizerChanges } from '../../src/solver/studies/stabilizer-changes.ts';
import { sizeStabilizer } from '../../src/solver/studies/stabilizer-sizing.ts';
import { finish } from '../../src/solver/studies/study.ts';
import { takeOff } from '../../src/solver/studies/take-off.ts';
import { turningChoices } from '../../src/solver/studies/turning-choices.ts';
import { goodDesign, plainDesign, plainStabilizer } from '../support/designs.ts';
import type { PublishedRow } from './row.ts';

const GRAVITY = 9.80665;
const RADIANS = Math.PI / 180;
const STRIPS = { strips: 40, stabilizerStrips: 20, rows: 1 };

/** Elliptic wing of 1 m and a root chord of 0.1 m in deep fresh water under 50 kg. */
const elliptic = (changes: Parameters<typeof plainDesign>[1] = {}) =>
  plainDesign({ chord: { kind: 'elliptic', root: 0.1 } }, changes);
const AREA = (Math.PI / 4) * 0.1;
const LIFT = 50 * GRAVITY;
const DENSITY = 999.1026; // fresh water of 15 degrees C

const curved = goodDesign('curved-race');

const runner = (design: Design, profile: ProfileModel = fixedProfile) =>
  new LevelRunner(design, STRIPS, profile);

/** A section that stalls at a lift coefficient of one. */
const stalls: ProfileModel = {
  ...fixedProfile,
  cd: () => 0.008,
  clMax: () => 1,
};

const polar: PublishedRow[] = [
  {
    quantities: ['induced drag, N'],
    conditions: 'elliptic wing of 1 m carrying 50 kg at 10 m/s, fresh water',
    published: [LIFT ** 2 / (0.5 * DENSITY * 100 * Math.PI)],
    tolerance: [{ share: 0.003 }], // the extended line's loading is not quite elliptic
    source: 'W^2/(q pi b^2), L. Prandtl, Tragfluegeltheorie, 1918',
    status: 'derived',
    method: 'level running',
    compute: () => [runner(elliptic()).run(10, 'incidence').drag.wingInduced],
  },
  {
    quantities: ['induced over profile drag at best glide', 'least power’s speed over best glide’s'],
    conditions: 'elliptic wing with a fixed drag coefficient, 3 to 12 m/s',
    published: [1, 3 ** -0.25],
    tolerance: [{ within: 0.02 }, { within: 0.01 }], // sixty speeds, a parabola through the best three
    source: 'the drag parabola of any textbook',
    status: 'derived',
    method: 'series of level running',
    compute: () => {
      const level = runner(elliptic());
      const { bestGlide, leastPower } = bestSpeeds(speedSeries(level, 3, 12, 60, 'incidence'));
      const { drag } = level.run(bestGlide!.speed, 'incidence');
      return [drag.wingInduced / drag.wingProfile, leastPower!.speed / bestGlide!.speed];
    },
  },
  {
    quantities: ['take-off speed, m/s', 'm/s more for 10 kg'],
    conditions: 'elliptic wing whose sections stall at a lift coefficient of 1',
    published: [
      Math.sqrt((2 * LIFT) / (DENSITY * AREA)),
      Math.sqrt((2 * LIFT) / (DENSITY * AREA)) * (Math.sqrt(1.2) - 1),
    ],
    tolerance: [{ share: 0.02 }, { share: 0.03 }], // the loading is not quite elliptic: one strip is there sooner
    source: 'V = sqrt(2 W/(rho S CL)), the same lift coefficient all along an elliptic wing',
    status: 'derived',
    method: 'lowest speed with every strip within its section’s lift',
    compute: () => {
      const found = takeOff((design) => runner(design, stalls), elliptic())!;
      return [found.speed, found.perTenKilograms];
    },
  },
  {
    quantities: [
      'heel at which a tip breaks the surface, degrees',
      'the other one’s',
      'their take-offs apart, m/s',
    ],
    conditions: 'flat race wing of 0.74 m against itself, one rider, 0.25 m deep',
    published: [Math.asin(0.25 / (0.5 * 0.74)) / RADIANS, Math.asin(0.25 / (0.5 * 0.74)) / RADIANS, 0],
    tolerance: [{ within: 0.01 }, { within: 0.01 }, { within: 1e-12 }],
    source: 'right triangle: asin(depth/half span); a foil is no quicker than itself',
    status: 'derived',
    method: 'two foils for one rider',
    compute: () => {
      const flat = goodDesign('flat-race');
      const design = { ...flat, brief: { ...flat.brief, depth: 0.25 } };
      const { one, other } = finish(riderStudy(design, { against: flat }));
      return [one.breachHeel!, other.breachHeel!, one.takeOff! - other.takeOff!];
    },
  },
  {
    quantities: ['take-off speed with 10 kg more over that as drawn'],
    conditions: 'that wing set up on the beach for a heavier rider',
    published: [Math.sqrt(1.2)],
    tolerance: [{ share: 0.002 }],
    source: 'V goes with the root of the weight',
    status: 'derived',
    method: 'both settings as documents of their own',
    compute: () => {
      const setting = { ...asDrawn(elliptic()), mass: 10 };
      const { drawn, set } = finish(beachStudy(elliptic(), { setting }, (design) => runner(design, stalls)));
      return [set.takeOff! / drawn.takeOff!];
    },
  },
  {
    quantities: ['stance, m aft'],
    conditions: 'elliptic wing alone, drive 0.5 m over the balance point',
    published: [0], // of the difference from the balance worked by hand with the angle and the drag found
    tolerance: [{ within: 1e-4 }],
    source: 'moments about the balance point: 1.5 m D/(W cos alpha) - 1 m tan alpha',
    status: 'derived',
    method: 'level running, less the balance worked by hand',
    compute: () => {
      const state = runner(elliptic({ brief: { driveHeight: 1.5 } })).run(10, 'incidence');
      const { alpha, totalDrag } = state;
      return [state.stance - (1.5 * totalDrag) / (LIFT * Math.cos(alpha)) + Math.tan(alpha)];
    },
  },
];

/** The demo shallow enough for its tips to come out before it lies on its side. */
function shallow(design: Design): Design {
  const { depths: _depths, ...brief } = design.brief;
  return { ...design, brief: { ...brief, depth: 0.25 } };
}

let details: ReturnType<typeof lookCloser> | undefined;
const lookCloser = () => finish(speedDetails(race));
const closer = () => (details ??= lookCloser());
const race = shallow(goodDesign('flat-race'));
const CRUISE = race.brief.speeds.cruise;

const turns: PublishedRow[] = [
  {
    quantities: ['turn radius, m', 'load factor', 'pitch rate, rad/s'],
    conditions: 'carve of 45 degrees at the demo’s cruise',
    published: [CRUISE ** 2 / GRAVITY, Math.SQRT2, (GRAVITY / CRUISE) * Math.sin(Math.PI / 4)],
    tolerance: [{ share: 1e-9 }, { share: 1e-9 }, { share: 1e-9 }],
    source: 'level turn: V^2/(g tan phi), 1/cos phi, (g/V) sin phi tan phi; B. Etkin, L. D. Reid 1996',
    status: 'derived',
    method: 'carves at cruise',
    compute: () => {
      const row = closer().carve.find((each) => each?.heel === 45)!;
      return [row.radius, row.loadFactor, row.pitchRate];
    },
  },
  {
    quantities: ['heel at which the tip breaks the surface, degrees'],
    conditions: 'flat race wing of 0.74 m, 0.25 m deep',
    published: [Math.asin(0.25 / (0.5 * 0.74)) / RADIANS],
    tolerance: [{ within: 0.01 }],
    source: 'right triangle: asin(depth/half span)',
    status: 'derived',
    method: 'stations of the heeled wing',
    compute: () => [closer().breachHeel ?? Number.NaN],
  },
  {
    quantities: ['vertical lift over that level', 'side force over that lift'],
    conditions: 'flat race foil heeled 30 degrees, its lift along its own normal kept',
    published: [Math.cos(30 * RADIANS), Math.sin(30 * RADIANS)],
    tolerance: [{ within: 0.015 }, { within: 0.015 }], // so near the surface its image pulls a heeled foil aside
    source: 'a force turned with the foil',
    status: 'derived',
    method: 'whole foil heeled under a level surface, both halves unknown',
    compute: () => {
      const [level, , , heeled] = closer().heel;
      return [heeled!.verticalLift / level!.verticalLift, Math.abs(heeled!.sideForce) / level!.verticalLift];
    },
  },
  {
    quantities: ['turning moment of the stabilizer by its arm, feet’s shift over that with the present arm'],
    conditions: 'stabilizer 1.25 times as far aft, as large a volume',
    published: [1.25],
    tolerance: [{ share: 0.03 }], // the wing’s own pitch damping and the downwash take part
    source: 'area times arm kept: the pitch rate’s angle grows with the arm',
    status: 'derived',
    method: 'compared carve at cruise',
    compute: () => {
      const choices = turningChoices(makeRunner, race, CRUISE);
      const shift = (factor: number) =>
        choices.find((one) => one.change === 'arm' && one.factor === factor)!.shift;
      return [shift(1.25) / shift(1)];
    },
  },
];

const pulled = { ...race, brief: { ...race.brief, sidePull: { share: 0.2, height: 2 } } };

const sideways: PublishedRow = {
  quantities: ['strut and foil against the pull', 'lift left over, of the weight'],
  conditions: 'a rig that pulls a fifth of the weight aside, board level',
  published: [-1, 0],
  tolerance: [{ within: 1e-6 }, { within: 1e-6 }],
  source: 'balance of forces across the course',
  status: 'derived',
  method: 'heel, leeway and incidence found together',
  compute: () => {
    const { trim } = finish(sideStudy(pulled, { rule: { by: 'heel', heel: 0 }, fix: 'incidence' }))[1]!;
    const pull = 0.2 * race.brief.allUpMass * GRAVITY;
    return [(trim!.strutForce + trim!.foilSideForce) / pull, trim!.residual.lift];
  },
};

const STABILIZER = { length: 0.4, chord: 0.05, arm: 0.6, droop: 30 * RADIANS };
const mapped = () =>
  plainDesign(
    { droop: { kind: 'arc', tipAngle: 10 } },
    { stabilizer: plainStabilizer({ droop: { kind: 'vee', tipAngle: 30 } }) },
  );

const HALF = { depth: null, allUpMass: 20 };
/** A wide rectangular wing with a stabilizer of next to nothing. */
const wide = () =>
  plainDesign(
    { chord: { kind: 'taper', root: 0.01, tip: 0.01 }, droop: { kind: 'vee', tipAngle: 20 } },
    { brief: HALF, stabilizer: plainStabilizer({ droop: { kind: 'arc', tipAngle: 20 } }) },
  );

const droop: PublishedRow[] = [
  {
    quantities: ['lost share of the vertical lift'],
    conditions: 'vee of 20 degrees, unrolled AR 100, along the droop sweep',
    published: [1 - Math.cos(20 * RADIANS) ** 2],
    tolerance: [{ within: 0.006 }], // at AR 100 the induced angle still gives a little back
    source: 'cos^2 of the droop: P. E. Purser, J. P. Campbell, NACA Report 823, 1945, for endless span',
    status: 'from memory + derived',
    method: 'droop sweep at one lift',
    compute: () => {
      const { sweep } = finish(curveStudy(wide(), { count: 5, to: 20, condition: { sections: 'thin' } }));
      return [sweep.columns.lostFraction[4]!];
    },
  },
  {
    quantities: ['C_lr of the foil at the neutral droop'],
    conditions: 'flat race foil drooped to the neutral droop that its sweep finds',
    published: [0],
    tolerance: [{ within: 2e-4 }], // C_lr of the flat foil is some hundredths
    source: 'definition of the neutral droop',
    status: 'derived',
    method: 'zero of the sweep’s C_lr, put back into the document',
    compute: () => {
      const { price } = finish(curveStudy(curved, { count: 13 }));
      const tipAngle = price.neutral ?? Number.NaN;
      const wing = { ...curved.wing, droop: { kind: 'arc', tipAngle } as const };
      return [solve({ ...curved, wing }, { neutralDroop: false }).stability.foil.Clr];
    },
  },
  {
    quantities: ['neutral droop of solve less that of the sweep, degrees'],
    conditions: 'curved race foil',
    published: [0],
    tolerance: [{ within: 0.1 }],
    source: 'two ways to one zero',
    status: 'derived',
    method: 'search on the droop against the zero of a sweep',
    compute: () => {
      const { price } = finish(curveStudy(curved, { count: 13 }));
      return [(solve(curved).stability.neutralDroop ?? Number.NaN) - (price.neutral ?? Number.NaN)];
    },
  },
  {
    quantities: ['what three rows more move the neutral droop by, less the same of two searches, degrees'],
    conditions: 'curved race foil',
    published: [0],
    tolerance: [{ within: 0.15 }],
    source: 'two ways to one difference',
    status: 'derived',
    method: 'band of the price of hold against searches by one row and by four',
    compute: () => {
      const search = (rows: number) =>
        solve(curved, { strips: 24, stabilizerStrips: 12, rows }).stability.neutralDroop ?? Number.NaN;
      return [(finish(priceBand(curved, { to: 40 })).neutral ?? Number.NaN) - (search(4) - search(1))];
    },
  },
  {
    quantities: ['hold index'],
    conditions:
      'rectangular wing bent to an arc of 20 degrees, stabilizer a vee of 30 degrees, on the droop map',
    published: [holdByHand()],
    tolerance: [{ share: 0.002 }], // strips stand for the integrals
    source: '1000 (G_w/C_L) V_Y worked by hand: arc of radius R, chords constant',
    status: 'derived',
    method: 'map of wing droop and stabilizer size',
    compute: () => {
      const map = finish(
        droopMap(mapped(), {
          measure: 'area',
          columns: 3,
          rows: 3,
          to: 40,
          condition: { sections: 'thin', strips: 20, stabilizerStrips: 10 },
        }),
      )!;
      return [map.holdIndex[4]!]; // its middle: 20 degrees, the stabilizer as drawn
    },
  },
];

/** With s the share of the half length, y = R sin(G s), R = h/G; chords fall out of the mean. */
function holdByHand(): number {
  const bend = 20 * RADIANS;
  const radius = 0.5 / bend;
  const span = 2 * radius * Math.sin(bend);
  // mean of G s over y ds: integral of u sin u over integral of sin u, u from 0 to the tip's droop
  const mean = (Math.sin(bend) - bend * Math.cos(bend)) / (1 - Math.cos(bend));
  const area = 0.1 * span;
  const CL = LIFT / (0.5 * DENSITY * 100 * area);
  const { length, chord, arm, droop: angle } = STABILIZER;
  const sideways = (Math.sin(angle) ** 2 * length * chord * arm) / (area * span);
  return (1000 * mean * sideways) / CL;
}

const margins: PublishedRow[] = [
  {
    quantities: ['static margin'],
    conditions: 'curved race foil with the stabilizer area found for a static margin of a half, solved anew',
    published: [0.5],
    tolerance: [{ within: 0.002 }],
    source: 'definition of what was asked for',
    status: 'derived',
    method: 'stabilizer sizing, put back into the document',
    compute: () => {
      const sizing = finish(sizeStabilizer(curved, { staticMargin: 0.5 }))!;
      const { found } = sizing.choices.find(({ goal }) => goal === 'marginByArea')!;
      const stabilizer = scaledPlanform(curved.stabilizer!, found!.scale);
      return [solve({ ...curved, stabilizer }, { neutralDroop: false }).stability.staticMargin];
    },
  },
  {
    quantities: ['volume on an arm 50 mm longer', 'volume with a tenth more area'],
    conditions: 'stabilizer of the curved race foil, of its present volume',
    published: [1 + 0.05 / curved.stabilizer!.arm, 1.1],
    tolerance: [{ share: 1e-6 }, { share: 1e-6 }],
    source: 'S_s l_s/(S c)',
    status: 'derived',
    method: 'changes that a builder can make, each run level',
    compute: () => {
      const { trials } = finish(stabilizerChanges(curved))!;
      const volume = (change: string) => trials.find((trial) => trial.change === change)!.found!.volume;
      return [volume('longer') / volume('present'), volume('larger') / volume('present')];
    },
  },
  {
    quantities: ['share of the lift slope that the surface takes'],
    conditions: 'wing of AR 1000 one chord below the surface, along the speeds',
    published: [1 / 18],
    tolerance: [{ within: 0.012 }], // a real section lifts as if met elsewhere on its chord than a plate
    source: 'one vortex at a depth of one chord: 1 - (1 + 16)/(2 + 16)',
    status: 'derived',
    method: 'series of level running',
    compute: () => {
      const chord = { kind: 'taper', root: 0.1, tip: 0.1 } as const;
      const endless = plainDesign(
        { length: { kind: 'unrolled', value: 100 }, chord },
        { brief: { depth: 0.1, allUpMass: 100 } },
      );
      const study = speedStudy(endless, { from: 10, to: 10, count: 1, fix: 'incidence' });
      return [finish(study).surfaceShare ?? Number.NaN];
    },
  },
  {
    quantities: ['band that the inputs give the induced drag, of itself'],
    conditions: 'flat wing without a stabilizer, mass and speed each to 2 %',
    published: [Math.hypot(0.04, 0.04)],
    tolerance: [{ share: 0.02 }],
    source: 'drag goes with mass squared over speed squared; halves of changes added as squares',
    status: 'derived',
    method: 'bands of the headline figures',
    compute: () => {
      const { inducedDrag } = finish(bandStudy(elliptic())).figures;
      return [inducedDrag.inputs! / solve(elliptic(), { neutralDroop: false }).inducedDrag.farField];
    },
  },
];

export const running: PublishedRow[] = [...polar, ...turns, sideways, ...droop, ...margins];
