/** Points and directions in space as three numbers: x aft, y starboard, z up. */
export type Triple = [number, number, number];

export function plus(a: Triple, b: Triple): Triple {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function subtract(a: Triple, b: Triple): Triple {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function scale(a: Triple, by: number): Triple {
  return [a[0] * by, a[1] * by, a[2] * by];
}

export function dot(a: Triple, b: Triple): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function unit(a: Triple): Triple {
  return scale(a, 1 / Math.hypot(...a));
}

export function cross(a: Triple, b: Triple): Triple {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
