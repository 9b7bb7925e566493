/** A running state that does not exist has no figure: null, where the series says why. */
export function attempt<Value>(f: () => Value): Value | null {
  try {
    return f();
  } catch {
    return null;
  }
}
