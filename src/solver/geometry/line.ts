/**
 * A line that runs along one half at a given slope, integrals over the half, and the panels that both are made of.
 *
 * Four-point Gauss-Legendre on panels bunched as the cube of the distance to root, tip and every knot of a law, so that
 * the square-root tip of an elliptic chord and the fractional power of a late droop cost no accuracy (positions to
 * 1e-9 m; to 2e-7 m beside a knot from which an angle starts upright, as with a power below 1).
 */

export interface Point {
  y: number;
  z: number;
}

// Abscissae and weights of four-point Gauss-Legendre on [0, 1]: Abramowitz & Stegun, table 25.4.
const GAUSS_AT = [0.06943184420297371, 0.33000947820757187, 0.6699905217924281, 0.9305681557970263];
const GAUSS_WEIGHT = [0.17392742256872692, 0.32607257743127305, 0.32607257743127305, 0.17392742256872692];

/** Those points and both ends of the piece: through them runs a polynomial of the fifth degree. */
const KNOWN_AT = [0, ...GAUSS_AT, 1];
const KNOWN = KNOWN_AT.length;

/**
 * Its integral from 0 to t: row by row, the coefficients of t to t^6 in the integral of Lagrange's polynomial that is 1 at
 * the one point and 0 at the others. At 1 the sum of a row is the weight above, and nothing for the ends.
 */
const PART = Float64Array.from(
  KNOWN_AT.flatMap((own) => {
    let polynomial = [1];
    for (const other of KNOWN_AT) {
      if (other === own) continue;
      const times = [0, ...polynomial]; // by t
      polynomial = times.map((value, k) => (value - other * (polynomial[k] ?? 0)) / (own - other));
    }
    return polynomial.map((value, k) => value / (k + 1));
  }),
);

/** Panel edges over [0, 1], split at knots and bunched as the cube of the distance at both ends of each piece. */
export function panelEdges(knots: readonly number[]): Float64Array {
  const ends = [0, ...new Set(knots.filter((knot) => knot > 0 && knot < 1)), 1].sort((a, b) => a - b);
  const pieces = ends.length - 1;
  const each = Math.max(4, Math.ceil(32 / pieces));
  const edges = new Float64Array(pieces * each + 1);
  for (let piece = 0; piece < pieces; piece++) {
    const from = ends[piece]!;
    const width = ends[piece + 1]! - from;
    for (let k = 0; k < each; k++) {
      const t = k / each;
      edges[piece * each + k] = from + width * t * t * t * (10 + t * (6 * t - 15));
    }
  }
  edges[pieces * each] = 1;
  return edges;
}

/** Integral over eta. */
export function integrate(f: (eta: number) => number, panels: Float64Array): number {
  let sum = 0;
  for (let k = 0; k + 1 < panels.length; k++) {
    const from = panels[k]!;
    const width = panels[k + 1]! - from;
    for (let g = 0; g < 4; g++) sum += GAUSS_WEIGHT[g]! * width * f(from + GAUSS_AT[g]! * width);
  }
  return sum;
}

export interface Line {
  /** y and z of the line at eta, relative to the root, into `at`. */
  locate(eta: number, at: Point): void;
}

/** Every panel of the line is kept as the polynomials that y and z follow along it. */
export function traceLine(droop: (eta: number) => number, halfLength: number, panels: Float64Array): Line {
  const last = panels.length - 1;
  const y = new Float64Array(last + 1); // at the edges
  const z = new Float64Array(last + 1);
  const across = new Float64Array(KNOWN * last); // coefficients of t to t^6, panel by panel
  const down = new Float64Array(KNOWN * last);
  for (let k = 0; k < last; k++) {
    const width = panels[k + 1]! - panels[k]!;
    const own = KNOWN * k;
    for (let g = 0; g < KNOWN; g++) {
      const angle = droop(panels[k]! + KNOWN_AT[g]! * width);
      const c = width * Math.cos(angle);
      const s = width * Math.sin(angle);
      for (let m = 0; m < KNOWN; m++) {
        across[own + m]! += c * PART[KNOWN * g + m]!;
        down[own + m]! += s * PART[KNOWN * g + m]!;
      }
    }
    y[k + 1] = y[k]! + along(across, own, 1);
    z[k + 1] = z[k]! - along(down, own, 1);
  }
  return {
    locate(eta, at) {
      let low = 0;
      let high = last;
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if (panels[middle]! <= eta) low = middle;
        else high = middle;
      }
      const t = Math.max(0, (eta - panels[low]!) / (panels[low + 1]! - panels[low]!));
      at.y = halfLength * (y[low]! + along(across, KNOWN * low, t));
      at.z = halfLength * (z[low]! - along(down, KNOWN * low, t));
    },
  };
}

/** A panel's polynomial at t. */
function along(coefficients: Float64Array, from: number, t: number): number {
  let sum = 0;
  for (let k = from + KNOWN - 1; k >= from; k--) sum = t * (sum + coefficients[k]!);
  return sum;
}

/** The points and weights of an integral over eta whose chord may end in a square root: eta = 1 - u^2 takes it out. */
export function eachToTip(panels: Float64Array, visit: (eta: number, weight: number) => void): void {
  for (let k = 0; k + 1 < panels.length; k++) {
    const from = Math.sqrt(1 - panels[k]!);
    const width = from - Math.sqrt(1 - panels[k + 1]!);
    for (let g = 0; g < 4; g++) {
      const u = from - GAUSS_AT[g]! * width;
      visit(1 - u * u, GAUSS_WEIGHT[g]! * width * 2 * u);
    }
  }
}
