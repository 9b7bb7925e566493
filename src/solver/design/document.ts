/**
 * The design document, version 1: what the user draws. SI units, angles in degrees; x aft, y starboard, z up
 * from the origin at the quarter chord of the wing root. Keys are a public interface (docs/design-document.md).
 *
 * The only schema: the types below are inferred from it, its ranges come from ranges.ts. Keys it does not know are kept
 * at every level.
 */
import * as v from 'valibot';
import { FOUR_DIGIT_CODE, type RangeKey } from './ranges.ts';
import { choice, keys, kind, kinds, number } from './schema-parts.ts';
import { WantedSchema } from './wanted.ts';

export const FORMAT = 'downcurve-design';
export const VERSION = 1;

export const LONGEST_NAME = 200; // characters
const MOST_POINTS = 100; // of a law
export const LEAST_COORDINATES = 10;
export const MOST_COORDINATES = 1000; // of an outline

const OR_NULL = ', or null';

const ETA = number('*.*.at.*.0');

function pointsLaw(value: RangeKey) {
  const allowed = `a list of 2 to ${MOST_POINTS} pairs [eta, value]`;
  const pair = v.strictTuple([ETA, number(value)], 'a pair [eta, value]');
  const at = v.pipe(v.array(pair, allowed), v.minLength(2, allowed), v.maxLength(MOST_POINTS, allowed));
  return keys({ kind: kind('points'), at });
}

const FormulaSchema = keys({ kind: kind('formula'), expression: v.string('a formula in eta') });

const ChordSchema = kinds(
  keys({ kind: kind('taper'), root: number('*.chord.root'), tip: number('*.chord.tip') }),
  keys({ kind: kind('elliptic'), root: number('*.chord.root') }),
  keys({
    kind: kind('superelliptic'),
    root: number('*.chord.root'),
    n: number('*.chord.n'),
    m: number('*.chord.m'),
  }),
  pointsLaw('*.chord.at.*.1'),
  FormulaSchema,
);

const SweepSchema = kinds(
  keys({ kind: kind('straight'), angle: number('*.sweep.angle') }),
  keys({
    kind: kind('rake'),
    angle: number('*.sweep.angle'),
    tip: number('*.sweep.tip'),
    power: number('*.sweep.power'),
  }),
  pointsLaw('*.sweep.at.*.1'),
  FormulaSchema,
);

/** How far the tip bends: by angle (degrees) or by drop (metres); exactly one of the two. */
export type TipMeasure = { tipAngle: number; tipDrop?: never } | { tipDrop: number; tipAngle?: never };

const TIP = {
  tipAngle: v.exactOptional(number('*.droop.tipAngle')),
  tipDrop: v.exactOptional(number('*.droop.tipDrop')),
};

/** A law with the two keys of TIP: both or neither is refused, and its type then says so. */
function bent<S extends v.ObjectSchema<typeof TIP & v.ObjectEntries, v.ErrorMessage<v.ObjectIssue>>>(law: S) {
  return v.pipe(
    law,
    v.rawTransform(({ dataset, addIssue, NEVER }) => {
      const { tipAngle, tipDrop } = dataset.value;
      if ((tipAngle === undefined) !== (tipDrop === undefined))
        return dataset.value as Omit<v.InferOutput<S>, keyof typeof TIP> & TipMeasure;
      addIssue({
        message: 'exactly one of tipAngle and tipDrop',
        expected: tipAngle === undefined ? 'neither tipAngle nor tipDrop' : 'both tipAngle and tipDrop',
      });
      return NEVER;
    }),
  );
}

const DroopSchema = kinds(
  keys({ kind: kind('flat') }),
  bent(keys({ kind: kind('vee'), ...TIP })),
  bent(keys({ kind: kind('arc'), ...TIP })),
  bent(keys({ kind: kind('late'), ...TIP, from: number('*.droop.from'), power: number('*.droop.power') })),
  bent(
    keys({
      kind: kind('gull'),
      rootAngle: number('*.droop.rootAngle'),
      ...TIP,
      knee: number('*.droop.knee'),
    }),
  ),
  pointsLaw('*.droop.at.*.1'),
  FormulaSchema,
);

const TwistSchema = kinds(
  keys({ kind: kind('linear'), tip: number('*.twist.tip') }),
  pointsLaw('*.twist.at.*.1'),
  FormulaSchema,
);

const CODE =
  'four digits such as 2412: camber, its place (above 0 where there is camber), and a thickness above 00';
const COORDINATES = `a list of ${LEAST_COORDINATES} to ${MOST_COORDINATES} pairs [x, y]`;
const NAME = `a text of up to ${LONGEST_NAME} characters`;
const NameSchema = v.pipe(v.string(NAME), v.maxLength(LONGEST_NAME, NAME));

/** Thickness and camber drawn larger or smaller than code or points have them; a camber below 0 hangs down. */
const SCALES = {
  thicknessScale: v.exactOptional(number('*.section.*.thicknessScale')),
  camberScale: v.exactOptional(number('*.section.*.camberScale')),
};

const OutlineSchema = kinds(
  keys({ kind: kind('naca4'), code: v.pipe(v.string(CODE), v.regex(FOUR_DIGIT_CODE, CODE)), ...SCALES }),
  keys({
    kind: kind('coordinates'),
    name: NameSchema,
    points: v.pipe(
      v.array(
        v.strictTuple(
          [number('*.section.*.points.*.0'), number('*.section.*.points.*.1')],
          'a pair [x, y] on a chord of 1',
        ),
        COORDINATES,
      ),
      v.minLength(LEAST_COORDINATES, COORDINATES),
      v.maxLength(MOST_COORDINATES, COORDINATES),
    ),
    ...SCALES,
  }),
);

const PLANFORM = {
  length: keys({ kind: choice('unrolled', 'tipToTip'), value: number('*.length.value') }),
  chord: ChordSchema,
  sweep: SweepSchema,
  droop: DroopSchema,
  twist: TwistSchema,
  section: keys({ root: OutlineSchema, tip: OutlineSchema }),
  incidence: number('*.incidence'),
};

const PlanformSchema = keys(PLANFORM);
const StabilizerSchema = keys(
  { ...PLANFORM, arm: number('stabilizer.arm'), height: number('stabilizer.height') },
  OR_NULL,
);

const FuselageSchema = keys(
  { diameter: number('fuselage.diameter'), nose: number('fuselage.nose') },
  OR_NULL,
);

const StrutSchema = keys(
  {
    x: v.exactOptional(number('strut.x')),
    length: number('strut.length'),
    chord: number('strut.chord'),
    thickness: number('strut.thickness'),
    /** How far below the surface spray and waves keep its layer turbulent. */
    turbulentTo: v.exactOptional(number('strut.turbulentTo')),
    /** At the board, where the strut tapers; chord and thickness above are the foot's. For stiffness alone. */
    top: v.exactOptional(
      keys({ chord: number('strut.top.chord'), thickness: number('strut.top.thickness') }),
    ),
  },
  OR_NULL,
);

const SpeedsSchema = keys({
  takeOff: number('brief.speeds.*'),
  cruise: number('brief.speeds.*'),
  top: number('brief.speeds.*'),
});

const DepthsSchema = keys({
  takeOff: v.exactOptional(number('brief.depths.*')),
  cruise: v.exactOptional(number('brief.depths.*')),
  top: v.exactOptional(number('brief.depths.*')),
});

const BriefSchema = keys({
  allUpMass: number('brief.allUpMass'),
  upwardPull: number('brief.upwardPull'),
  speeds: SpeedsSchema,
  water: keys({
    kind: choice('sea', 'fresh'),
    temperature: number('brief.water.temperature'),
    clarity: choice('clean', 'coastal', 'silty'),
  }),
  depth: v.nullable(number('brief.depth', ', or null for deep water')),
  depths: v.exactOptional(DepthsSchema),
  balance: keys({ x: number('brief.balance.x'), height: number('brief.balance.height') }),
  driveHeight: v.nullable(number('brief.driveHeight', ', or null for the balance point')),
  sidePull: v.exactOptional(
    keys({ share: number('brief.sidePull.share'), height: number('brief.sidePull.height') }),
  ),
  boardAngle: v.exactOptional(number('brief.boardAngle')),
});

const InertiaSchema = keys({
  boardMass: v.exactOptional(number('inertia.boardMass')),
  boardLength: v.exactOptional(number('inertia.boardLength')),
  boardWidth: v.exactOptional(number('inertia.boardWidth')),
  foilMass: v.exactOptional(number('inertia.foilMass')),
  riderRoll: v.exactOptional(number('inertia.riderRoll')),
  riderPitch: v.exactOptional(number('inertia.riderPitch')),
  riderYaw: v.exactOptional(number('inertia.riderYaw')),
});

const SlotSchema = keys({
  at: number('build.slot.at'),
  width: number('build.slot.width'),
  height: number('build.slot.height'),
});

const BuildSchema = keys({
  spacing: v.exactOptional(number('build.spacing')),
  leastEdge: v.exactOptional(number('build.leastEdge')),
  allowance: v.exactOptional(number('build.allowance')),
  slot: v.exactOptional(SlotSchema),
  tolerance: v.exactOptional(number('build.tolerance')),
  stock: v.exactOptional(number('build.stock')),
  ply: v.exactOptional(
    keys({
      thickness: v.exactOptional(number('build.ply.thickness')),
      weight: v.exactOptional(number('build.ply.weight')),
    }),
  ),
});

const MeasuredSideSchema = keys({
  twist: v.exactOptional(number('asBuilt.*.at.*.*.twist')),
  chord: v.exactOptional(number('asBuilt.*.at.*.*.chord')),
});

const MEASURED = `a list of up to ${MOST_POINTS} stations, eta rising from 0 to 1`;

/** Measurements of a surface by side; what is not measured is taken as drawn. */
const MeasuredSchema = keys({
  at: v.pipe(
    v.array(
      keys({
        eta: number('asBuilt.*.at.*.eta'),
        port: v.exactOptional(MeasuredSideSchema),
        starboard: v.exactOptional(MeasuredSideSchema),
      }),
      MEASURED,
    ),
    v.maxLength(MOST_POINTS, MEASURED),
    v.check((list) => list.every(({ eta }, k) => k === 0 || eta > list[k - 1]!.eta), MEASURED),
  ),
  tipDrop: v.exactOptional(
    keys({
      port: v.exactOptional(number('asBuilt.*.tipDrop.*')),
      starboard: v.exactOptional(number('asBuilt.*.tipDrop.*')),
    }),
  ),
});

const AsBuiltSchema = keys({ wing: v.exactOptional(MeasuredSchema) });

/** How a part is made; what is left out follows from the material. */
const MakeupSchema = keys({
  material: v.exactOptional(choice('standard', 'intermediate', 'high', 'aluminium')),
  along: v.exactOptional(number('laminate.*.along')),
  diagonal: v.exactOptional(number('laminate.*.diagonal')),
  modulus: v.exactOptional(number('laminate.*.modulus')),
  shear: v.exactOptional(number('laminate.*.shear')),
  strain: v.exactOptional(number('laminate.*.strain')),
  density: v.exactOptional(number('laminate.*.density')),
  build: v.exactOptional(choice('solid', 'shell')),
  skin: v.exactOptional(number('laminate.*.skin')),
});

const LaminateSchema = keys({
  strut: v.exactOptional(MakeupSchema),
  fuselage: v.exactOptional(MakeupSchema),
  wing: v.exactOptional(MakeupSchema),
  stabilizer: v.exactOptional(MakeupSchema),
  safety: v.exactOptional(number('laminate.safety')),
  limits: v.exactOptional(
    keys({
      strutThickness: v.exactOptional(number('laminate.limits.strutThickness')),
      strutDeflection: v.exactOptional(number('laminate.limits.strutDeflection')),
      fuselageDiameter: v.exactOptional(number('laminate.limits.fuselageDiameter')),
      fuselageDeflection: v.exactOptional(number('laminate.limits.fuselageDeflection')),
    }),
  ),
});

const SpringSchema = keys({
  roll: v.exactOptional(number('joints.*.roll')),
  pitch: v.exactOptional(number('joints.*.pitch')),
  yaw: v.exactOptional(number('joints.*.yaw')),
});

const MOST_READINGS = 200;
const READINGS = `a list of up to ${MOST_READINGS} readings`;

/** One reading of a bench test: a weight at a place, what a dial or a pointer shows at a station. */
const BenchReadingSchema = keys({
  pull: choice('side', 'aft', 'up', 'twist'),
  mass: number('joints.bench.*.mass'),
  on: v.exactOptional(choice('strut', 'wing', 'stabilizer')),
  at: number('joints.bench.*.at'),
  arm: v.exactOptional(number('joints.bench.*.arm')),
  readOn: v.exactOptional(choice('strut', 'wing', 'stabilizer')),
  station: number('joints.bench.*.station'),
  deflection: v.exactOptional(number('joints.bench.*.deflection')),
  turn: v.exactOptional(number('joints.bench.*.turn')),
  order: v.exactOptional(choice('loading', 'unloading')),
});

const JointsSchema = keys({
  box: v.exactOptional(SpringSchema),
  strut: v.exactOptional(SpringSchema),
  wing: v.exactOptional(SpringSchema),
  stabilizer: v.exactOptional(SpringSchema),
  bench: v.exactOptional(v.pipe(v.array(BenchReadingSchema, READINGS), v.maxLength(MOST_READINGS, READINGS))),
});

/** How the skin is finished: by the last abrasive, or by a measured roughness, which goes before it. */
const FinishSchema = keys({
  grade: v.exactOptional(number('finish.grade')),
  roughness: v.exactOptional(number('finish.roughness')),
  grainShare: v.exactOptional(number('finish.grainShare')),
});

const MOST_DEFECTS = 50;
const DEFECTS = `a list of up to ${MOST_DEFECTS} defects`;

/** A fault of the skin at a place: eta along the half (up the wetted strut), `at` along the chord. */
const DefectSchema = keys({
  kind: choice('bump', 'step', 'cavity'),
  on: choice('wing', 'stabilizer', 'strut'),
  eta: number('defects.*.eta'),
  side: v.exactOptional(choice('upper', 'lower')),
  at: number('defects.*.at'),
  height: number('defects.*.height'),
  width: number('defects.*.width'),
  wedge: v.exactOptional(number('defects.*.wedge')),
});

export const LONGEST_NOTE = 4000; // characters
const NOTE = `a text of up to ${LONGEST_NOTE} characters`;
const NoteSchema = v.pipe(v.string(NOTE), v.maxLength(LONGEST_NOTE, NOTE));
const NotesSchema = keys({ laminate: v.exactOptional(NoteSchema), ride: v.exactOptional(NoteSchema) });

/** The rider's own, of what was ridden: 1 poor, 5 just right. */
const MarksSchema = keys({
  hold: v.exactOptional(number('marks.*')),
  glide: v.exactOptional(number('marks.*')),
  turn: v.exactOptional(number('marks.*')),
  takeOff: v.exactOptional(number('marks.*')),
  pump: v.exactOptional(number('marks.*')),
});

export const DesignSchema = keys({
  format: v.literal(FORMAT, `"${FORMAT}"`),
  version: v.literal(VERSION, String(VERSION)),
  name: NameSchema,
  brief: BriefSchema,
  wing: PlanformSchema,
  stabilizer: v.nullable(StabilizerSchema),
  fuselage: v.nullable(FuselageSchema),
  strut: v.nullable(StrutSchema),
  inertia: v.exactOptional(InertiaSchema),
  laminate: v.exactOptional(LaminateSchema),
  joints: v.exactOptional(JointsSchema),
  build: v.exactOptional(BuildSchema),
  asBuilt: v.exactOptional(AsBuiltSchema),
  finish: v.exactOptional(FinishSchema),
  defects: v.exactOptional(v.pipe(v.array(DefectSchema, DEFECTS), v.maxLength(MOST_DEFECTS, DEFECTS))),
  notes: v.exactOptional(NotesSchema),
  marks: v.exactOptional(MarksSchema),
  wanted: v.exactOptional(WantedSchema),
});

export type Pair = [number, number];
export type Laminate = v.InferOutput<typeof LaminateSchema>;
export type Makeup = v.InferOutput<typeof MakeupSchema>;
export type Joints = v.InferOutput<typeof JointsSchema>;
export type Spring = v.InferOutput<typeof SpringSchema>;
export type BenchReading = v.InferOutput<typeof BenchReadingSchema>;
export type Finish = v.InferOutput<typeof FinishSchema>;
export type Defect = v.InferOutput<typeof DefectSchema>;
export type Build = v.InferOutput<typeof BuildSchema>;
export type Measured = v.InferOutput<typeof MeasuredSchema>;
export type MeasuredSide = v.InferOutput<typeof MeasuredSideSchema>;
export type Design = v.InferOutput<typeof DesignSchema>;
export type Brief = v.InferOutput<typeof BriefSchema>;
export type Speeds = v.InferOutput<typeof SpeedsSchema>;
export type Planform = v.InferOutput<typeof PlanformSchema>;
export type Stabilizer = v.InferOutput<typeof StabilizerSchema>;
export type Fuselage = v.InferOutput<typeof FuselageSchema>;
export type Strut = v.InferOutput<typeof StrutSchema>;
export type Length = Planform['length'];
export type ChordLaw = v.InferOutput<typeof ChordSchema>;
export type SweepLaw = v.InferOutput<typeof SweepSchema>;
export type DroopLaw = v.InferOutput<typeof DroopSchema>;
export type TwistLaw = v.InferOutput<typeof TwistSchema>;
export type PointsLaw = Extract<ChordLaw, { kind: 'points' }>;
export type FormulaLaw = v.InferOutput<typeof FormulaSchema>;
export type Outline = v.InferOutput<typeof OutlineSchema>;
