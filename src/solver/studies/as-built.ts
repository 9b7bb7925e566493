/**
 * The wing as measured against the wing as drawn: how a difference between the sides rolls the foil, what shim cancels
 * that, how exactly each station must be made. Moments about the origin, starboard down positive, of wing,
 * stabilizer and strut, vortex forces, at the brief's cruise, without leeway.
 *
 * The antisymmetric twist is one more right-hand side of the vortex system (linear, so one solution per station serves
 * every error there); chords and heights that differ change the system itself and are solved with both sides in one.
 */
import type { Design } from '../design/document.ts';
import { farField } from '../forces/ledger.ts';
import { type AlphaLoads, alphaForLift, alphaLoads, mixAlpha } from '../forces/loads.ts';
import { assemble, type Craft } from '../geometry/craft.ts';
import {
  builtSurface,
  type Difference,
  differenceOf,
  meanDifference,
  NO_DIFFERENCE,
} from '../geometry/measured.ts';
import { cutStrips, shareStations, spaceStations } from '../geometry/strips.ts';
import type { Surface } from '../geometry/surface.ts';
import { findRoot } from '../numeric/roots.ts';
import { makeUnit } from '../vortex/causes.ts';
import { type Flow, FlowPool } from '../vortex/flow.ts';
import { type Halves, lopsidedFlow } from '../vortex/lopsided.ts';
import { type Condition, conditionOf, resolutionOf } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { sideLoads } from './derivatives.ts';
import { holdTerms } from './hold.ts';

export interface StationTolerance {
  eta: number;
  distance: number; // m along the curve
  roll: number; // N m per degree that starboard is nose up against port, tapering off to the next stations
  tolerance: number | null; // degrees of difference that make 1 N m; null where none does
}

export interface Compared {
  name: string;
  unit: 'length' | 'area' | 'angle' | 'force' | 'ratio';
  drawn: number;
  built: number;
}

export interface AsBuilt {
  isMeasured: boolean;
  roll: number; // N m, everything measured together
  byTwist: number; // N m, each alone
  byChord: number;
  byHeight: number;
  byTwistLinear: number; // N m, by the one more right-hand side: a check on byTwist
  shim: number | null; // degrees each half turns, starboard nose up and port nose down, to cancel the roll
  packing: number | null; // m that this lifts the root's nose over its chord, each half
  lean: number; // m that the rider's weight has to move, to starboard positive
  compared: Compared[]; // drawn against the mean of both sides
  stations: StationTolerance[];
}

export interface AsBuiltOptions {
  stations: readonly number[]; // eta, root to tip
}

const DEGREES = 180 / Math.PI;
const LEAST_ROLL = 1e-6; // N m a degree below which no tolerance is named

/** Throws an Error with a sentence where the design cannot run, or a measurement cannot be. */
export function asBuilt(design: Design, { stations }: AsBuiltOptions): AsBuilt {
  const condition = conditionOf(design.brief, {});
  const craft = craftFor(design, condition.depth, resolutionOf({}));
  const pool = new FlowPool();
  const flow = pool.solve('drawn', craft, 'whole');
  const loads = alphaLoads(flow.system, flow.symmetric);
  const pressure = condition.density * condition.speed ** 2;
  const alpha = alphaForLift(loads, condition.lift / pressure);
  mixAlpha(flow.symmetric, alpha, flow.base);
  const rollOf = (twist: (eta: number) => number) => twistRoll(craft, flow, alpha, twist) * pressure;

  const measured = design.asBuilt?.wing;
  const sides = {
    starboard: differenceOf(craft.wing, measured, 'starboard'),
    port: differenceOf(craft.wing, measured, 'port'),
  };
  const apart = (keep: (side: Difference) => Difference) =>
    lopsidedRoll(craft, condition, keep(sides.starboard), keep(sides.port));
  const roll = measured ? apart((side) => side) : 0;
  const perShim = rollOf(() => 1) / DEGREES; // N m per degree each half
  const shim = Math.abs(perShim) > LEAST_ROLL ? -roll / perShim : null;
  const weight = condition.lift;
  return {
    isMeasured: measured !== undefined,
    roll,
    byTwist: measured ? apart(({ twist }) => ({ ...NO_DIFFERENCE, twist })) : 0,
    byChord: measured ? apart(({ chord }) => ({ ...NO_DIFFERENCE, chord })) : 0,
    byHeight: measured ? apart(({ tipDrop }) => ({ ...NO_DIFFERENCE, tipDrop })) : 0,
    byTwistLinear: rollOf((eta) => 0.5 * (sides.starboard.twist(eta) - sides.port.twist(eta))),
    shim,
    packing: shim === null ? null : craft.wing.chord(0) * Math.tan(shim / DEGREES),
    lean: weight > 0 ? -roll / weight : 0,
    compared: compare(
      design,
      craft,
      pool,
      condition,
      meanDifference(sides.starboard, sides.port, craft.wing),
    ),
    stations: stations.map((eta, k) => {
      const tent = tentAt(stations, k);
      const perDegree = (0.5 * rollOf(tent)) / DEGREES;
      return {
        eta,
        distance: eta * craft.wing.halfLength,
        roll: perDegree,
        tolerance: Math.abs(perDegree) > LEAST_ROLL ? 1 / Math.abs(perDegree) : null,
      };
    }),
  };
}

/** 1 at a station, straight down to nothing at its neighbours. */
function tentAt(stations: readonly number[], k: number): (eta: number) => number {
  const at = stations[k]!;
  const before = stations[k - 1];
  const after = stations[k + 1];
  return (eta) => {
    const neighbour = eta < at ? before : after;
    return neighbour === undefined ? 1 : Math.max(0, 1 - Math.abs((eta - at) / (neighbour - at)));
  };
}

/** Roll (m3, per rho V^2) of a twist that is nose up to starboard and as much nose down to port. */
function twistRoll(
  { parts }: Craft,
  { system, base }: Flow,
  alpha: number,
  twist: (eta: number) => number,
): number {
  const cause = makeUnit(system);
  const [c, s] = [Math.cos(alpha), Math.sin(alpha)];
  const { count } = parts.wing;
  for (let i = 0; i < system.wingSegments; i++) {
    const through = c * system.cosPitch[i]! - s * system.normalZ[i]! * system.sinPitch[i]!;
    cause.circulation[i] = -through * twist(parts.wing.eta[i % count]!);
  }
  system.solveAntisymmetric(cause.circulation, true);
  system.addAntisymmetricField(cause.circulation, cause.field, true);
  return -sideLoads(system, base, cause).reduce((sum, { mx }) => sum + mx, 0);
}

/** Roll (N m) of a wing with these two sides, at the angle that carries the weight. */
function lopsidedRoll(craft: Craft, condition: Condition, starboard: Difference, port: Difference): number {
  const pressure = condition.density * condition.speed ** 2;
  const flow = lopsidedFlow(halvesOf(craft, starboard, port), craft.parts.strut, condition.depth);
  const wanted = condition.lift / pressure;
  const alpha = findRoot(
    (angle) => flow(angle).lift - wanted,
    -0.5,
    0.5,
    1e-9,
    flow(-0.5).lift - wanted,
    flow(0.5).lift - wanted,
  );
  if (alpha === null) throw new Error('no angle between -29 and 29 degrees carries the weight as built');
  return flow(alpha).roll * pressure;
}

function halvesOf({ wing, stabilizer, parts }: Craft, starboard: Difference, port: Difference): Halves[] {
  const stations = stabilizer
    ? shareStations(wing, stabilizer, resolutionOf({}).strips, resolutionOf({}).stabilizerStrips)
    : { wing: spaceStations(resolutionOf({}).strips), stabilizer: null };
  const cut = (side: Difference) => cutStrips(builtSurface(wing, side), stations.wing, 1);
  const halves: Halves[] = [{ starboard: cut(starboard), port: cut(port) }];
  if (parts.stabilizer) halves.push({ starboard: parts.stabilizer, port: parts.stabilizer });
  return halves;
}

function compare(
  design: Design,
  drawn: Craft,
  pool: FlowPool,
  condition: Condition,
  difference: Difference,
): Compared[] {
  const wing = builtSurface(drawn.wing, difference);
  const { stabilizer, strut, depth, strutSlope } = drawn;
  const built = assemble(wing, stabilizer, strut, depth, resolutionOf({}), strutSlope);
  const [before, after] = [drawn, built].map((craft) => figuresOf(craft, pool, condition));
  const row = (name: string, unit: Compared['unit'], read: (figures: Figures) => number): Compared => ({
    name,
    unit,
    drawn: read(before!),
    built: read(after!),
  });
  const rows = [
    row('Projected area', 'area', ({ wing: { projectedArea } }) => projectedArea),
    row('Span', 'length', ({ wing: { span } }) => span),
    row('Tip drop', 'length', ({ wing: { tipDrop } }) => tipDrop),
    row('Tip twist', 'angle', ({ wing: { twist } }) => twist(1) * DEGREES),
    row('Angle at cruise', 'angle', ({ alpha }) => alpha * DEGREES),
    row('Induced drag', 'force', ({ drag }) => drag),
  ];
  return design.stabilizer ? [...rows, row('Hold index', 'ratio', ({ hold }) => hold)] : rows;
}

interface Figures {
  wing: Surface;
  alpha: number;
  drag: number; // N
  hold: number;
}

function figuresOf(craft: Craft, pool: FlowPool, condition: Condition): Figures {
  const flow = pool.solve('compared', craft, 'angle');
  const loads: AlphaLoads = alphaLoads(flow.system, flow.symmetric);
  const pressure = condition.density * condition.speed ** 2;
  const alpha = alphaForLift(loads, condition.lift / pressure);
  const CL = condition.lift / (0.5 * pressure * craft.wing.projectedArea);
  return {
    wing: craft.wing,
    alpha,
    drag: farField(flow, alpha) * pressure,
    hold: holdTerms(craft.wing, craft.stabilizer, CL).index ?? 0,
  };
}
