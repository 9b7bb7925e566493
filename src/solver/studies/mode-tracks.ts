/**
 * How every mode of the craft, and every derivative behind it, moves as the wing droops further: the same family of bent
 * wings as the droop sweep, the whole craft with its strut. Columns run over the amplitudes in degrees; NaN where a
 * mode of that kind does not exist, and where the wing cannot be drawn or carries the weight at no angle.
 */
import type { Design } from '../design/document.ts';
import { Bender, type Kept } from '../geometry/bend.ts';
import type { ConditionOptions, Derivatives } from '../report.ts';
import { FlowPool } from '../vortex/flow.ts';
import { conditionOf, resolutionOf } from './condition.ts';
import { type Coupling, couplingOf } from './coupling.ts';
import { craftFor } from './craft-for.ts';
import type { LateralKind, VerticalKind } from './mode-kinds.ts';
import { type Modes, modesOf } from './modes.ts';
import { profileFor } from './profile-for.ts';
import { runFoil } from './running.ts';
import type { Study } from './study.ts';
import { sumOf } from './sums.ts';

export interface ModeTracksOptions {
  kept?: Kept;
  count?: number; // default 13
  to?: number; // degrees; default 45, or the present droop where that is more
  condition?: Omit<ConditionOptions, 'alpha'>;
}

export interface ModeTrack {
  real: Float64Array; // 1/s
  imaginary: Float64Array;
}

export interface ModeTracks {
  present: number; // degrees
  amplitude: Float64Array;
  modes: Partial<Record<LateralKind | VerticalKind, ModeTrack>>;
  fallHeldStraight: Float64Array; // 1/s
  /** Of the craft about the balance point, vortex and strip drag: the whole, and what of it the strut makes. */
  derivatives: Record<keyof Derivatives, { total: Float64Array; strut: Float64Array }>;
}

/** Throws where no bend can be drawn and carries the weight. */
export function* modeTracks(design: Design, options: ModeTracksOptions = {}): Study<ModeTracks> {
  const { kept = 'unrolled', count = 13, condition: asked = {} } = options;
  const condition = conditionOf(design.brief, asked);
  const resolution = resolutionOf(asked);
  const pool = new FlowPool();
  const profile = profileFor(design, resolution.sections);
  const bender = new Bender(design.wing, kept);
  const to = options.to ?? Math.max(45, bender.present);
  const amplitude = Float64Array.from({ length: count }, (_, k) => (to * k) / (count - 1));
  const column = () => new Float64Array(count).fill(Number.NaN);
  const modes: ModeTracks['modes'] = {};
  const derivatives = {} as ModeTracks['derivatives'];
  const fallHeldStraight = column();
  const at = (angle: number) => {
    const bent = { ...design, wing: bender.at(angle) };
    const craft = craftFor(bent, condition.depth, resolution);
    const foil = runFoil(pool, 'tracked', craft, condition, 'whole');
    const coupling = couplingOf(pool, foil, condition, profile, design.brief.balance);
    return { coupling, found: modesOf(pool, bent, condition, foil, profile, coupling) };
  };
  let refusal: unknown = null;
  const orNothing = (angle: number) => {
    try {
      return at(angle);
    } catch (error) {
      refusal ??= error;
      return null;
    }
  };
  for (let k = 0; k < count; k++) {
    const solved = orNothing(amplitude[k]!);
    if (solved) {
      note(modes, solved.found, k, column);
      fallHeldStraight[k] = solved.found.fallHeldStraight;
      noteDerivatives(derivatives, solved.coupling, k, column);
    }
    yield (k + 1) / count;
  }
  if (Object.keys(modes).length === 0) throw refusal; // no bend runs: why the least does not
  return { present: bender.present, amplitude, modes, fallHeldStraight, derivatives };
}

function note(
  modes: ModeTracks['modes'],
  { lateral, vertical }: Modes,
  k: number,
  column: () => Float64Array,
): void {
  for (const { kind, real, imaginary } of [...lateral, ...vertical]) {
    modes[kind] ??= { real: column(), imaginary: column() };
    modes[kind].real[k] = real;
    modes[kind].imaginary[k] = imaginary;
  }
}

function noteDerivatives(
  derivatives: ModeTracks['derivatives'],
  { craft: { vortex, profile } }: Coupling,
  k: number,
  column: () => Float64Array,
): void {
  const total = sumOf([vortex.total, profile.total]);
  const strut = sumOf([vortex.strut, profile.strut]);
  for (const key of Object.keys(total) as Array<keyof Derivatives>) {
    derivatives[key] ??= { total: column(), strut: column() };
    derivatives[key].total[k] = total[key];
    derivatives[key].strut[k] = strut[key];
  }
}
