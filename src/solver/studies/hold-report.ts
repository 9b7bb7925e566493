/**
 * How far the closed-form hold index may stand in for the solved figures: its rank correlation with each of them over
 * random valid designs. Designs that the reader refuses, that carry their weight at a lift coefficient outside 0.1 to
 * 0.9, or whose modes swing where a heading mode is asked for, are drawn again or left out as said.
 */
import { readDesignValue } from '../design/read.ts';
import { randomFrom } from '../numeric/random.ts';
import { rankCorrelation } from '../numeric/rank.ts';
import { FlowPool } from '../vortex/flow.ts';
import { conditionOf } from './condition.ts';
import { couplingOf } from './coupling.ts';
import { craftFor } from './craft-for.ts';
import { holdTerms } from './hold.ts';
import { modesOf } from './modes.ts';
import { profileFor } from './profile-for.ts';
import { randomDesign } from './random-design.ts';
import { runFoil } from './running.ts';
import type { Study } from './study.ts';

/** Solved figures that the index is held against, each turned so that more is more hold. */
export type HoldFigure = 'rollFromYaw' | 'yawStiffness' | 'yawDamping' | 'slowMode';

/** Rank correlation, -1 to 1, and over how many designs. */
export interface Correlation {
  value: number;
  designs: number;
}

export interface HoldReport {
  seed: number;
  designs: number;
  drawn: number; // with those refused
  index: Record<HoldFigure, Correlation>;
  /** Only the designs whose stabilizer droops down, as the wing does. */
  indexDown: Record<HoldFigure, Correlation>;
  /** The index's two factors by themselves. */
  rollTerm: Record<HoldFigure, Correlation>;
  yawTerm: Record<HoldFigure, Correlation>;
  /** The index over the first designs alone: quickly made again, it tells whether a kept report is still true. */
  first: { designs: number; index: Record<HoldFigure, Correlation> };
}

interface Sample {
  index: number;
  rollTerm: number;
  yawTerm: number;
  droopsDown: boolean;
  figures: Record<HoldFigure, number>; // NaN where a design has none
}

const RESOLUTION = { strips: 24, stabilizerStrips: 12, rows: 1 };
const FIRST = 25;
const LIFT_COEFFICIENTS = [0.1, 0.9] as const;

export function* holdReport(seed: number, designs: number): Study<HoldReport> {
  const random = randomFrom(seed);
  const pool = new FlowPool();
  const samples: Sample[] = [];
  let drawn = 0;
  while (samples.length < designs) {
    drawn++;
    const sample = sampleOf(pool, random);
    if (sample) samples.push(sample);
    yield samples.length / designs;
  }
  const first = samples.slice(0, FIRST);
  return {
    seed,
    designs,
    drawn,
    index: correlate(samples, ({ index }) => index),
    indexDown: correlate(
      samples.filter(({ droopsDown }) => droopsDown),
      ({ index }) => index,
    ),
    rollTerm: correlate(samples, ({ rollTerm }) => rollTerm),
    yawTerm: correlate(samples, ({ yawTerm }) => yawTerm),
    first: { designs: first.length, index: correlate(first, ({ index }) => index) },
  };
}

const FIGURES: readonly HoldFigure[] = ['rollFromYaw', 'yawStiffness', 'yawDamping', 'slowMode'];

function correlate(
  samples: readonly Sample[],
  measure: (sample: Sample) => number,
): Record<HoldFigure, Correlation> {
  const entries = FIGURES.map((figure) => {
    const known = samples.filter(({ figures }) => Number.isFinite(figures[figure]));
    const value = rankCorrelation(
      known.map(measure),
      known.map(({ figures }) => figures[figure]),
    );
    return [figure, { value, designs: known.length }] as const;
  });
  return Object.fromEntries(entries) as Record<HoldFigure, Correlation>;
}

function sampleOf(pool: FlowPool, random: () => number): Sample | null {
  const reading = readDesignValue(randomDesign(random));
  if (!reading.ok) return null;
  const { design } = reading;
  const condition = conditionOf(design.brief, {});
  const craft = craftFor(design, condition.depth, RESOLUTION);
  const foil = runFoil(pool, 'sample', craft, condition, 'whole');
  if (!(foil.CL > LIFT_COEFFICIENTS[0] && foil.CL < LIFT_COEFFICIENTS[1])) return null;
  const profile = profileFor(design);
  const coupling = couplingOf(pool, foil, condition, profile, design.brief.balance);
  const { lateral } = modesOf(pool, design, condition, foil, profile, coupling);
  const heading = lateral.find(({ kind }) => kind === 'heading');
  const { total } = coupling.foil.vortex;
  const hold = holdTerms(craft.wing, craft.stabilizer, foil.CL);
  return {
    index: hold.index ?? Number.NaN,
    rollTerm: hold.roll ?? Number.NaN,
    yawTerm: hold.yaw,
    droopsDown: (craft.stabilizer?.effectiveDroop ?? 0) > 0,
    figures: {
      rollFromYaw: -total.Clr / Math.abs(total.Clp),
      yawStiffness: total.Cnbeta,
      yawDamping: -(total.Cnr + coupling.foil.profile.total.Cnr),
      slowMode: heading ? -heading.real : Number.NaN,
    },
  };
}
