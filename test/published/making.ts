/**
 * From the document to the bench: documents read and refused, shapes, solids, masses, moulds, the wing as measured, its
 * skin and sections at work. Bodies and areas have closed forms; sections have charts.
 */
import type { Design } from '../../src/solver/design/document.ts';
import { readDesign, writeDesign } from '../../src/solver/design/read.ts';
import { strutBody } from '../../src/solver/geometry/bodies.ts';
import { meshSkin } from '../../src/solver/geometry/mesh.ts';
import { outlinePoints } from '../../src/solver/geometry/outline.ts';
import { plyOutlines } from '../../src/solver/geometry/plies.ts';
import { readOutline } from '../../src/solver/geometry/read-outline.ts';
import { fillShell, makeShell } from '../../src/solver/geometry/shell.ts';
import { skinOf } from '../../src/solver/geometry/skin.ts';
import { zeroLiftAngle } from '../../src/solver/geometry/thin.ts';
import { boundsOf, openEdges, outward, volumeOf, weld } from '../../src/solver/geometry/triangles.ts';
import { GRADES, gradeHeight, grainOf } from '../../src/solver/section/grit.ts';
import { roughFriction, speedLoss } from '../../src/solver/section/rough-wall.ts';
import { solve } from '../../src/solver/solve.ts';
import { asBuilt } from '../../src/solver/studies/as-built.ts';
import { buildChecks } from '../../src/solver/studies/build-checks.ts';
import { cavitationStudy } from '../../src/solver/studies/cavitation-study.ts';
import { faultStudy } from '../../src/solver/studies/fault-study.ts';
import { finishStudy } from '../../src/solver/studies/finish-study.ts';
import { partMasses } from '../../src/solver/studies/mass.ts';
import { prepareSections } from '../../src/solver/studies/prepare-sections.ts';
import { compareSections } from '../../src/solver/studies/section-choice.ts';
import { sectionPolars, sectionView } from '../../src/solver/studies/section-view.ts';
import { skinView } from '../../src/solver/studies/skin-study.ts';
import { makeRunner } from '../../src/solver/studies/speed-study.ts';
import { stallStudy } from '../../src/solver/studies/stall.ts';
import { strutPolars } from '../../src/solver/studies/strut-polars.ts';
import { finish } from '../../src/solver/studies/study.ts';
import { transitionMap } from '../../src/solver/studies/transition-map.ts';
import { sweep } from '../../src/solver/sweep.ts';
import { goodDesign, plainDesign, plainStabilizer, taperedChord } from '../support/designs.ts';
import type { PublishedRow } from './row.ts';
import { SMALL_ANGLE } from './wing.ts';

const RADIANS = Math.PI / 180;

/** As a file on a disk: text, read by the program's own reader. */
function throughText(design: Design): Design {
  const reading = readDesign(writeDesign(design));
  if (!reading.ok) throw new Error(reading.message);
  return reading.design;
}

const isRead = (design: unknown): number => (readDesign(JSON.stringify(design)).ok ? 1 : 0);
const changed = (change: (design: ReturnType<typeof goodDesign>) => unknown) =>
  change(structuredClone(goodDesign('curved-race')));

const OWN_LATTICE =
  'own lattice, independent of this program; vortex at a quarter, tangency at three quarters of each row; 100 to 400 strips agree';

const documents: PublishedRow[] = [
  {
    quantities: ['lift slope'],
    conditions: 'AR 8, taper 1, from the text of a document',
    published: [4.5594],
    tolerance: [{ share: 0.003 }],
    source: OWN_LATTICE,
    status: 'derived',
    method: 'document read, extended line',
    compute: () => {
      const design = throughText(plainDesign({ chord: taperedChord(8, 1) }));
      return [solve(design, { alpha: SMALL_ANGLE, neutralDroop: false, sections: 'thin' }).lift.CLalpha];
    },
  },
  {
    quantities: ['lift slope, taper 1', 'taper 0.6'],
    conditions: 'AR 8 wings of one root, tip chord and root varied over a range',
    published: [4.5594, 4.6822],
    tolerance: [{ share: 0.003 }, { share: 0.003 }],
    source: OWN_LATTICE,
    status: 'derived',
    method: 'sweep over paths of the document, extended line',
    compute: () => {
      const chord = { kind: 'taper', root: 0.125, tip: 0.125 } as const;
      const { columns, rows } = sweep(
        plainDesign({ chord }),
        [
          { path: 'wing.chord.root', from: 0.125, to: 0.15625, count: 2 },
          { path: 'wing.chord.tip', from: 0.125, to: 0.09375, count: 2 },
        ],
        { alpha: SMALL_ANGLE, neutralDroop: false, sections: 'thin' },
      );
      const slope = columns.indexOf('lift.CLalpha');
      return [rows[0]![slope]!, rows[3]![slope]!];
    },
  },
  {
    quantities: [
      'as it stands',
      'speed of 31 m/s',
      'most below least',
      'tip under the board',
      'text cut short',
    ],
    conditions: 'demo document and four that must be refused (1 read, 0 refused)',
    published: [1, 0, 0, 0, 0],
    tolerance: [{ within: 0 }, { within: 0 }, { within: 0 }, { within: 0 }, { within: 0 }],
    source: 'ranges of docs/design-document.md',
    status: 'derived',
    method: 'reader of documents',
    compute: () => [
      isRead(goodDesign('curved-race')),
      isRead(
        changed((design) => ({
          ...design,
          brief: { ...design.brief, speeds: { ...design.brief.speeds, top: 31 } },
        })),
      ),
      isRead(changed((design) => ({ ...design, wanted: { limits: { span: { least: 1, most: 0.5 } } } }))),
      isRead(
        changed((design) => ({ ...design, wing: { ...design.wing, droop: { kind: 'arc', tipAngle: 95 } } })),
      ),
      readDesign(writeDesign(goodDesign('curved-race')).slice(0, -40)).ok ? 1 : 0,
    ],
  },
  {
    quantities: ['least depth that is solved, m'],
    conditions: 'vee raised 20 degrees, half length 0.5 m',
    published: [0.5 * Math.sin(20 * RADIANS)],
    tolerance: [{ within: 1e-3 }],
    source: 'height of the tips: a station at the surface is refused',
    status: 'derived',
    method: 'documents at ever smaller depths',
    compute: () => [leastDepth()],
  },
  {
    quantities: ['least height of the stabilizer over the wing, m'],
    conditions: 'stabilizer of 0.2 m chord straight over a wing of 0.1 m',
    published: [0.015],
    tolerance: [{ within: 1e-5 }],
    source: 'half thicknesses of a twentieth of each chord',
    status: 'derived',
    method: 'documents with the two ever closer',
    compute: () => [leastHeight()],
  },
];

/** By halving between a value that is solved and one that is refused. */
function border(solved: number, refused: number, design: (value: number) => Design): number {
  let [good, bad] = [solved, refused];
  for (let k = 0; k < 24; k++) {
    const middle = 0.5 * (good + bad);
    try {
      solve(design(middle), {
        alpha: 1,
        neutralDroop: false,
        sections: 'thin',
        strips: 8,
        stabilizerStrips: 4,
      });
      good = middle;
    } catch {
      bad = middle;
    }
  }
  return good;
}

const leastDepth = () =>
  border(0.5, 0.05, (depth) => plainDesign({ droop: { kind: 'vee', tipAngle: -20 } }, { brief: { depth } }));

const leastHeight = () =>
  border(0.1, 0.001, (height) =>
    plainDesign(
      {},
      { stabilizer: plainStabilizer({ arm: 0.1, height, chord: { kind: 'taper', root: 0.2, tip: 0.2 } }) },
    ),
  );

// Area of a four-digit section over t c^2, open trailing edge: 10 (0.2969 2/3 - 0.126/2 - 0.3516/3 + 0.2843/4 - 0.1015/5).
const AREA = 0.68508;
const QUADRATURE = 'area 0.68508 t c^2 of a four-digit section, quadrature of its form';
const ALUMINIUM = { wing: { material: 'aluminium' as const } };

const bodies: PublishedRow[] = [
  {
    quantities: ['volume, cm3', 'open edges', 'span, m'],
    conditions: 'solid of a wing of 1 m by 0.1 m, NACA 0010',
    published: [AREA * 0.1 * 1e4, 0, 1],
    tolerance: [{ share: 0.001 }, { within: 0 }, { within: 1e-9 }],
    source: QUADRATURE,
    status: 'derived',
    method: 'closed body of triangles, 10 micrometres',
    compute: () => {
      const made = finish(meshSkin(skinOf(plainDesign({}).wing), { tolerance: 1e-5, side: 'whole' }));
      const body = outward(weld(made, (value) => Math.round(value * 1e9) / 1e9));
      const { least, most } = boundsOf(body);
      return [volumeOf(body) * 1e6, openEdges(body), most[1] - least[1]];
    },
  },
  {
    quantities: ['volume, cm3'],
    conditions: 'solid of an elliptic wing of 1 m, root 0.1 m, NACA 0010',
    published: [(2 / 3) * AREA * 0.1 * 1e4],
    tolerance: [{ share: 0.002 }],
    source: `${QUADRATURE}; the squared chord of an ellipse has a mean of two thirds`,
    status: 'derived',
    method: 'closed body of triangles, 10 micrometres',
    compute: () => {
      const { wing } = plainDesign({ chord: { kind: 'elliptic', root: 0.1 } });
      const body = finish(meshSkin(skinOf(wing), { tolerance: 1e-5, side: 'whole' }));
      return [volumeOf(body) * 1e6];
    },
  },
  {
    quantities: ['mass, kg', 'skin, m2'],
    conditions: 'that wing of 1 m by 0.1 m milled from aluminium',
    published: [2700 * AREA * 0.1 * 0.01, 2.028 * 0.1],
    tolerance: [{ share: 0.001 }, { share: 0.002 }],
    source: `${QUADRATURE}; perimeter 2.0244 c at 9 %, 2.0393 c at 12 %, between them by the square of t`,
    status: 'derived',
    method: 'masses of the parts',
    compute: () => {
      const design = { ...plainDesign({}), laminate: ALUMINIUM };
      const [wing] = partMasses(design, skinOf(design.wing), null);
      return [wing!.mass, wing!.surface];
    },
  },
  {
    quantities: ['volume, cm3'],
    conditions: 'strut of 1 m, 120 mm by 14 mm, as a closed body',
    published: [AREA * 0.014 * 0.12 * 1e6],
    tolerance: [{ share: 0.001 }],
    source: QUADRATURE,
    status: 'derived',
    method: 'closed body of triangles, 2 micrometres',
    compute: () => [1e6 * volumeOf(strutBody({ x: 0, length: 1, chord: 0.12, thickness: 0.014 }))],
  },
  {
    quantities: ['room inside the skin as it is shown, cm3'],
    conditions: 'wing of 1 m by 0.1 m, NACA 0010',
    published: [AREA * 0.1 * 0.01 * 1e6],
    tolerance: [{ share: 0.005 }],
    source: QUADRATURE,
    status: 'derived',
    method: 'shell of 41 rings of 65 points',
    compute: () => {
      const { wing } = plainDesign({});
      const shell = makeShell({ rings: 41, around: 65 });
      fillShell(shell, skinOf(wing), wing);
      return [
        1e6 *
          volumeOf({ points: Float64Array.from(shell.positions), corners: Uint32Array.from(shell.corners) }),
      ];
    },
  },
  {
    quantities: ['plies of 0.2 mm a side', 'outermost, m2'],
    conditions: 'wing of 1 m by 0.1 m, NACA 0010, 10 mm thick',
    published: [25, 0.0983],
    tolerance: [{ within: 1 }, { within: 0.001 }], // the last one has only a line to lie on
    source:
      'as many as meet in the middle; the outermost reaches where the section is 0.4 mm thick, 1.7 % from the tail',
    status: 'derived',
    method: 'outlines of plies',
    compute: () => {
      const plies = plyOutlines(skinOf(plainDesign({}).wing), 0.0002, 400);
      return [plies.length, plies[0]!.area];
    },
  },
  {
    quantities: ['findings: tip', 'edge', 'undercut'],
    conditions: 'wing with a tip of 10 mm, flat and symmetric, laid for a mould parted level',
    published: [1, 1, 0],
    tolerance: [{ within: 0 }, { within: 0 }, { within: 0 }],
    source:
      'tip under 12 mm; edge of 0.0021 c under 0.4 mm from a chord of 190 mm down; nothing of a symmetric section leans over',
    status: 'derived',
    method: 'checks before cutting',
    compute: () => {
      const design = plainDesign({ chord: { kind: 'taper', root: 0.1, tip: 0.01 } });
      const found = buildChecks(design, { wing: skinOf(design.wing), stabilizer: null }, { draw: 'upright' });
      return ['tip', 'edge', 'undercut'].map((kind) => found.filter((one) => one.kind === kind).length);
    },
  },
  {
    quantities: ['slot of 5 mm', 'slot of 9.6 mm'],
    conditions:
      'findings: spar slots 2 mm wide at 0.3 chord through a rib 10 mm thick, 0.3 mm of laminate each side',
    published: [0, 1],
    tolerance: [{ within: 0 }, { within: 0 }],
    source: 'height and laminate against the thickness',
    status: 'derived',
    method: 'checks before cutting',
    compute: () => [0.005, 0.0096].map(slotFindings),
  },
  {
    quantities: ['zero-lift angle, degrees'],
    conditions: 'NACA 2412 written out as text of 120 points and read back',
    published: [-2.077],
    tolerance: [{ within: 0.08 }], // read back, the mean line is the middle at one x, not square to itself
    source:
      'thin-airfoil theory of the mean line: I. H. Abbott, A. E. von Doenhoff, Theory of Wing Sections, ch. 4',
    status: 'derived',
    method: 'text to outline, thin-airfoil theory',
    compute: () => {
      const { x, y } = outlinePoints({ kind: 'naca4', code: '2412' }, 121);
      const text = Array.from(x, (at, k) => `${at.toFixed(6)} ${y[k]!.toFixed(6)}`).join('\n');
      const reading = readOutline(`four digits\n${text}\n`);
      if (!reading.ok) throw new Error(reading.message);
      return [zeroLiftAngle(reading.outline) / RADIANS];
    },
  },
];

function slotFindings(height: number): number {
  const design = {
    ...plainDesign({}),
    build: { slot: { at: 0.3, width: 0.002, height }, allowance: 0.0003 },
  };
  const found = buildChecks(design, { wing: skinOf(design.wing), stabilizer: null }, { draw: 'upright' });
  return found.filter(({ kind }) => kind === 'slot').length;
}

/** Vee at zero lift: C_lbeta per radian of droop is the roll of halves at opposite angles. */
const OPPOSITE = 0.0633 / (5 * RADIANS);

const measured: PublishedRow = {
  quantities: ['roll, N m', 'the same by one more right-hand side', 'shim, degrees'],
  conditions:
    'flat wing of AR 6 measured half a degree nose up to starboard, half a degree down to port, 10 m/s',
  published: [
    -0.5 * 999.1026 * 100 * (1 / 6) * OPPOSITE * 0.5 * RADIANS,
    -0.5 * 999.1026 * 100 * (1 / 6) * OPPOSITE * 0.5 * RADIANS,
    -0.5,
  ],
  tolerance: [{ share: 0.02 }, { share: 0.02 }, { share: 0.005 }],
  source: 'C_lbeta of a vee of 5 degrees at zero lift, one row, 160 strips, independent of this program',
  status: 'derived',
  method: 'both sides in one system',
  compute: () => {
    const half = (twist: number) => ({ twist });
    const at = [0, 1].map((eta) => ({ eta, starboard: half(0.5), port: half(-0.5) }));
    const design = {
      ...plainDesign({ chord: taperedChord(6, 1) }, { brief: { allUpMass: 20 } }),
      asBuilt: { wing: { at } },
    };
    const { roll, byTwistLinear, shim } = asBuilt(design, { stations: [0, 0.5, 1] });
    return [roll, byTwistLinear, shim ?? Number.NaN];
  },
};

const grit: PublishedRow[] = [
  {
    quantities: ['P400, micrometres', 'P1000', 'P2000', 'between P400 and P500'],
    conditions: 'median grains of coated abrasives',
    published: [35, 18.3, 10.3, Math.sqrt(35 * 30.2)],
    tolerance: [{ within: 1.5 }, { within: 1 }, { within: 0.8 }, { within: 0.5 }],
    source: 'ISO 6344-3: ds50 with its tolerance',
    status: 'from memory',
    method: 'table of grains',
    compute: () => {
      const height = (name: string) => 1e6 * gradeHeight(GRADES.find((grade) => grade.name === name)!, 1);
      return [height('P400'), height('P1000'), height('P2000'), 1e6 * grainOf(Math.sqrt(400 * 500))];
    },
  },
  {
    quantities: ['loss of speed at k+ 2', 'at k+ 1000'],
    conditions: 'sand grains on a wall, units of the friction speed',
    published: [0, Math.log(1000) / 0.41 - 3.3],
    tolerance: [{ within: 1e-12 }, { within: 0.05 }],
    source: 'smooth below 2.25; u+ = ln(y/k)/0.41 + 8.5 fully rough (J. Nikuradse 1933) against 5.2 smooth',
    status: 'from memory',
    method: 'rough wall',
    compute: () => [speedLoss(2), speedLoss(1000)],
  },
  {
    quantities: ['friction of a wall with k u/nu of 10, over a smooth one’s'],
    conditions: 'smooth friction of 0.003',
    published: [1],
    tolerance: [{ within: 1e-6 }],
    source: 'hydraulically smooth below 100 nu/u: H. Schlichting, Boundary-Layer Theory, ch. XXI',
    status: 'from memory',
    method: 'rough wall',
    compute: () => [roughFriction(0.003, 10) / 0.003],
  },
];

/** A wing of chord 0.6 m at 11.4 m/s in fresh water of 15 degrees: Reynolds number 6 million, next to no load. */
const large = (code: string): Design => {
  const outline = { kind: 'naca4', code } as const;
  return plainDesign(
    {
      length: { kind: 'unrolled', value: 3 },
      chord: { kind: 'taper', root: 0.6, tip: 0.6 },
      section: { root: outline, tip: outline },
    },
    { brief: { allUpMass: 20, speeds: { takeOff: 5, cruise: 11.386, top: 14 } } },
  );
};
/** An untwisted elliptic wing of AR 8 with NACA 0012 all along. */
const even = (): Design => {
  const outline = { kind: 'naca4', code: '0012' } as const;
  const chord = { kind: 'elliptic', root: 4 / (Math.PI * 8) } as const;
  return plainDesign({ chord, section: { root: outline, tip: outline } });
};
const MIDDLE = { part: 'wing', eta: 0.5 } as const;
const CHARTS = 'I. H. Abbott, A. E. von Doenhoff, Theory of Wing Sections, App. IV (NACA Report 824)';

/** At half the chord of NACA 0012 at no lift the water is 1.114 times as fast as the stream (the charts’ table). */
const HALFWAY = { x: 0.5, speed: 1.114 * 11.386, viscosity: 1.1386e-6 };
const PLATE_REYNOLDS = (HALFWAY.speed * HALFWAY.x * 0.6) / HALFWAY.viscosity;

const sections: PublishedRow[] = [
  {
    quantities: ['cd at no lift', 'nose radius over chord', 'Reynolds number, millions'],
    conditions: 'station of a wing with NACA 0012 at Re 6e6, clean water',
    published: [0.0058, 0.0158, 6],
    tolerance: [{ share: 0.1 }, { within: 0.0002 }, { share: 0.002 }],
    source: CHARTS,
    status: 'from memory',
    method: 'section at work, as the page shows it',
    compute: () => {
      const { flow, marks, station } = sectionView(large('0012'), { ...MIDDLE, cl: 0, speed: 11.386 });
      return [flow!.cd, marks.noseRadius, station.reynolds / 1e6];
    },
  },
  {
    quantities: ['greatest lift coefficient', 'zero-lift angle, degrees'],
    conditions: 'polar of a wing with NACA 0012 at Re 6e6, clean water',
    published: [1.6, 0],
    tolerance: [{ share: 0.1 }, { within: 0.05 }],
    source: CHARTS,
    status: 'from memory',
    method: 'polars of a station',
    compute: () => {
      const { series } = finish(sectionPolars(large('0012'), { ...MIDDLE, speed: 11.386 }));
      const { clMax, line } = series[0]!;
      return [clMax.cl, line!.zeroLift];
    },
  },
  {
    quantities: ['laminar plate, 1e-3', 'turbulent plate, 1e-3', 'smooth height, micrometres'],
    conditions: 'beside half the chord of a wing with NACA 0012 at Re 6e6, next to no lift',
    published: [
      664.1 / Math.sqrt(PLATE_REYNOLDS),
      59.2 * PLATE_REYNOLDS ** -0.2,
      (1e8 * HALFWAY.viscosity) / HALFWAY.speed,
    ],
    tolerance: [{ share: 0.02 }, { share: 0.07 }, { share: 0.02 }], // the power law is as far from the logarithmic one
    source:
      '0.664 Re^-1/2 (P. R. H. Blasius 1908), 0.0592 Re^-1/5 and 100 nu/u (H. Schlichting); v/V 1.114 of NACA 0012 (NACA Report 824)',
    status: 'from memory + derived',
    method: 'skin of a station',
    compute: () => plates(),
  },
  {
    quantities: ['cost of smoothness, N', 'P80 over P2000'],
    conditions:
      'finish of an elliptic wing: the finest grade trips and costs nothing, coarse costs more (1 yes)',
    published: [0, 1],
    tolerance: [{ within: 0.05 }, { within: 0 }],
    source: 'hydraulically smooth below 100 nu/V: P2000 leaves 2 micrometres, 9 to 13 are allowed',
    status: 'derived',
    method: 'drag of finishes',
    compute: () => {
      const { rows } = finish(finishStudy(even()));
      const extra = (name: string) => rows.find((row) => row.name === name)!.cruise!.extra;
      return [extra('P2000'), extra('P80') > extra('P2000') ? 1 : 0];
    },
  },
  {
    quantities: ['height that trips, over that of a step'],
    conditions: 'scratch across the upper side of an elliptic wing at 0.1 chord',
    published: [1],
    tolerance: [{ share: 1e-9 }],
    source: 'no shallower than a step of 900 nu/V: J. P. Nenni, G. L. Gluyas 1966',
    status: 'from memory',
    method: 'costs of faults',
    compute: () => {
      const { faults } = finish(faultStudy(even(), { part: 'wing', eta: 0.3, side: 'upper', at: 0.1 }));
      const critical = (name: string) => faults.find((fault) => fault.name === name)!.drag.cruise!.critical!;
      return [critical('scratchAcross') / critical('step')];
    },
  },
  {
    quantities: ['cd of a strut over the plate’s with its form factor'],
    conditions: '12 % thick, kept turbulent from the nose, Re 1e6',
    published: [1],
    tolerance: [{ share: 0.1 }],
    source: 'ITTC-1957 line; 1 + 2 t/c + 60 (t/c)^4 (S. F. Hoerner, Fluid-Dynamic Drag, 1965, ch. 6)',
    status: 'from memory',
    method: 'polars of the strut, made ahead in slices',
    compute: () => {
      const { eta, turbulent } = strutPolars({ length: 1, chord: 0.1, thickness: 0.012 }, 'clean')!;
      finish(turbulent.prepareLevel(eta, 1e6));
      const plate = (2 * 0.075) / (Math.log10(1e6) - 2) ** 2;
      return [turbulent.drag(eta, 0, 1e6) / (plate * (1 + 2 * 0.12 + 60 * 0.12 ** 4))];
    },
  },
  {
    quantities: ['drag of sections made ahead over that of sections made when asked'],
    conditions: 'elliptic wing at 8 m/s, NACA 2411 with its camber a billionth more in one of the two',
    published: [1],
    tolerance: [{ share: 1e-6 }],
    source: 'the same flow round the same section',
    status: 'derived',
    method: 'polars of all strips, in slices',
    compute: () => [sectionDragOf(0, true) / sectionDragOf(1e-9, false)],
  },
  {
    quantities: ['lift coefficient at 83 % of the half span over the root’s', 'lower transition over upper'],
    conditions: 'untwisted elliptic wing of AR 8, NACA 0012; the second with hardly a load',
    published: [1, 1],
    tolerance: [{ share: 0.03 }, { share: 0.01 }], // the extended line’s loading is not quite elliptic
    source: 'elliptic loading on an elliptic wing; a symmetric section with no lift',
    status: 'derived',
    method: 'transition along the span',
    compute: () => {
      const { wing } = finish(transitionMap(even(), { speed: 10 }));
      const light = finish(
        transitionMap({ ...even(), brief: { ...even().brief, allUpMass: 1 } }, { speed: 14 }),
      );
      const root = light.wing[0]!;
      return [wing.find(({ eta }) => eta === 0.83)!.cl / wing[0]!.cl, root.lower! / root.upper!];
    },
  },
  {
    quantities: ['wing’s greatest lift coefficient over its section’s'],
    conditions: 'untwisted elliptic wing of AR 8, NACA 0012',
    published: [1],
    tolerance: [{ share: 0.06 }], // tips have smaller Reynolds numbers and stall sooner
    source: 'all strips of an elliptic wing meet one angle: they stall together',
    status: 'derived',
    method: 'lifting line that follows its sections to stall',
    compute: () => {
      const { greatest, speed } = finish(stallStudy(even()));
      const polar = finish(sectionPolars(even(), { part: 'wing', eta: 0.5, speed }));
      return [greatest!.CLwing / polar.series[0]!.clMax.cl];
    },
  },
  {
    quantities: ['lift at take-off over the weight', 'moment of a symmetric section, N m'],
    conditions: 'elliptic wing given the chord with which NACA 0012 just lifts off at 5 m/s',
    published: [1, 0],
    tolerance: [{ share: 0.001 }, { within: 1e-9 }],
    source: 'area times usable lift coefficient carries the weight',
    status: 'derived',
    method: 'sections compared for one rider',
    compute: () => {
      const { found } = finish(compareSections(even(), { codes: ['0012'] })).choices[0]!;
      const pressure = 0.5 * 999.1026 * 25;
      return [(found!.area * found!.usableCL * pressure) / (50 * 9.80665), found!.noseDown];
    },
  },
  {
    quantities: ['inception over 1/sqrt of the lowest pressure'],
    conditions: 'strut of 12 % and no side force in sea water of 15 degrees at half a metre',
    published: [1],
    tolerance: [{ share: 0.02 }],
    source:
      'Cp -0.411 of NACA 0012 at zero lift (NACA Report 824) and the definition of the cavitation number',
    status: 'from memory + derived',
    method: 'speeds at which each place first boils',
    compute: () => [strutInception()],
  },
];

/** N, of the wing's sections at 8 m/s; `more` camber makes a section that no cache has met. */
function sectionDragOf(more: number, isAhead: boolean): number {
  const outline = { kind: 'naca4', code: '2411', camberScale: 1 + more } as const;
  const design = { ...even(), wing: { ...even().wing, section: { root: outline, tip: outline } } };
  if (isAhead) finish(prepareSections(design, [8]));
  return makeRunner(design).run(8, 'incidence').drag.wingProfile;
}

function plates(): [number, number, number] {
  const { upper } = skinView(large('0012'), { ...MIDDLE, speed: 11.386 });
  const next = upper.x.findIndex((x) => x > HALFWAY.x);
  const share = (HALFWAY.x - upper.x[next - 1]!) / (upper.x[next]! - upper.x[next - 1]!);
  const at = (column: Float64Array) => column[next - 1]! + share * (column[next]! - column[next - 1]!);
  return [1e3 * at(upper.laminarPlate), 1e3 * at(upper.turbulentPlate), 1e6 * at(upper.spread)];
}

function strutInception(): number {
  const design = plainDesign(
    { incidence: 1 },
    {
      brief: { depth: 0.5, water: { kind: 'sea', temperature: 15, clarity: 'clean' }, allUpMass: 40 },
      strut: { x: 0.3, length: 1, chord: 0.12, thickness: 0.0144 },
    },
  );
  const { strips } = finish(cavitationStudy(design));
  const strut = strips.find(({ place }) => place === 'strut')!;
  // foot at 0.5 m: sigma = (p_atm + rho g d - p_v)/(rho V^2/2)
  const foot = strut.eta.length - 1;
  const depth = 0.5 * strut.eta[foot]!;
  const head = 101325 + 1025.973 * 9.80665 * depth - 1670.8;
  return strut.speed[foot]! / Math.sqrt(head / (0.5 * 1025.973 * 0.411));
}

export const making: PublishedRow[] = [...documents, ...bodies, measured, ...grit, ...sections];
