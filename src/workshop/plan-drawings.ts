/** Full-size drawings of a whole surface: outline laid flat, outline as projected, and the droop as a jig. */

import type { Rib, Skin } from '../solver/geometry/skin.ts';
import { evenly, tracePolyline } from '../solver/numeric/refine.ts';
import { closed, cross, type Drawing, type Label, open, type Path, type Point } from './drawing.ts';
import { stationPlaces } from './stations.ts';

const MM = 1000;
const TOLERANCE = 0.002; // mm, chord height of the polylines
const LETTERS = 3.5; // mm
const JIG_FOOT = 20; // mm of jig under the lowest point

export interface PlanSubject {
  part: 'wing' | 'stabilizer';
  skin: Skin;
  spacing: number; // m
}

/** The outline with the droop rolled out: chords square to a straight span, full length along it. */
export function unrolledPlan({ part, skin, spacing }: PlanSubject): Drawing {
  const across = (rib: Rib) => rib.distance * MM;
  return plan(part, skin, spacing, across, {
    name: `${part}-plan-unrolled`,
    title: `${capital(part)}, outline laid flat (twist and incidence taken out)`,
  });
}

/** The outline seen from above, twist and incidence taken out. */
export function projectedPlan({ part, skin, spacing }: PlanSubject): Drawing {
  const across = (rib: Rib) => rib.y * MM;
  return plan(part, skin, spacing, across, {
    name: `${part}-plan-projected`,
    title: `${capital(part)}, outline seen from above (twist and incidence taken out)`,
  });
}

function plan(
  part: string,
  skin: Skin,
  spacing: number,
  across: (rib: Rib) => number,
  names: { name: string; title: string },
): Drawing {
  const { chord, arm } = skin.surface;
  const edge =
    (share: number) =>
    (eta: number): Point => {
      const rib = skin.rib(eta);
      return [across(rib), (arm - rib.x - (share - 0.25) * rib.chord) * MM];
    };
  const leading = halfLine(edge(0));
  const trailing = halfLine(edge(1));
  // Round the whole surface: starboard leading edge outward, trailing edge home, port the same in its mirror.
  // A tip without chord is one point.
  const starboard = [...leading, ...(chord(1) > 0 ? trailing : trailing.slice(0, -1)).reverse()];
  const port = starboard.slice(1, -1).reverse().map(mirror);
  const paths: Path[] = [closed('outline', [...starboard, ...port])];
  const labels: Label[] = [];
  for (const [number, eta] of stationPlaces(skin, spacing).entries()) {
    const rib = skin.rib(eta);
    for (const side of number === 0 ? [1] : [1, -1]) {
      const [from, to] = [edge(0)(eta), edge(1)(eta)].map(([x, y]): Point => [side * x, y]);
      paths.push(open('stations', [from!, to!]));
      labels.push({ at: [from![0] + 1, from![1] + 2], height: LETTERS, text: `S${number}` });
    }
    if (rib.chord > 0) paths.push(...cross([across(rib), (arm - rib.x) * MM], 2));
  }
  paths.push(
    open(
      'reference',
      [edge(0)(0), edge(1)(0)].map(([x, y], k): Point => [x, y + (k ? -6 : 6)]),
    ),
  );
  const [, low] = edge(1)(0);
  labels.push({
    at: [-60, low - 14],
    height: LETTERS,
    text: `${part}: quarter chords crossed, nose up the sheet`,
  });
  return { ...names, paths, labels };
}

/** A line from root to tip, close where it bends. */
function halfLine(at: (eta: number) => Point): Point[] {
  const curve = (v: number) => at(v >= 1 ? 1 : Math.sin(0.5 * Math.PI * v));
  return tracePolyline(curve, evenly(0, 1, 16), TOLERANCE);
}

const mirror = ([x, y]: Point): Point => [-x, y];

/**
 * Seen from ahead: the quarter-chord line, and a board whose upper edge carries the lower skin at the quarter chord.
 */
export function droopJig({ part, skin, spacing }: PlanSubject): Drawing {
  const line = (eta: number): Point => {
    const { y, z } = skin.rib(eta);
    return [y * MM, (z - skin.surface.height) * MM];
  };
  const lower = (eta: number): Point => {
    const [, y, z] = skin.point(skin.rib(eta), QUARTER_BELOW);
    return [y * MM, (z - skin.surface.height) * MM];
  };
  const whole = (half: Point[]): Point[] => [
    ...half
      .slice(half[0]![0] === 0 ? 1 : 0)
      .map(mirror)
      .reverse(),
    ...half,
  ];
  const top = whole(trimmed(halfLine(lower)));
  const foot = Math.min(...top.map(([, z]) => z)) - JIG_FOOT;
  const [left, right] = [top[0]![0], top[top.length - 1]![0]];
  const paths: Path[] = [
    open('reference', whole(halfLine(line))),
    closed('jig', [...top, [right, foot], [left, foot]]),
    open('reference', [
      [0, foot],
      [0, line(0)[1] + 10],
    ]),
  ];
  const labels: Label[] = [{ at: [2, foot + 4], height: LETTERS, text: 'centre' }];
  for (const [number, eta] of stationPlaces(skin, spacing).entries()) {
    const [x, z] = lower(eta);
    for (const side of number === 0 ? [] : [1, -1]) {
      paths.push(
        open('stations', [
          [side * x, z],
          [side * x, foot],
        ]),
      );
      labels.push({ at: [side * x + 1, foot + 4], height: LETTERS, text: `S${number}` });
    }
  }
  return {
    name: `${part}-droop-jig`,
    title: `${capital(part)}, droop seen head-on: quarter-chord line, and a jig for the lower skin under it`,
    paths,
    labels,
  };
}

/** Share of the outline at the quarter chord on the lower side: x/c = (1 + cos(pi share))/2. */
const QUARTER_BELOW = 2 - Math.acos(-0.5) / Math.PI;

/** Without what a drooped root lays across the centre plane, and up to it. */
function trimmed(half: Point[]): Point[] {
  const first = half.findIndex(([x]) => x > 0);
  const [before, after] = [half[Math.max(0, first - 1)]!, half[Math.max(1, first)]!];
  const share = (0 - before[0]) / (after[0] - before[0]);
  return [[0, before[1] + share * (after[1] - before[1])], ...half.slice(first)];
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
