/**
 * The painted skin of a half, unrolled on a canvas: root at the left, tip at the right; down it goes round the section, from the
 * trailing edge over the upper side to the nose in the middle and back below.
 */
import { placeOf } from '../../solver/geometry/shell.ts';
import type { TransitionMap, TransitionStation } from '../../solver/studies/transition-map.ts';
import { type Bands, colourAt, type Line, type SpreadPaint, valueAt } from './paint.ts';
import type { SkinPainter } from './stage.ts';

export type Colour = (name: string) => string;

const ACROSS = 512;
const ROUND = 512;
const HATCH = 10; // px between the strokes over turbulent skin

export function makeSkinCanvas(): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = ACROSS;
  canvas.height = ROUND;
  return canvas;
}

export const spreadPainter =
  ({ lines, bands }: SpreadPaint) =>
  (colour: Colour): SkinPainter => {
    const along = (line: Line | null) =>
      line && ((canvas: HTMLCanvasElement) => paintBands(canvas, line, bands, colour));
    return { wing: along(lines.wing), stabilizer: along(lines.stabilizer) };
  };

export const transitionPainter =
  (map: TransitionMap) =>
  (colour: Colour): SkinPainter => ({
    wing: (canvas) => paintTransition(canvas, map.wing, colour),
    stabilizer: (canvas) => paintTransition(canvas, map.stabilizer, colour),
  });

/** Bands of colour across the chord. */
function paintBands(canvas: HTMLCanvasElement, line: Line, bands: Bands, colour: Colour): void {
  const pen = canvas.getContext('2d')!;
  let from = 0;
  let name = colourAt(bands, valueAt(line, 0));
  for (let column = 1; column <= ACROSS; column++) {
    const next = column < ACROSS ? colourAt(bands, valueAt(line, (column + 0.5) / ACROSS)) : '';
    if (next === name) continue;
    pen.fillStyle = colour(name);
    pen.fillRect(from, 0, column - from, ROUND);
    [from, name] = [column, next];
  }
}

/** Laminar ahead, turbulent and hatched behind; plain where no flow settled. */
function paintTransition(
  canvas: HTMLCanvasElement,
  stations: readonly TransitionStation[],
  colour: Colour,
): void {
  const pen = canvas.getContext('2d')!;
  const settled = stations.filter(({ upper, lower }) => upper !== null && lower !== null);
  pen.fillStyle = colour(settled.length > 1 ? '--turbulent' : '--line');
  pen.fillRect(0, 0, ACROSS, ROUND);
  if (settled.length < 2) return;
  pen.strokeStyle = colour('--turbulent-hatch');
  pen.lineWidth = 2;
  pen.beginPath();
  for (let at = -ROUND; at < ACROSS; at += HATCH) {
    pen.moveTo(at, 0);
    pen.lineTo(at + ROUND, ROUND);
  }
  pen.stroke();
  const upper = lineOf(settled, 'upper');
  const lower = lineOf(settled, 'lower');
  const edge = (column: number, line: Line, isUpper: boolean): [number, number] => {
    const round = roundOf(valueAt(line, column / ACROSS));
    return [column, isUpper ? round : ROUND - round];
  };
  const columns = Array.from({ length: 65 }, (_, k) => (k * ACROSS) / 64);
  const outline = [
    ...columns.map((column) => edge(column, upper, true)),
    ...columns.reverse().map((column) => edge(column, lower, false)),
  ];
  pen.fillStyle = colour('--laminar');
  pen.beginPath();
  for (const [x, y] of outline) pen.lineTo(x, y);
  pen.closePath();
  pen.fill();
  paintUnsettled(pen, stations, colour);
}

const lineOf = (stations: readonly TransitionStation[], side: 'upper' | 'lower'): Line => ({
  places: stations.map(({ eta }) => placeOf(eta)),
  values: stations.map((station) => station[side]!),
});

/** Down the canvas from the trailing edge to x/c on the upper side. */
const roundOf = (x: number): number =>
  (0.5 * ROUND * Math.acos(Math.max(-1, Math.min(1, 2 * x - 1)))) / Math.PI;

function paintUnsettled(
  pen: CanvasRenderingContext2D,
  stations: readonly TransitionStation[],
  colour: Colour,
): void {
  pen.fillStyle = colour('--line');
  const half = (a: number, b: number) => 0.5 * (placeOf(a) + placeOf(b)) * ACROSS;
  for (const [k, { eta, upper, lower }] of stations.entries()) {
    if (upper !== null && lower !== null) continue;
    const from = k === 0 ? 0 : half(stations[k - 1]!.eta, eta);
    const to = k === stations.length - 1 ? ACROSS : half(eta, stations[k + 1]!.eta);
    pen.fillRect(from, 0, to - from, ROUND);
  }
}
