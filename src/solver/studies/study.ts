/**
 * A study that may take a while: a generator that yields the share done (0 to 1) between cases and returns its result.
 * Whoever runs it may stop asking at any yield; nothing has to be undone.
 */
export type Study<Result> = Generator<number, Result, void>;

/** Runs a study to its end. */
export function finish<Result>(study: Study<Result>): Result {
  for (;;) {
    const step = study.next();
    if (step.done) return step.value;
  }
}

/** A study as part of another: its shares done lie between `from` and `to`. */
export function* within<Result>(study: Study<Result>, from: number, to: number): Study<Result> {
  for (;;) {
    const step = study.next();
    if (step.done) return step.value;
    yield from + (to - from) * step.value;
  }
}
