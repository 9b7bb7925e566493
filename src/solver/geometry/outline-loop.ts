/**
 * Points of an outline in whatever order they were written, put in one: from the trailing edge along one side to the
 * nose and back along the other. One loop begun anywhere, either way round, or the two sides as two lists.
 */
import type { WrittenPoint } from './outline-text.ts';

export type Loop = { ok: true; points: WrittenPoint[] } | { ok: false; message: string };

const WIDEST_GAP = 0.05; // of the length, between the ends at the trailing edge
const JUMP = 0.5; // of the length: a step that begins a new list

export function arrangeLoop(written: readonly WrittenPoint[]): Loop {
  const xs = written.map(({ x }) => x);
  const length = Math.max(...xs) - Math.min(...xs);
  if (!(length > 0))
    return refuse(`found the same x, ${xs[0]}, in every line, allowed a section from nose to tail`);
  const points = withoutRepeats(written, 1e-7 * length);
  const lists = splitAtJumps(points, JUMP * length);
  if (lists.length > 2)
    return refuse(`line ${lists[2]![0]!.line}: found a third list of points, allowed one loop or two sides`);
  const arranged = lists.length === 2 ? joinSides(lists[0]!, lists[1]!) : turnLoop(lists[0]!, length);
  if (!arranged.ok) return arranged;
  return closeTail(trimTail(arranged.points, length), length);
}

function refuse(message: string): { ok: false; message: string } {
  return { ok: false, message };
}

function distance(a: WrittenPoint, b: WrittenPoint): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function withoutRepeats(points: readonly WrittenPoint[], least: number): WrittenPoint[] {
  return points.filter((point, k) => k === 0 || distance(point, points[k - 1]!) > least);
}

function splitAtJumps(points: readonly WrittenPoint[], jump: number): WrittenPoint[][] {
  const lists: WrittenPoint[][] = [];
  points.forEach((point, k) => {
    if (k === 0 || Math.abs(point.x - points[k - 1]!.x) > jump) lists.push([]);
    lists.at(-1)!.push(point);
  });
  return lists;
}

/** Two sides, each from nose to tail or from tail to nose. */
function joinSides(first: WrittenPoint[], second: WrittenPoint[]): Loop {
  for (const side of [first, second]) {
    const turn = turns(side)[0];
    if (turn !== undefined)
      return refuse(
        `line ${side[turn]!.line}: x turns back within one side, allowed a side from nose to tail`,
      );
  }
  const rises = (side: WrittenPoint[]) => side.at(-1)!.x > side[0]!.x;
  const forward = rises(first) ? [...first].reverse() : first;
  const back = rises(second) ? second : [...second].reverse();
  const isShared = distance(forward.at(-1)!, back[0]!) === 0;
  return { ok: true, points: [...forward, ...(isShared ? back.slice(1) : back)] };
}

/** One loop: begun at the tail it turns once, at the nose; begun anywhere else it is turned until it does. */
function turnLoop(points: WrittenPoint[], length: number): Loop {
  const places = turns(points);
  if (places.length === 0)
    return refuse(
      `found one side alone, x from ${points[0]!.x} to ${points.at(-1)!.x}, allowed both sides of the section`,
    );
  const isFromTail = places.length === 1 && points[1]!.x <= points[0]!.x;
  if (isFromTail) return { ok: true, points };
  const isClosed = distance(points[0]!, points.at(-1)!) < WIDEST_GAP * length;
  if (places.length > 2 || !isClosed) {
    const extra = points[1]!.x <= points[0]!.x || !isClosed ? 1 : 2;
    const turn = places[extra] ?? places[0]!;
    return refuse(`line ${points[turn]!.line}: x turns back again, allowed a single loop round the section`);
  }
  const tail = points.reduce((most, { x }, k) => (x > points[most]!.x ? k : most), 0);
  const around = distance(points[0]!, points.at(-1)!) <= 1e-7 * length ? points.slice(0, -1) : points;
  return {
    ok: true,
    points: [...around.slice(tail), ...around.slice(0, tail), around[tail % around.length]!],
  };
}

/** Indices at which x changes its direction. */
function turns(points: readonly WrittenPoint[]): number[] {
  const found: number[] = [];
  let direction = 0;
  for (let k = 1; k < points.length; k++) {
    const sign = Math.sign(points[k]!.x - points[k - 1]!.x);
    if (sign !== 0 && direction !== 0 && sign !== direction) found.push(k - 1);
    if (sign !== 0) direction = sign;
  }
  return found;
}

/** Points across a blunt trailing edge, and a second one at the very nose, are no part of either side. */
function trimTail(points: WrittenPoint[], length: number): WrittenPoint[] {
  const near = (a: WrittenPoint, b: WrittenPoint) => Math.abs(a.x - b.x) < 1e-6 * length;
  let [start, end] = [0, points.length];
  while (end - start > 4 && near(points[start]!, points[start + 1]!)) start++;
  while (end - start > 4 && near(points[end - 1]!, points[end - 2]!)) end--;
  return points.slice(start, end).filter((point, k, all) => {
    const next = all[k + 1];
    return !next || !near(point, next) || k < 3 || k > all.length - 5;
  });
}

function closeTail(points: WrittenPoint[], length: number): Loop {
  const [first, last] = [points[0]!, points.at(-1)!];
  const gap = distance(first, last) / length;
  if (gap > WIDEST_GAP)
    return refuse(
      `lines ${first.line} and ${last.line}: the ends are ${(100 * gap).toFixed(1)} % of the chord apart, allowed a closed outline (up to ${100 * WIDEST_GAP} % for a blunt trailing edge)`,
    );
  return { ok: true, points };
}
