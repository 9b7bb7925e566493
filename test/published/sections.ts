/** Sections as the checks use them: NACA four-digit with open or closed trailing edge, and exact Karman-Trefftz ones. */
import {
  type FourDigit,
  fourDigitMeanLine,
  fourDigitThickness,
  type OutlinePoints,
  readFourDigit,
} from '../../src/solver/geometry/outline.ts';
import { placePanels } from '../../src/solver/section/panels.ts';
import { PanelFlow } from '../../src/solver/section/pressure.ts';

export const RADIANS = Math.PI / 180;
const POINTS = 241;
export const PANELS = 140; // as the program takes

/** A section of the four-digit family with any camber, position and thickness; `open` 0 closes the trailing edge. */
export function fourDigitShape(digits: FourDigit, open = 1): OutlinePoints {
  const x = new Float64Array(POINTS);
  const y = new Float64Array(POINTS);
  for (let k = 0; k < POINTS; k++) {
    const place = (2 * k) / (POINTS - 1);
    const at = 0.5 * (1 + Math.cos(Math.PI * place));
    const { y: mean, slope } = fourDigitMeanLine(digits, at);
    // The last coefficient -0.1036 instead of -0.1015 closes it.
    const thickness = fourDigitThickness(digits, at) - (1 - open) * 5 * digits.thickness * 0.0021 * at ** 4;
    const half = ((place <= 1 ? 1 : -1) * thickness) / Math.hypot(1, slope);
    x[k] = at - half * slope;
    y[k] = mean + half;
  }
  return { x, y };
}

export const closedFourDigit = (code: string) => fourDigitShape(readFourDigit(code)!, 0);

const flows = new Map<string, PanelFlow>();

export function closedFlow(code: string, panels = PANELS): PanelFlow {
  const key = `${code} ${panels}`;
  const known = flows.get(key) ?? new PanelFlow(placePanels(closedFourDigit(code), panels));
  flows.set(key, known);
  return known;
}

/** Speed at x/c on the upper side (or the lower one), linear in arc between nodes. */
export function speedAtX(
  flow: PanelFlow,
  speed: ArrayLike<number>,
  x: number,
  side: 'upper' | 'lower' = 'upper',
): number {
  const { panels } = flow;
  const step = side === 'upper' ? -1 : 1;
  let i = panels.count / 2;
  while (panels.x[i + step]! < x) i += step;
  const share = (x - panels.x[i]!) / (panels.x[i + step]! - panels.x[i]!);
  return Math.abs(speed[i]! + share * (speed[i + step]! - speed[i]!));
}

/** A place on an exact section and the speed there in a stream of speed 1. */
export interface ExactPoint {
  x: number;
  y: number;
  speed: number; // clockwise
}

/**
 * Symmetric Karman-Trefftz section from the circle through 1 about -epsilon: (z - n)/(z + n) = ((w - 1)/(w + 1))^n,
 * n = 2 - (trailing edge angle)/pi; n = 2 is Joukowski's. L. M. Milne-Thomson, Theoretical Aerodynamics, ch. 6.
 */
export class KarmanTrefftz {
  private readonly radius: number;
  private readonly n: number;
  private readonly nose: number;
  readonly chord: number; // of the mapped section, before scaling

  constructor(
    private readonly epsilon: number,
    tailAngleDeg: number,
  ) {
    this.radius = 1 + epsilon;
    this.n = 2 - tailAngleDeg / 180;
    this.nose = this.raw(Math.PI).x;
    this.chord = this.n - this.nose;
  }

  /** The point of the circle at an angle from the trailing edge, and its image; chord 1, nose at 0. */
  at(angle: number, alpha: number): ExactPoint {
    const { x, y, derivative } = this.raw(angle);
    // On the circle the speed is 2 (sin(angle - alpha) + sin(alpha)), counter-clockwise negative at the top.
    const onCircle = 2 * (Math.sin(angle - alpha) + Math.sin(alpha));
    return { x: (x - this.nose) / this.chord, y: y / this.chord, speed: onCircle / derivative };
  }

  /** 2 gamma by Kutta and Joukowski: the exact lift coefficient. */
  lift(alpha: number): number {
    return (8 * Math.PI * this.radius * Math.sin(alpha)) / this.chord;
  }

  points(count: number): OutlinePoints {
    const at = Array.from({ length: count }, (_, k) => this.at((2 * Math.PI * k) / (count - 1), 0));
    return { x: Float64Array.from(at, (p) => p.x), y: Float64Array.from(at, (p) => p.y) };
  }

  /** The exact point of the upper side (angle 0 to pi) over x/c. */
  over(x: number, alpha: number): ExactPoint {
    let [low, high] = [0, Math.PI];
    for (let k = 0; k < 60; k++) {
      const middle = 0.5 * (low + high);
      if (this.at(middle, alpha).x > x) low = middle;
      else high = middle;
    }
    return this.at(0.5 * (low + high), alpha);
  }

  private raw(angle: number): { x: number; y: number; derivative: number } {
    const { n } = this;
    const wx = -this.epsilon + this.radius * Math.cos(angle);
    const wy = this.radius * Math.sin(angle);
    const below = Math.hypot(wx - 1, wy);
    const above = Math.hypot(wx + 1, wy);
    const ratio = (below / above) ** n;
    const turn = n * (Math.atan2(wy, wx - 1) - Math.atan2(wy, wx + 1));
    const [tx, ty] = [ratio * Math.cos(turn), ratio * Math.sin(turn)]; // ((w - 1)/(w + 1))^n
    const size = (1 - tx) ** 2 + ty ** 2;
    const x = (n * (1 - tx * tx - ty * ty)) / size; // n (1 + t)/(1 - t)
    const y = (2 * n * ty) / size;
    // dz/dw = 4 n^2 t/((1 - t)^2 (w^2 - 1))
    const derivative = (4 * n * n * ratio) / (size * below * above);
    return { x, y, derivative };
  }
}
