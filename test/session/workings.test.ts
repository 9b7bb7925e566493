/**
 * Every formula that the page shows as the working of a figure, evaluated with the numbers printed beside it: it must
 * give the figure printed beside it, as near as the rounding of what is printed lets it.
 */
import { evaluate } from 'mathjs';
import { describe, expect, it, vi } from 'vitest';
import * as lines from '../../src/components/ledger-workings.ts';
import * as studyWorkings from '../../src/components/study-workings.ts';
import * as workings from '../../src/components/workings.ts';
import { withDroopAmplitude } from '../../src/solver/design/laws.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { solve } from '../../src/solver/solve.ts';
import { sectionView } from '../../src/solver/studies/section-view.ts';
import { stallStudy } from '../../src/solver/studies/stall.ts';
import { finish } from '../../src/solver/studies/study.ts';
import { goodDesigns } from '../support/designs.ts';

const { sameLift, ...others } = workings;
const WORKINGS: Array<[string, (given: workings.Given) => workings.Working]> = [
  ...Object.entries(others),
  ['unrolledTwin', lines.unrolledTwin],
  ['wingCarries', lines.wingCarries],
  ['shorterSpan', lines.shorterSpan],
  ['sameLift, unrolled', (given) => sameLift(given, 'unrolled')],
  ['sameLift, sameSpan', (given) => sameLift(given, 'sameSpan')],
];

/** A printed number and half its last digit. */
interface Printed {
  value: number;
  rounding: number;
}

function read(text: string): Printed | null {
  const match = /^([+−-]?)([\d ,]*\.?\d+)(?:\s*(%))?/u.exec(text.replaceAll(/[\s,]/gu, ''));
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
    .replaceAll('₀', '0')
    .replaceAll(/[\p{Script=Greek}]/gu, (letter) => `greek${letter.codePointAt(0)}`)
    .replaceAll(/[^\w]+/g, '_');

function plainFormula(text: string): string {
  return text
    .replaceAll('−', '-')
    .replaceAll('½', '0.5')
    .replaceAll('²', '^2')
    .replaceAll(/\|([^|]+)\|/g, 'abs($1)')
    .replaceAll('π', 'pi')
    .replaceAll(/[\p{L}][\p{L}\p{M}\p{N}₀_]*/gu, plainName);
}

/** Largest difference that rounding of the numbers put in can make. */
function slack(formula: string, scope: Record<string, Printed>): number {
  const values = Object.fromEntries(Object.entries(scope).map(([name, { value }]) => [name, value]));
  const at = (changed: Record<string, number>) => Number(evaluate(formula, { ...values, ...changed }));
  return Object.entries(scope).reduce(
    (sum, [name, { value, rounding }]) =>
      sum + Math.max(...[-1, 1].map((way) => Math.abs(at({ [name]: value + way * rounding }) - at({})))),
    0,
  );
}

function scopeOf({ numbers }: Pick<workings.Working, 'numbers'>): Record<string, Printed> {
  const entries = numbers.map(([name, text]) => [plainName(name.split(',')[0]!), read(text)] as const);
  return Object.fromEntries(entries.filter((entry): entry is [string, Printed] => entry[1] !== null));
}

/** Every equation of a working gives the figure printed for its left side, as near as rounding lets it. */
function holds(shown: Pick<workings.Working, 'formula' | 'numbers'>): void {
  const scope = scopeOf(shown);
  for (const equation of shown.formula.split(';')) {
    const [left, right] = equation.split('=').map((side) => side.trim()) as [string, string];
    const printed = scope[plainName(left)];
    const text = shown.numbers.find(([label]) => plainName(label.split(',')[0]!) === plainName(left))?.[1];
    expect(text, `“${left}” is printed beside its formula`).toBeDefined();
    if (!printed) {
      expect(text).toBe('none');
      continue;
    }
    const formula = plainFormula(right);
    const inputs = Object.fromEntries(
      Object.entries(scope).filter(([key]) => key !== plainName(left) && formula.includes(key)),
    );
    const values = Object.fromEntries(Object.entries(inputs).map(([key, { value }]) => [key, value]));
    const found = Number(evaluate(formula, values));
    const allowed = 1.01 * (printed.rounding + slack(formula, inputs)) + 1e-12;
    expect(Math.abs(found - printed.value), `${equation}: ${found}, printed ${text}`).toBeLessThanOrEqual(
      allowed,
    );
  }
}

describe.each(goodDesigns())('the workings of %s', (_file, design) => {
  const report = solve(design);
  const given: workings.Given = { design, report, units: 'si' };

  it.each(WORKINGS)('%s gives the printed figure', (name, working) => {
    if (name === 'neutralDroop') return; // a statement about another shape: solved below
    holds(working(given));
  });

  it('the neutral droop is where the formula holds', () => {
    const { neutralDroop } = report.stability;
    if (neutralDroop === null) return;
    const present = (surfaceOf(design.wing).amplitude * 180) / Math.PI;
    const droop = withDroopAmplitude(design.wing.droop, present, neutralDroop);
    const bent = solve({ ...design, wing: { ...design.wing, droop } }, { lift: report.lift.total });
    expect(Math.abs(bent.stability.foil.Clr)).toBeLessThan(1e-4);
    expect(workings.neutralDroop(given).formula).toBe('C_lr = 0');
  });
});

describe('the workings of studies', () => {
  vi.setConfig({ testTimeout: 60_000 }); // polars are made once
  const [, design] = goodDesigns()[0]!;

  it.each(Object.entries(studyWorkings))('%s gives the printed figure', (_name, working) => {
    const stall = finish(stallStudy(design));
    const section = sectionView(design, {
      part: 'wing',
      eta: 0.3,
      cl: null,
      speed: design.brief.speeds.cruise,
    });
    for (const mark of [stall.usable, stall.first, stall.greatest])
      if (mark) holds(working({ stall, mark, section, units: 'si' }));
  });
});
