/**
 * Work in slices: a generator that yields the share done (0 to 1) now and then and returns its result. Whoever runs it
 * may stop asking at any yield; nothing has to be undone.
 */
export type Sliced<Result> = Generator<number, Result, void>;

/** Runs it to its end. */
export function finish<Result>(work: Sliced<Result>): Result {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

/** One as part of another: its shares done lie between `from` and `to`. */
export function* within<Result>(work: Sliced<Result>, from: number, to: number): Sliced<Result> {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    yield from + (to - from) * step.value;
  }
}
