/**
 * Stiffness and mass of the parts along their length: bending square to the chord (flap) and along it (lag), torsion,
 * elastic axis, mass, reach of the outermost fibre. N m2, kg/m, m; places as shares of the chord from the leading edge.
 */
import type { Design, Makeup, Outline, Planform, Strut } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';
import { blendOutlines, type OutlinePoints, outlinePoints } from '../geometry/outline.ts';
import type { Surface } from '../geometry/surface.ts';
import { FOAM, type Material, materialOf } from './laminate.ts';
import {
  cellShearCentre,
  type Section,
  sectionOf,
  shellConstants,
  solidConstants,
  solidShearCentre,
} from './section-constants.ts';

const POINTS = 161; // of an outline
const STATIONS = 13; // of a table along a surface whose section or wall share changes
const FOUR_DIGIT: Outline = { kind: 'naca4', code: '0010' };

/** Tips narrower than this share of the root chord are taken that wide: a real tip is no knife edge. */
const LEAST_TIP = 0.1;

export interface BeamPoint {
  chord: number; // m; the diameter of a fuselage
  flap: number; // N m2
  lag: number; // N m2
  torsion: number; // N m2
  axis: number; // elastic axis, share of the chord
  mass: number; // kg/m
  centre: number; // of mass, share of the chord
  spin: number; // kg m, moment of inertia a metre about the centre
  reach: { flap: number; lag: number }; // m, outermost fibre from the neutral axis
}

/** Along a part: share of its length to the beam there. */
export type BeamLaw = (share: number) => BeamPoint;

/** A section for a chord of 1 m with a wall of `wall` chords; stiffnesses in N/m2. */
function unitPoint(points: OutlinePoints, material: Material, wall: number | null): BeamPoint {
  const section = sectionOf(points);
  const whole = solidConstants(section);
  const solidMass = material.density * whole.area;
  if (wall === null)
    return {
      chord: 1,
      flap: material.modulus * whole.flap,
      lag: material.modulus * whole.lag,
      torsion: material.shear * whole.torsion,
      axis: solidShearCentre(section, whole.x, material.poisson),
      mass: solidMass,
      centre: whole.x,
      spin: material.density * (whole.flap + whole.lag),
      reach: reachOf(section, whole),
    };
  const { skin, core } = shellConstants(section, wall);
  const mass = material.density * skin.area + FOAM.density * core.area;
  const centre = (material.density * skin.area * skin.x + FOAM.density * core.area * core.x) / mass;
  const filled = core.area / whole.area; // 0 where the skins fill the section
  const solidAxis = solidShearCentre(section, whole.x, material.poisson);
  return {
    chord: 1,
    flap: material.modulus * skin.flap + FOAM.modulus * core.flap,
    lag: material.modulus * skin.lag + FOAM.modulus * core.lag,
    torsion: material.shear * skin.torsion + FOAM.shear * core.torsion,
    axis: solidAxis + filled * (cellShearCentre(section) - solidAxis),
    mass,
    centre,
    spin: material.density * (skin.flap + skin.lag) + FOAM.density * (core.flap + core.lag),
    reach: reachOf(section, skin),
  };
}

function reachOf({ reach }: Section, { x, y }: { x: number; y: number }): BeamPoint['reach'] {
  return {
    flap: Math.max(reach.high - y, y - reach.low),
    lag: Math.max(reach.tail - x, x - reach.nose),
  };
}

function scaled(point: BeamPoint, chord: number): BeamPoint {
  const [square, fourth] = [chord ** 2, chord ** 4];
  return {
    chord,
    flap: point.flap * fourth,
    lag: point.lag * fourth,
    torsion: point.torsion * fourth,
    axis: point.axis,
    mass: point.mass * square,
    centre: point.centre,
    spin: point.spin * fourth,
    reach: { flap: point.reach.flap * chord, lag: point.reach.lag * chord },
  };
}

function between(a: BeamPoint, b: BeamPoint, share: number): BeamPoint {
  const mix = (key: Exclude<keyof BeamPoint, 'reach'>) => a[key] + share * (b[key] - a[key]);
  return {
    chord: mix('chord'),
    flap: mix('flap'),
    lag: mix('lag'),
    torsion: mix('torsion'),
    axis: mix('axis'),
    mass: mix('mass'),
    centre: mix('centre'),
    spin: mix('spin'),
    reach: {
      flap: a.reach.flap + share * (b.reach.flap - a.reach.flap),
      lag: a.reach.lag + share * (b.reach.lag - a.reach.lag),
    },
  };
}

/** A law read off a table of unit chords between its stations; one station where nothing changes. */
function tableLaw(stations: readonly BeamPoint[], chord: (share: number) => number): BeamLaw {
  const last = stations.length - 1;
  return (share) => {
    if (last === 0) return scaled(stations[0]!, chord(share));
    const at = Math.min(Math.max(share, 0), 1) * last;
    const k = Math.min(Math.floor(at), last - 1);
    return scaled(between(stations[k]!, stations[k + 1]!, at - k), chord(share));
  };
}

const wallOf = (makeup: Makeup | undefined): number | null =>
  makeup?.build === 'shell' ? (makeup.skin ?? RANGES['laminate.*.skin'].default) : null;

/** A surface from root (0) to tip (1). */
export function surfaceBeam(planform: Planform, surface: Surface, makeup: Makeup | undefined): BeamLaw {
  const material = materialOf(makeup);
  const wall = wallOf(makeup);
  const least = LEAST_TIP * surface.chord(0);
  const chord = (eta: number) => Math.max(surface.chord(eta), least);
  const stations =
    wall === null
      ? solidStations(planform.section, makeup)
      : shellStations(planform.section, material, wall, chord);
  return tableLaw(stations, chord);
}

const remembered = new WeakMap<Planform['section'], { makeup: Makeup | undefined; stations: BeamPoint[] }>(); // documents are never changed in place

function solidStations(section: Planform['section'], makeup: Makeup | undefined): BeamPoint[] {
  const known = remembered.get(section);
  if (known && known.makeup === makeup) return known.stations;
  const { root, tip } = section;
  const material = materialOf(makeup);
  const isEven = JSON.stringify(root) === JSON.stringify(tip);
  const stations = Array.from({ length: isEven ? 1 : STATIONS }, (_, k) =>
    unitPoint(blendOutlines(root, tip, k / (STATIONS - 1), POINTS), material, null),
  );
  remembered.set(section, { makeup, stations });
  return stations;
}

function shellStations(
  { root, tip }: Planform['section'],
  material: Material,
  wall: number,
  chord: (eta: number) => number,
): BeamPoint[] {
  return Array.from({ length: STATIONS }, (_, k) => {
    const eta = k / (STATIONS - 1);
    return unitPoint(blendOutlines(root, tip, eta, POINTS), material, wall / chord(eta));
  });
}

/** Chord and thickness of the strut from the foot (0) to the board (1), straight between. */
export function strutSize(strut: Strut, share: number): { chord: number; thickness: number } {
  const top = strut.top ?? strut;
  return {
    chord: strut.chord + share * (top.chord - strut.chord),
    thickness: strut.thickness + share * (top.thickness - strut.thickness),
  };
}

/** A symmetric four-digit form stretched to a thickness share: the strut's outline, which the document does not draw. */
export function strutOutline(ratio: number): OutlinePoints {
  const { x, y } = outlinePoints(FOUR_DIGIT, POINTS);
  return { x, y: y.map((value) => (value * ratio) / 0.1) };
}

/** The strut from the foot (0) to the board (1). Flap is bending to the side, lag fore and aft. */
export function strutBeam(strut: Strut, makeup: Makeup | undefined): BeamLaw {
  const material = materialOf(makeup);
  const wall = wallOf(makeup);
  const stations = Array.from({ length: strut.top ? STATIONS : 1 }, (_, k) => {
    const { chord, thickness } = strutSize(strut, k / (STATIONS - 1));
    return unitPoint(strutOutline(thickness / chord), material, wall && wall / chord);
  });
  return tableLaw(stations, (share) => strutSize(strut, share).chord);
}

/** A round rod or tube: I = pi d^4/64, J twice that. The same all along. */
export function fuselageBeam({ fuselage, laminate }: Design): BeamPoint | null {
  if (!fuselage) return null;
  const material = materialOf(laminate?.fuselage);
  const wall = wallOf(laminate?.fuselage);
  const d = fuselage.diameter;
  const bore = wall === null ? 0 : Math.max(0, d - 2 * wall);
  const second = (Math.PI / 64) * (d ** 4 - bore ** 4);
  const area = (Math.PI / 4) * (d ** 2 - bore ** 2);
  return {
    chord: d,
    flap: material.modulus * second,
    lag: material.modulus * second,
    torsion: material.shear * 2 * second,
    axis: 0.5,
    mass: material.density * area,
    centre: 0.5,
    spin: material.density * 2 * second,
    reach: { flap: d / 2, lag: d / 2 },
  };
}
