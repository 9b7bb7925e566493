/**
 * Sections compared for one rider and one take-off speed: each is given the chord with which the wing just lifts off at
 * the brief's take-off speed within the section's usable lift, span and shape kept. A section that carries more needs
 * less area, so it cruises at a higher lift coefficient and wants more droop; what that costs stands beside it.
 * SI; angles in degrees. The stabilizer stays as drawn.
 */
import type { Design } from '../design/document.ts';
import { mixAlpha } from '../forces/loads.ts';
import type { ProfileModel } from '../forces/profile.ts';
import { withoutStrut } from '../geometry/craft.ts';
import { scaledChord } from '../geometry/scale.ts';
import { surfaceOf } from '../geometry/surface.ts';
import { findRoot } from '../numeric/roots.ts';
import { FlowPool } from '../vortex/flow.ts';
import { PressureWatch } from './cavitation.ts';
import { conditionOf, resolutionOf } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { derivativesOf, lateralLoads } from './derivatives.ts';
import { neutralDroop } from './neutral-droop.ts';
import { camberMoment } from './pitch.ts';
import { profileFor } from './profile-for.ts';
import { runFoil } from './running.ts';
import { LevelRunner } from './speed.ts';
import type { Study } from './study.ts';

export interface SectionChoiceOptions {
  /** Four-digit codes; each is laid along the whole wing. */
  codes: readonly string[];
}

export interface SizedForSection {
  chordFactor: number; // of the drawn chords
  area: number; // projected
  wettedArea: number; // both sides, unrolled
  usableCL: number; // wing's, at take-off
  CLcruise: number; // wing's
  neutralDroop: number | null;
  profileDragTop: number | null; // wing, N; null where top speed cannot be run
  noseDown: number; // moment of the wing's camber at cruise, N m, positive nose down
  stabilizerLift: number | null; // N at cruise with the stance as drawn, positive up; null without stabilizer or balance
  inception: number | null; // speed at which the wing first boils
  alphaCruise: number; // fuselage to the flow
}

/**
 * C_lr at cruise on the wing as drawn, so at the same lift coefficient for every section. Along the stream a wing alone
 * has the same whatever its section (linear theory); about the foil's own axes it has not, as more camber flies at a
 * smaller angle, and a yaw about an axis that leans aft is in part a roll. Trimmed by angle, stabilizer as drawn.
 */
export interface SectionCoupling {
  own: number; // foil, about its own axes: the one that the neutral droop is about
  stream: number; // foil, about the stream's
  wingStream: number; // wing alone, about the stream's
}

export type SectionChoice =
  | { code: string; found: SizedForSection; coupling: SectionCoupling; problem: null }
  | { code: string; found: null; problem: string };

export interface SectionComparison {
  takeOff: number; // m/s
  choices: SectionChoice[];
  sections: ProfileModel['source'];
}

const DEGREES = 180 / Math.PI;
const SMALLEST = 0.25; // of the drawn chords
const LARGEST = 4;

export function* compareSections(design: Design, { codes }: SectionChoiceOptions): Study<SectionComparison> {
  const choices: SectionChoice[] = [];
  for (const [k, code] of codes.entries()) {
    const share = (done: number) => (k + done) / codes.length;
    const drawn = withSection(design, code);
    try {
      const chordFactor = chordFor(drawn);
      yield share(0.3);
      const sized = withChord(drawn, chordFactor);
      const cost = costOf(sized);
      yield share(0.6);
      const found = { chordFactor, ...cost, neutralDroop: neutralAtCruise(sized) };
      yield share(0.8);
      choices.push({ code, found, coupling: couplingOf(drawn), problem: null });
    } catch (error) {
      choices.push({ code, found: null, problem: error instanceof Error ? error.message : String(error) });
    }
    yield share(1);
  }
  return { takeOff: design.brief.speeds.takeOff, choices, sections: profileFor(design).source };
}

function withSection(design: Design, code: string): Design {
  const outline = { kind: 'naca4', code } as const;
  return { ...design, wing: { ...design.wing, section: { root: outline, tip: outline } } };
}

function withChord(design: Design, factor: number): Design {
  return { ...design, wing: { ...design.wing, chord: scaledChord(design.wing.chord, factor) } };
}

/** The factor on the drawn chords. Throws where none in range does it. */
function chordFor(design: Design): number {
  const margin = (factor: number) => {
    try {
      return runnerOf(withChord(design, factor)).run(design.brief.speeds.takeOff, 'incidence').stallMargin;
    } catch {
      return -1; // no angle carries it: too small
    }
  };
  const [low, high] = [margin(SMALLEST), margin(LARGEST)];
  const factor = Number.isFinite(high) ? findRoot(margin, SMALLEST, LARGEST, 1e-4, low, high) : null;
  if (factor === null)
    throw new Error(`no chord from ${SMALLEST} to ${LARGEST} times the drawn one lifts off at this speed`);
  return factor;
}

function runnerOf(design: Design): LevelRunner {
  return new LevelRunner(design, resolutionOf({}), profileFor(design));
}

function neutralAtCruise(design: Design): number | null {
  const { depth, lift, density, speed } = conditionOf(design.brief, {});
  const per = density * speed ** 2;
  return neutralDroop(new FlowPool(), design, depth, lift / per, resolutionOf({}))?.tipAngle ?? null;
}

function couplingOf(design: Design): SectionCoupling {
  return { ...rollFromYaw(design), wingStream: rollFromYaw({ ...design, stabilizer: null }).stream };
}

/** C_lr of the foil about the origin at cruise, about its own axes and about the stream's. */
function rollFromYaw(design: Design): { own: number; stream: number } {
  const condition = conditionOf(design.brief, {});
  const craft = withoutStrut(craftFor(design, condition.depth, resolutionOf({})));
  const { flow, alpha } = runFoil(new FlowPool(), 'compared', craft, condition, 'whole');
  mixAlpha(flow.symmetric, alpha, flow.base);
  const { projectedArea: area, span } = craft.wing;
  const loads = lateralLoads(flow.system, flow.base, flow.foil);
  const { Clp, Clr, Cnp, Cnr } = derivativesOf(loads, { area, span, x: 0, z: 0 });
  const [c, s] = [Math.cos(alpha), Math.sin(alpha)];
  return { own: Clr, stream: c * (Clr * c - Clp * s) + s * (Cnr * c - Cnp * s) };
}

function costOf(design: Design): Omit<SizedForSection, 'chordFactor' | 'neutralDroop'> {
  const runner = runnerOf(design);
  const { takeOff, cruise, top } = design.brief.speeds;
  const surface = surfaceOf(design.wing);
  const lifting = runner.run(takeOff, 'incidence');
  const running = runner.run(cruise, 'incidence');
  const camber = camberMoment({ ...runner.rigFor(running.depth).craft, stabilizer: null });
  const balanced = attempt(() => runner.run(cruise, 'stance'));
  return {
    area: surface.projectedArea,
    wettedArea: 2 * surface.unrolledArea,
    usableCL: lifting.liftCoefficients.wing,
    CLcruise: running.liftCoefficients.wing,
    alphaCruise: running.alpha * DEGREES,
    noseDown: -camber * runner.density * cruise ** 2,
    stabilizerLift: design.stabilizer && balanced ? balanced.lift.stabilizer : null,
    profileDragTop: attempt(() => runner.run(top, 'incidence').drag.wingProfile),
    inception: attempt(() => new PressureWatch(runner).inceptionSpeed('wing', cruise)?.speed ?? null),
  };
}

function attempt<Value>(f: () => Value): Value | null {
  try {
    return f();
  } catch {
    return null;
  }
}
