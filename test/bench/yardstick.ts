/**
 * What every bench shares: medians of repeated runs, and the yardstick that makes runs on other machines comparable, a
 * plain dense product of two 128 by 128 matrices timed in the same run.
 */

let sink = 0;

/** Keeps a result from being optimised away. */
export function keep(value: number): void {
  sink += value;
  if (!Number.isFinite(sink)) throw new Error('the benchmark computed nothing finite');
}

export function timed(run: () => void): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}

/** Times of repeated runs, ms. */
export interface Timing {
  median: number;
  low: number; // a tenth of the runs were quicker
  high: number; // a tenth were slower
}

/**
 * Times of several things each done once in every round, ms: a machine that changes its speed changes all of them alike.
 * The first fifth warms up and is not counted.
 */
export function inTurn<Name extends string>(
  runs: Record<Name, (round: number) => void>,
  rounds: number,
): Record<Name, number[]> {
  const names = Object.keys(runs) as Name[];
  const times = Object.fromEntries(names.map((name) => [name, [] as number[]])) as Record<Name, number[]>;
  const warmUp = Math.ceil(rounds / 5);
  for (let round = 0; round < rounds + warmUp; round++)
    for (const name of names) {
      const time = timed(() => runs[name](round));
      if (round >= warmUp) times[name].push(time);
    }
  return times;
}

/** Times repeated runs of one thing. */
export const measure = (run: (round: number) => void, rounds: number): Timing =>
  spreadOf(inTurn({ run }, rounds).run);

/** Median of times taken elsewhere, and a tenth of them either way; of few, the least and the most. */
export function spreadOf(times: readonly number[]): Timing {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  return { median: at(0.5), low: at(0.1), high: at(0.9) };
}

/** Their median alone, ms. */
export const median = (run: (k: number) => void, runs: number): number => measure(run, runs).median;

const SIZE = 128;

function multiply(one: Float64Array, other: Float64Array, product: Float64Array): void {
  product.fill(0);
  for (let i = 0; i < SIZE; i++)
    for (let k = 0; k < SIZE; k++) {
      const share = one[i * SIZE + k]!;
      for (let j = 0; j < SIZE; j++) product[i * SIZE + j]! += share * other[k * SIZE + j]!;
    }
  keep(product[17]!);
}

/** The yardstick, to be timed. */
export function yardstick(): () => void {
  const one = Float64Array.from({ length: SIZE * SIZE }, (_, k) => Math.sin(k));
  const other = Float64Array.from({ length: SIZE * SIZE }, (_, k) => Math.cos(k));
  const product = new Float64Array(SIZE * SIZE);
  return () => multiply(one, other, product);
}

/** A printer of medians, with the tenth of the runs below and above, beside their ratio to the yardstick, ms. */
export function printer(
  digits = 2,
  unit = median(yardstick(), 200),
): { line(name: string, time: Timing | number): void; unit: number } {
  return {
    unit,
    line: (name, time) => {
      const middle = typeof time === 'number' ? time : time.median;
      const spread =
        typeof time === 'number'
          ? ', one run'
          : `, ${time.low.toFixed(digits)} to ${time.high.toFixed(digits)}`;
      console.log(
        `${name}: ${middle.toFixed(digits)} ms${spread} (${(middle / unit).toFixed(2)} of the yardstick)`,
      );
    },
  };
}

export const sayYardstick = (unit: number): void =>
  console.log(`yardstick, dense product of two ${SIZE} by ${SIZE} matrices: ${unit.toFixed(2)} ms`);
