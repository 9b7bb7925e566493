/** Strut section and fuselage with the stabilizer's shim wedge, at full size. Millimetres. */
import type { Design, Fuselage, Strut } from '../solver/design/document.ts';
import { fourDigitThickness } from '../solver/geometry/outline.ts';
import type { Skin } from '../solver/geometry/skin.ts';
import { evenly, tracePolyline } from '../solver/numeric/refine.ts';
import { closed, cross, type Drawing, type Label, open, type Path, type Point } from './drawing.ts';

const MM = 1000;
const RADIANS = Math.PI / 180;
const TOLERANCE = 0.002; // mm
const LETTERS = 3.5; // mm
const NOSE_LENGTH = 2; // diameters, half an ellipse
const SHIM_STEP = 0.5; // degrees between the spare wedges
const SHIM_FOOT = 1; // mm at a wedge's thin end

/** The strut's section is taken as a symmetric four-digit one of the document's thickness (the document names none). */
export function strutSection({ chord, thickness }: Strut): Drawing {
  const digits = { camber: 0, position: 0, thickness: thickness / chord };
  const at = (share: number): Point => {
    const x = 0.5 * (1 + Math.cos(Math.PI * share));
    const half = fourDigitThickness(digits, x) * (share <= 1 ? 1 : -1);
    return [(x - 0.25) * chord * MM, half * chord * MM];
  };
  const outline = tracePolyline(at, evenly(0, 2, 32), TOLERANCE);
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
  const tail = fuselageTail(design, stabilizer);
  const radius = 0.5 * fuselage.diameter * MM;
  const paths: Path[] = [closed('outline', sideOutline(fuselage, tail))];
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

/** x of the fuselage's end in mm: the stabilizer's trailing edge at the root, as the length is measured on screen. */
export function fuselageTail({ stabilizer: drawn, strut }: Design, stabilizer: Skin | null): number {
  if (drawn && stabilizer) return (drawn.arm + 0.75 * stabilizer.rib(0).chord) * MM;
  return ((strut?.x ?? 0) + 0.75 * (strut?.chord ?? 0.1)) * MM;
}

function sideOutline({ diameter, nose }: Fuselage, tail: number): Point[] {
  const radius = 0.5 * diameter * MM;
  const start = -nose * MM;
  const length = Math.min(2 * NOSE_LENGTH * radius, 0.5 * (tail - start));
  const curve = (t: number): Point => [start + length * (1 - Math.cos(t)), radius * Math.sin(t)];
  const front = tracePolyline(curve, evenly(-0.5 * Math.PI, 0.5 * Math.PI, 16), TOLERANCE);
  return [...front, [tail, radius], [tail, -radius]];
}

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
