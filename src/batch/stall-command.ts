/** The command `stall`: where a wing stalls first, at what angle and speed, and how that spreads, as JSON. */
import type { Design } from '../solver/design/document.ts';
import { type StallStudy, stallStudy } from '../solver/studies/stall.ts';
import { finish } from '../solver/studies/study.ts';
import { readCondition } from './condition-words.ts';
import type { OptionKind, Words } from './words.ts';

export const STALL_USAGE = 'stall FILE [--speed M_S]';

export const STALL_WORDS = { speed: 'value' } as const satisfies Record<string, OptionKind>;

/** `open` reads the design. An angle that did not settle carries no figures. */
export function runStall(words: Words, open: () => Design): string {
  const { speed } = readCondition(words);
  const study = finish(stallStudy(open(), speed === undefined ? {} : { speed }));
  return `${JSON.stringify(asWritten(study), null, 2)}\n`;
}

function asWritten({
  depth,
  speed,
  weight,
  usable,
  first,
  greatest,
  points,
  eta,
  y,
  limit,
  usableShare,
}: StallStudy) {
  const finite = (value: number) => (Number.isFinite(value) ? value : null);
  return {
    condition: { depth, speed, weightCarried: weight },
    usable,
    first,
    greatest,
    angles: points.map((point) => ({
      alpha: point.alpha,
      state: point.isSettled ? 'converged' : 'did not settle',
      CL: point.isSettled ? point.CL : null,
      CLwing: point.isSettled ? point.CLwing : null,
      speed: point.isSettled ? finite(point.speed) : null,
      stalledShare: point.isSettled ? point.stalledShare : null,
      cl: point.isSettled ? [...point.cl] : null,
    })),
    strips: Array.from(eta, (at, k) => ({
      eta: at,
      y: y[k],
      usableCl: usableShare * limit[k]!,
      greatestCl: limit[k],
    })),
  };
}
