/**
 * What a builder can do to a foil that exists: a shim under the stabilizer, a longer or shorter fuselage, a larger or
 * smaller stabilizer of the same shape. Each is run level with the wedge left as it is, so that the stance moves: that is
 * what the rider feels. Lengths in m, areas in m2, forces in N, angles in degrees.
 */
import type { Design } from '../design/document.ts';
import type { ConditionOptions } from '../report.ts';
import { StabilizerTrials, type TriedStabilizer } from './stabilizer-trials.ts';
import type { Study } from './study.ts';

export interface ChangeOptions {
  shim?: number; // degrees, default 0.5
  length?: number; // m of fuselage, default 0.05
  share?: number; // of the area, default 0.1
  condition?: Omit<ConditionOptions, 'alpha'>;
}

export type StabilizerChange =
  | 'present'
  | 'noseUp'
  | 'noseDown'
  | 'longer'
  | 'shorter'
  | 'larger'
  | 'smaller';

/** The foil as it would run, or why it cannot. */
export interface ChangeTrial {
  change: StabilizerChange;
  found: TriedStabilizer | null;
  problem: string | null;
}

export interface StabilizerChanges {
  shim: number;
  length: number;
  share: number;
  trials: ChangeTrial[]; // the present foil first
}

/** Null for a foil without a stabilizer. */
export function* stabilizerChanges(
  design: Design,
  options: ChangeOptions = {},
): Study<StabilizerChanges | null> {
  const { stabilizer } = design;
  if (!stabilizer) return null;
  const { shim = 0.5, length = 0.05, share = 0.1 } = options;
  const { arm, incidence } = stabilizer;
  const cases: Array<[StabilizerChange, number, number, number]> = [
    ['present', arm, 1, incidence],
    ['noseUp', arm, 1, incidence + shim],
    ['noseDown', arm, 1, incidence - shim],
    ['longer', arm + length, 1, incidence],
    ['shorter', arm - length, 1, incidence],
    ['larger', arm, Math.sqrt(1 + share), incidence],
    ['smaller', arm, Math.sqrt(1 - share), incidence],
  ];
  const bench = new StabilizerTrials(design, stabilizer, options.condition ?? {});
  const trials: ChangeTrial[] = [];
  for (const [change, at, scale, wedge] of cases) {
    trials.push(trialOf(bench, change, at, scale, wedge));
    yield trials.length / cases.length;
  }
  return { shim, length, share, trials };
}

function trialOf(
  bench: StabilizerTrials,
  change: StabilizerChange,
  arm: number,
  scale: number,
  incidence: number,
): ChangeTrial {
  try {
    return { change, found: bench.run(arm, scale, 'incidence', incidence), problem: null };
  } catch (error) {
    return { change, found: null, problem: error instanceof Error ? error.message : String(error) };
  }
}
