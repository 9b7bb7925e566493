/** Strut section and fuselage with the stabilizer's shim wedge, at full size. Millimetres. */
import type { Design, Fuselage, Strut } from '../solver/design/document.ts';
import { fuselageEnd, fuselageProfile, strutLoop } from '../solver/geometry/bodies.ts';
import type { Skin } from '../solver/geometry/skin.ts';
import { closed, cross, type Drawing, type Label, open, type Path, type Point } from './drawing.ts';

const MM = 1000;
const RADIANS = Math.PI / 180;
const TOLERANCE = 2e-6; // m
const LETTERS = 3.5; // mm
const SHIM_STEP = 0.5; // degrees between the spare wedges
const SHIM_FOOT = 1; // mm at a wedge's thin end

export function strutSection(strut: Strut): Drawing {
  const { chord, thickness } = strut;
  const outline = strutLoop(strut, TOLERANCE).map(inMillimetres);
  const [nose, tail] = [-0.25 * chord * MM, 0.75 * chord * MM];
  const size = `chord ${(chord * MM).toFixed(1)} mm, thickness ${(thickness * MM).toFixed(1)} mm`;
  return {
    name: 'strut-section',
    title: `Strut section, ${size}`,
    paths: [
      closed('outline', outline),
      open('reference', [
        [nose - 6, 0],
        [tail + 6, 0],
      ]),
      ...cross([0, 0], 2),
    ],
    labels: [
      {
        at: [nose, -0.5 * thickness * MM - 8],
        height: LETTERS,
        text: `Symmetric four-digit section, ${size}; quarter chord crossed`,
      },
    ],
  };
}

/**
 * Fuselage from the side, nose to the left, with the wing's, the strut's and the stabilizer's places on it, and the
 * wedges that set the stabilizer's incidence; null where there is no fuselage to draw.
 */
export function fuselageSide(design: Design, stabilizer: Skin | null): Drawing | null {
  const { fuselage, strut } = design;
  if (!fuselage) return null;
  const end = fuselageEnd(design, stabilizer);
  const tail = end * MM;
  const radius = 0.5 * fuselage.diameter * MM;
  const paths: Path[] = [closed('outline', sideOutline(fuselage, end))];
  const labels: Label[] = [];
  const mark = (x: number, text: string, row: number) => {
    paths.push(
      open('stations', [
        [x, -radius - 4],
        [x, radius + 4],
      ]),
    );
    labels.push({ at: [x + 1, radius + 6 + row * 5], height: LETTERS, text });
  };
  paths.push(
    open('reference', [
      [-fuselage.nose * MM - 6, 0],
      [tail + 6, 0],
    ]),
    ...cross([0, 0], 2),
  );
  mark(0, 'wing, quarter chord', 0);
  if (strut) mark((strut.x ?? 0) * MM, 'strut, quarter chord', 1);
  if (design.stabilizer && stabilizer) {
    mark(design.stabilizer.arm * MM, 'stabilizer, quarter chord', 0);
    addWedges(paths, labels, design.stabilizer.incidence, stabilizer.rib(0).chord * MM, -radius - 20);
  }
  return { name: 'fuselage', title: 'Fuselage from the side, nose to the left', paths, labels };
}

function sideOutline(fuselage: Fuselage, end: number): Point[] {
  const upper = fuselageProfile(fuselage, end, TOLERANCE).map(inMillimetres);
  const lower = upper.slice(1).map(([x, y]): Point => [x, -y]);
  const tail = lower.pop()!;
  return [...lower.reverse(), ...upper, tail];
}

const inMillimetres = ([x, y]: Point): Point => [x * MM, y * MM];

/** Wedges as long as the stabilizer's root chord: for its incidence as drawn, and half a degree either side. */
function addWedges(paths: Path[], labels: Label[], incidence: number, length: number, top: number): void {
  for (const [row, step] of [0, SHIM_STEP, -SHIM_STEP].entries()) {
    const angle = incidence + step;
    const rise = length * Math.tan(Math.abs(angle) * RADIANS);
    const foot = top - row * (18 + rise) - rise;
    // Nose up: the thick end stands forward, under the nose.
    const [front, back] = angle >= 0 ? [SHIM_FOOT + rise, SHIM_FOOT] : [SHIM_FOOT, SHIM_FOOT + rise];
    paths.push(
      closed('outline', [
        [0, foot],
        [length, foot],
        [length, foot + back],
        [0, foot + front],
      ]),
    );
    const text = `shim under the stabilizer, ${angle.toFixed(2)} deg, ${SHIM_FOOT.toFixed(1)} to ${(SHIM_FOOT + rise).toFixed(2)} mm over ${length.toFixed(1)} mm${row === 0 ? ' (as drawn)' : ''}`;
    labels.push({ at: [0, foot - LETTERS - 1.5], height: LETTERS, text });
  }
}
