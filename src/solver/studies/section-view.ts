/**
 * What a section is and does at one station of the foil and one speed: its marks, the flow round it station by station,
 * and its polars in three kinds of water. Plain data; shares of the chord, degrees, coefficients by chord and stream.
 */
import type { Design } from '../design/document.ts';
import { camberRatio, outlinePoints, thicknessRatio } from '../geometry/outline.ts';
import { edgeThickness, type NosePlace, nosePlaces, noseRadius } from '../geometry/outline-marks.ts';
import { momentCoefficient, zeroLiftAngle } from '../geometry/thin.ts';
import type { SideFigures } from '../section/drag.ts';
import { type PolarPoint, sectionPolar, USABLE_SHARE, type Water } from '../section/polar.ts';
import { liftLine } from '../section/pressure.ts';
import { sectionFlow } from '../section/section.ts';
import type { SideState, WakeEnd } from '../section/state.ts';
import {
  type FoilPart,
  outlineOf,
  type Place,
  type Station,
  Stations,
  stateAtLift,
} from './section-station.ts';
import type { Study } from './study.ts';

const DEGREES = 180 / Math.PI;
const DRAWN = 161; // points of the outline

/** A trip at the nose: where the layer can first be tripped there (section/trip.ts). */
const NOSE: Water = { tripUpper: 0.01, tripLower: 0.01 };

export interface SectionOptions extends Place {
  speed: number; // m/s
  cl: number | null; // a lift coefficient of the user's own; null: as flown
}

export interface SectionSide extends SideFigures, SideState {}

export interface SectionView {
  station: Omit<Station, 'shape'>; // cl: the one asked for
  outline: { x: Float64Array; y: Float64Array };
  marks: {
    thickness: number;
    camber: number;
    noseRadius: number;
    nose: [NosePlace, NosePlace]; // where that was found
    edge: number;
  };
  /** Inviscid line of the panel method, and thin-airfoil theory's zero-lift angle and moment of the mean line. */
  line: {
    zeroLift: number; // degrees
    slope: number; // per rad
    level: number; // lift coefficient at 0 degrees
    across: number; // and, without friction, at 90
    thinZeroLift: number; // degrees
    thinMoment: number;
  };
  flow: {
    alpha: number; // degrees to the stream
    cl: number;
    cd: number;
    cdFriction: number;
    cm: number;
    cpMin: number;
    greatestSpeed: number; // of the stream's, where the pressure is lowest
    wakeEnd: WakeEnd;
    upper: SectionSide;
    lower: SectionSide;
  } | null;
  problem: string | null; // why there is no flow
  /** Drag in a clean tunnel's water (all the laminar run there can be) and tripped at the nose; null: not settled. */
  band: { clean: number | null; nose: number | null };
}

/** Throws an Error with one sentence where the design has no such part or does not run level at the speed. */
export function sectionView(design: Design, { cl, speed, ...place }: SectionOptions): SectionView {
  const found = new Stations(design).at(place, speed);
  const { shape, ...rest } = found;
  const outline = outlineOf(shape);
  const station = { ...rest, cl: cl ?? found.cl };
  const here = stateAtLift(shape, station.cl, station.reynolds, station.flow);
  const dragIn = (water: Water) =>
    stateAtLift(shape, station.cl, station.reynolds, water)?.state.figures.cd ?? null;
  const line = liftLine(sectionFlow(shape).flow);
  const figures = here?.state.figures;
  return {
    station,
    outline: 'kind' in shape ? outlinePoints(shape, DRAWN) : shape,
    marks: {
      thickness: thicknessRatio(outline),
      camber: camberRatio(outline),
      noseRadius: noseRadius(outline),
      nose: nosePlaces(outline),
      edge: edgeThickness(outline),
    },
    line: {
      zeroLift: line.zeroLift * DEGREES,
      slope: line.slope,
      level: -line.slope * Math.sin(line.zeroLift),
      across: line.slope * Math.cos(line.zeroLift),
      thinZeroLift: zeroLiftAngle(outline) * DEGREES,
      thinMoment: momentCoefficient(outline),
    },
    flow: here && {
      ...here.state.figures,
      alpha: here.alpha * DEGREES,
      greatestSpeed: Math.max(...here.state.upper.speed, ...here.state.lower.speed),
      wakeEnd: here.state.wakeEnd,
      upper: { ...here.state.figures.upper, ...here.state.upper },
      lower: { ...here.state.figures.lower, ...here.state.lower },
    },
    problem: here ? null : noFlow(station),
    band: {
      clean: isClean(station.flow) ? (figures?.cd ?? null) : dragIn({ clarity: 'clean' }),
      nose: dragIn(NOSE),
    },
  };
}

const isClean = ({ clarity, tripUpper }: Water) => clarity === 'clean' && tripUpper === undefined;

function noFlow({ cl, reynolds }: { cl: number; reynolds: number }): string {
  return `No flow settles at a lift coefficient of ${cl.toFixed(2)} and Re ${Math.round(reynolds / 1000)} 000: it lies beyond what this section lifts, or too near its stall.`;
}

export interface SectionPolarSeries {
  water: 'own' | 'clean' | 'nose';
  points: Array<{
    alpha: number;
    cl: number;
    cd: number;
    cm: number;
    cpMin: number;
    upper: number;
    lower: number;
  }>; // degrees; transition x/c
  clMax: { cl: number; alpha: number; isStall: boolean }; // degrees
  usable: number; // lift coefficient counted on
  usableShare: number; // of the greatest
  lost: number; // angles of those asked for that did not settle
  /** Viscous zero-lift angle (degrees) and mean slope (per rad) from there to cl 0.5; null where too little settled. */
  line: { zeroLift: number; slope: number; moment: number; atZero: Between; atHalf: Between } | null;
}

/** Between which two points of the polar a lift coefficient lies, and at what angle (degrees). */
export interface Between {
  alpha: number;
  points: [PolarPlace, PolarPlace];
}

export type PolarPlace = Record<'alpha' | 'cl' | 'cm', number>;

export interface SectionPolars {
  part: FoilPart;
  eta: number;
  reynolds: number;
  series: SectionPolarSeries[];
}

const ANGLES = Array.from({ length: 23 }, (_, k) => k - 7); // degrees about zero lift

export function* sectionPolars(
  design: Design,
  { speed, ...place }: Omit<SectionOptions, 'cl'>,
): Study<SectionPolars> {
  const { shape, part, eta, reynolds, flow } = new Stations(design).at(place, speed);
  const kinds: Array<[SectionPolarSeries['water'], Water]> = [
    ['own', flow],
    ['nose', NOSE],
    ...(isClean(flow) ? [] : [['clean', { clarity: 'clean' }] as [SectionPolarSeries['water'], Water]]),
  ];
  const zero = liftLine(sectionFlow(shape).flow).zeroLift;
  const alphas = ANGLES.map((angle) => zero + angle / DEGREES);
  const series: SectionPolarSeries[] = [];
  for (const [water, kind] of kinds) {
    yield series.length / kinds.length;
    const polar = sectionPolar(shape, { ...kind, reynolds, alphas });
    const points = polar.points.flatMap(toRow);
    const { cl, alpha, isStall } = polar.clMax;
    series.push({
      water,
      points,
      clMax: { cl, alpha: alpha * DEGREES, isStall },
      usable: USABLE_SHARE * cl,
      usableShare: USABLE_SHARE,
      lost: polar.points.length - points.length,
      line: lineOf(points),
    });
  }
  return { part, eta, reynolds, series };
}

function toRow({ alpha, figures }: PolarPoint): SectionPolarSeries['points'] {
  if (!figures) return [];
  const { cl, cd, cm, cpMin, upper, lower } = figures;
  return [{ alpha: alpha * DEGREES, cl, cd, cm, cpMin, upper: upper.transition, lower: lower.transition }];
}

/** Where cl passes zero and half, by straight lines between the points. */
function lineOf(points: SectionPolarSeries['points']): SectionPolarSeries['line'] {
  const at = (wanted: number) => {
    const k = points.findIndex((point, i) => i > 0 && points[i - 1]!.cl <= wanted && point.cl > wanted);
    if (k < 1) return null;
    const [near, far] = [points[k - 1]!, points[k]!];
    const share = (wanted - near.cl) / (far.cl - near.cl);
    const mix = (key: 'alpha' | 'cm') => near[key] + share * (far[key] - near[key]);
    const pair: Between['points'] = [near, far];
    return { alpha: mix('alpha'), cm: mix('cm'), points: pair };
  };
  const [zero, half] = [at(0), at(0.5)];
  if (!zero || !half) return null;
  return {
    zeroLift: zero.alpha,
    slope: 0.5 / Math.sin((half.alpha - zero.alpha) / DEGREES),
    moment: zero.cm,
    atZero: { alpha: zero.alpha, points: zero.points },
    atHalf: { alpha: half.alpha, points: half.points },
  };
}
