/**
 * The figures that a proposal can be held to: each the figure of that name which the rest of the program shows. A figure
 * that is the worst of many strips or places is handed out part by part as well, so that a search sees smooth values.
 */

import type { LimitName } from '../../design/wanted.ts';
import { rootMoment } from '../../forces/root-moment.ts';
import { thicknessRatio } from '../../geometry/outline.ts';
import { PressureWatch } from '../cavitation.ts';
import { holdTerms } from '../hold.ts';
import type { Fix, RunningState } from '../level-running.ts';
import { lowestSpeed, takeOffDepth } from '../take-off.ts';
import { strutGive } from '../thin.ts';
import { type Candidate, SPEED_NAMES } from './candidate.ts';

/** The two margins are held either way a rider may trim: the incidence kept, as drawn, and the stance kept. */
export type FigureName = LimitName | 'stallMarginOnStance' | 'cavitationMarginOnStance' | 'turnOnStance';

export interface Figure {
  unit: '' | 'm' | 'm/s' | 'N m' | 'deg';
  scale: number; // a difference that matters: what the search measures by
  step: number; // by which a builder would ease it
  /** Null where the design has no such figure. */
  value(candidate: Candidate): number | null;
  /** The values whose least (or, held from above, greatest) is the figure; the figure alone when left out. */
  parts?(candidate: Candidate): ArrayLike<number>;
  /** Margins, met at 0 or above, of being at most `limit`, where the figure itself is a root. */
  below?(candidate: Candidate, limit: number): ArrayLike<number>;
}

const RADIANS = Math.PI / 180;
const NEAR_TIP = 0.95; // eta, where a law runs to a point

function tipStation({ rig }: Candidate): number {
  return rig.craft.wing.chord(1) > 0 ? 1 : NEAR_TIP;
}

/** Chord times thickness at the root and near the tip. */
function thicknesses(candidate: Candidate): number[] {
  const { section } = candidate.design.wing;
  const { chord } = candidate.rig.craft.wing;
  const [root, tip] = [thicknessRatio(section.root), thicknessRatio(section.tip)];
  const eta = tipStation(candidate);
  return [root * chord(0), (root + (tip - root) * eta) * chord(eta)];
}

/** Of every place at top speed. */
function pressureMargins(candidate: Candidate, fix: Fix): number[] {
  const watch = new PressureWatch(candidate.runner);
  return watch.points(candidate.at('top', fix)).map(({ margin }) => margin);
}

/** Least of strips that know a greatest lift. */
function stall({ stallMargin }: RunningState): number | null {
  return Number.isFinite(stallMargin) ? stallMargin : null;
}

const stances = (candidate: Candidate) =>
  SPEED_NAMES.map((name) => candidate.at(name).stance - candidate.design.brief.balance.x);

/** Degrees that the stabilizer turns from its drawn incidence to keep the stance at take-off. */
function turnOnStance(candidate: Candidate): number {
  return candidate.at('takeOff', 'stance').incidence - (candidate.design.stabilizer?.incidence ?? 0);
}

const least = (values: readonly number[]) => Math.min(...values);

export const FIGURES: Readonly<Record<FigureName, Figure>> = {
  holdIndex: {
    unit: '',
    scale: 10,
    step: 1,
    value: (candidate) => {
      const { wing, stabilizer } = candidate.rig.craft;
      return stabilizer ? holdTerms(wing, stabilizer, candidate.liftCoefficient).index : null;
    },
  },
  rollFromYaw: {
    unit: '',
    scale: 0.1,
    step: 0.01,
    value: ({ rollFromYaw }) => rollFromYaw,
  },
  staticMargin: {
    unit: '',
    scale: 0.5,
    step: 0.05,
    value: ({ staticMargin }) => staticMargin,
  },
  span: { unit: 'm', scale: 0.5, step: 0.01, value: ({ rig }) => rig.craft.wing.span },
  tipChord: {
    unit: 'm',
    scale: 0.05,
    step: 0.001,
    value: (candidate) => candidate.rig.craft.wing.chord(tipStation(candidate)),
  },
  thickness: {
    unit: 'm',
    scale: 0.005,
    step: 0.0005,
    value: (candidate) => least(thicknesses(candidate)),
    parts: thicknesses,
  },
  strutDeflection: {
    unit: 'm',
    scale: 0.03,
    step: 0.001,
    value: ({ design }) => (design.strut ? strutGive(design, design.strut).deflection : null),
  },
  takeOffSpeed: {
    unit: 'm/s',
    scale: 4,
    step: 0.1,
    value: ({ runner }) => lowestSpeed(runner, runner.weight),
    below: (candidate, limit) =>
      candidate.running(limit, 'incidence', takeOffDepth(candidate.design)).stripMargin,
  },
  stallMargin: {
    unit: '',
    scale: 0.3,
    step: 0.02,
    value: (candidate) => stall(candidate.at('takeOff')),
    parts: (candidate) => candidate.at('takeOff').stripMargin,
  },
  stallMarginOnStance: {
    unit: '',
    scale: 0.3,
    step: 0.02,
    value: (candidate) => (candidate.design.stabilizer ? stall(candidate.at('takeOff', 'stance')) : null),
    parts: (candidate) => candidate.at('takeOff', 'stance').stripMargin,
  },
  /** Beyond 30 degrees no incidence keeps the stance and level running ends: the search must see that end coming. */
  turnOnStance: {
    unit: 'deg',
    scale: 10,
    step: 1,
    value: (candidate) => (candidate.design.stabilizer ? Math.abs(turnOnStance(candidate)) : null),
    parts: (candidate) => [turnOnStance(candidate), -turnOnStance(candidate)],
  },
  cavitationMargin: {
    unit: '',
    scale: 0.2,
    step: 0.02,
    value: (candidate) => least(pressureMargins(candidate, 'incidence')),
    parts: (candidate) => pressureMargins(candidate, 'incidence'),
  },
  cavitationMarginOnStance: {
    unit: '',
    scale: 0.2,
    step: 0.02,
    value: (candidate) => (candidate.design.stabilizer ? least(pressureMargins(candidate, 'stance')) : null),
    parts: (candidate) => (candidate.design.stabilizer ? pressureMargins(candidate, 'stance') : []),
  },
  tipDepth: {
    unit: 'm',
    scale: 0.3,
    step: 0.01,
    value: ({ condition, rig }) =>
      condition.depth === null ? null : condition.depth + rig.craft.wing.tipDrop,
  },
  rootMoment: {
    unit: 'N m',
    scale: 50,
    step: 1,
    value: (candidate) => {
      const { density, speed } = candidate.condition;
      return rootMomentOf(candidate).bending * density * speed ** 2;
    },
  },
  stanceShift: {
    unit: 'm',
    scale: 0.3,
    step: 0.01,
    value: (candidate) => Math.max(...stances(candidate).map(Math.abs)),
    parts: (candidate) => stances(candidate).flatMap((shift) => [shift, -shift]),
  },
};

/** Per rho V^2 at cruise. */
export function rootMomentOf(candidate: Candidate): { bending: number; second: number } {
  const { alpha, incidence } = candidate.at('cruise');
  const turn = (incidence - (candidate.design.stabilizer?.incidence ?? 0)) * RADIANS;
  return rootMoment(candidate.rig.flow, alpha, turn);
}
