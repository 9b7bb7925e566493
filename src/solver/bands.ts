/**
 * How wide each headline figure stands: what the method leaves open (four rows of vortices along the chord against the
 * one of the default, at 20 strips a side), what the strips leave open (80 a side against the default 40), what a builder's
 * own measurements leave open (each input moved both ways by what it is commonly known to, the halves of the changes added
 * as squares), and what the measured sections scatter by (`stated-bands.ts`). Half widths, in the figure's own unit; null
 * where a figure has no value to compare.
 */

import type { Design } from './design/document.ts';
import { withDroopAmplitude } from './design/laws.ts';
import { STATED } from './design/stated-bands.ts';
import { surfaceOf } from './geometry/surface.ts';
import type { ConditionOptions, Report } from './report.ts';
import { solve } from './solve.ts';
import { attempt as tried } from './studies/attempt.ts';
import { resolutionOf } from './studies/condition.ts';
import { profileFor } from './studies/profile-for.ts';
import { LevelRunner } from './studies/speed.ts';
import type { Study } from './studies/study.ts';
import { lowestSpeed } from './studies/take-off.ts';

/** One design under one set of options: at cruise, at top speed, and where it lifts off. */
interface Answer {
  report: Report;
  top: Report | null;
  takeOff: number | null; // m/s
}

/** Figures of the report at cruise. */
const AT_CRUISE = {
  lostFraction: ({ ledger }: Report) => ledger.lostFraction,
  leanedAway: ({ ledger }: Report) => ledger.leanedAway,
  metAtSmallerAngle: ({ ledger }: Report) => ledger.metAtSmallerAngle,
  extraAlpha: ({ ledger }: Report) => ledger.sameLift.unrolled.extraAlpha,
  extraDrag: ({ ledger }: Report) => ledger.sameLift.unrolled.extraInducedDrag,
  sameSpanAlpha: ({ ledger }: Report) => ledger.sameLift.sameSpan.extraAlpha,
  sameSpanDrag: ({ ledger }: Report) => ledger.sameLift.sameSpan.extraInducedDrag,
  inducedDrag: ({ inducedDrag }: Report) => inducedDrag.farField,
  spanEfficiency: ({ inducedDrag }: Report) => inducedDrag.spanEfficiency,
  leastFactor: ({ inducedDrag }: Report) => inducedDrag.leastFactor,
  holdIndex: ({ stability }: Report) => stability.holdIndex,
  rollFromYaw: ({ stability }: Report) => stability.rollFromYaw,
  yawFromRoll: ({ stability }: Report) => stability.yawFromRoll,
  neutralDroop: ({ stability }: Report) => stability.neutralDroop,
  neutralPoint: ({ stability }: Report) => stability.neutralPoint,
  staticMargin: ({ stability }: Report) => stability.staticMargin,
  stabilizerVolume: ({ stability }: Report) => stability.holdTerms.pitch,
  cruiseDrag: ({ drag }: Report) => drag.total,
  liftToDrag: ({ condition, drag }: Report) => condition.weightCarried / drag.total,
  stallMargin: ({ sections }: Report) => finite(sections.stallMargin),
};

const FIGURES = {
  ...Object.fromEntries(
    Object.entries(AT_CRUISE).map(([name, of]) => [name, ({ report }: Answer) => of(report)]),
  ),
  topDrag: ({ top }: Answer) => top?.drag.total ?? null,
  takeOffSpeed: ({ takeOff }: Answer) => takeOff,
} as Record<BandName, (answer: Answer) => number | null>;

export type BandName = keyof typeof AT_CRUISE | 'topDrag' | 'takeOffSpeed';

/** What the measured sections leave open of the figures that sections decide; null where they do not. */
const BY_SECTIONS: Partial<Record<BandName, (answer: Answer) => number | null>> = {
  cruiseDrag: ({ report }) => STATED.sectionDrag.share * profileDrag(report),
  liftToDrag: ({ report }) =>
    (STATED.sectionDrag.share * profileDrag(report) * report.condition.weightCarried) /
    report.drag.total ** 2,
  topDrag: ({ top }) => top && STATED.sectionDrag.share * profileDrag(top),
  // lift off goes with one over the root of the greatest lift
  takeOffSpeed: ({ takeOff }) => takeOff && 0.5 * STATED.greatestLift.share * takeOff,
};

const profileDrag = ({ drag }: Report) => drag.wingProfile + drag.stabilizerProfile + drag.strutProfile;
const finite = (value: number | null) => (value !== null && Number.isFinite(value) ? value : null);

export interface Band {
  method: number | null;
  strips: number | null;
  inputs: number | null;
  sections: number | null; // null where sections do not decide
}

export interface Bands {
  figures: Record<BandName, Band>;
  known: typeof KNOWN;
}

/** What a builder commonly knows each input to (common practice), half a band each. */
const KNOWN = { droop: 0.5, incidence: 0.1, mass: 0.02, speed: 0.02 }; // degrees, degrees, shares

type Way = -1 | 1;
type Change = (design: Design, way: Way) => Design | null;

const CHANGES: readonly Change[] = [
  (design, way) => {
    const present = (surfaceOf(design.wing).amplitude * 180) / Math.PI;
    const droop = withDroopAmplitude(design.wing.droop, present, present + way * KNOWN.droop);
    return { ...design, wing: { ...design.wing, droop } };
  },
  (design, way) => {
    const { stabilizer } = design;
    if (!stabilizer) return null;
    return {
      ...design,
      stabilizer: { ...stabilizer, incidence: stabilizer.incidence + way * KNOWN.incidence },
    };
  },
  ({ brief, ...design }, way) => ({
    ...design,
    brief: { ...brief, allUpMass: brief.allUpMass * (1 + way * KNOWN.mass) },
  }),
  ({ brief, ...design }, way) => ({
    ...design,
    brief: { ...brief, speeds: { ...brief.speeds, cruise: brief.speeds.cruise * (1 + way * KNOWN.speed) } },
  }),
];

export function* bandStudy(design: Design): Study<Bands> {
  const cases = 4 + 2 * CHANGES.length;
  let done = 0;
  const answers: Array<Answer | null> = [];
  const ask = (changed: Design | null, options: ConditionOptions) => {
    answers.push(changed && attempt(changed, options));
    done++;
    return done / cases;
  };
  yield ask(design, { strips: 20, stabilizerStrips: 10, rows: 1 });
  yield ask(design, { strips: 20, stabilizerStrips: 10, rows: 4 });
  yield ask(design, {});
  yield ask(design, { strips: 80, stabilizerStrips: 40 });
  for (const change of CHANGES) for (const way of [-1, 1] as const) yield ask(change(design, way), {});
  const usual = answers[2];
  const figures = Object.fromEntries(
    Object.entries(FIGURES).map(([name, of]) => [
      name,
      {
        ...bandOf(answers.map((answer) => answer && of(answer))),
        sections: usual ? (BY_SECTIONS[name as BandName]?.(usual) ?? null) : null,
      },
    ]),
  ) as Record<BandName, Band>;
  return { figures, known: KNOWN };
}

/** A shape that cannot be drawn or carried after a change tells nothing. */
function attempt(design: Design, options: ConditionOptions): Answer | null {
  try {
    const at = resolutionOf(options);
    const runner = new LevelRunner(design, at, profileFor(design, at.sections));
    return {
      report: solve(design, options),
      top: tried(() => solve(design, { ...options, speed: design.brief.speeds.top, neutralDroop: false })),
      takeOff: tried(() => lowestSpeed(runner, runner.weight)),
    };
  } catch {
    return null;
  }
}

function bandOf([single, several, usual, fine, ...moved]: Array<number | null>): Omit<Band, 'sections'> {
  const gap = (one: number | null | undefined, other: number | null | undefined) =>
    one == null || other == null ? null : Math.abs(one - other);
  let squares: number | null = null;
  for (let k = 0; k < moved.length; k += 2) {
    const width = gap(moved[k], moved[k + 1]);
    if (width !== null) squares = (squares ?? 0) + (0.5 * width) ** 2;
  }
  return {
    method: gap(single, several),
    strips: gap(usual, fine),
    inputs: squares === null ? null : Math.sqrt(squares),
  };
}
