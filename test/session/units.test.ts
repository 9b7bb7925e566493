import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../src/session/quantity.ts';
import {
  editText,
  formatValue,
  formatWithUnit,
  fromDisplay,
  type Quantity,
  toDisplay,
  UNIT_SYSTEMS,
} from '../../src/session/units.ts';

const read = (text: string, quantity: Quantity, system: 'workshop' | 'si' | 'imperial' = 'workshop') => {
  const reading = readQuantity(text, quantity, system);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};
const refusal = (text: string, quantity: Quantity) => {
  const reading = readQuantity(text, quantity, 'workshop');
  return reading.ok ? `accepted as ${reading.value}` : reading.message;
};

describe('reading quantities', () => {
  // Sizes of the units: International System of Units, 9th brochure (BIPM 2019), and NIST SP 811 appendix B.
  it.each<[string, Quantity, number]>([
    ['50', 'fineLength', 5e-5],
    ['50 µm', 'fineLength', 5e-5],
    ['0.05 mm', 'fineLength', 5e-5],
    ['2 thou', 'fineLength', 5.08e-5],
    ['27 in', 'length', 0.6858],
    ['27in', 'length', 0.6858],
    ['27"', 'length', 0.6858],
    ['85 in^2', 'area', 0.0548386],
    ['85 in2', 'area', 0.0548386],
    ['2 ft', 'length', 0.6096],
    ['0.68 m', 'length', 0.68],
    ['0,68 m', 'length', 0.68],
    ['740/2 mm + 5 mm', 'length', 0.375],
    ['27 in + 5 mm', 'length', 0.6908],
    ['(700 + 40) mm', 'length', 0.74],
    ['−3 mm', 'length', -0.003],
    ['1 850', 'length', 1.85],
    ['2*350', 'length', 0.7],
    ['550 cm^2', 'area', 0.055],
    ['550 cm²', 'area', 0.055],
    ['550 cm2', 'area', 0.055],
    ['700 mm * 80 mm', 'area', 0.056],
    ['18 kn', 'speed', (18 * 1852) / 3600],
    ['36 km/h', 'speed', 10],
    ['9 m/s', 'speed', 9],
    ['10 mph', 'speed', 4.4704],
    ['8°', 'angle', 8],
    ['0.1 rad', 'angle', 5.729578],
    ['200 lb', 'mass', 90.718474],
    ['100 lbf', 'force', 444.822162],
    ['59 °F', 'temperature', 15],
    ['288.15 K', 'temperature', 15],
    ['15 C', 'temperature', 15],
    ['10 %', 'share', 0.1],
    ['10', 'share', 0.1],
    ['50 % / 2', 'share', 0.25],
    ['5 % + 5 %', 'share', 0.1],
    ['50 %', 'ratio', 0.5],
    ['700 mm - 10 %', 'length', 0.63],
    // Signs as phones and Latin keyboards write them.
    ['27”', 'length', 0.6858],
    ['2’', 'length', 0.6096],
    ['8º', 'angle', 8],
    ['2.4', 'ratio', 2.4],
  ])('%s as %s', (text, quantity, value) => {
    expect(read(text, quantity)).toBeCloseTo(value, 6);
  });

  it('counts a bare number in the unit that is shown', () => {
    expect(read('740', 'length', 'workshop')).toBeCloseTo(0.74, 12);
    expect(read('0.74', 'length', 'si')).toBeCloseTo(0.74, 12);
    expect(read('10', 'length', 'imperial')).toBeCloseTo(0.254, 12);
    expect(read('10', 'speed', 'workshop')).toBeCloseTo(5.14444, 4);
    expect(read('50', 'temperature', 'imperial')).toBeCloseTo(10, 9);
  });

  it('says what is wrong, with an example', () => {
    expect(refusal('18 kn', 'length')).toBe(
      '18 kn is a speed; a length is wanted, for example 700 mm or 27 in.',
    );
    expect(refusal('', 'length')).toContain('Nothing is written');
    expect(refusal('12 furlong', 'length')).toContain('“furlong” is not a unit known here');
    expect(refusal('740 + 5 mm', 'length')).toContain('do not fit together');
    expect(refusal('5 mm + 3 kn', 'length')).toContain('do not fit together');
    expect(refusal('1/0', 'length')).toContain('no finite value');
    expect(refusal('1,022.5', 'length')).toContain('mixes decimal marks');
    expect(refusal('5 mm 3', 'length')).toContain('a sign is missing');
    expect(refusal('700 mm', 'ratio')).toContain('700 mm is a length; a plain number is wanted');
    expect(refusal('-10 %', 'angle')).toContain('-10 % is a share; an angle is wanted');
    expect(refusal('12 +', 'length')).toContain('cannot be read');
  });

  it.each([
    'x = 3',
    'f(x) = x',
    'sqrt(4)',
    '[1, 2]',
    '{a: 1}',
    '"text"',
    '9^9^9',
    '2^350',
    'import("x")',
    '5; 6',
    '5 > 4',
    'i',
    'unit("m")',
    '3!',
    '7 mod 2',
    '1'.repeat(400),
  ])('refuses %s', (text) => {
    expect(readQuantity(text, 'length', 'workshop').ok).toBe(false);
  });

  it('never throws, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 30 }), (text) => {
        const reading = readQuantity(text, 'length', 'workshop');
        return reading.ok ? Number.isFinite(reading.value) : reading.message.length > 10;
      }),
      { seed: 2, numRuns: 500 },
    );
  });

  it('reads back what a field shows, to the decimals it shows', () => {
    const quantities: Quantity[] = [
      'length',
      'area',
      'speed',
      'angle',
      'mass',
      'temperature',
      'share',
      'ratio',
    ];
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 100, noNaN: true }),
        fc.constantFrom(...quantities),
        fc.constantFrom(...UNIT_SYSTEMS.map(({ system }) => system)),
        (value, quantity, system) => {
          const rounded = fromDisplay(
            Number(toDisplay(value, quantity, system).toPrecision(4)),
            quantity,
            system,
          );
          const back = read(editText(rounded, quantity, system), quantity, system);
          const tolerance = Math.abs(fromDisplay(0.006, quantity, system) - fromDisplay(0, quantity, system));
          return Math.abs(back - rounded) <= Math.max(1e-5 * Math.abs(rounded), tolerance);
        },
      ),
      { seed: 7, numRuns: 500 },
    );
  });
});

describe('writing quantities', () => {
  it('chooses decimals by size', () => {
    expect(formatValue(0.74, 'length', 'workshop')).toBe('740');
    expect(formatValue(0.0834, 'length', 'workshop')).toBe('83.4');
    expect(formatValue(0.74, 'length', 'si')).toBe('0.740');
    expect(formatValue(1021.6, 'force', 'workshop')).toBe('1\u202f022');
    expect(formatValue(14.23, 'force', 'workshop')).toBe('14.2');
    expect(formatValue(-1.25, 'angle', 'workshop')).toBe('\u22121.25');
    expect(formatValue(99.97, 'force', 'workshop')).toBe('100');
    expect(formatValue(0.055, 'area', 'workshop')).toBe('550');
    expect(formatValue(Number.NaN, 'force', 'workshop')).toBe('–');
  });

  it('writes no minus zero, and a plus where asked', () => {
    expect(formatValue(-0.0001, 'force', 'workshop')).toBe('0.00');
    expect(formatValue(0.31, 'angle', 'workshop', { sign: true })).toBe('+0.31');
    expect(formatValue(0, 'angle', 'workshop', { sign: true, decimals: 1 })).toBe('0.0');
  });

  it('adds the unit', () => {
    expect(formatWithUnit(0.74, 'length', 'workshop')).toBe('740\u00a0mm');
    expect(formatWithUnit(26, 'angle', 'workshop')).toBe('26.0°');
    expect(formatWithUnit(3.1449, 'ratio', 'si')).toBe('3.14');
    expect(formatWithUnit(15, 'temperature', 'imperial')).toBe('59.0\u00a0°F');
  });

  it('shows fields without needless zeros', () => {
    expect(editText(0.74, 'length', 'workshop')).toBe('740');
    expect(editText(0.6858, 'length', 'workshop')).toBe('685.8');
    expect(editText(-1.2, 'angle', 'workshop')).toBe('\u22121.2');
    expect(editText(9.26, 'speed', 'workshop')).toBe('18');
    expect(editText(0, 'angle', 'workshop')).toBe('0');
    expect(editText(0.1, 'share', 'si')).toBe('10');
  });
});
