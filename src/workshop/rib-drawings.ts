/** Ribs at full size, one above the other: each turned by its incidence and twist against a level reference line. */
import type { Rib, Skin } from '../solver/geometry/skin.ts';
import { meanHeight, type Slot, slotFits } from '../solver/geometry/slot.ts';
import { evenly, tracePolyline } from '../solver/numeric/refine.ts';
import type { Choices } from './choices.ts';
import {
  closed,
  cross,
  type Drawing,
  type Label,
  open,
  type Path,
  type Point,
  shiftedPath,
} from './drawing.ts';
import { inset } from './offset.ts';
import { capital } from './plan-drawings.ts';
import { stationPlaces } from './stations.ts';

const MM = 1000;
const DEGREES = 180 / Math.PI;
const TOLERANCE = 0.002; // mm
const LETTERS = 3; // mm
const GAP = 12; // mm between ribs, words included
const LEAST_CHORD = 1; // mm; a shorter rib is left out

export interface RibSubject {
  part: 'wing' | 'stabilizer';
  skin: Skin;
  choices: Choices;
}

export function ribSheet({ part, skin, choices }: RibSubject): Drawing {
  const paths: Path[] = [];
  const labels: Label[] = [];
  let top = 0;
  for (const [number, eta] of stationPlaces(skin, choices.spacing).entries()) {
    const rib = skin.rib(eta);
    if (rib.chord * MM < LEAST_CHORD) continue;
    const drawn = drawRib(skin, rib, choices);
    const heights = drawn.flatMap(({ points }) => points.map(([, y]) => y));
    const down: Point = [0, top - Math.max(...heights)];
    paths.push(...drawn.map((path) => shiftedPath(path, down)));
    top += Math.min(...heights) - Math.max(...heights) - LETTERS - 2;
    labels.push({ at: [-0.25 * rib.chord * MM, top], height: LETTERS, text: ribTitle(number, rib) });
    top -= GAP - LETTERS;
  }
  return {
    name: `${part}-ribs`,
    title: `${capital(part)}, ribs square to the curve; the level line is the fuselage's axis`,
    paths,
    labels,
  };
}

function ribTitle(number: number, { distance, chord, twist, angle }: Rib): string {
  const degrees = (value: number) => `${(value * DEGREES).toFixed(2)} deg`;
  return `S${number}  ${(distance * MM).toFixed(1)} mm out  chord ${(chord * MM).toFixed(1)} mm  twist ${degrees(twist)}  set at ${degrees(angle)}`;
}

/** Origin at the quarter chord; x aft, y up, mm. */
function drawRib(skin: Skin, rib: Rib, { allowance, slot }: Choices): Path[] {
  const at = (share: number): Point => {
    const [aft, up] = skin.local(rib, share);
    return [aft * MM, up * MM];
  };
  const outline = ribOutline(at);
  const [nose, tail] = [at(1), midpoint(at(0), at(2))];
  const level: Point[] = [
    [nose[0] - 6, 0],
    [tail[0] + 6, 0],
  ];
  const paths = [
    closed('outline', outline),
    open('reference', [nose, tail]),
    open('reference', level),
    ...cross([0, 0], 2),
  ];
  if (allowance > 0) for (const loop of inset(outline, allowance * MM)) paths.push(closed('core', loop));
  if (slot && slotFits(skin, rib, slot, allowance)) paths.push(closed('slot', slotOutline(skin, rib, slot)));
  return paths;
}

/** From the trailing edge over the top to the nose and back below; a trailing edge that comes to a point stands once. */
function ribOutline(at: (share: number) => Point): Point[] {
  const points = tracePolyline(at, evenly(0, 2, 32), TOLERANCE);
  const [first, last] = [points[0]!, points[points.length - 1]!];
  return Math.hypot(first[0] - last[0], first[1] - last[1]) < 1e-6 ? points.slice(0, -1) : points;
}

/** A rectangle along the chord, its middle on the mean line. */
function slotOutline(skin: Skin, rib: Rib, { at, width, height }: Slot): Point[] {
  const middle = meanHeight(skin, rib, at);
  const [c, s] = [Math.cos(rib.angle), Math.sin(rib.angle)];
  const corner = (across: number, up: number): Point => {
    const x = ((at - 0.25) * rib.chord + across) * MM;
    const y = (middle * rib.chord + up) * MM;
    return [x * c + y * s, y * c - x * s];
  };
  const [w, h] = [0.5 * width, 0.5 * height];
  return [corner(-w, -h), corner(w, -h), corner(w, h), corner(-w, h)];
}

const midpoint = (a: Point, b: Point): Point => [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])];
