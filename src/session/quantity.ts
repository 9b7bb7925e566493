/**
 * Reads what a person types into a number field: "27 in", "18 kn", "0,68 m", "550 cm^2", "740/2 mm + 5 mm", "2*350".
 * mathjs parses and converts; only sums, products, whole powers, brackets and the units listed here get through,
 * and the text is bounded, so nothing typed can run long or reach beyond arithmetic.
 */
import {
  addDependencies,
  create,
  createUnitDependencies,
  divideDependencies,
  type FactoryFunctionMap,
  isConstantNode,
  isOperatorNode,
  isParenthesisNode,
  isSymbolNode,
  isUnit,
  type MathNode,
  multiplyDependencies,
  parseDependencies,
  powDependencies,
  subtractDependencies,
  unaryMinusDependencies,
  unaryPlusDependencies,
  unitDependencies,
} from 'mathjs';
import { pointed, withMark } from './number-format.ts';
import { fromDisplay, type Quantity, type UnitSystem } from './units.ts';

export type Reading = { ok: true; value: number } | { ok: false; message: string };

const LONGEST = 80; // characters; the longest sensible entry has about thirty
const MOST_POWER = 3;
const SHARE_ALONE = /^[+\-\u2212]?[^\s*/+-]*\s*%$/; // of nothing: "10 %", not "700 mm - 10 %"

const math = create(
  {
    addDependencies,
    createUnitDependencies,
    divideDependencies,
    multiplyDependencies,
    parseDependencies,
    powDependencies,
    subtractDependencies,
    unaryMinusDependencies,
    unaryPlusDependencies,
    unitDependencies,
  } as Record<string, FactoryFunctionMap>,
  {},
);
math.createUnit('knot', '1852 m/hour');
math.createUnit('mileperhour', '1 mi/hour');

/** What may be typed, and what the unit library calls it. */
const NAMES = new Map<string, string>(
  Object.entries({
    um: 'um',
    micron: 'um',
    microns: 'um',
    thou: 'mil',
    mm: 'mm',
    cm: 'cm',
    m: 'm',
    km: 'km',
    inch: 'inch', // "in" itself is an operator to the parser and is respelled first
    inches: 'inch',
    ft: 'ft',
    feet: 'ft',
    foot: 'ft',
    mm2: 'mm2',
    cm2: 'cm2',
    m2: 'm2',
    in2: 'sqin',
    sqin: 'sqin',
    sqft: 'sqft',
    s: 's',
    h: 'hour',
    hour: 'hour',
    kn: 'knot',
    kt: 'knot',
    kts: 'knot',
    knot: 'knot',
    knots: 'knot',
    mph: 'mileperhour',
    deg: 'deg',
    degrees: 'deg',
    rad: 'rad',
    g: 'g',
    kg: 'kg',
    lb: 'lbm',
    lbs: 'lbm',
    N: 'N',
    kN: 'kN',
    kgf: 'kgf',
    lbf: 'lbf',
    Pa: 'Pa',
    MPa: 'MPa',
    GPa: 'GPa',
    psi: 'psi',
    Hz: 'Hz',
    degC: 'degC',
    degF: 'degF',
    K: 'K',
  }),
);

interface Kind {
  name: string;
  base: string; // unit whose number is the document's; empty for plain numbers
  example: string;
}

const KINDS: Record<Quantity, Kind> = {
  length: { name: 'a length', base: 'm', example: '700 mm or 27 in' },
  fineLength: { name: 'a length', base: 'm', example: '50 µm or 0.05 mm' },
  area: { name: 'an area', base: 'm^2', example: '550 cm^2 or 85 in^2' },
  speed: { name: 'a speed', base: 'm/s', example: '18 kn or 9 m/s' },
  angle: { name: 'an angle', base: 'deg', example: '8 deg or 0.14 rad' },
  mass: { name: 'a mass', base: 'kg', example: '90 kg or 200 lb' },
  force: { name: 'a force', base: 'N', example: '900 N or 200 lbf' },
  moment: { name: 'a moment', base: 'N m', example: '40 N m' },
  temperature: { name: 'a temperature', base: 'degC', example: '15 °C or 59 °F' },
  time: { name: 'a time', base: 's', example: '2 s' },
  share: { name: 'a share', base: '', example: '10 %' },
  ratio: { name: 'a plain number', base: '', example: '2.4' },
  modulus: { name: 'a modulus', base: 'Pa', example: '70 GPa' },
  spring: { name: 'a spring in N m/rad, as a plain number', base: '', example: '8000' },
  frequency: { name: 'a frequency', base: 'Hz', example: '40 Hz' },
  cloth: { name: 'a weight of cloth', base: 'kg/m^2', example: '200 g/m^2' },
  liftPerSpan: { name: 'a lift per span', base: 'N/m', example: '1200 N/m' },
  circulation: { name: 'a circulation', base: 'm^2/s', example: '0.4 m^2/s' },
  density: { name: 'a density', base: 'kg/m^3', example: '1025 kg/m^3' },
  viscosity: { name: 'a viscosity', base: 'm^2/s', example: '1.2e-6 m^2/s' },
};

/**
 * The value meant, in SI (degrees, degrees Celsius, shares as fractions), or one sentence saying what is wrong.
 * A number without a unit counts in the unit that `system` shows.
 */
export function readQuantity(text: string, quantity: Quantity, system: UnitSystem): Reading {
  const wanted = `${KINDS[quantity].name} is wanted, for example ${withMark(KINDS[quantity].example)}`;
  const typed = text.trim();
  const refuse = (message: string): Reading => ({ ok: false, message });
  if (typed === '') return refuse(`Nothing is written here; ${wanted}.`);
  if (typed.length > LONGEST) return refuse(`Too long to read (${typed.length} characters); ${wanted}.`);
  const marked = pointed(typed);
  if (!marked.ok) return marked;
  if (SHARE_ALONE.test(typed) && !(quantity === 'share' || quantity === 'ratio'))
    return refuse(`${typed} is ${KINDS.share.name}; ${wanted}.`);
  try {
    const value = evaluate(spellOut(marked.text, quantity));
    return settle(value, typed, quantity, system, wanted);
  } catch (error) {
    if (error instanceof Unreadable) return refuse(`“${typed}”: ${error.message}; ${wanted}.`);
    if (error instanceof SyntaxError) return refuse(`“${typed}” cannot be read; ${wanted}.`);
    return refuse(`The terms of “${typed}” do not fit together: give each the same kind of unit, or none.`);
  }
}

class Unreadable extends Error {}

/** Signs and unit spellings of people to those of the parser. */
function spellOut(typed: string, quantity: Quantity): string {
  let text = typed
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/[×·]/g, '*')
    .replace(/÷/g, '/')
    .replace(/[µμ](?=m)/g, 'u')
    .replace(/²/g, '^2')
    .replace(/³/g, '^3')
    .replace(/°\s*C\b/g, ' degC')
    .replace(/°\s*F\b/g, ' degF')
    .replace(/[°º]/g, ' deg')
    .replace(/["″”]|(?<![A-Za-z])in\b/g, ' inch')
    .replace(/['′’]/g, ' ft');
  if (quantity === 'share') text = text.replace(/%/g, ''); // a bare number counts in per cent too
  if (quantity === 'temperature')
    text = text.replace(/(\d)\s*C\s*$/, '$1 degC').replace(/(\d)\s*F\s*$/, '$1 degF');
  return text.replace(/(\d) (?=\d{3}(?!\d))/g, '$1');
}

function evaluate(text: string): unknown {
  const tree = math.parse(text);
  return tree.transform((node) => allowed(node)).evaluate();
}

/** The node itself, a unit under its library name, or a refusal. */
function allowed(node: MathNode): MathNode {
  if (isConstantNode(node)) {
    if (typeof node.value === 'number') return node;
  } else if (isParenthesisNode(node)) return node;
  else if (isSymbolNode(node)) {
    const name = NAMES.get(node.name) ?? NAMES.get(node.name.toLowerCase());
    if (name === undefined) throw new Unreadable(`“${node.name}” is not a unit known here`);
    return new math.SymbolNode(name);
  } else if (isOperatorNode(node)) return allowedOperator(node);
  throw new Unreadable('only numbers, units and + - * / ( ) can be written');
}

function allowedOperator(node: MathNode & { op: string; args: MathNode[]; implicit?: boolean }): MathNode {
  const second = node.args[1];
  if (node.op === '^') {
    const isWhole = isConstantNode(second) && [1, 2, MOST_POWER].includes(Number(second.value));
    if (!isWhole) throw new Unreadable('only the powers 2 and 3 can be written');
  } else if (!['+', '-', '*', '/'].includes(node.op)) {
    throw new Unreadable('only numbers, units and + - * / ( ) can be written');
  }
  if (node.implicit && isConstantNode(second)) throw new Unreadable('a sign is missing between two numbers');
  return node;
}

function settle(
  value: unknown,
  typed: string,
  quantity: Quantity,
  system: UnitSystem,
  wanted: string,
): Reading {
  if (isUnit(value)) {
    const { base } = KINDS[quantity];
    if (base === '' || !value.equalBase(math.unit(base)))
      return { ok: false, message: `${typed} is ${kindOf(value)}; ${wanted}.` };
    return finite(value.toNumber(base), typed);
  }
  if (typeof value !== 'number') return { ok: false, message: `“${typed}” cannot be read; ${wanted}.` };
  return finite(fromDisplay(value, quantity, system), typed);
}

function finite(value: number, typed: string): Reading {
  return Number.isFinite(value)
    ? { ok: true, value }
    : { ok: false, message: `“${typed}” has no finite value.` };
}

function kindOf(value: import('mathjs').Unit): string {
  const found = Object.values(KINDS).find(({ base }) => base !== '' && value.equalBase(math.unit(base)));
  return found?.name ?? 'something else';
}
