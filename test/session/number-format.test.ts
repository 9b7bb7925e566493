import { afterEach, describe, expect, it } from 'vitest';
import { setDecimalMark, withMark, writeFixed, writePlain } from '../../src/session/number-format.ts';
import { readQuantity } from '../../src/session/quantity.ts';
import { readOnDemand } from '../../src/session/quantity-on-demand.ts';
import { editText, formatValue, formatWithUnit } from '../../src/session/units.ts';

afterEach(() => setDecimalMark('.'));

const value = (text: string) => {
  const reading = readQuantity(text, 'length', 'si');
  return reading.ok ? reading.value : reading.message;
};

describe('decimal marks that are typed', () => {
  it.each([
    ['0,68 m', 0.68],
    ['0.68 m', 0.68],
    ['27,5 in', 27.5 * 0.0254], // an inch is 25.4 mm exactly
    ['0,680', 0.68], // no group of thousands begins with a nought
    ['1234,567 mm', 1.234567],
    ['1,2345', 1.2345],
    [',5 m', 0.5],
    ['1,5 m + 2,25 m', 3.75],
    ['1 234,5 mm', 1.2345],
  ])('reads %s whichever mark is chosen', (text, expected) => {
    expect(value(text)).toBeCloseTo(expected, 9);
    setDecimalMark(',');
    expect(value(text)).toBeCloseTo(expected, 9);
  });

  it('refuses what may be thousands, and names both readings', () => {
    expect(value('1,234 mm')).toBe('“1,234” could mean 1234 or 1.234: write it one of these ways.');
    expect(value('12,500')).toContain('could mean 12500 or 12.500');
    expect(value('1.234')).toBe(1.234);
    setDecimalMark(',');
    expect(value('1.234 mm')).toBe('“1.234” could mean 1234 or 1,234: write it one of these ways.');
    expect(value('1,234')).toBe(1.234);
  });

  it('refuses both marks, or one twice in a number', () => {
    expect(value('1,234.5 mm')).toBe('“1,234.5 mm” mixes decimal marks: write 1022.5 or 1022,5.');
    expect(value('1.234,5')).toContain('mixes decimal marks');
    expect(value('1,234,567')).toBe('“1,234,567” has more than one comma in a number: write 1234567.');
    expect(value('1.234.567')).toContain('more than one point');
  });

  it('is as strict before the unit library has come', async () => {
    expect(await readOnDemand('1,234', 'length', 'si')).toMatchObject({ ok: false });
    expect(readOnDemand('0,68', 'length', 'si')).toEqual({ ok: true, value: 0.68 });
  });
});

describe('figures as they are written', () => {
  it('take the chosen mark, with unit, grouped, signed or as a field shows them', () => {
    setDecimalMark(',');
    expect(formatWithUnit(0.6858, 'length', 'si')).toBe('0,686\u00a0m');
    expect(formatValue(12345.6, 'density', 'si')).toBe('12\u202f346');
    expect(editText(0.06858, 'length', 'workshop')).toBe('68,58');
    expect(writeFixed(-1.25, 2)).toBe('\u22121,25');
    expect(writePlain(-0.5)).toBe('\u22120,5');
    expect(withMark('0.008, at 2.5 and 1.6e-6.')).toBe('0,008, at 2,5 and 1,6e-6.');
  });

  it('have no minus zero', () => {
    expect(writeFixed(-0.001, 2)).toBe('0.00');
  });

  it('are read back as they were written', () => {
    setDecimalMark(',');
    for (const length of [1.234, 0.5, 12.345, 0.0125])
      expect(value(editText(length, 'length', 'si'))).toBeCloseTo(length, 9);
  });
});
