/** The whole foil from ahead, from above and from the side, at full size: small on the sheet, for recognition. */
import type { Design } from '../solver/design/document.ts';
import { fuselageEnd } from '../solver/geometry/bodies.ts';
import type { Rib, Skin } from '../solver/geometry/skin.ts';
import { type Box, boxOf, closed, open, type Path, type Point } from './drawing.ts';

const MM = 1000;
const STEPS = 48; // along a half
const AROUND = 48; // round a section

export interface Foil {
  wing: Skin;
  stabilizer: Skin | null;
}

export interface View {
  title: string;
  paths: Path[];
  box: Box;
}

export function threeViews(design: Design, foil: Foil): [View, View, View] {
  return [
    view('From ahead', fromAhead(design, foil)),
    view('From above', fromAbove(design, foil)),
    view('From the side', fromTheSide(design, foil)),
  ];
}

function view(title: string, paths: Path[]): View {
  return { title, paths, box: boxOf({ paths, labels: [] }) };
}

function skins({ wing, stabilizer }: Foil): Skin[] {
  return stabilizer ? [wing, stabilizer] : [wing];
}

function fromAhead({ strut, fuselage }: Design, foil: Foil): Path[] {
  const paths = skins(foil).map((skin) => {
    const edge =
      (share: number) =>
      (rib: Rib): Point => {
        const [, y, z] = skin.point(rib, share);
        return [y * MM, z * MM];
      };
    return closed('outline', bothHalves(skin, edge(THICK_ABOVE), edge(2 - THICK_ABOVE)));
  });
  if (strut) {
    const half = 0.5 * strut.thickness * MM;
    paths.push(closed('outline', box(-half, half, 0, strut.length * MM)));
  }
  if (fuselage) paths.push(closed('outline', circle(0.5 * fuselage.diameter * MM)));
  return paths;
}

function fromAbove(design: Design, foil: Foil): Path[] {
  const paths = skins(foil).map((skin) => {
    const edge =
      (back: number) =>
      (rib: Rib): Point => [rib.y * MM, -(rib.x + (back - 0.25) * rib.chord) * MM];
    return closed('outline', bothHalves(skin, edge(0), edge(1)));
  });
  const { fuselage } = design;
  if (fuselage) {
    const half = 0.5 * fuselage.diameter * MM;
    const tail = MM * fuselageEnd(design, foil.stabilizer);
    paths.push(closed('outline', box(-half, half, -tail, fuselage.nose * MM)));
  }
  return paths;
}

function fromTheSide(design: Design, foil: Foil): Path[] {
  const { strut, fuselage } = design;
  const paths = skins(foil).flatMap((skin) =>
    [0, 1].map((eta) => {
      const rib = skin.rib(eta);
      const points = Array.from({ length: AROUND }, (_, k): Point => {
        const [x, , z] = skin.point(rib, (2 * k) / AROUND);
        return [x * MM, z * MM];
      });
      return closed('outline', points);
    }),
  );
  if (strut) {
    const nose = ((strut.x ?? 0) - 0.25 * strut.chord) * MM;
    paths.push(closed('outline', box(nose, nose + strut.chord * MM, 0, strut.length * MM)));
  }
  if (fuselage) {
    const half = 0.5 * fuselage.diameter * MM;
    paths.push(
      closed('outline', box(-fuselage.nose * MM, MM * fuselageEnd(design, foil.stabilizer), -half, half)),
    );
  }
  const { depth } = design.brief;
  if (depth !== null) {
    const [left, right] = [-250, 900];
    paths.push(
      open('reference', [
        [left, depth * MM],
        [right, depth * MM],
      ]),
    );
  }
  return paths;
}

const THICK_ABOVE = Math.acos(-0.4) / Math.PI; // x/c 0.3 on the upper side

/** Once round: one edge port to starboard, the other back. */
function bothHalves(skin: Skin, one: (rib: Rib) => Point, other: (rib: Rib) => Point): Point[] {
  const ribs = Array.from({ length: STEPS + 1 }, (_, k) => skin.rib(Math.sin((0.5 * Math.PI * k) / STEPS)));
  const mirror = ([x, y]: Point): Point => [-x, y];
  const outward = ribs.map(one);
  const inward = ribs.map(other);
  return [
    ...outward.slice(1).map(mirror).reverse(),
    ...outward,
    ...inward.slice().reverse(),
    ...inward.slice(1).map(mirror),
  ];
}

function box(left: number, right: number, bottom: number, top: number): Point[] {
  return [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ];
}

function circle(radius: number): Point[] {
  return Array.from({ length: AROUND }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / AROUND;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}
