/** Drawings read back with parsers that are not ours and held against the solver's own geometry. */
import { DOMParser } from '@xmldom/xmldom';
import DxfParser, { type ILwpolylineEntity } from 'dxf-parser';
import { SVGPathData } from 'svg-pathdata';
import { describe, expect, it, vi } from 'vitest';
import type { Design } from '../../src/solver/design/document.ts';
import { type Surface, surfaceOf } from '../../src/solver/geometry/surface.ts';
import { fingerprint } from '../../src/workshop/fingerprint.ts';
import { goodDesign } from '../support/designs.ts';
import { areaOf, built, lengthOf, type Point } from './files.ts';

vi.setConfig({ testTimeout: 60_000 });

interface Line {
  layer: string;
  isClosed: boolean;
  points: Point[];
}

function linesOfSvg(text: string): { lines: Line[]; width: string; height: string; viewBox: string } {
  const root = new DOMParser().parseFromString(text, 'text/xml').documentElement!;
  const lines = Array.from(root.getElementsByTagName('path')).map((path): Line => {
    const { commands } = new SVGPathData(path.getAttribute('d')!).toAbs();
    return {
      layer: (path.parentNode as unknown as Element).getAttribute('id')!,
      isClosed: commands[commands.length - 1]!.type === SVGPathData.CLOSE_PATH,
      points: commands.flatMap((command): Point[] =>
        'x' in command && 'y' in command ? [[command.x, command.y]] : [],
      ),
    };
  });
  const read = (name: string) => root.getAttribute(name)!;
  return { lines, width: read('width'), height: read('height'), viewBox: read('viewBox') };
}

function linesOfDxf(text: string) {
  const dxf = new DxfParser().parseSync(text)!;
  const lines = dxf.entities
    .filter((entity): entity is ILwpolylineEntity => entity.type === 'LWPOLYLINE')
    .map(
      ({ layer, shape, vertices }): Line => ({
        layer,
        isClosed: shape,
        points: vertices.map(({ x, y }) => [x, y]),
      }),
    );
  return { lines, header: dxf.header, layers: Object.keys(dxf.tables.layer.layers) };
}

/** Length of a line over both halves by plain summation of the solver's own functions. mm */
function measured(at: (eta: number) => Point): number {
  const points = Array.from({ length: 40_001 }, (_, k) => at(Math.sin((Math.PI / 2) * (k / 40_000))));
  return 2000 * lengthOf(points, false);
}

function perimeter(surface: Surface, across: (eta: number) => number): number {
  const edge =
    (back: number) =>
    (eta: number): Point => [across(eta), surface.x(eta) + (back - 0.25) * surface.chord(eta)];
  return measured(edge(0)) + measured(edge(1)) + 2000 * surface.chord(1);
}

const NAMES = ['curved-race', 'downwind', 'flat-race', 'formula-deep', 'gull-lake'];

const readers: Array<[kind: 'svg' | 'dxf', read: (text: string) => Line[]]> = [
  ['svg', (text) => linesOfSvg(text).lines],
  ['dxf', (text) => linesOfDxf(text).lines],
];

describe.each(readers)('outlines in %s', (kind, read) => {
  it.each(NAMES)('of %s have the solver’s lengths within 0.05 mm and areas within 0.1 %', async (name) => {
    const design = goodDesign(name);
    const files = await built(design, kind);
    for (const part of ['wing', 'stabilizer'] as const) {
      const drawn = design[part];
      if (!drawn) continue;
      const surface = surfaceOf(drawn);
      const outline = (view: string) =>
        read(files.text(`${part}-plan-${view}.${kind}`)).filter(({ layer }) => layer === 'OUTLINE');
      const [flat, ...more] = outline('unrolled');
      expect(more).toEqual([]);
      expect(flat!.isClosed).toBe(true);
      expect(areaOf(flat!.points) / (1e6 * surface.unrolledArea)).toBeCloseTo(1, 3);
      expect(
        Math.abs(lengthOf(flat!.points, true) - perimeter(surface, (eta) => eta * surface.halfLength)),
      ).toBeLessThan(0.05);
      const above = outline('projected')[0]!;
      expect(areaOf(above.points) / (1e6 * surface.projectedArea)).toBeCloseTo(1, 3);
      expect(
        Math.abs(lengthOf(above.points, true) - perimeter(surface, (eta) => surface.point(eta).y)),
      ).toBeLessThan(0.05);
      // The droop line of the jig is as long as the unrolled surface.
      const jig = read(files.text(`${part}-droop-jig.${kind}`)).filter(({ layer }) => layer === 'REFERENCE');
      expect(Math.abs(lengthOf(jig[0]!.points, false) - 1000 * surface.unrolledLength)).toBeLessThan(0.05);
    }
  });
});

describe('the formats', () => {
  it('SVG: one user unit is one millimetre', async () => {
    const { width, height, viewBox } = linesOfSvg(
      (await built(goodDesign('curved-race'), 'svg')).text('wing-ribs.svg'),
    );
    expect(viewBox).toBe(`0 0 ${Number.parseFloat(width)} ${Number.parseFloat(height)}`);
    expect([width, height].every((size) => size.endsWith('mm'))).toBe(true);
  });

  it('both say which document they come from', async () => {
    const design = goodDesign('curved-race');
    for (const kind of ['svg', 'dxf'] as const)
      expect((await built(design, kind)).text(`wing-ribs.${kind}`)).toContain(
        `Fingerprint ${fingerprint(design)}, 2027-03-21: ${design.name}`,
      );
  });

  it('DXF: millimetres, layers named, outlines closed', async () => {
    const { header, layers, lines } = linesOfDxf(
      (await built(goodDesign('curved-race'), 'dxf')).text('wing-ribs.dxf'),
    );
    expect(header.$INSUNITS).toBe(4); // DXF reference: 4 is millimetres
    expect(layers).toEqual(
      expect.arrayContaining(['OUTLINE', 'CORE', 'SLOT', 'JIG', 'STATIONS', 'REFERENCE', 'TEXT']),
    );
    for (const { layer, isClosed } of lines) if (layer === 'OUTLINE') expect(isClosed).toBe(true);
  });

  it('a name with markup and line breaks harms neither', async () => {
    const design: Design = { ...goodDesign('flat-race'), name: 'a <b> & "c"\n9' };
    expect(linesOfSvg((await built(design, 'svg')).text('strut-section.svg')).lines.length).toBeGreaterThan(
      0,
    );
    expect(linesOfDxf((await built(design, 'dxf')).text('strut-section.dxf')).lines.length).toBeGreaterThan(
      0,
    );
  });
});

/** Ordinates in percent of the chord. I. H. Abbott, A. E. von Doenhoff, Theory of Wing Sections, App. III (from memory). */
const NACA_2412 = {
  upper: [
    [5, 4.13],
    [10, 5.63],
    [20, 7.26],
    [30, 7.88],
    [40, 7.8],
    [60, 6.36],
    [80, 3.75],
  ],
  lower: [
    [5, -3.01],
    [10, -3.75],
    [20, -4.23],
    [30, -4.12],
    [40, -3.8],
    [60, -2.76],
    [80, -1.5],
  ],
} as const;
const NACA_0012 = [
  [5, 3.555],
  [10, 4.683],
  [20, 5.738],
  [30, 6.002],
  [40, 5.803],
  [60, 4.563],
  [80, 2.623],
  [90, 1.448],
] as const;

describe('rib templates', () => {
  const withSection = (code: string): Design => {
    const design = goodDesign('flat-race');
    const section = { kind: 'naca4' as const, code };
    design.wing = { ...design.wing, section: { root: section, tip: section }, incidence: 0 };
    design.wing.chord = { kind: 'taper', root: 0.1, tip: 0.1 };
    return design;
  };
  const heights = async (code: string, incidence = 0, build: Design['build'] = {}) => {
    const design = { ...withSection(code), build };
    design.wing.incidence = incidence;
    const { lines } = linesOfDxf((await built(design, 'dxf', { part: 'wing' })).text('wing-ribs.dxf'));
    const { points } = lines.find(({ layer }) => layer === 'OUTLINE')!;
    const crossHeight = lines.filter(
      ({ layer, points: [a, b] }) => layer === 'REFERENCE' && a![1] === b![1],
    )[0]!.points[0]![1];
    const nose = points.reduce((least, point) => (point[0] < least[0] ? point : least));
    const turn = points.indexOf(nose);
    const at = (x: number, side: Point[]) => {
      const k = side.findIndex(([px], j) => j > 0 && (px - x) * (side[j - 1]![0] - x) <= 0);
      const [[ax, ay], [bx, by]] = [side[k - 1]!, side[k]!];
      return ay + ((by - ay) * (x - ax)) / (bx - ax) - crossHeight;
    };
    return {
      upper: (x: number) => at(x - 25, points.slice(0, turn + 1)),
      lower: (x: number) => at(x - 25, points.slice(turn)),
      lines,
      points,
    };
  };

  it('carry the published ordinates of NACA 2412 and 0012 on a chord of 100 mm', async () => {
    const cambered = await heights('2412');
    for (const [x, y] of NACA_2412.upper) expect(Math.abs(cambered.upper(x) - y), `${x}`).toBeLessThan(0.02);
    for (const [x, y] of NACA_2412.lower) expect(Math.abs(cambered.lower(x) - y), `${x}`).toBeLessThan(0.02);
    const symmetric = await heights('0012');
    for (const [x, y] of NACA_0012) expect(Math.abs(symmetric.upper(x) - y), `${x}`).toBeLessThan(0.003);
  });

  it('are turned by the incidence about the quarter chord, nose up', async () => {
    const { points } = await heights('0012', 3);
    const { points: level } = await heights('0012');
    const tail = (outline: readonly Point[]) =>
      outline.reduce((most, point) => (point[0] > most[0] ? point : most));
    const middle = (outline: readonly Point[]) => outline.reduce((sum, [, y]) => sum + y, 0) / outline.length;
    expect(tail(points)[1] - middle(points)).toBeLessThan(tail(level)[1] - middle(level) - 1);
  });

  it('keep the least trailing edge, lose the laminate and get their slot', async () => {
    const build = { leastEdge: 0.001, allowance: 0.001, slot: { at: 0.35, width: 0.01, height: 0.004 } };
    const { lines, points } = await heights('0012', 0, build);
    const [first, last] = [points[0]!, points[points.length - 1]!];
    expect(Math.hypot(first[0] - last[0], first[1] - last[1])).toBeCloseTo(1, 3);
    const core = lines.find(({ layer }) => layer === 'CORE')!;
    // Within the offset outline's own length an inset takes perimeter times distance, less at sharp ends.
    expect(areaOf(points) - areaOf(core.points)).toBeLessThan(lengthOf(points, true) * 1);
    expect(areaOf(points) - areaOf(core.points)).toBeGreaterThan(0.9 * lengthOf(points, true) * 1);
    expect(areaOf(lines.find(({ layer }) => layer === 'SLOT')!.points)).toBeCloseTo(40, 2);
    // NACA 0012 on 100 mm is 11.9 mm thick at 0.35 of the chord: 4 mm of slot go in under 3.5 mm of laminate, not under 4.
    const slots = async (allowance: number) =>
      (await heights('0012', 0, { ...build, allowance })).lines.filter(({ layer }) => layer === 'SLOT')
        .length;
    expect(await slots(0.0035)).toBeGreaterThan(0);
    expect(await slots(0.004)).toBe(0);
  });
});
