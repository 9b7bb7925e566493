/** STL files read back by plain code and measured. */
import { describe, expect, it } from 'vitest';
import type { Planform } from '../../src/solver/design/document.ts';
import { blendOutlines, outlinePoints } from '../../src/solver/geometry/outline.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { goodDesign } from '../support/designs.ts';
import { built } from './files.ts';

type Vector = [number, number, number];

function readStl(bytes: Uint8Array) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  expect(bytes.length).toBe(84 + 50 * count);
  const vector = (at: number): Vector => [
    view.getFloat32(at, true),
    view.getFloat32(at + 4, true),
    view.getFloat32(at + 8, true),
  ];
  const faces: Array<{ normal: Vector; corners: [Vector, Vector, Vector] }> = [];
  for (let k = 0; k < count; k++) {
    const at = 84 + 50 * k;
    faces.push({ normal: vector(at), corners: [vector(at + 12), vector(at + 24), vector(at + 36)] });
  }
  return faces;
}

function inspect(bytes: Uint8Array) {
  const faces = readStl(bytes);
  const edges = new Map<string, number>();
  let volume = 0;
  let turned = 0;
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  for (const { normal, corners } of faces) {
    const names = corners.map((corner) => corner.join());
    for (let k = 0; k < 3; k++) {
      const edge = `${names[k]} ${names[(k + 1) % 3]}`;
      edges.set(edge, (edges.get(edge) ?? 0) + 1);
    }
    const [a, b, c] = corners;
    const u = b.map((value, axis) => value - a[axis]!) as Vector;
    const v = c.map((value, axis) => value - a[axis]!) as Vector;
    const cross: Vector = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    volume += (a[0] * cross[0] + a[1] * cross[1] + a[2] * cross[2]) / 6;
    if (cross[0] * normal[0] + cross[1] * normal[1] + cross[2] * normal[2] < 0) turned++;
    for (const corner of corners)
      for (let axis = 0; axis < 3; axis++) {
        least[axis] = Math.min(least[axis]!, corner[axis]!);
        most[axis] = Math.max(most[axis]!, corner[axis]!);
      }
  }
  let loose = 0;
  for (const [edge, times] of edges) {
    const [from, to] = edge.split(' ');
    if (times !== 1 || edges.get(`${to} ${from}`) !== 1) loose++;
  }
  return { volume, turned, loose, least, most };
}

/** Integral of section areas along the curve, both halves, mm3; with the longer way round of what stands off a bent line. */
function sectionVolume(planform: Planform): number {
  const surface = surfaceOf(planform);
  const count = 1500;
  let sum = 0;
  for (let k = 0; k < count; k++) {
    const eta = Math.sin((Math.PI / 2) * ((k + 0.5) / count));
    const width = Math.cos((Math.PI / 2) * ((k + 0.5) / count)) * (Math.PI / 2 / count) * surface.halfLength;
    const { x, y } = blendOutlines(planform.section.root, planform.section.tip, eta, 401);
    const angle = (planform.incidence * Math.PI) / 180 + surface.twist(eta);
    let area = 0;
    let moment = 0;
    for (let j = 0; j < x.length; j++) {
      const n = (j + 1) % x.length;
      const up = (i: number) => y[i]! * Math.cos(angle) - (x[i]! - 0.25) * Math.sin(angle);
      const aft = (i: number) => (x[i]! - 0.25) * Math.cos(angle) + y[i]! * Math.sin(angle);
      const cross = aft(j) * up(n) - aft(n) * up(j);
      area += cross / 2;
      moment += (cross * (up(j) + up(n))) / 6;
    }
    const chord = surface.chord(eta);
    const step = 1e-4;
    const [before, after] = [Math.max(0, eta - step), Math.min(1, eta + step)];
    const bend = (surface.droop(after) - surface.droop(before)) / ((after - before) * surface.halfLength);
    sum += 2 * width * (area * chord ** 2 + bend * moment * chord ** 3);
  }
  return sum * 1e9;
}

/** The furthest point of the sections each way, mm, by dense sampling. */
function reach(planform: Planform, place = { arm: 0, height: 0 }) {
  const surface = surfaceOf(planform, place);
  const most = [-Infinity, -Infinity, -Infinity];
  const least = [Infinity, Infinity, Infinity];
  for (let k = 0; k <= 1500; k++) {
    const eta = Math.sin((Math.PI / 2) * (k / 1500));
    const { x, y } = blendOutlines(planform.section.root, planform.section.tip, eta, 1601);
    const angle = (planform.incidence * Math.PI) / 180 + surface.twist(eta);
    const chord = surface.chord(eta);
    const { y: y0, z: z0 } = surface.point(eta);
    const [sin, cos] = [Math.sin(surface.droop(eta)), Math.cos(surface.droop(eta))];
    for (let j = 0; j < x.length; j++) {
      const aft = chord * ((x[j]! - 0.25) * Math.cos(angle) + y[j]! * Math.sin(angle));
      const up = chord * (y[j]! * Math.cos(angle) - (x[j]! - 0.25) * Math.sin(angle));
      const point = [surface.x(eta) + aft, y0 + up * sin, z0 + up * cos];
      for (let axis = 0; axis < 3; axis++) {
        most[axis] = Math.max(most[axis]!, 1000 * point[axis]!);
        least[axis] = Math.min(least[axis]!, 1000 * point[axis]!);
      }
    }
  }
  return { most, least };
}

/**
 * How much further than its ribs a wing reaches where its line is broken at the centre, mm along x, y, z. A rib leaning by
 * the droop angle G ends there at height u cos G over the line; the halves run on to the plane of symmetry, by u tan G
 * along the line, and meet at u / cos G: higher by u sin G tan G, and shifted aft or forward by the sweep over that run.
 */
function mitreReach(planform: Planform): [number, number, number] {
  const surface = surfaceOf(planform);
  const { y } = outlinePoints(planform.section.root, 401);
  const up = 1000 * surface.chord(0) * Math.max(...y.map(Math.abs));
  const lean = Math.abs(surface.droop(0));
  const step = 1e-4;
  const sweep = Math.abs(surface.x(step) - surface.x(0)) / (step * surface.halfLength);
  return [up * Math.tan(lean) * sweep, 0, up * Math.sin(lean) * Math.tan(lean)];
}

/** How steeply the half falls from root to tip, as a straight line: near enough the way its mould is drawn. */
function slopeOf(planform: Planform): number {
  const { tipDrop, halfSpan } = surfaceOf(planform);
  return tipDrop / halfSpan;
}

const NAMES = ['curved-race', 'downwind', 'flat-race', 'formula-deep', 'gull-lake'];

describe('solids', () => {
  it.each(NAMES)(
    'of %s are closed, outward, of the right volume and box',
    { timeout: 60_000 },
    async (name) => {
      const design = goodDesign(name);
      const files = await built(design, 'stl');
      expect(files.names.length).toBe(design.stabilizer ? 2 : 1);
      for (const part of ['wing', 'stabilizer'] as const) {
        const planform = design[part];
        if (!planform) continue;
        const { volume, turned, loose, least, most } = inspect(files.bytes(`${part}.stl`));
        expect([loose, turned]).toEqual([0, 0]);
        expect(Math.abs(volume / sectionVolume(planform) - 1)).toBeLessThan(0.002);
        const place =
          part === 'stabilizer'
            ? { arm: design.stabilizer!.arm, height: design.stabilizer!.height }
            : undefined;
        const box = reach(planform, place);
        const rooms = mitreReach(planform);
        for (const axis of [0, 1, 2]) {
          const room = 0.002 + rooms[axis]!;
          const above = most[axis]! - box.most[axis]!;
          expect(above, `${part} most ${axis}`).toBeGreaterThan(-0.002);
          expect(above, `${part} most ${axis}`).toBeLessThan(room);
          if (axis === 1) continue;
          const below = box.least[axis]! - least[axis]!;
          expect(below, `${part} least ${axis}`).toBeGreaterThan(-0.002);
          expect(below, `${part} least ${axis}`).toBeLessThan(room);
        }
        expect(least[1]).toBeCloseTo(-most[1]!, 5);
      }
    },
  );

  it('come as halves that are closed and together fill the whole', { timeout: 60_000 }, async () => {
    const design = goodDesign('gull-lake');
    design.build = { tolerance: 0.00005 };
    const whole = inspect((await built(design, 'stl', { part: 'wing' })).bytes('wing.stl'));
    const halves = await built(design, 'stl', { part: 'wing', side: 'halves' });
    const [starboard, port] = ['wing-starboard.stl', 'wing-port.stl'].map((name) =>
      inspect(halves.bytes(name)),
    );
    expect([starboard!.loose, port!.loose]).toEqual([0, 0]);
    expect(starboard!.least[1]).toBe(0);
    expect((starboard!.volume + port!.volume) / whole.volume).toBeCloseTo(1, 5);
  });

  it('moulds are closed, and block less part is what they hold', { timeout: 60_000 }, async () => {
    const design = goodDesign('curved-race');
    design.build = { tolerance: 0.00005 };
    const files = await built(design, 'stl', { part: 'mould' });
    expect(files.names.length).toBe(8);
    const part = inspect((await built(design, 'stl', { part: 'wing' })).bytes('wing.stl'));
    const moulds = ['starboard-upper', 'starboard-lower', 'port-upper', 'port-lower'].map((name) =>
      inspect(files.bytes(`wing-mould-${name}.stl`)),
    );
    for (const { loose, turned } of moulds) expect([loose, turned]).toEqual([0, 0]);
    const wall = 20; // mm
    const block = [0, 1, 2].reduce(
      (product, axis) => product * (part.most[axis]! - part.least[axis]! + 2 * wall),
      1,
    );
    const held = moulds.reduce((sum, { volume }) => sum + volume, 0);
    expect((block - part.volume) / held).toBeCloseTo(1, 5);
  });

  it.each(['curved-race', 'downwind', 'flat-race', 'gull-lake'])(
    'moulds of %s parted along the edges are closed, fill the block with the part, and come off',
    { timeout: 60_000 },
    async (name) => {
      const design = goodDesign(name);
      design.build = { tolerance: 0.00005 };
      const files = await built(design, 'stl', { part: 'mould', draw: 'edges' });
      const parts = await built(design, 'stl');
      for (const part of ['wing', 'stabilizer'] as const) {
        if (!design[part]) continue;
        const whole = inspect(parts.bytes(`${part}.stl`));
        const [upper, lower, ...port] = [
          'starboard-upper',
          'starboard-lower',
          'port-upper',
          'port-lower',
        ].map((half) => inspect(files.bytes(`${part}-mould-${half}.stl`)));
        for (const { loose, turned } of [upper!, lower!, ...port]) expect([loose, turned]).toEqual([0, 0]);
        const sides = [0, 1, 2].map(
          (axis) =>
            Math.max(upper!.most[axis]!, lower!.most[axis]!) -
            Math.min(upper!.least[axis]!, lower!.least[axis]!),
        );
        const block = sides[0]! * sides[1]! * sides[2]!;
        // Their quadrilaterals may be split along the other diagonal than the part's: a sliver within the tolerance.
        expect((block - 0.5 * whole.volume) / (upper!.volume + lower!.volume)).toBeCloseTo(1, 4);
        // Nothing of the upper mould's hollow looks up by more than a sliver of its floor, nothing of the lower's down:
        // seen along the draw each hollow is its own shadow.
        for (const [half, sign] of [
          ['upper', 1],
          ['lower', -1],
        ] as const) {
          const faces = readStl(files.bytes(`${part}-mould-starboard-${half}.stl`));
          const slope = slopeOf(design[part]!);
          const draw: Vector = [0, slope / Math.hypot(1, slope), 1 / Math.hypot(1, slope)];
          let held = 0;
          let floor = 0;
          for (const { corners } of faces) {
            const isWall = [0, 1, 2].some((axis) => {
              const places = corners.map((corner) => corner[axis]!);
              const box = [upper!, lower!].flatMap(({ least, most }) => [least[axis]!, most[axis]!]);
              return places.every((place) => place === places[0]) && box.includes(places[0]!);
            });
            if (isWall) continue;
            const [a, b, c] = corners;
            const u = b.map((value, axis) => value - a[axis]!) as Vector;
            const v = c.map((value, axis) => value - a[axis]!) as Vector;
            const facing =
              0.5 *
              sign *
              ((u[1] * v[2] - u[2] * v[1]) * draw[0] +
                (u[2] * v[0] - u[0] * v[2]) * draw[1] +
                (u[0] * v[1] - u[1] * v[0]) * draw[2]);
            if (facing > 0) held += facing;
            else floor -= facing;
          }
          expect(held / floor, `${part} ${half}`).toBeLessThan(0.002);
        }
      }
    },
  );

  it('strut and fuselage are closed; the fuselage holds its cylinder', async () => {
    const design = goodDesign('curved-race');
    const strut = inspect((await built(design, 'stl', { part: 'strut' })).bytes('strut.stl'));
    // Area of a four-digit thickness form: the integral of its series, 0.6851 t c (NACA Report 460).
    const series = 0.2969 * (2 / 3) - 0.126 / 2 - 0.3516 / 3 + 0.2843 / 4 - 0.1015 / 5;
    const { chord, thickness, length } = design.strut!;
    expect(strut.loose).toBe(0);
    expect(strut.volume / (10 * series * thickness * chord * length * 1e9)).toBeCloseTo(1, 3);
    const fuselage = inspect((await built(design, 'stl', { part: 'fuselage' })).bytes('fuselage.stl'));
    expect(fuselage.loose).toBe(0);
    expect(fuselage.most[1]! - fuselage.least[1]!).toBeCloseTo(1000 * design.fuselage!.diameter, 1);
  });
});
