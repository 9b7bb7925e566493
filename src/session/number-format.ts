/**
 * How figures are written: the decimal mark the reader chose, kept here and nowhere else. Everything shown goes through
 * this module (or through units.ts, which does); files, links and text to be copied into another program keep the point.
 */

export type DecimalMark = '.' | ',';

const MINUS = '\u2212';

let mark: DecimalMark = '.';

export const decimalMark = (): DecimalMark => mark;

/** From now on figures are written so; whoever shows some has to write them again. */
export function setDecimalMark(chosen: DecimalMark): void {
  mark = chosen;
}

/** With that many decimals, a true minus sign, no minus zero and the chosen mark. */
export function writeFixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return withMark((Number(text) === 0 ? text.replace('-', '') : text).replace('-', MINUS));
}

/** As many decimals as the number has itself. */
export const writePlain = (value: number): string => withMark(String(value).replace('-', MINUS));

/** Text made elsewhere, with a point in its numbers, as the reader writes them. */
export const withMark = (text: string): string =>
  mark === '.' ? text : text.replace(/(\d)\.(?=\d)/g, `$1${mark}`);

export type PointedText = { ok: true; text: string } | { ok: false; message: string };

/**
 * Typed text with its decimal marks as points. Either mark is taken where it can mean only that; "1,234" counts as
 * 1.234 only with the comma chosen, since with the point it may as well be a thousand and more.
 */
export function pointed(typed: string): PointedText {
  const refuse = (why: string, ways: string): PointedText => ({
    ok: false,
    message: `“${typed}” ${why}: write ${ways}.`,
  });
  const hasPoint = /\.\d/.test(typed);
  const hasComma = /,\d/.test(typed);
  if (hasPoint && hasComma) return refuse('mixes decimal marks', '1022.5 or 1022,5');
  const repeated = /\d([.,])\d+\1\d/.exec(typed);
  if (repeated) {
    const name = repeated[1] === ',' ? 'comma' : 'point';
    return refuse(`has more than one ${name} in a number`, typed.replace(/(\d)[.,](?=\d)/g, '$1'));
  }
  const other = mark === '.' ? ',' : '.';
  const thousands = new RegExp(`(?<![\\d.,])([1-9]\\d{0,2})\\${other}(\\d{3})(?![\\d])`).exec(typed);
  if (thousands) {
    const [found, before, after] = thousands;
    return {
      ok: false,
      message: `“${found}” could mean ${before}${after} or ${before}${mark}${after}: write it one of these ways.`,
    };
  }
  return { ok: true, text: typed.replace(/,(?=\d)/g, '.') };
}
