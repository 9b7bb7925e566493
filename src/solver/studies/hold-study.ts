/**
 * How the foil keeps its line, solved: the coupling of slip, roll and turn part by part, the modes of the untended craft,
 * and how far the method itself leaves each of them open.
 *
 * Method band: the difference between one row of vortices along the chord and four, at equal strips.
 */
import type { Design } from '../design/document.ts';
import type { Resolution } from '../geometry/craft.ts';
import type { ConditionOptions, Derivatives } from '../report.ts';
import { FlowPool } from '../vortex/flow.ts';
import { conditionOf, resolutionOf } from './condition.ts';
import {
  alongStream,
  type ByPart,
  type Coupling,
  couplingOf,
  type LateralCoupling,
  type Ratios,
  ratiosOf,
} from './coupling.ts';
import { craftFor } from './craft-for.ts';
import { holdTerms } from './hold.ts';
import type { LateralKind, VerticalKind } from './mode-kinds.ts';
import { type Modes, modesOf } from './modes.ts';
import type { Pushes } from './motion.ts';
import { downwashSlope, neutralPoint } from './pitch.ts';
import { profileFor } from './profile-for.ts';
import { runFoil } from './running.ts';
import type { Study } from './study.ts';
import { sumOf } from './sums.ts';

export interface HoldOptions {
  axes?: 'design' | 'stream'; // along which the lateral derivatives are given; default the design's own
  condition?: Omit<ConditionOptions, 'alpha'>;
}

export interface HoldStudy {
  speed: number; // m/s
  CL: number;
  alpha: number; // rad
  strutShare: number | null; // of the craft's side force in a slip; null without a strut
  coupling: Coupling;
  /** What one of a lateral coefficient is here: N of side force, N m of roll and yaw; and b/2V, s, that makes rates plain numbers. */
  scale: { force: number; moment: number; rate: number };
  ratios: { foilVortex: Ratios; foil: Ratios; craft: Ratios }; // the latter two with strip drag
  /**
   * Two figures that are easily taken for one another, both in mean chords: how far the neutral point lies behind the
   * balance point, and -dCm/dCL about the balance point with every drag at its own depth.
   */
  margins: { geometric: number; withDrag: number };
  neutralPoint: number; // m aft of the origin
  stabilizer: { volume: number; downwashSlope: number } | null; // V_H; d(downwash)/d(alpha) at it
  modes: Modes;
  band: {
    foil: Derivatives; // of the vortex part, about the origin
    craft: Derivatives; // about the balance point, with the strut
    modes: Partial<Record<LateralKind | VerticalKind, number>>; // 1/s, of the real part
  };
  isProfileAssumed: boolean;
}

export function* holdStudy(
  design: Design,
  { condition = {}, axes = 'design' }: HoldOptions = {},
): Study<HoldStudy> {
  const pool = new FlowPool();
  const { sections } = resolutionOf(condition);
  const at = (resolution: Resolution) => turned(holdAt(pool, design, condition, resolution), axes);
  const fine = at(resolutionOf(condition));
  yield 0.2;
  const coarse = at({ ...BAND_RESOLUTION, rows: 1, sections });
  yield 0.3;
  const rows = at({ ...BAND_RESOLUTION, rows: 4, sections });
  const band = {
    foil: gap(coarse.coupling.foil.vortex.total, rows.coupling.foil.vortex.total),
    craft: gap(coarse.coupling.craft.vortex.total, rows.coupling.craft.vortex.total),
    modes: modeGap(coarse.modes, rows.modes),
  };
  const { foil, craft } = fine.coupling;
  return {
    ...fine,
    band,
    ratios: {
      foilVortex: ratiosOf(foil.vortex.total, band.foil),
      foil: ratiosOf(sumOf([foil.vortex.total, foil.profile.total]), band.foil),
      craft: ratiosOf(sumOf([craft.vortex.total, craft.profile.total]), band.craft),
    },
    isProfileAssumed: profileFor(design, sections).source === 'fixed',
  };
}

/** Modes of a design at its cruise speed or another, by themselves. */
export function modesAt(design: Design, options: Omit<ConditionOptions, 'alpha'> = {}): Modes {
  return holdAt(new FlowPool(), design, options, resolutionOf(options)).modes;
}

/** Strips at which the method band is taken: four rows of them are still quick. */
export const BAND_RESOLUTION: Omit<Resolution, 'rows'> = { strips: 20, stabilizerStrips: 10 };

function holdAt(
  pool: FlowPool,
  design: Design,
  options: Omit<ConditionOptions, 'alpha'>,
  resolution: Resolution,
) {
  const condition = conditionOf(design.brief, options);
  const craft = craftFor(design, condition.depth, resolution);
  const foil = runFoil(pool, 'hold', craft, condition, 'whole');
  const profile = profileFor(design, resolution.sections);
  const coupling = couplingOf(pool, foil, condition, profile, design.brief.balance);
  const modes = modesOf(pool, design, condition, foil, profile, coupling);
  const neutral = neutralPoint(foil.loads, foil.alpha);
  const margins = {
    geometric: (neutral - design.brief.balance.x) / craft.wing.meanChord,
    withDrag: marginWithDrag(modes.pushes, foil.alpha) / craft.wing.meanChord,
  };
  const { projectedArea, span } = craft.wing;
  const force = 0.5 * condition.density * condition.speed ** 2 * projectedArea;
  const scale = { force, moment: force * span, rate: span / (2 * condition.speed) };
  const strips = craft.parts.stabilizer;
  const stabilizer = strips && {
    volume: holdTerms(craft.wing, craft.stabilizer, foil.CL).pitch,
    downwashSlope: downwashSlope(foil.flow, strips.chord, strips.width),
  };
  const { vortex } = coupling.craft;
  const strutShare = craft.strut ? vortex.strut.CYbeta / vortex.total.CYbeta : null;
  return {
    speed: condition.speed,
    CL: foil.CL,
    alpha: foil.alpha,
    strutShare,
    coupling,
    scale,
    margins,
    modes,
    neutralPoint: neutral,
    stabilizer,
  };
}

/** The coupling along the axes asked for; what moves the craft is the same along any. */
function turned<T extends { coupling: Coupling; alpha: number }>(found: T, axes: 'design' | 'stream'): T {
  if (axes === 'design') return found;
  const { foil, craft, vertical } = found.coupling;
  const turn = (by: ByPart<Derivatives>): ByPart<Derivatives> => ({
    wing: alongStream(by.wing, found.alpha),
    stabilizer: alongStream(by.stabilizer, found.alpha),
    strut: alongStream(by.strut, found.alpha),
    total: alongStream(by.total, found.alpha),
  });
  const both = ({ vortex, profile }: LateralCoupling) => ({ vortex: turn(vortex), profile: turn(profile) });
  return { ...found, coupling: { foil: both(foil), craft: both(craft), vertical } };
}

/** -dM/dFz by a turn of the stream (m): nose-up moment about the balance point against force up. */
function marginWithDrag({ u, w }: Pushes, alpha: number): number {
  const turn = (k: number) => w[k]! * Math.cos(alpha) - u[k]! * Math.sin(alpha);
  return turn(2) / turn(1); // the force is counted down
}

function gap(one: Derivatives, other: Derivatives): Derivatives {
  const keys = Object.keys(one) as Array<keyof Derivatives>;
  return Object.fromEntries(
    keys.map((key) => [key, Math.abs(other[key] - one[key])]),
  ) as unknown as Derivatives;
}

function modeGap(one: Modes, other: Modes): HoldStudy['band']['modes'] {
  const gaps: HoldStudy['band']['modes'] = {};
  for (const group of ['lateral', 'vertical'] as const)
    for (const mode of one[group]) {
      const same = other[group].find(({ kind }) => kind === mode.kind);
      if (same) gaps[mode.kind] = Math.abs(same.real - mode.real);
    }
  return gaps;
}
