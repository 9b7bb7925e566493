/**
 * Motion: roots of published aircraft through this program's equations, pendulums, added mass, unsteady lift, waves. An
 * untended craft has no measured modes that could be had; its limits can be worked out.
 */
import { eigenvalues } from '../../src/solver/numeric/eigen.ts';
import type { Derivatives } from '../../src/solver/report.ts';
import { addedMass } from '../../src/solver/studies/added-mass.ts';
import { craftFor } from '../../src/solver/studies/craft-for.ts';
import { modesAt } from '../../src/solver/studies/hold-study.ts';
import { inertiaOf } from '../../src/solver/studies/inertia.ts';
import { modeTracks } from '../../src/solver/studies/mode-tracks.ts';
import { modesOfMatrix } from '../../src/solver/studies/modes.ts';
import { lateralMotion } from '../../src/solver/studies/motion.ts';
import { rideStudy } from '../../src/solver/studies/ride.ts';
import { finish } from '../../src/solver/studies/study.ts';
import { theodorsen } from '../../src/solver/studies/unsteady.ts';
import { waveStudy } from '../../src/solver/studies/wave-study.ts';
import { goodDesign, plainDesign } from '../support/designs.ts';
import { airplaneSideways, airplaneUpright, DRY } from './airplane.ts';
import type { PublishedRow } from './row.ts';

const LATERAL = ['v', 'p', 'r', 'phi'] as const;
const VERTICAL = ['u', 'w', 'q', 'theta', 'd'] as const;
const one = <Name extends string>(names: readonly Name[]) =>
  Object.fromEntries(names.map((name) => [name, 1])) as Record<Name, number>;

const NELSON =
  'R. C. Nelson, Flight Stability and Automatic Control, general-aviation airplane: coefficients read (second-hand copy), roots recomputed from them';
const airplanes: PublishedRow[] = [
  {
    quantities: ['spiral root, 1/s', 'Dutch roll, real', 'Dutch roll, imaginary', 'roll root, 1/s'],
    conditions: 'lateral modes of a general-aviation airplane',
    published: [-0.0082, -0.487, 2.3472, -8.4349],
    // the printed derivatives have three digits, and here gravity acts through the weight carried
    tolerance: [{ within: 0.001 }, { within: 0.003 }, { within: 0.013 }, { within: 0.01 }],
    source: NELSON,
    status: 'derived',
    method: 'equations of motion of the craft, no added mass',
    compute: () => {
      const matrix = airplaneSideways();
      const [spiral, dutch, roll] = modesOfMatrix(matrix, LATERAL, one(LATERAL));
      return [spiral!.real, dutch!.real, dutch!.imaginary, roll!.real];
    },
  },
  {
    quantities: ['phugoid, real', 'phugoid, imaginary', 'short period, real', 'short period, imaginary'],
    conditions: 'longitudinal modes of a general-aviation airplane',
    published: [-0.0171, 0.2131, -2.5105, 2.5918],
    tolerance: [{ within: 0.001 }, { within: 0.001 }, { within: 0.005 }, { within: 0.005 }],
    source: NELSON,
    status: 'derived',
    method: 'equations of motion of the craft; the slope by the rate of w stands as added mass',
    compute: () => {
      const matrix = airplaneUpright();
      const [, phugoid, short] = modesOfMatrix(matrix, VERTICAL, one(VERTICAL));
      return [phugoid!.real, phugoid!.imaginary, short!.real, short!.imaginary];
    },
  },
  {
    quantities: ['short period, real', 'short period, imaginary', 'phugoid, real', 'phugoid, imaginary'],
    conditions: 'system matrix of a jet transport at 40 000 ft',
    published: [-0.3719, 0.8875, -0.003289, 0.06723],
    tolerance: [{ within: 1e-4 }, { within: 1e-4 }, { within: 1e-5 }, { within: 1e-5 }],
    source:
      'B. Etkin, L. D. Reid, Dynamics of Flight, 3rd ed. 1996, ch. 6: matrix read (second-hand copy), roots',
    status: 'from memory + derived',
    method: 'eigenvalues of the matrix',
    compute: () => {
      // biome-ignore format: four rows of a matrix
      const matrix = Float64Array.of(
        -0.006868, 0.01395, 0, -32.2,
        -0.09055, -0.3151, 773.98, 0,
        0.0001187, -0.001026, -0.4285, 0,
        0, 0, 1, 0,
      );
      const roots = eigenvalues(matrix, 4)
        .filter(({ imaginary }) => imaginary > 0)
        .sort((a, b) => a.real - b.real);
      return [roots[0]!.real, roots[0]!.imaginary, roots[1]!.real, roots[1]!.imaginary];
    },
  },
];

/** A craft of which nothing weighs but a rider without any size, high on a foil that all but cannot slip. */
function pendulum(height: number): PublishedRow {
  const held = 5e4;
  const by: Derivatives = {
    CYbeta: -held,
    Clbeta: held * height,
    Cnbeta: 0,
    CYp: held * 2 * height,
    Clp: -held * 2 * height * height,
    Cnp: 0,
    CYr: 0,
    Clr: 0,
    Cnr: -1,
  };
  return {
    quantities: ['falling root, 1/s'],
    conditions: `point weight ${height} m above a foil that cannot slip`,
    published: [Math.sqrt(9.81 / height)],
    tolerance: [{ share: 0.002 }],
    source: 'pendulum upside down: sqrt(g/height)',
    status: 'derived',
    method: 'equations of motion of the craft',
    compute: () => {
      const running = { density: 1000, speed: 9, weight: 80 * 9.81, alpha: 0 };
      const masses = { mass: 80, roll: 1e-6, pitch: 1, yaw: 5, rollYaw: 0 };
      const matrix = lateralMotion(running, masses, DRY, by, { area: 0.07, span: 1 });
      return [modesOfMatrix(matrix, LATERAL, one(LATERAL))[0]!.real];
    },
  };
}

/** The demo's fall while the rider keeps it from turning, 1/s, with the balance point at a height (m). */
function heldFall(height: number): number {
  const design = goodDesign('curved-race');
  const balance = { ...design.brief.balance, height };
  return modesAt({ ...design, brief: { ...design.brief, balance } }).fallHeldStraight;
}

const crafts: PublishedRow[] = [
  pendulum(1.9),
  pendulum(1.2),
  {
    quantities: ['fall held straight at 2.4 m over that at 1.6 m'],
    conditions: 'curved race wing, balance point raised',
    published: [Math.sqrt(1.6 / 2.4)],
    tolerance: [{ share: 0.05 }], // rider, board and water that turns along have inertia of their own
    source: 'pendulum upside down: sqrt(g/height)',
    status: 'derived',
    method: 'modes of a whole craft',
    compute: () => [heldFall(2.4) / heldFall(1.6)],
  },
  {
    quantities: ['fall held straight at no droop over that at 30 degrees'],
    conditions: 'curved race wing, droop followed',
    published: [1],
    tolerance: [{ share: 0.04 }],
    source: 'pendulum upside down: what the strut holds hardly changes with the droop',
    status: 'derived',
    method: 'modes followed along the droop',
    compute: () => {
      const { fallHeldStraight } = finish(modeTracks(goodDesign('curved-race'), { count: 2, to: 30 }));
      return [fallHeldStraight[0]! / fallHeldStraight[1]!];
    },
  },
  {
    quantities: ['roll inertia of rods and plate, kg m2'],
    conditions: 'board of 6 kg and 0.6 m, foil of 4 kg, rider where the rest balances',
    published: [rollByHand()],
    tolerance: [{ within: 1e-9 }],
    source: 'plate m b^2/12, rod m l^2/12 and m l^2/3, parallel axes',
    status: 'derived',
    method: 'inertia model',
    compute: () => [inertiaOf(weighed(), 0.7).roll],
  },
];

function weighed() {
  const design = goodDesign('curved-race');
  const inertia = {
    boardMass: 6,
    boardLength: 1.2,
    boardWidth: 0.6,
    foilMass: 4,
    riderRoll: 0.5,
    riderPitch: 0.4,
    riderYaw: 0.2,
  };
  return { ...design, inertia };
}

/** The strut is 1 m long and stands at the origin. */
function rollByHand(): number {
  const { allUpMass, balance } = weighed().brief;
  const rider = allUpMass - 10;
  const height = (allUpMass * balance.height - 6 - 2 * 0.5) / rider;
  const board = 6 * (0.36 / 12 + (balance.height - 1) ** 2);
  const upright = 2 * (1 / 12 + (balance.height - 0.5) ** 2);
  const across = 2 * (0.49 / 12 + balance.height ** 2);
  return board + upright + across + rider * (0.25 + (balance.height - height) ** 2);
}

const RESOLUTION = { strips: 24, stabilizerStrips: 12, rows: 1 };
const LAMB_PLATE = 'flat plate across a stream, rho pi c^2/4 a metre: H. Lamb, Hydrodynamics, 1932, art. 71';

const water: PublishedRow[] = [
  {
    quantities: ['heave, kg', 'heave against pitch, kg m'],
    conditions: 'plate of 1 m by 0.1 m in fresh water, about its quarter chord',
    published: [(1000 * Math.PI * 0.01) / 4, ((1000 * Math.PI * 0.01) / 4) * 0.025],
    tolerance: [{ share: 1e-6 }, { share: 1e-6 }],
    source: LAMB_PLATE,
    status: 'derived',
    method: 'added mass by strips',
    compute: () => {
      const matrix = addedMass(craftFor(plainDesign({}), null, RESOLUTION), 1000, { x: 0, height: 0 });
      return [matrix[14]!, matrix[16]!];
    },
  },
  {
    quantities: ['sway over heave'],
    conditions: 'vee of 30 degrees',
    published: [1 / 3],
    tolerance: [{ share: 1e-9 }],
    source: `${LAMB_PLATE}: tan^2 of the droop`,
    status: 'derived',
    method: 'added mass by strips',
    compute: () => {
      const craft = craftFor(plainDesign({ droop: { kind: 'vee', tipAngle: 30 } }), null, RESOLUTION);
      const matrix = addedMass(craft, 1000, { x: 0, height: 0 });
      return [matrix[7]! / matrix[14]!];
    },
  },
];

// k, F, -G
const THEODORSEN: Array<[number, number, number]> = [
  [0.1, 0.8319, 0.1723],
  [0.2, 0.7276, 0.1886],
  [0.5, 0.5979, 0.1507],
  [1, 0.5394, 0.1003],
];

const unsteady = THEODORSEN.map(
  ([k, f, g]): PublishedRow => ({
    quantities: ['F', '-G'],
    conditions: `Theodorsen’s function at a reduced frequency of ${k}`,
    published: [f, g],
    tolerance: [{ within: 1e-4 }, { within: 1e-4 }],
    source: 'T. Theodorsen, NACA Report 496, 1935, table of C(k)',
    status: 'from memory',
    method: 'Bessel functions',
    compute: () => {
      const found = theodorsen(k);
      return [found.f, -found.g];
    },
  }),
);

/** Waves of 1 m and 4 s, overtaken from behind at the demo's cruise. */
const PERIOD = 4;
const NUMBER = (2 * Math.PI) ** 2 / PERIOD ** 2 / 9.80665;
const AIRY = 'waves of small slope on deep water: H. Lamb, Hydrodynamics, 1932, art. 229';

const waves: PublishedRow = {
  quantities: ['length, m', 'celerity, m/s', 'orbital speed at the foil, m/s', 'encounter period, s'],
  conditions: 'waves of 1 m and 4 s, met head on',
  published: (() => {
    const { brief } = goodDesign('curved-race');
    const omega = (2 * Math.PI) / PERIOD;
    const depth = brief.depths?.cruise ?? brief.depth!;
    return [
      (2 * Math.PI) / NUMBER,
      omega / NUMBER,
      0.5 * omega * Math.exp(-NUMBER * depth),
      (2 * Math.PI) / (omega + NUMBER * brief.speeds.cruise),
    ];
  })(),
  tolerance: [{ share: 1e-9 }, { share: 1e-9 }, { share: 1e-9 }, { share: 1e-9 }],
  source: AIRY,
  status: 'derived',
  method: 'waves over a foil held at its depth',
  compute: () => {
    const study = waveStudy(goodDesign('curved-race'), {
      waves: { height: 1, period: PERIOD, heading: 180 },
      pumpFrequency: 1,
    });
    const swing = study.swing[1]!.swing!;
    return [swing.length, swing.celerity, swing.orbitalSpeed, swing.encounterPeriod];
  },
};

/** Everything a hundredfold stiffer than a sound foil: what is left of the ride's softness. */
function stiffened() {
  const design = goodDesign('curved-race');
  const made = { modulus: 1e13, shear: 1e13 };
  const spring = { roll: 1e6, pitch: 1e6, yaw: 1e6 };
  return {
    ...design,
    laminate: { strut: made, fuselage: made, wing: made, stabilizer: made },
    joints: { box: spring, strut: spring, wing: spring, stabilizer: spring },
  };
}

const ride: PublishedRow = {
  quantities: ['yaw stiffness, flexible over rigid', 'roll from yaw, flexible over rigid'],
  conditions: 'curved race wing of parts that hardly give',
  published: [1, 1],
  tolerance: [{ within: 0.02 }, { within: 0.02 }],
  source: 'a foil that does not give is rigid',
  status: 'derived',
  method: 'every cause answered with all parts giving',
  compute: () => {
    const { rigid, flexible } = finish(rideStudy(stiffened(), { count: 2, strips: 16 })).cruise;
    return [flexible.Cnbeta / rigid.Cnbeta, flexible.rollFromYaw / rigid.rollFromYaw];
  },
};

export const motion: PublishedRow[] = [...airplanes, ...crafts, ...water, ...unsteady, waves, ride];
