/**
 * Every formula that the page shows as the working of a figure, evaluated with the numbers printed beside it, as a reader
 * with a calculator set to degrees would: each equation gives the figure printed for its left side, as near as rounding
 * lets it, in every unit system and with either decimal mark. The workings are found in the program itself: each function
 * of a file called `...workings.ts` is one, and no other file makes any.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { evaluate } from 'mathjs';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { SectionGiven } from '../../src/components/section-workings.ts';
import type { StallGiven } from '../../src/components/study-workings.ts';
import type { Given, Working } from '../../src/components/working-parts.ts';
import { type DecimalMark, setDecimalMark, withMark } from '../../src/session/number-format.ts';
import { UNIT_SYSTEMS } from '../../src/session/units.ts';
import { withDroopAmplitude } from '../../src/solver/design/laws.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { solve } from '../../src/solver/solve.ts';
import { sectionPolars, sectionView } from '../../src/solver/studies/section-view.ts';
import { type StallStudy, stallStudy } from '../../src/solver/studies/stall.ts';
import { finish } from '../../src/solver/studies/study.ts';
import { goodDesigns } from '../support/designs.ts';

type Shown = Pick<Working, 'formula' | 'numbers'>;
type Workings = Array<[name: string, working: (given: never) => Working]>;

const MODULES = import.meta.glob<Record<string, (given: never) => Working>>(
  '../../src/components/**/*workings.ts',
  { eager: true },
);
const within = (file: string): Workings =>
  Object.entries(MODULES)
    .filter(([path]) => path.endsWith(`/${file}.ts`))
    .flatMap(([, module]) => Object.entries(module));
const FAMILIES = ['workings', 'ledger-workings', 'section-workings', 'study-workings'];

/** Every way in which a reader may have figures written. */
const WRITINGS = UNIT_SYSTEMS.flatMap(({ system }) =>
  (['.', ','] as const).map((mark): [string, typeof system, DecimalMark] => [
    `${system}, decimal ${mark}`,
    system,
    mark,
  ]),
);

afterEach(() => setDecimalMark('.'));

/** A printed number and half its last digit. */
interface Printed {
  value: number;
  rounding: number;
}

/** The number of a printed value: the last one where it is written in two units, "17.5 kn = 9.003 m/s". */
function read(printed: string): Printed | null {
  const text = printed.split('=').at(-1)!.replaceAll(/\s/gu, '').replace(',', '.');
  const match = /^([+−-]?)(\d*\.?\d+)(%)?/u.exec(text);
  if (!match) return null;
  const [, sign, digits, percent] = match;
  const decimals = digits!.split('.')[1]?.length ?? 0;
  const scale = percent ? 0.01 : 1;
  return {
    value: (sign && sign !== '+' ? -1 : 1) * Number(digits) * scale,
    rounding: 0.5 * 10 ** -decimals * scale,
  };
}

/** What is printed as something the formula parser reads. */
const plainName = (symbol: string) =>
  symbol
    .normalize('NFD')
    .replaceAll('\u0304', 'bar')
    .replaceAll(/[₀-₉]/g, (digit) => String(digit.codePointAt(0)! - 0x2080))
    .replaceAll(/[\p{Script=Greek}]/gu, (letter) => `greek${letter.codePointAt(0)}`)
    .replaceAll(/[^\w]+/g, '_');

function plainFormula(text: string): string {
  return text
    .replaceAll('−', '-')
    .replaceAll('½', '0.5')
    .replaceAll('²', '^2')
    .replaceAll(/\|([^|]+)\|/g, 'abs($1)')
    .replaceAll('π', 'pi')
    .replaceAll(/(\d),(?=\d)/g, '$1.') // decimal comma
    .replaceAll(/[\p{L}][\p{L}\p{M}\p{N}_]*/gu, plainName)
    .replaceAll(/([\w)]) \(/g, '$1 * ('); // a function has no space before its bracket
}

const RADIANS = Math.PI / 180;
const CALCULATOR = {
  sin: (degrees: number) => Math.sin(degrees * RADIANS),
  atan: (value: number) => Math.atan(value) / RADIANS,
};
const compute = (formula: string, values: Record<string, number>) =>
  Number(evaluate(formula, { ...CALCULATOR, ...values }));

/** Largest difference that rounding of the numbers put in can make. */
function slack(formula: string, scope: Record<string, Printed>): number {
  const values = Object.fromEntries(Object.entries(scope).map(([name, { value }]) => [name, value]));
  const at = (changed: Record<string, number>) => compute(formula, { ...values, ...changed });
  return Object.entries(scope).reduce(
    (sum, [name, { value, rounding }]) =>
      sum + Math.max(...[-1, 1].map((way) => Math.abs(at({ [name]: value + way * rounding }) - at({})))),
    0,
  );
}

function scopeOf({ numbers }: Shown): Record<string, Printed> {
  const entries = numbers.map(([name, text]) => [plainName(name.split(',')[0]!), read(text)] as const);
  return Object.fromEntries(entries.filter((entry): entry is [string, Printed] => entry[1] !== null));
}

/** The symbols of a formula. */
const symbolsIn = (formula: string) => new Set(formula.match(/[A-Za-z]\w*/g) ?? []);

/** What is on screen: the decimal mark is the reader's. */
const shownOf = ({ formula, numbers }: Shown): Shown => ({
  formula: withMark(formula),
  numbers: numbers.map(([name, text]) => [withMark(name), withMark(text)]),
});

/**
 * Every equation of a working gives the figure printed for its left side, as near as rounding lets it; how many did. An
 * equation whose figure there is none of says "none".
 */
function holds(working: Shown): number {
  const shown = shownOf(working);
  const scope = scopeOf(shown);
  const textOf = (symbol: string) =>
    shown.numbers.find(([label]) => plainName(label.split(',')[0]!) === symbol)?.[1];
  let evaluated = 0;
  for (const equation of shown.formula.split(';')) {
    const sides = equation.split('=').map((side) => side.trim());
    expect(sides, `“${equation}” is an equation`).toHaveLength(2);
    const [left, right] = [plainName(sides[0]!), plainFormula(sides[1]!)];
    const text = textOf(left);
    expect(text, `“${sides[0]}” is printed beside its formula`).toBeDefined();
    const printed = scope[left];
    if (!printed) {
      expect(text).toBe('none');
      continue;
    }
    const inputs = Object.fromEntries(Object.entries(scope).filter(([key]) => symbolsIn(right).has(key)));
    const values = Object.fromEntries(Object.entries(inputs).map(([key, { value }]) => [key, value]));
    expect(Object.keys(inputs), `“${right}” takes a printed number`).not.toHaveLength(0);
    expect(inputs, `“${left}” is not put into itself`).not.toHaveProperty(left);
    const found = compute(right, values);
    const allowed = 1.01 * (printed.rounding + slack(right, inputs)) + 1e-12;
    expect(Math.abs(found - printed.value), `${equation}: ${found}, printed ${text}`).toBeLessThanOrEqual(
      allowed,
    );
    evaluated++;
  }
  return evaluated;
}

/** One working with all it may ask for. */
const ask = (working: (given: never) => Working, given: Given | SectionGiven | StallGiven): Working =>
  working(given as never);

describe('the workings', () => {
  it('are the functions of four files', () => {
    const files = Object.keys(MODULES).map((path) => /([^/]+)\.ts$/.exec(path)![1]!);
    expect(files.sort()).toEqual([...FAMILIES].sort()); // a new file needs its lines here
    for (const [path, module] of Object.entries(MODULES))
      for (const [name, one] of Object.entries(module))
        expect(one, `${path}: ${name}`).toBeTypeOf('function');
    expect(FAMILIES.flatMap(within)).toHaveLength(37); // counted, so that none is lost unseen
  });

  it('are made nowhere else', () => {
    const root = new URL('../../src/', import.meta.url);
    const makers = readdirSync(root, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts') && !/workings\.ts$|working-parts\.ts$/.test(file))
      .filter((file) => {
        const text = readFileSync(new URL(file, root), 'utf8');
        return /\bformula:/.test(text) && /\bnumbers:/.test(text);
      });
    expect(makers).toEqual([]);
  });

  it('are refused with a wrong figure, without their inputs, and in words', () => {
    const right: Shown = {
      formula: 'A = B C²',
      numbers: [
        ['A', '12.0'],
        ['B', '3.00'],
        ['C', '2.00'],
      ],
    };
    expect(holds(right)).toBe(1);
    expect(() => holds({ ...right, numbers: [['A', '12.5'], ...right.numbers.slice(1)] })).toThrow(
      /printed 12.5/,
    );
    expect(() => holds({ ...right, numbers: right.numbers.slice(0, 1) })).toThrow();
    expect(() => holds({ ...right, formula: 'the largest of all' })).toThrow(/is an equation/);
    expect(() => holds({ ...right, formula: 'A = A' })).toThrow(/put into itself/);
  });
});

describe.each(goodDesigns())('the workings of %s', (_file, design) => {
  const report = solve(design);

  it.each([...within('workings'), ...within('ledger-workings')])('%s', (_name, working) => {
    for (const [, units, mark] of WRITINGS) {
      setDecimalMark(mark);
      holds(ask(working, { design, report, units }));
    }
  });

  it('the neutral droop is where the roll from yaw is nothing', () => {
    const { neutralDroop } = report.stability;
    if (neutralDroop === null) return;
    const present = (surfaceOf(design.wing).amplitude * 180) / Math.PI;
    const droop = withDroopAmplitude(design.wing.droop, present, neutralDroop);
    const bent = solve({ ...design, wing: { ...design.wing, droop } }, { lift: report.lift.total });
    expect(Math.abs(bent.stability.foil.Clr)).toBeLessThan(1e-4);
  });
});

describe('the workings of studies', () => {
  const [, design] = goodDesigns()[0]!;
  const speed = design.brief.speeds.cruise;
  const wing = { part: 'wing', eta: 0.3, speed } as const;

  let stall: StallStudy;

  beforeAll(() => {
    stall = finish(stallStudy(design)); // polars are made once
  }, 60_000);

  it.each(within('study-workings'))('%s', (_name, working) => {
    const marks = [stall.usable, stall.first, stall.greatest].filter((mark) => mark !== null);
    expect(marks.length).toBeGreaterThan(0);
    for (const mark of marks)
      for (const [, units, decimal] of WRITINGS) {
        setDecimalMark(decimal);
        expect(holds(ask(working, { stall, mark, units }))).toBe(2);
      }
  });

  it('of a section: every one, at several places, with its polar and without', () => {
    const polar = finish(sectionPolars(design, wing)).series.find(({ water }) => water === 'own')!;
    const places: Array<[SectionGiven['section'], SectionGiven['polar']]> = [
      [sectionView(design, { ...wing, cl: null }), polar],
      [sectionView(design, { ...wing, cl: null }), null],
      [sectionView(design, { ...wing, cl: 0.4 }), null],
      [sectionView(design, { ...wing, cl: 5 }), null], // no flow: nothing settles
      [sectionView(design, { ...wing, eta: 0, cl: null }), null],
      [sectionView(design, { ...wing, eta: 0.97, cl: null }), null],
      [sectionView(design, { part: 'strut', eta: 0.5, speed, cl: null }), null],
    ];
    for (const [section, own] of places)
      for (const [name, working] of within('section-workings')) {
        for (const [, units, mark] of WRITINGS) {
          setDecimalMark(mark);
          const evaluated = holds(ask(working, { section, polar: own, units }));
          if (own && section.flow) expect(evaluated, name).toBeGreaterThan(0);
        }
      }
  });
});
