/** The document's keys in plain words. A star stands for one key, and for the word of it in the sentence; # for a place in a list. */
import type { Quantity } from '../../session/units.ts';
import { rangeOf } from '../../solver/design/ranges.ts';
import { FIGURE_WORDS, inSentence, QUANTITY_WORDS } from '../propose/words.ts';

const WORDS: Readonly<Record<string, string>> = {
  'brief.allUpMass': 'mass all up',
  'brief.upwardPull': 'weight carried by the rig',
  'brief.speeds.*': 'speed at *',
  'brief.water.kind': 'water',
  'brief.water.temperature': 'water temperature',
  'brief.water.clarity': 'clarity of the water',
  'brief.depth': 'depth',
  'brief.depths.*': 'depth at *',
  'brief.balance.x': 'balance point, aft',
  'brief.balance.height': 'balance point, height',
  'brief.driveHeight': 'height at which the rig drives',
  'brief.sidePull.share': 'side pull of the rig, share of the weight',
  'brief.sidePull.height': 'height of the side pull',
  'brief.boardAngle': 'angle of the board',
  '*.length': '* length',
  '*.chord': '* chord',
  '*.chord.at.#.1': '* chord',
  '*.sweep.at.#.1': '* sweep',
  '*.droop.at.#.1': '* droop',
  '*.twist.at.#.1': '* twist',
  '*.chord.root': '* root chord',
  '*.chord.tip': '* tip chord',
  '*.chord.n': '* chord, power on the span',
  '*.chord.m': '* chord, root of the tip',
  '*.sweep': '* sweep',
  '*.sweep.angle': '* sweep',
  '*.sweep.tip': '* tip rake, aft',
  '*.sweep.power': '* rake, power',
  '*.droop': '* droop',
  '*.droop.tipAngle': '* tip angle, down',
  '*.droop.tipDrop': '* tip drop',
  '*.droop.rootAngle': '* droop, rise at the root',
  '*.droop.from': '* droop, bends from',
  '*.droop.power': '* droop, power of the bend',
  '*.droop.knee': '* droop, knee at',
  '*.twist': '* twist',
  '*.twist.tip': '* twist at the tip',
  '*.section.root': '* section at the root',
  '*.section.tip': '* section at the tip',
  '*.incidence': '* incidence',
  stabilizer: 'stabilizer',
  'stabilizer.arm': 'arm to the stabilizer',
  'stabilizer.height': 'stabilizer height',
  fuselage: 'fuselage',
  'fuselage.diameter': 'fuselage diameter',
  'fuselage.nose': 'fuselage nose ahead of the wing',
  strut: 'strut',
  'strut.x': 'strut, aft',
  'strut.length': 'strut length',
  'strut.chord': 'strut chord',
  'strut.thickness': 'strut thickness',
  'strut.turbulentTo': 'upper strut turbulent down to a depth of',
  'strut.top.chord': 'strut chord at the board',
  'strut.top.thickness': 'strut thickness at the board',
  'inertia.boardMass': 'mass of the board',
  'inertia.boardLength': 'length of the board',
  'inertia.boardWidth': 'width of the board',
  'inertia.foilMass': 'mass of foil and strut',
  'inertia.riderRoll': 'rider, swing in roll',
  'inertia.riderPitch': 'rider, swing in pitch',
  'inertia.riderYaw': 'rider, swing in yaw',
  'laminate.safety': 'safety factor',
  'laminate.limits.strutThickness': 'thickness mark of the strut',
  'laminate.limits.strutDeflection': 'allowed deflection of the strut',
  'laminate.limits.fuselageDiameter': 'diameter mark of the fuselage',
  'laminate.limits.fuselageDeflection': 'allowed deflection of the fuselage',
  'laminate.*.material': '*, material',
  'laminate.*.along': '*, plies along',
  'laminate.*.diagonal': '*, plies at 45°',
  'laminate.*.modulus': '*, modulus along',
  'laminate.*.shear': '*, modulus in shear',
  'laminate.*.strain': '*, strain at which it fails',
  'laminate.*.density': '*, density',
  'laminate.*.build': '*, built',
  'laminate.*.skin': '*, thickness of the skin',
  'joints.*.roll': 'joint at the *, in roll',
  'joints.*.pitch': 'joint at the *, in pitch',
  'joints.*.yaw': 'joint at the *, in yaw',
  'joints.bench': 'bench readings',
  'build.spacing': 'station spacing',
  'build.leastEdge': 'least trailing edge',
  'build.allowance': 'laminate allowance',
  'build.slot.at': 'place of the spar slot',
  'build.slot.width': 'width of the spar slot',
  'build.slot.height': 'height of the spar slot',
  'build.tolerance': 'tolerance of solids',
  'build.stock': 'core stock',
  'build.ply.thickness': 'thickness of a layer',
  'build.ply.weight': 'weight of the cloth',
  'asBuilt.wing.at': 'measured stations of the wing',
  'asBuilt.wing.tipDrop.port': 'measured tip drop to port',
  'asBuilt.wing.tipDrop.starboard': 'measured tip drop to starboard',
  'finish.grade': 'last abrasive, P',
  'finish.roughness': 'measured roughness',
  'finish.grainShare': 'roughness over the grain',
  defects: 'defects',
  'notes.laminate': 'laminate notes',
  'wanted.weights.*': 'wanted: weight of the drag at *',
  'wanted.limits.*.least': 'wanted: * at least',
  'wanted.limits.*.most': 'wanted: * at most',
  'wanted.free.*.least': 'wanted: * may move from',
  'wanted.free.*.most': 'wanted: * may move to',
  'wanted.laws.droop': 'wanted: droop laws to try',
  'wanted.laws.chord': 'wanted: chord laws to try',
};

const PLACES: Readonly<Record<string, string>> = {
  takeOff: 'take-off',
  top: 'top speed',
};

const SHARES = [
  'brief.upwardPull',
  'brief.sidePull.share',
  '*.droop.from',
  '*.droop.knee',
  'build.slot.at',
  'laminate.*.along',
  'laminate.*.diagonal',
  'laminate.*.strain',
  'finish.grainShare',
];

const QUANTITIES: Readonly<Record<string, Quantity>> = {
  kg: 'mass',
  m: 'length',
  m2: 'area',
  'm/s': 'speed',
  deg: 'angle',
  'deg C': 'temperature',
  Pa: 'modulus',
  'kg/m2': 'cloth',
  'kg/m3': 'density',
  'N m': 'moment',
  'N m/rad': 'spring',
};

/** "wing tip chord"; a key that is not ours, as it stands. */
export function wordsOf(path: string): string {
  const keys = path.split('.');
  const pattern = Object.keys(WORDS).find((each) => fits(each, keys));
  if (!pattern) return path;
  const star = pattern.split('.').indexOf('*');
  return star < 0 ? WORDS[pattern]! : WORDS[pattern]!.replace('*', wordOf(keys[star]!, keys[1]!));
}

/** In which unit the number at the path is read. */
export function quantityAt(path: string): Quantity {
  const keys = path.split('.');
  if (SHARES.some((pattern) => fits(pattern, keys))) return 'share';
  if (path === 'finish.roughness') return 'fineLength';
  return QUANTITIES[rangeOf(path)?.unit ?? ''] ?? 'ratio';
}

function wordOf(key: string, block: string): string {
  const words = block === 'limits' ? FIGURE_WORDS : block === 'free' ? QUANTITY_WORDS : {};
  const known = (words as Record<string, { label: string; quantity: Quantity }>)[key];
  return known ? inSentence(known) : (PLACES[key] ?? key);
}

function fits(pattern: string, keys: readonly string[]): boolean {
  const parts = pattern.split('.');
  return (
    parts.length === keys.length &&
    parts.every((part, k) => part === '*' || part === keys[k] || (part === '#' && /^\d+$/.test(keys[k]!)))
  );
}
