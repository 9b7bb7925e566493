export function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

/** To so many decimals, without a minus zero. */
export function round(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0;
}

/** To the nearest multiple of a step. */
export function roundTo(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toPrecision(12)) + 0;
}

// Preferred numbers, ISO 3, series R40: each about six percent more than the one before.
const STEPS = [
  1, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.12, 2.24, 2.36, 2.5, 2.65, 2.8, 3, 3.15,
  3.35, 3.55, 3.75, 4, 4.25, 4.5, 4.75, 5, 5.3, 5.6, 6, 6.3, 6.7, 7.1, 7.5, 8, 8.5, 9, 9.5, 10,
];

/** The smallest preferred number not below a value. */
export function nextPreferred(value: number): number {
  if (!(value > 0)) return 1;
  const decade = 10 ** Math.floor(Math.log10(value));
  return decade * STEPS.find((step) => step * decade >= value * (1 - 1e-9))!;
}
