/** Adds derivative sets key by key. */
export function sumOf<T extends { [K in keyof T]: number }>(sets: readonly T[]): T {
  const keys = Object.keys(sets[0]!) as Array<keyof T>;
  return Object.fromEntries(keys.map((key) => [key, sets.reduce((sum, set) => sum + set[key], 0)])) as T;
}
