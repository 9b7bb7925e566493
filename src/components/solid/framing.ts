/** What a view of the whole foil has to hold. It changes in steps, so that bending a tip moves no camera. Lengths in m. */
import { nextPreferred } from '../../session/rounding.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Triple } from '../../solver/geometry/skin.ts';
import { cruiseDepth } from '../head-on-parts.ts';
import { extentOf } from '../view-frame.ts';
import type { Frame } from './camera.ts';

const MOST_ABOVE = 1.6; // half spans: more strut than this would make the wing small
const BELOW = 0.3; // half spans, room for tips that come down

/** Of a design and what stands beside it. */
export function frameOf(design: Design, ghost: Design | null = null): Frame {
  const own = frameOfOne(design);
  return ghost ? { ...own, points: [...own.points, ...frameOfOne(ghost).points] } : own;
}

/** Tips of wing and stabilizer at their lengths, nose and end, and the strut up to the surface or as far as leaves the wing large. */
function frameOfOne(design: Design): Frame {
  const { stabilizer, fuselage, strut } = design;
  const half = 0.5 * extentOf([{ ...design, stabilizer: null }]);
  const chord = nextPreferred(0.3 * half);
  const arm = stabilizer ? nextPreferred(stabilizer.arm) : 0;
  const tail = stabilizer ? 0.5 * nextPreferred(stabilizer.length.value) : 0;
  const top = Math.min(cruiseDepth(design) ?? Number.POSITIVE_INFINITY, MOST_ABOVE * half);
  const points: Triple[] = [
    ...tips(-0.3 * chord, half, 0),
    ...tips(chord, half, 0),
    ...tips(0.5 * chord, 0.9 * half, -BELOW * half),
    [-(fuselage?.nose ?? 0.3 * chord), 0, 0],
    [strut?.x ?? 0, 0, nextPreferred(top)],
  ];
  if (stabilizer)
    points.push(...tips(arm, tail, stabilizer.height), ...tips(arm + chord * 0.4, tail, stabilizer.height));
  return { middle: [0.4 * arm, 0, 0.2 * top], points };
}

const tips = (x: number, y: number, z: number): Triple[] => [
  [x, y, z],
  [x, -y, z],
];

/** How far the water is drawn round a foil. */
export const reachOf = (design: Design): number =>
  1.6 * Math.max(extentOf([design]), design.stabilizer?.arm ?? 0);
