/**
 * Thin-airfoil theory: what the mean line alone says of a section. H. Glauert, The Elements of Aerofoil and Airscrew
 * Theory (1926), ch. VII, with x = (1 - cos theta)/2:
 *   zero-lift angle = -(1/pi) integral of (dy/dx)(cos theta - 1) d theta,
 *   moment about the quarter chord = (1/2) integral of (dy/dx)(cos 2 theta - cos theta) d theta.
 * Angles in radians, negative for positive camber; moment coefficients positive nose up. Thickness is left out.
 */
import type { Outline, Planform } from '../design/document.ts';
import { type FourDigit, fourDigitOf, meanLine } from './outline.ts';

/** What a section does to the stream. */
export interface SectionLine {
  zeroLift: number; // rad, of the chord line to the stream where the section lifts nothing
  slope: number; // lift slope, per rad
  moment: number; // coefficient about the quarter chord at zero lift, nose up
}

/** The line of a surface's section at eta, where the chord is `chord` (m). */
export type SectionLift = (eta: number, chord: number) => SectionLine;

/** Mean lift slope (per rad) of the strut's section between two lengths (m) down from its upper end. */
export type StrutSlope = (from: number, to: number) => number;

export const thinStrut: StrutSlope = () => 2 * Math.PI;

/** Thin-airfoil theory is linear in the mean line, so blending the outlines blends their angles and moments. */
export function thinLift({ root, tip }: Planform['section']): SectionLift {
  const [one, other] = [thinSection(root), thinSection(tip)];
  return (eta) => ({
    zeroLift: one.zeroLift + (other.zeroLift - one.zeroLift) * eta,
    slope: 2 * Math.PI,
    moment: one.moment + (other.moment - one.moment) * eta,
  });
}

/** Angle of the chord line to the stream at which the section lifts nothing, rad. */
export function zeroLiftAngle(outline: Outline): number {
  return thinSection(outline).zeroLift;
}

/** Moment coefficient about the quarter chord, the same at every angle. */
export function momentCoefficient(outline: Outline): number {
  return thinSection(outline).moment;
}

interface Thin {
  zeroLift: number;
  moment: number;
}

function thinSection(outline: Outline): Thin {
  if (outline.kind === 'coordinates') return fromHeights(outline);
  const digits = fourDigitOf(outline);
  return digits.camber !== 0 ? fromParabolas(digits) : { zeroLift: 0, moment: 0 };
}

/** Two parabolas: the slope is scale (2p - 1 + cos theta) on either side of p, so each integral has a closed form. */
function fromParabolas({ camber, position: p }: FourDigit): Thin {
  const knee = Math.acos(1 - 2 * p);
  const shift = 2 * p - 1;
  const mean = (t: number) => shift * t + Math.sin(t);
  const first = (t: number) => shift * Math.sin(t) + t / 2 + Math.sin(2 * t) / 4;
  const second = (t: number) => (shift * Math.sin(2 * t)) / 2 + Math.sin(t) / 2 + Math.sin(3 * t) / 6;
  const both = (f: (t: number) => number) =>
    (camber / (p * p)) * (f(knee) - f(0)) + (camber / (1 - p) ** 2) * (f(Math.PI) - f(knee));
  const [atZero, atOne, atTwo] = [both(mean), both(first), both(second)];
  return { zeroLift: (atZero - atOne) / Math.PI, moment: 0.5 * (atTwo - atOne) };
}

const remembered = new WeakMap<Outline, Thin>(); // documents are never changed in place

/**
 * Any mean line, integrated by parts so that heights are needed and no slopes; a tail off the x axis turns the section
 * as a whole. The mean line of imported points runs midway between surface points one above the other. A four-digit
 * thickness stands square to its mean line instead, so that its code and its points answer up to 3 % apart.
 */
function fromHeights(outline: Outline): Thin {
  const known = remembered.get(outline);
  if (known) return known;
  const y = meanLine(outline);
  const tail = y(1);
  const cells = 400;
  let lift = 0;
  let moment = 0;
  for (let k = 0; k < cells; k++) {
    const x = 0.5 * (1 - Math.cos((Math.PI * (k + 0.5)) / cells));
    const height = (y(x) - tail * x) / (1 - x);
    lift += height;
    moment += height * (1.5 - 2 * x - 4 * x * (1 - x));
  }
  const thin = { zeroLift: tail - lift / cells, moment: (moment * Math.PI) / cells };
  remembered.set(outline, thin);
  return thin;
}
