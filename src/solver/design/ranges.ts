/**
 * Least, greatest and unit of every number in the document: the one place they are written. The schema, the messages
 * and the editors read them from here. Keys are dotted paths; a star stands for one key of any name (wing or
 * stabilizer, a speed, a place in a list).
 */

export interface Range {
  min: number;
  max: number;
  unit: '' | 'kg' | 'm' | 'm2' | 'm/s' | 'deg' | 'deg C' | 'Pa' | 'kg/m2' | 'kg/m3' | 'N m' | 'N m/rad';
  open?: true; // the least value itself is not allowed
  default?: number; // stands for a key that may be left out
}

const chord: Range = { min: 0, max: 1, unit: 'm', open: true };
const tipChord: Range = { min: 0, max: 1, unit: 'm' };
const share: Range = { min: 0, max: 1, unit: '' };
const degrees = (min: number, max: number): Range => ({ min, max, unit: 'deg' });
const metres = (min: number, max: number): Range => ({ min, max, unit: 'm' });
const spring: Range = { min: 1, max: 1e9, unit: 'N m/rad' };
const area: Range = { min: 0.0005, max: 5, unit: 'm2' };
const power: Range = { min: 0.1, max: 20, unit: '' };

export const RANGES = {
  'brief.allUpMass': { min: 20, max: 400, unit: 'kg' },
  'brief.upwardPull': { min: 0, max: 0.9, unit: '' },
  'brief.speeds.*': { min: 0.5, max: 30, unit: 'm/s' },
  'brief.water.temperature': { min: 0, max: 35, unit: 'deg C' },
  'brief.depth': { min: 0, max: 5, unit: 'm', open: true },
  'brief.depths.*': { min: 0, max: 5, unit: 'm', open: true },
  'brief.balance.x': metres(-3, 3),
  'brief.balance.height': metres(-5, 5),
  'brief.driveHeight': metres(-5, 10),
  'brief.sidePull.share': { min: -2, max: 2, unit: '' },
  'brief.sidePull.height': metres(-5, 10),
  'brief.boardAngle': { ...degrees(-30, 30), default: 0 },
  '*.length.value': metres(0.05, 5),
  '*.chord.root': chord,
  '*.chord.tip': tipChord,
  '*.chord.n': power,
  '*.chord.m': power,
  '*.chord.at.*.1': tipChord,
  '*.sweep.angle': degrees(-45, 60),
  '*.sweep.tip': metres(-2, 2),
  '*.sweep.power': power,
  '*.sweep.at.*.1': metres(-5, 5),
  '*.droop.tipAngle': degrees(-90, 90),
  '*.droop.tipDrop': metres(-2.5, 2.5),
  '*.droop.rootAngle': degrees(-90, 90),
  '*.droop.from': { min: 0, max: 0.99, unit: '' },
  '*.droop.power': power,
  '*.droop.knee': { min: 0.01, max: 0.99, unit: '' },
  '*.droop.at.*.1': degrees(-90, 90),
  '*.twist.tip': degrees(-20, 20),
  '*.twist.at.*.1': degrees(-20, 20),
  '*.*.at.*.0': share,
  '*.section.*.points.*.0': { min: -0.05, max: 1.05, unit: '' },
  '*.section.*.points.*.1': { min: -0.5, max: 0.5, unit: '' },
  '*.section.*.thicknessScale': { min: 0.2, max: 4, unit: '', default: 1 },
  '*.section.*.camberScale': { min: -4, max: 4, unit: '', default: 1 },
  '*.incidence': degrees(-30, 30),
  'stabilizer.arm': metres(0.1, 3),
  'stabilizer.height': metres(-2, 2),
  'fuselage.diameter': metres(0.002, 0.5),
  'fuselage.nose': metres(0, 2),
  'strut.x': { ...metres(-2, 3), default: 0 },
  'strut.length': metres(0.05, 5),
  'strut.chord': metres(0.01, 1),
  'strut.thickness': metres(0.003, 0.05),
  // Spray and the waves of its own bow reach about a chord down: common practice.
  'strut.turbulentTo': { ...metres(0, 5), default: 0.1 },
  'strut.top.chord': metres(0.01, 1),
  'strut.top.thickness': metres(0.003, 0.05),
  'inertia.boardMass': { min: 0, max: 50, unit: 'kg', default: 5 },
  'inertia.boardLength': { ...metres(0.2, 6), default: 1.3 },
  'inertia.boardWidth': { ...metres(0.1, 2), default: 0.5 },
  'inertia.foilMass': { min: 0, max: 50, unit: 'kg', default: 4 },
  'inertia.riderRoll': { ...metres(0.05, 2), default: 0.4 },
  'inertia.riderPitch': { ...metres(0.05, 2), default: 0.4 },
  'inertia.riderYaw': { ...metres(0.05, 2), default: 0.25 },
  'build.spacing': { ...metres(0.005, 0.5), default: 0.05 },
  'build.leastEdge': { ...metres(0, 0.005), default: 0 },
  'build.allowance': { ...metres(0, 0.01), default: 0 },
  'build.slot.at': { min: 0.02, max: 0.95, unit: '' },
  'build.slot.width': metres(0.0005, 0.2),
  'build.slot.height': metres(0.0005, 0.1),
  'build.tolerance': { ...metres(0.000001, 0.001), default: 0.00001 },
  'build.stock': { ...metres(0.0005, 0.2), default: 0.005 },
  'build.ply.thickness': { ...metres(0.00005, 0.002), default: 0.00025 },
  'build.ply.weight': { min: 0.02, max: 2, unit: 'kg/m2', default: 0.2 },
  'asBuilt.*.at.*.eta': share,
  'asBuilt.*.at.*.*.twist': degrees(-20, 20),
  'asBuilt.*.at.*.*.chord': tipChord,
  'asBuilt.*.tipDrop.*': metres(-2.5, 2.5),
  'laminate.*.along': { ...share, default: 0.6 },
  'laminate.*.diagonal': { ...share, default: 0.4 },
  'laminate.*.modulus': { min: 1e8, max: 1e12, unit: 'Pa' },
  'laminate.*.shear': { min: 1e7, max: 5e11, unit: 'Pa' },
  'laminate.*.strain': { min: 0.0001, max: 0.1, unit: '' },
  'laminate.*.density': { min: 50, max: 20000, unit: 'kg/m3' },
  'laminate.*.skin': { ...metres(0.0002, 0.05), default: 0.002 },
  'laminate.safety': { min: 1, max: 20, unit: '', default: 3 },
  'laminate.limits.strutThickness': { ...metres(0.003, 0.05), default: 0.013 },
  'laminate.limits.strutDeflection': { ...metres(0.001, 1), default: 0.04 },
  'laminate.limits.fuselageDiameter': { ...metres(0.002, 0.5), default: 0.02 },
  'laminate.limits.fuselageDeflection': { ...metres(0.0001, 1), default: 0.004 },
  'finish.grade': { min: 80, max: 2500, unit: '' },
  'finish.roughness': metres(0.0000001, 0.002),
  'finish.grainShare': { min: 0.02, max: 1, unit: '', default: 0.2 },
  'defects.*.eta': share,
  'defects.*.at': share,
  'defects.*.height': metres(0, 0.01),
  'defects.*.width': metres(0, 1),
  'defects.*.wedge': { ...degrees(0, 60), default: 20 },
  'joints.*.roll': spring,
  'joints.*.pitch': spring,
  'joints.*.yaw': spring,
  'joints.bench.*.mass': { min: 0, max: 200, unit: 'kg', open: true },
  'joints.bench.*.at': metres(0, 5),
  'joints.bench.*.arm': { ...metres(0, 3), open: true, default: 0.3 },
  'joints.bench.*.station': metres(0, 5),
  'joints.bench.*.deflection': metres(-5, 5),
  'joints.bench.*.turn': degrees(-90, 90),
  'marks.*': { min: 1, max: 5, unit: '' },
  'wanted.weights.*': { min: 0, max: 100, unit: '' },
  'wanted.limits.holdIndex.*': { min: -1000, max: 1000, unit: '' },
  'wanted.limits.rollFromYaw.*': { min: -10, max: 10, unit: '' },
  'wanted.limits.staticMargin.*': { min: -10, max: 50, unit: '' },
  'wanted.limits.span.*': metres(0.02, 5),
  'wanted.limits.tipChord.*': tipChord,
  'wanted.limits.thickness.*': metres(0, 0.5),
  'wanted.limits.strutDeflection.*': metres(0.0001, 2),
  'wanted.limits.takeOffSpeed.*': { min: 0.5, max: 30, unit: 'm/s' },
  'wanted.limits.stallMargin.*': { min: -2, max: 3, unit: '' },
  'wanted.limits.cavitationMargin.*': { min: -5, max: 100, unit: '' },
  'wanted.limits.tipDepth.*': metres(0, 7),
  'wanted.limits.rootMoment.*': { min: 0, max: 100000, unit: 'N m' },
  'wanted.limits.stanceShift.*': metres(0, 3),
  'wanted.free.length.*': metres(0.05, 5),
  'wanted.free.droop.*': degrees(-90, 90),
  'wanted.free.droopFrom.*': { min: 0, max: 0.99, unit: '' },
  'wanted.free.chords.*': tipChord,
  'wanted.free.taper.*': { min: 0.01, max: 5, unit: '' },
  'wanted.free.fullness.*': power,
  'wanted.free.area.*': area,
  'wanted.free.sweep.*': degrees(-45, 60),
  'wanted.free.rake.*': metres(-2, 2),
  'wanted.free.twist.*': degrees(-20, 20),
  'wanted.free.stabilizerLength.*': metres(0.05, 5),
  'wanted.free.stabilizerDroop.*': degrees(-90, 90),
  'wanted.free.stabilizerArea.*': area,
  'wanted.free.arm.*': metres(0.1, 3),
  'wanted.free.stabilizerIncidence.*': degrees(-30, 30),
  'wanted.free.strutThickness.*': metres(0.003, 0.05),
} as const satisfies Record<string, Range>;

/** Four digits with a thickness, and a place for the camber where there is some: 0012, 2412. */
export const FOUR_DIGIT_CODE = /^(?:0\d|[1-9][1-9])(?!00)\d\d$/;

export type RangeKey = keyof typeof RANGES;

const PATTERNS = Object.entries<Range>(RANGES).map(([key, range]) => ({ keys: key.split('.'), range }));

/** The range of the number at a dotted path of a document ("wing.chord.root"); undefined where there is none. */
export function rangeOf(path: string): Range | undefined {
  const keys = path.split('.');
  return PATTERNS.find(
    (pattern) =>
      pattern.keys.length === keys.length && pattern.keys.every((key, k) => key === '*' || key === keys[k]),
  )?.range;
}

export function isWithin({ min, max, open }: Range, value: number): boolean {
  return value <= max && (open ? value > min : value >= min);
}

/** "0 to 1 m", "above 0 to 5 m" */
export function describeRange({ min, max, unit, open }: Range): string {
  return `${open ? 'above ' : ''}${min} to ${max}${unit && ` ${unit}`}`;
}
