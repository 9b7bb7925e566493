/**
 * Plain text of an outline to numbered points. A line holds x and y, separated by blanks, a tab, a comma or a semicolon;
 * decimal commas are told from separating ones over the whole text. Blank lines, comments (# % ! ; // * " ') and words
 * without figures count for nothing; what stands above the points is a name.
 */
import { LEAST_COORDINATES, MOST_COORDINATES } from '../design/document.ts';
import { quote } from '../design/problem.ts';

/** A point as written, with the number of its line from 1. */
export interface WrittenPoint {
  x: number;
  y: number;
  line: number;
}

export type OutlineText = { ok: true; name: string; points: WrittenPoint[] } | { ok: false; message: string };

export const LARGEST_OUTLINE_TEXT = 200_000; // characters
const COMMENT = /^(?:[#%!;*"']|\/\/|--)/;
const TRAILING_COMMENT = /\s*(?:[#%!]|\/\/).*$/;
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;
const WANTED = 'two numbers, x and y';

interface Line {
  number: number;
  text: string;
}

export function readOutlineText(text: string): OutlineText {
  if (text.length > LARGEST_OUTLINE_TEXT)
    return refuse(`found ${text.length} characters, allowed up to ${LARGEST_OUTLINE_TEXT}`);
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .map((raw, k): Line => ({ number: k + 1, text: raw.replaceAll('\u2212', '-').trim() }))
    .filter((line) => line.text !== '');
  const bare = lines.map(({ number, text }) => ({ number, text: text.replace(TRAILING_COMMENT, '') }));
  const split = splitterFor(bare);
  const points: Array<WrittenPoint & { third: number | null }> = [];
  let name = '';
  for (const [k, { number, text }] of bare.entries()) {
    const isComment = COMMENT.test(lines[k]!.text);
    const fields = isComment ? [] : split(text);
    if (fields.length > 0 && fields.every((field) => NUMBER.test(field)) && fields.length <= 3) {
      if (fields.length === 1 && points.length === 0) continue; // a count above the points
      if (fields.length === 1) return refuse(`line ${number}: found ${quote(text)} alone, allowed ${WANTED}`);
      const [x, y, third = null] = fields.map(Number);
      points.push({ x: x!, y: y!, third, line: number });
    } else if (points.length === 0) name ||= plainName(lines[k]!.text);
    else if (!isComment && /\d/.test(text))
      return refuse(`line ${number}: found ${quote(text)}, allowed ${WANTED}`);
  }
  const odd = points.find(({ x, y }) => !(Math.abs(x) < 1e6 && Math.abs(y) < 1e6));
  if (odd) return refuse(`line ${odd.line}: found ${odd.x} ${odd.y}, allowed numbers of a plausible size`);
  const third = points.find((point) => point.third !== points[0]!.third);
  if (third)
    return refuse(`line ${third.line}: found a third number that is not always the same, allowed ${WANTED}`);
  const kept = withoutCounts(points);
  if (kept.length < LEAST_COORDINATES || kept.length > MOST_COORDINATES)
    return refuse(`found ${kept.length} points, allowed ${LEAST_COORDINATES} to ${MOST_COORDINATES}`);
  return { ok: true, name, points: kept.map(({ x, y, line }) => ({ x, y, line })) };
}

function refuse(message: string): OutlineText {
  return { ok: false, message };
}

/** How fields are split in this text: commas are decimal marks where no point is one and blanks already separate. */
function splitterFor(lines: readonly Line[]): (text: string) => string[] {
  const numeric = lines.filter(({ text }) => /^[+-]?[\d.,]/.test(text));
  const hasPoint = numeric.some(({ text }) => /\d\.\d|(?<!\d)\.\d/.test(text));
  const isDecimal =
    !hasPoint && numeric.some(({ text }) => (text.match(/[+-]?\d+,\d+(?=[\s;]|$)/g) ?? []).length >= 2);
  return (text) =>
    isDecimal
      ? text
          .split(/[\s;]+/)
          .filter(Boolean)
          .map((field) => field.replace(',', '.'))
      : text.split(/\s*[,;]\s*|\s+/).filter(Boolean);
}

/** A first line of two whole numbers says how many points follow on either side; it is no point. */
function withoutCounts<P extends WrittenPoint>(points: P[]): P[] {
  const [first, ...rest] = points;
  if (!first || rest.length < LEAST_COORDINATES) return points;
  const isCount = [first.x, first.y].every((value) => Number.isInteger(value) && value > 1);
  return isCount && first.x + first.y === rest.length ? rest : points;
}

function plainName(text: string): string {
  return text
    .replace(/^(?:[#%!;*"']|\/\/|--)+\s*/, '')
    .replace(/["']\s*$/, '')
    .slice(0, 80)
    .trim();
}
