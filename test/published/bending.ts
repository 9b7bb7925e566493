/**
 * Foils that give: struts, wings and joints of whole designs against closed forms of beams, springs and laminates, through
 * the studies that show them. The beams themselves are in `structures.ts`.
 */
import type { BenchReading, Design } from '../../src/solver/design/document.ts';
import { benchFit } from '../../src/solver/studies/bench-fit.ts';
import { builtDesign } from '../../src/solver/studies/built-shape.ts';
import { complianceAccount } from '../../src/solver/studies/compliance.ts';
import { flyingShape } from '../../src/solver/studies/flying-shape.ts';
import { frequencyStudy } from '../../src/solver/studies/frequencies.ts';
import { remedies } from '../../src/solver/studies/remedies.ts';
import { stiffness } from '../../src/solver/studies/stiffness.ts';
import { finish } from '../../src/solver/studies/study.ts';
import { thinStudy } from '../../src/solver/studies/thin.ts';
import { tailFrequency, whistle } from '../../src/solver/studies/whistle.ts';
import { goodDesign, plainDesign } from '../support/designs.ts';
import type { PublishedRow } from './row.ts';

const GRAVITY = 9.80665;
const DEGREES = 180 / Math.PI;

/** A strut of 1 m, 120 mm by 14 mm, of 70 GPa and 26 GPa on a box of 8000 and 4000 N m/rad under a small wing. */
const STRUT = { x: 0, length: 1, chord: 0.12, thickness: 0.014 };
const METAL = { modulus: 70e9, shear: 26e9, density: 2700 };
const BOX = { roll: 8000, pitch: 20000, yaw: 4000 };
const standing = (changes: Partial<Design> = {}): Design => ({
  ...plainDesign({}, { strut: STRUT, brief: { depth: 0.5, allUpMass: 80 } }),
  laminate: { strut: METAL, wing: METAL },
  joints: { box: BOX },
  ...changes,
});

// quadrature of the four-digit form with an open trailing edge; J by a finite-difference stress function at 12 %
const BENDING = 70e9 * 0.039407 * STRUT.chord * STRUT.thickness ** 3;
const TORSION = 26e9 * 0.1542 * STRUT.chord * STRUT.thickness ** 3;
const SECTION = 'I = 0.039407 c t^3 and J = 0.1542 c t^3 of a solid four-digit section';

const struts: PublishedRow[] = [
  {
    quantities: ['side bending stiffness, N m2', 'torsional stiffness, N m2'],
    conditions: 'solid strut of 120 mm by 14 mm, 70 GPa and 26 GPa',
    published: [BENDING, TORSION],
    tolerance: [{ share: 0.001 }, { share: 0.005 }],
    source: SECTION,
    status: 'derived',
    method: 'stiffness at a glance',
    compute: () => {
      const { EI, GJ } = stiffness(standing()).strut;
      return [EI!.side, GJ!];
    },
  },
  {
    quantities: ['foot to the side, mm', 'twist of the foot, degrees'],
    conditions: 'that strut on its box, 100 N to the side and 10 N m of twist',
    published: [1000 * (100 / (3 * BENDING) + 100 / BOX.roll), DEGREES * (10 / TORSION + 10 / BOX.yaw)],
    tolerance: [{ share: 0.001 }, { share: 0.005 }],
    source: `W L^3/3EI + W L^2/k and T L/GJ + T/k; ${SECTION}`,
    status: 'derived',
    method: 'stiffness at a glance, test load',
    compute: () => {
      const { foot } = stiffness(standing()).strut.test;
      return [1000 * foot!.side, foot!.twist];
    },
  },
  {
    quantities: ['give of the box, share', 'give of the strut, share'],
    conditions: 'that strut with a rigid seat for its wing, sideways at the wing’s root',
    published: (() => {
      const [box, strut] = [1 / BOX.roll, 1 / (3 * BENDING)];
      return [box / (box + strut), strut / (box + strut)];
    })(),
    tolerance: [{ within: 0.002 }, { within: 0.002 }],
    source: `springs in a row; ${SECTION}`,
    status: 'derived',
    method: 'compliance account',
    compute: () => {
      const rigid = { roll: 1e12, pitch: 1e12, yaw: 1e12 };
      const design = standing({ joints: { box: BOX, strut: rigid, wing: rigid } });
      const { shares } = complianceAccount(design).cases.find(({ load }) => load === 'side')!;
      return [shares.box, shares.strut];
    },
  },
  {
    quantities: ['stiffness, of the thinnest', 'of a fuselage'],
    conditions:
      'thickest over thinnest strut, thickest over thinnest fuselage, against size to the third and fourth',
    published: [1, 1],
    tolerance: [{ share: 1e-6 }, { share: 1e-6 }],
    source: 'solid section of one shape: cube of the thickness; rod: fourth power',
    status: 'derived',
    method: 'how thin can it be',
    compute: () => {
      const { strut, fuselage } = finish(thinStudy(goodDesign('curved-race')));
      const grown = ({ size, bending }: { size: Float64Array; bending: Float64Array }, power: number) =>
        bending[bending.length - 1]! / bending[0]! / (size[size.length - 1]! / size[0]!) ** power;
      return [grown(strut!.columns, 3), grown(fuselage!.columns, 4)];
    },
  },
  {
    quantities: ['give left by a wing joint twice as stiff'],
    conditions: 'foil of which hardly anything but the wing’s joint gives in roll',
    published: [0.5],
    tolerance: [{ within: 0.02 }],
    source: 'springs in a row',
    status: 'derived',
    method: 'remedies, one at a time',
    compute: () => {
      const soft = { roll: 20, pitch: 20, yaw: 20 };
      const list = finish(remedies({ ...goodDesign('curved-race'), joints: { wing: soft } }));
      return [list.find(({ label }) => label === 'wing joint twice as stiff')!.byCase.roll];
    },
  },
];

/** What a dial shows at x from the box under a weight at a: W (a x/k + x^2 (3 a - x)/6EI), x up to a. */
const dial = (bending: number, spring: number, mass: number, at: number, x: number) =>
  mass * GRAVITY * ((at * x) / spring + (x * x * (3 * at - x)) / (6 * bending));

const bench: PublishedRow = {
  quantities: ['modulus, of the true one', 'spring of the box, of the true one'],
  conditions: 'strut read at 0.3, 0.6 and 1 m under 10 kg, made softer than the document says',
  published: [1, 1],
  tolerance: [{ share: 0.002 }, { share: 0.002 }],
  source: `readings worked out for a beam on a spring; ${SECTION}`,
  status: 'derived',
  method: 'bench fit',
  compute: () => {
    const [bending, spring] = [0.8 * BENDING, 6000];
    const readings = [0.3, 0.6, 1].map(
      (station): BenchReading => ({
        pull: 'side',
        mass: 10,
        at: 1,
        station,
        deflection: dial(bending, spring, 10, 1, station),
      }),
    );
    const { fitted } = benchFit(standing({ joints: { box: BOX, bench: readings } }));
    const value = (key: string) => fitted.find((link) => link.key === key)?.value ?? Number.NaN;
    return [value('strut.modulus') / (0.8 * METAL.modulus), value('box.roll') / spring];
  },
};

/** A flat solid wing of even chord: a cantilever from its root. */
const CHORD = 0.1;
const HALF = 0.5;
const AREA = 0.68508 * 0.1 * CHORD ** 2; // of a NACA 0010 section, quadrature of the four-digit form
const flap = () => standing({ laminate: { strut: METAL, wing: METAL } });
const firstBending = (mass: number) =>
  (1.8751041 ** 2 / (2 * Math.PI * HALF ** 2)) *
  Math.sqrt((70e9 * 0.039407 * CHORD * (0.1 * CHORD) ** 3) / mass);

const swings: PublishedRow[] = [
  {
    quantities: ['first bending in air, Hz', 'in water, Hz'],
    conditions: 'solid wing of 1 m by 0.1 m, NACA 0010, 70 GPa and 2700 kg/m3, held at its root',
    published: [firstBending(2700 * AREA), firstBending(2700 * AREA + (999.1026 * Math.PI * CHORD ** 2) / 4)],
    tolerance: [{ share: 0.01 }, { share: 0.01 }],
    source:
      '1.8751^2/(2 pi L^2) sqrt(EI/m) of a cantilever; water rho pi c^2/4 a metre (H. Lamb 1932, art. 71)',
    status: 'derived',
    method: 'frequencies by energy, with the water that moves along',
    compute: () => {
      const { bending } = finish(frequencyStudy(flap())).wing;
      return [bending.air!, bending.water!];
    },
  },
  {
    quantities: ['frequency, Hz'],
    conditions: 'tail of 30 mm behind 6 mm as a wedge in next to no water',
    published: [(5.315 / (2 * Math.PI * 0.03 ** 2)) * Math.sqrt((70e9 * 0.006 ** 2) / 12 / 2700)],
    tolerance: [{ share: 1e-4 }],
    source: 'wedge clamped at its base, 5.315: G. Kirchhoff 1879',
    status: 'from memory + derived',
    method: 'tail of a blunt trailing edge',
    compute: () => {
      const aluminium = { material: 'aluminium' as const };
      const design = standing({ laminate: { wing: aluminium } });
      return [tailFrequency(design, 'wing', 0.03, 0.006, 0) * Math.sqrt(70e9 / 68.9e9)];
    },
  },
  {
    quantities: ['tone of the root’s edge, Hz'],
    conditions: 'wing of 0.1 m chord with an edge of 2 mm at 10 m/s in fresh water of 15 degrees C',
    published: [toneByHand()],
    tolerance: [{ share: 0.005 }],
    source:
      '0.2 V/(edge + both displacement thicknesses), 0.37/8 x Re^-1/5 each: H. Schlichting, Boundary-Layer Theory',
    status: 'from memory + derived',
    method: 'whistle',
    compute: () => [whistle(standing({ build: { leastEdge: 0.002 } }))[0]!.tone.cruise],
  },
];

function toneByHand(): number {
  const layer = (2 * 0.37 * CHORD * ((10 * CHORD) / 1.1386e-6) ** -0.2) / 8;
  return (0.2 * 10) / (0.002 + layer);
}

/** The demo with a wing of another modulus (Pa), all its joints as they are. */
function made(modulus: number): Design {
  const design = goodDesign('curved-race');
  const rigid = { roll: 1e9, pitch: 1e9, yaw: 1e9 };
  return {
    ...design,
    laminate: { wing: { modulus, shear: modulus / 5 } },
    joints: { box: rigid, strut: rigid, wing: rigid, stabilizer: rigid },
  };
}

const droopLost = (modulus: number) => {
  const { tipDroop } = flyingShape(made(modulus));
  return tipDroop.built - tipDroop.flying;
};

const flying: PublishedRow[] = [
  {
    quantities: ['droop lost to the load, over that of half the stiffness'],
    conditions: 'curved race wing of 400 GPa against 200 GPa',
    published: [0.5],
    tolerance: [{ share: 0.03 }], // a straighter wing is loaded a little otherwise
    source: 'small deflection of an elastic wing is in proportion to its give',
    status: 'derived',
    method: 'shape that the loaded wing flies in, stepped with the flow',
    compute: () => [droopLost(400e9) / droopLost(200e9)],
  },
  {
    quantities: ['tip droop that flies, over the drawn'],
    conditions: 'curved race foil built so that it flies as drawn',
    published: [1],
    tolerance: [{ within: 0.001 }],
    source: 'what was asked for',
    status: 'derived',
    method: 'shape to build, flown again',
    compute: () => {
      const design = goodDesign('curved-race');
      const { tipDroop } = flyingShape(builtDesign(design));
      const drawn = flyingShape(design).tipDroop.built;
      return [tipDroop.flying / drawn];
    },
  },
];

export const bending: PublishedRow[] = [...struts, bench, ...swings, ...flying];
