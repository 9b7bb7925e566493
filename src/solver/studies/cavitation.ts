/**
 * Cavitation and air: where the water first boils, at which speed, and where air could be drawn down.
 *
 * Cavitation number sigma = (p_atm + rho g d - p_v)/(rho V^2/2), d the depth of the strip; inception where the lowest
 * pressure coefficient of the section reaches -sigma. Lowest pressures from the panel method at the strip's own lift
 * coefficient, inviscid: suction peaks are not rounded by viscosity, so the speeds err low. At a junction the speed
 * increments of the two surfaces are added. Estimates for comparing designs.
 */
import type { Outline } from '../design/document.ts';
import { waterProperties } from '../design/water.ts';
import { blendOutlines, type OutlinePoints, outlinePoints, strutOutline } from '../geometry/outline.ts';
import { findRoot } from '../numeric/roots.ts';
import { placePanels } from '../section/panels.ts';
import { forcesFromSpeeds, liftLine, PanelFlow } from '../section/pressure.ts';
import { GRAVITY } from './condition.ts';
import type { RunningState } from './level-running.ts';
import type { Rig } from './rig.ts';
import type { StrutStrip } from './side-trim.ts';
import type { LevelRunner } from './speed.ts';

export const ATMOSPHERE = 101325; // Pa, standard
const PANELS = 120;
const POINTS = 161; // of an outline

/** Lowest pressure coefficient of one section against its lift coefficient. */
export type LowestPressure = (cl: number) => number;

/** From the inviscid flow round an outline (unit chord); the flow is solved once. */
export function lowestPressure(points: OutlinePoints): LowestPressure {
  const panels = placePanels(points, PANELS);
  const flow = new PanelFlow(panels);
  const { slope, zeroLift } = liftLine(flow);
  const speeds = new Float64Array(flow.nodes);
  return (cl) => {
    const alpha = zeroLift + Math.asin(Math.max(-1, Math.min(1, cl / slope)));
    flow.speeds(alpha, speeds);
    return forcesFromSpeeds(panels, speeds, alpha).cpMin;
  };
}

/** Lowest pressure along a surface whose section blends from root to tip: three stations, linear between. */
type AlongSurface = (eta: number, cl: number) => number;

const solved = new WeakMap<Outline, WeakMap<Outline, AlongSurface>>(); // outlines are never changed in place

function alongSurface(root: Outline, tip: Outline): AlongSurface {
  const known = solved.get(root) ?? new WeakMap<Outline, AlongSurface>();
  solved.set(root, known);
  const law = known.get(tip) ?? solveAlong(root, tip);
  known.set(tip, law);
  return law;
}

function solveAlong(root: Outline, tip: Outline): AlongSurface {
  const same = JSON.stringify(root) === JSON.stringify(tip);
  const stations = same ? [0] : [0, 0.5, 1];
  const laws = stations.map((eta) => lowestPressure(blendOutlines(root, tip, eta, POINTS)));
  return (eta, cl) => {
    if (same) return laws[0]!(cl);
    const k = eta < 0.5 ? 0 : 1;
    const share = 2 * eta - k;
    return (1 - share) * laws[k]!(cl) + share * laws[k + 1]!(cl);
  };
}

export type Place = 'wing' | 'stabilizer' | 'strut' | 'wing junction' | 'strut junction';

export interface PressurePoint {
  place: Place;
  eta: number; // share of the half length; of the wetted length on the strut
  depth: number; // m
  sigma: number;
  cpMin: number;
  margin: number; // sigma + cpMin: boils at 0
  /** Lowest absolute pressure less the atmosphere's, Pa: below 0 air is drawn in where a path to it opens. */
  againstAir: number;
}

/** Looks for the lowest pressures of a design; sections are solved once and kept. */
export class PressureWatch {
  private readonly wing;
  private readonly stabilizer;
  private readonly strut: LowestPressure | null;
  private readonly density: number;
  private readonly vapour: number;

  constructor(private readonly runner: LevelRunner) {
    const { wing, stabilizer, strut, brief } = runner.design;
    this.wing = alongSurface(wing.section.root, wing.section.tip);
    this.stabilizer = stabilizer && alongSurface(stabilizer.section.root, stabilizer.section.tip);
    this.strut = strut && lowestPressure(outlinePoints(strutOutline(strut), POINTS));
    const water = waterProperties(brief.water.kind, brief.water.temperature);
    this.density = water.density;
    this.vapour = water.vapourPressure;
  }

  /**
   * Every strip's point at a running state, its lift coefficients times `load` and the surface `drop` (m) lower: a wave
   * passing. In deep water the depth counts from the strut's length.
   */
  points(state: RunningState, { load = 1, drop = 0 } = {}): PressurePoint[] {
    const rig = this.runner.rigFor(state.depth);
    const origin = (state.depth ?? this.runner.design.strut?.length ?? 1) - drop;
    const points: PressurePoint[] = [];
    const wingCount = rig.craft.parts.wing.count;
    state.stripCl.forEach((level, i) => {
      const cl = level * load;
      const eta = rig.eta[i]!;
      const place: Place = i < wingCount ? 'wing' : 'stabilizer';
      const cp = i < wingCount ? this.wing(eta, cl) : this.stabilizer ? this.stabilizer(eta, cl) : 0;
      points.push(this.at(place, eta, origin - rig.height[i]!, cp, state.speed));
    });
    if (this.strut) points.push(...this.strutPoints(rig, state.stripCl[0]! * load, state.speed, origin));
    return points;
  }

  /** The strut without side force, and the places where it meets wing and fuselage. */
  private strutPoints(rig: Rig, rootCl: number, speed: number, origin: number): PressurePoint[] {
    const strutCp = this.strut?.(0) ?? 0;
    const wingCp = this.wing(0, rootCl);
    const x = rig.design.strut?.x ?? 0;
    const points = [0.02, 0.25, 0.5, 0.75].map((share) =>
      this.at('strut', share, origin * share, strutCp, speed),
    );
    points.push(this.at('strut junction', 1, origin, strutCp, speed));
    // The strut only meets the wing's own speed-up where it stands over its chord.
    if (x < rig.craft.wing.chord(0)) {
      const together = Math.sqrt(1 - wingCp) + Math.sqrt(1 - strutCp) - 1;
      points.push(this.at('wing junction', 0, origin, 1 - together ** 2, speed));
    }
    return points;
  }

  /** Strips of a strut that carries side force, foot to surface. */
  slipping(strips: readonly StrutStrip[], speed: number): PressurePoint[] {
    const { strut } = this;
    if (!strut || strips.length === 0) return [];
    const deepest = strips[0]!.depth;
    return strips.map(({ depth, cl }) => this.at('strut', depth / deepest, depth, strut(cl), speed));
  }

  /** The pressures where a section's lowest coefficient is known: at a depth (m) and speed (m/s). */
  at(place: Place, eta: number, depth: number, cpMin: number, speed: number): PressurePoint {
    const dynamic = 0.5 * this.density * speed * speed;
    const still = this.density * GRAVITY * depth;
    const sigma = (ATMOSPHERE + still - this.vapour) / dynamic;
    return { place, eta, depth, sigma, cpMin, margin: sigma + cpMin, againstAir: still + cpMin * dynamic };
  }

  /** The point nearest to boiling. */
  worst(state: RunningState, wave?: { load?: number; drop?: number }): PressurePoint {
    return this.points(state, wave).reduce((least, point) => (point.margin < least.margin ? point : least));
  }

  /** Speed (m/s) at which a place first boils in level running, up to 40 m/s; null where it does not. */
  inceptionSpeed(place: Place, from: number): { speed: number; point: PressurePoint } | null {
    const least = (speed: number): PressurePoint | null => {
      const all = this.points(this.runner.run(speed, 'incidence'));
      const here = all.filter((point) => point.place === place);
      return here.reduce<PressurePoint | null>((a, b) => (a === null || b.margin < a.margin ? b : a), null);
    };
    if (least(from) === null) return null;
    const speed = findRoot((v) => least(v)?.margin ?? 1, from, 40, 1e-3);
    const point = speed === null ? null : least(speed);
    return speed !== null && point ? { speed, point } : null;
  }
}
