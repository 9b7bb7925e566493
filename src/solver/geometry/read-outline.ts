/**
 * A section from plain text: x and y line by line, to the outline a document stores. Checked (one closed loop that does
 * not cross itself, enough points) and laid on a unit chord; what is wrong is said in one sentence with its line.
 */
import type { Outline, Pair } from '../design/document.ts';
import { outlineProblem } from './contour.ts';
import { arrangeLoop } from './outline-loop.ts';
import { readOutlineText, type WrittenPoint } from './outline-text.ts';

export type ImportedOutline = Extract<Outline, { kind: 'coordinates' }>;

export type OutlineReading =
  | { ok: true; outline: ImportedOutline; remarks: string[] }
  | { ok: false; message: string };

const DEGREES = 180 / Math.PI;
const ALREADY = 0.002; // of the chord: a section this close to a unit chord is taken as it stands
const FEW = 40; // points below which their spacing shows in the pressures
const LEAST_SIDE = 4; // points of a side
const LEAST_AREA = 0.002; // of the chord squared

export function readOutline(text: string, fallbackName = 'imported section'): OutlineReading {
  const read = readOutlineText(text);
  if (!read.ok) return read;
  const loop = arrangeLoop(read.points);
  if (!loop.ok) return loop;
  const written = loop.points;
  const problem = crossing(written) ?? sideProblem(written);
  if (problem) return { ok: false, message: problem };
  const { points, remarks } = onUnitChord(written);
  const area = Math.abs(areaOf(points));
  if (area < LEAST_AREA)
    return {
      ok: false,
      message: `found an area of ${(100 * area).toFixed(2)} % of the chord squared, allowed a section with some thickness`,
    };
  const left = outlineProblem(points);
  if (left) return { ok: false, message: `found ${left.found}, allowed ${left.allowed}` };
  if (points.length < FEW)
    remarks.push(
      `Only ${points.length} points: ${FEW} or more, close together at the nose, give a smoother pressure.`,
    );
  return { ok: true, outline: { kind: 'coordinates', name: read.name || fallbackName, points }, remarks };
}

/** The first two stretches that cross, by the lines that begin them; null where none do. */
function crossing(points: readonly WrittenPoint[]): string | null {
  const side = (a: WrittenPoint, b: WrittenPoint, c: WrittenPoint) =>
    Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
  for (let i = 0; i < points.length - 1; i++)
    for (let j = i + 2; j < points.length - 1; j++) {
      const [a, b, c, d] = [points[i]!, points[i + 1]!, points[j]!, points[j + 1]!];
      if (Math.max(a.x, b.x) < Math.min(c.x, d.x) || Math.min(a.x, b.x) > Math.max(c.x, d.x)) continue;
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0)
        return `lines ${a.line} and ${c.line}: the outline crosses itself near x ${Number(a.x.toPrecision(4))}, allowed a loop that does not`;
    }
  return null;
}

function sideProblem(points: readonly WrittenPoint[]): string | null {
  const nose = points.reduce((least, { x }, k) => (x < points[least]!.x ? k : least), 0);
  const fewest = Math.min(nose, points.length - 1 - nose);
  return fewest >= LEAST_SIDE - 1
    ? null
    : `found ${fewest + 1} points on one side, allowed ${LEAST_SIDE} or more on each`;
}

/**
 * On a chord of 1. Points whose trailing edge and nose stand on the x axis keep it as their chord line; others are turned
 * so that the line from the middle of the trailing edge to the point furthest from it becomes the x axis.
 */
function onUnitChord(written: readonly WrittenPoint[]): { points: Pair[]; remarks: string[] } {
  const [first, last] = [written[0]!, written.at(-1)!];
  const tail = { x: 0.5 * (first.x + last.x), y: 0.5 * (first.y + last.y) };
  const foremost = written.reduce((least, point) => (point.x < least.x ? point : least));
  const length = tail.x - foremost.x;
  const isAlong = Math.abs(tail.y) < 0.01 * length && Math.abs(foremost.y) < 0.02 * length;
  const isPlaced = isAlong && Math.abs(foremost.x) < ALREADY && Math.abs(tail.x - 1) < ALREADY;
  if (isPlaced) return { points: written.map(({ x, y }): Pair => [tidy(x), tidy(y)]), remarks: [] };
  const far = (point: WrittenPoint) => Math.hypot(point.x - tail.x, point.y - tail.y);
  const furthest = written.reduce((most, point) => (far(point) > far(most) ? point : most));
  const nose = isAlong ? { x: foremost.x, y: 0 } : furthest;
  const end = isAlong ? { x: tail.x, y: 0 } : tail;
  const chord = Math.hypot(end.x - nose.x, end.y - nose.y);
  const [c, s] = [(end.x - nose.x) / chord, (end.y - nose.y) / chord];
  const points = written.map(({ x, y }): Pair => {
    const [dx, dy] = [(x - nose.x) / chord, (y - nose.y) / chord];
    return [tidy(c * dx + s * dy), tidy(c * dy - s * dx)];
  });
  const turn = Math.atan2(s, c) * DEGREES;
  const remarks = [`Laid on a chord of 1: it was ${Number(chord.toPrecision(4))} long.`];
  if (Math.abs(turn) > 0.05) remarks.push(`Turned by ${Math.abs(turn).toFixed(1)}° onto its chord line.`);
  return { points, remarks };
}

function areaOf(points: readonly Pair[]): number {
  return points.reduce((sum, [x, y], k) => {
    const [nextX, nextY] = points[(k + 1) % points.length]!;
    return sum + 0.5 * (x * nextY - nextX * y);
  }, 0);
}

/** To a millionth of a millimetre on a chord of ten centimetres. */
function tidy(value: number): number {
  return Number(value.toFixed(8)) + 0;
}
