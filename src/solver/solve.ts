/**
 * Front door: a design document and a condition in, the full report out. Pure apart from work arrays kept between
 * calls; the report shares nothing with them.
 */
import type { Design } from './design/document.ts';
import { deepLift, drawLedger, isBent, type Running } from './forces/ledger.ts';
import {
  type AlphaLoads,
  alphaForLift,
  alphaLoads,
  liftOf,
  liftSlopeAt,
  loadsAt,
  mixAlpha,
} from './forces/loads.ts';
import type { ProfileModel } from './forces/profile.ts';
import { stripFigures, sumWing } from './forces/spread.ts';
import type { Craft, Resolution } from './geometry/craft.ts';
import type { Surface } from './geometry/surface.ts';
import type { ConditionOptions, Report, StabilizerFigures, SurfaceFigures } from './report.ts';
import { type Condition, conditionOf, GRAVITY, resolutionOf } from './studies/condition.ts';
import { craftFor } from './studies/craft-for.ts';
import { derivativesOf, lateralLoads } from './studies/derivatives.ts';
import { holdTerms, sidewaysVolume, stabilizerVolume } from './studies/hold.ts';
import { levelDrag } from './studies/level-drag.ts';
import { neutralDroop } from './studies/neutral-droop.ts';
import {
  camberMoment,
  downwashSlope,
  momentAbout,
  neutralPoint,
  pitchSlopes,
  trimIncidence,
  trimStance,
} from './studies/pitch.ts';
import { profileLoads, stripDrags } from './studies/profile-derivatives.ts';
import { profileFor } from './studies/profile-for.ts';
import { rigOf } from './studies/rig.ts';
import { type Flow, FlowPool } from './vortex/flow.ts';
import { gatherStrips, inducedDrag, leastDrag } from './vortex/wake.ts';

const DEGREES = 180 / Math.PI;

const pool = new FlowPool();

/**
 * Solves a design. Without options: cruise speed, the brief's depth, carrying (1-u) m g by angle alone, stabilizer as
 * drawn. Throws an Error with one plain sentence when the condition does not fit the design.
 */
export function solve(design: Design, options: ConditionOptions = {}): Report {
  const resolution = resolutionOf(options);
  const condition = conditionOf(design.brief, options);
  const craft = craftFor(design, condition.depth, resolution);
  const flow = pool.solve('design', craft, 'whole', isBent(craft.wing));
  const loads = alphaLoads(flow.system, flow.symmetric);
  const pressure = condition.density * condition.speed ** 2; // rho V^2
  const alpha = condition.alpha ?? alphaForLift(loads, condition.lift / pressure);
  return assembleReport(design, options, resolution, condition, craft, flow, loads, alpha, pressure);
}

function assembleReport(
  design: Design,
  options: ConditionOptions,
  resolution: Resolution,
  condition: Condition,
  craft: Craft,
  flow: Flow,
  loads: AlphaLoads,
  alpha: number,
  pressure: number,
): Report {
  const { wing, stabilizer } = craft;
  const { system } = flow;
  const lift = liftFigures(loads, alpha, pressure, wing);
  const pitch = pitchFigures(design, craft, flow, loads, alpha, pressure);

  mixAlpha(flow.symmetric, alpha, flow.base);
  gatherStrips(system, flow.base.circulation, flow.stripCirculation);
  const rig = rigOf(design, craft, flow);
  const drag = inducedDrag(rig.wakes.free, flow.stripCirculation) * pressure;
  const least = leastDrag(system, rig.wakes.free, wing.span);
  const profile = profileFor(design, resolution.sections);
  const strips = stripFigures(craft, flow, condition, least, profile);
  const sums = sumWing(strips.wing);
  const foil = lateralLoads(system, flow.base, flow.foil);
  const whole = lateralLoads(system, flow.base, flow.craft);
  const reference = { area: wing.projectedArea, span: wing.span };
  const foilDerivatives = derivativesOf(foil, { ...reference, x: 0, z: 0 });
  const { x, height } = design.brief.balance;
  const hold = holdTerms(wing, stabilizer, lift.CL);

  const level = levelDrag(rig, condition, profile)({ alpha, turn: 0 });
  const { wingProfile, stabilizerProfile } = level.sources;
  const running: Running = {
    alpha,
    pressure,
    lift: lift.total,
    drag,
    profileDrag: wingProfile + stabilizerProfile,
    stream: condition,
    deepLift: deepLift(flow, { alpha, pressure }),
    ...sums,
  };
  const ledger = drawLedger(pool, craft, design.wing, resolution, running, profile);
  const neutral =
    options.neutralDroop === false
      ? null
      : neutralDroop(pool, design, condition.depth, lift.total / pressure, resolution);
  const perArea = 0.5 * pressure * wing.projectedArea;
  const [wingLoad, stabilizerLoad] = loadsAt(loads, alpha);
  const along =
    (wingLoad.x + stabilizerLoad.x) * Math.cos(alpha) + (wingLoad.z + stabilizerLoad.z) * Math.sin(alpha);
  return {
    condition: {
      speed: condition.speed,
      density: condition.density,
      viscosity: condition.viscosity,
      alpha: alpha * DEGREES,
      depth: condition.depth,
      froudeDepth: condition.depth === null ? null : condition.speed / Math.sqrt(GRAVITY * condition.depth),
      froudeSpan: condition.speed / Math.sqrt(GRAVITY * wing.span),
      weightCarried: condition.weight,
    },
    geometry: {
      wing: surfaceFigures(wing),
      stabilizer: stabilizer && stabilizerFigures(wing, stabilizer),
    },
    lift,
    inducedDrag: {
      farField: drag,
      nearField: along * pressure,
      CDi: drag / perArea,
      spanEfficiency: drag > 0 ? lift.total ** 2 / (Math.PI * wing.aspectRatio * perArea * drag) : null,
      leastFactor: least.factor,
      leastForWing: (sums.verticalLift / 2) ** 2 / (least.measure * pressure),
    },
    drag: { ...level.sources, total: level.total },
    sections: {
      source: profile.source,
      stallMargin: level.stallMargin,
      stallEta: craft.parts.wing.eta[level.stallStrip]!,
      unsettled: profile.unsettled?.() ?? [],
    },
    ledger,
    strips,
    stability: {
      foil: foilDerivatives,
      craft: derivativesOf(whole, { ...reference, x, z: height }),
      ...profileDerivatives(design, craft, flow, alpha, condition, profile),
      Czalpha: (2 * pitch.slopes.force) / wing.projectedArea,
      Cmalpha: (2 * pitch.slopes.moment) / (wing.projectedArea * wing.meanChord),
      neutralPoint: pitch.neutralPoint,
      staticMargin: (pitch.neutralPoint - x) / wing.meanChord,
      holdIndex: hold.index,
      holdTerms: { roll: hold.roll, yaw: hold.yaw, pitch: hold.pitch },
      neutralDroop: neutral?.tipAngle ?? null,
      neutralDroopTries: neutral?.tries ?? [],
      rollFromYaw: ratio(foilDerivatives.Clr, foilDerivatives.Clp),
      yawFromRoll: ratio(foilDerivatives.Cnp, foilDerivatives.Cnr),
    },
    pitch: pitch.figures,
  };
}

/** What strip drag adds to the derivatives; `flow.base` holds the running state. */
function profileDerivatives(
  design: Design,
  craft: Craft,
  flow: Flow,
  alpha: number,
  condition: Condition,
  profile: ProfileModel,
) {
  const drags = stripDrags(craft, flow, condition, profile);
  const { projectedArea: area, span } = craft.wing;
  const { x, height: z } = design.brief.balance;
  const foil = profileLoads(craft, flow, flow.foil, alpha, drags, false);
  const whole = profileLoads(craft, flow, flow.craft, alpha, drags, true);
  return {
    foilProfile: derivativesOf(foil, { area, span, x: 0, z: 0 }),
    craftProfile: derivativesOf(whole, { area, span, x, z }),
  };
}

function ratio(value: number, by: number): number | null {
  return by === 0 ? null : value / Math.abs(by);
}

function liftFigures(loads: AlphaLoads, alpha: number, pressure: number, wing: Surface): Report['lift'] {
  const [wingLoad, stabilizerLoad] = loadsAt(loads, alpha);
  const ofWing = liftOf(wingLoad, alpha) * pressure;
  const ofStabilizer = liftOf(stabilizerLoad, alpha) * pressure;
  const total = ofWing + ofStabilizer;
  const perArea = 0.5 * wing.projectedArea;
  return {
    total,
    wing: ofWing,
    stabilizer: ofStabilizer,
    CL: total / (perArea * pressure),
    CLalpha: liftSlopeAt(loads, 0) / perArea,
  };
}

function pitchFigures(
  design: Design,
  craft: Craft,
  flow: Flow,
  loads: AlphaLoads,
  alpha: number,
  pressure: number,
): { slopes: { force: number; moment: number }; neutralPoint: number; figures: Report['pitch'] } {
  const { x, height } = design.brief.balance;
  const stabilizer = craft.parts.stabilizer;
  const camber = camberMoment(craft);
  const turn = stabilizer ? trimIncidence(flow, loads, alpha, x, height, camber) : null;
  const incidence = design.stabilizer?.incidence ?? 0;
  return {
    slopes: pitchSlopes(loads, alpha),
    neutralPoint: neutralPoint(loads, alpha),
    figures: {
      momentAboutBalance: (momentAbout(loads, alpha, x, height) + camber) * pressure,
      trimIncidence: turn === null ? null : incidence + turn * DEGREES,
      trimStance: trimStance(loads, alpha, height, camber),
      downwashSlope: stabilizer ? downwashSlope(flow, stabilizer.chord, stabilizer.width) : null,
    },
  };
}

function surfaceFigures(surface: Surface): SurfaceFigures {
  return {
    projectedArea: surface.projectedArea,
    unrolledArea: surface.unrolledArea,
    span: surface.span,
    unrolledLength: surface.unrolledLength,
    aspectRatio: surface.aspectRatio,
    meanChord: surface.meanChord,
    tipDrop: surface.tipDrop,
    effectiveDroop: surface.effectiveDroop * DEGREES,
  };
}

function stabilizerFigures(wing: Surface, stabilizer: Surface): StabilizerFigures {
  return {
    ...surfaceFigures(stabilizer),
    volume: stabilizerVolume(wing, stabilizer),
    sidewaysShare: stabilizer.sidewaysShare,
    sidewaysVolume: sidewaysVolume(wing, stabilizer),
  };
}
