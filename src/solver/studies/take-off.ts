/** Take-off: the lowest speed of level running with the surface near, what limits it and what moves it. SI; degrees. */
import type { Design } from '../design/document.ts';
import { scaledChord } from '../geometry/scale.ts';
import { findRoot } from '../numeric/roots.ts';
import { GRAVITY } from './condition.ts';
import type { LevelRunner } from './speed.ts';

const DEGREES = 180 / Math.PI;

export interface TakeOff {
  speed: number; // m/s, lowest with every wing strip inside its usable lift coefficient
  eta: number; // the strip that limits it
  alpha: number; // degrees
  CLwing: number;
  perTenKilograms: number; // m/s more for 10 kg more rider
  perTenPercentArea: number; // m/s for a wing with 10 % more chord everywhere
}

/** Depth at which a foil lifts off, m: the brief's take-off depth, or its depth. */
export function takeOffDepth(design: Design): number | null {
  return design.brief.depths?.takeOff ?? design.brief.depth;
}

/**
 * Lowest speed of level running with the surface near (the brief's take-off depth), stance free to follow. Null when
 * the profile model knows no greatest lift, or no speed from 0.5 to 30 m/s does it.
 */
export function takeOff(make: (design: Design) => LevelRunner, design: Design): TakeOff | null {
  const runner = make(design);
  const base = lowestSpeed(runner, runner.weight);
  if (base === null) return null;
  const state = runner.run(base, 'incidence', takeOffDepth(design));
  const heavier = lowestSpeed(runner, runner.weight + (1 - design.brief.upwardPull) * 10 * GRAVITY);
  const larger = make(withMoreChord(design, 1.1));
  const onLarger = lowestSpeed(larger, larger.weight);
  return {
    speed: base,
    eta: runner.rigFor(state.depth).eta[state.stallStrip] ?? 0,
    alpha: state.alpha * DEGREES,
    CLwing: state.liftCoefficients.wing,
    perTenKilograms: (heavier ?? Number.NaN) - base,
    perTenPercentArea: (onLarger ?? Number.NaN) - base,
  };
}

/** Lowest speed (m/s) that carries a weight (N) with every strip of the wing inside its usable lift; null as above. */
export function lowestSpeed(runner: LevelRunner, weight: number): number | null {
  const depth = takeOffDepth(runner.design);
  const margin = (speed: number) => {
    try {
      return runner.run(speed, 'incidence', depth, weight).stallMargin;
    } catch {
      return -1; // no angle carries it: slower than take-off
    }
  };
  const top = margin(30);
  if (!Number.isFinite(top) || top < 0) return null;
  return findRoot(margin, 0.5, 30, 1e-4, margin(0.5), top);
}

function withMoreChord(design: Design, factor: number): Design {
  return { ...design, wing: { ...design.wing, chord: scaledChord(design.wing.chord, factor) } };
}
