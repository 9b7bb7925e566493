/**
 * Guided starts: a few answers to a whole design that can be proposed from - brief, a plain wing and stabilizer of about the
 * right size, limits and free quantities. Proportions are common practice; every value can be changed afterwards. SI.
 */
import type { Brief, Design, Outline, Stabilizer } from '../solver/design/document.ts';
import type { Wanted } from '../solver/design/wanted.ts';
import { waterProperties } from '../solver/design/water.ts';
import { BRIEFS } from './briefs.ts';

export type GuidedKind = 'downwind' | 'race' | 'firstFlights';
export type Hold = 'loose' | 'middle' | 'firm';
export type Pulling = 'none' | 'wing' | 'kite';

export interface GuidedAnswers {
  allUpMass: number; // kg
  water: Brief['water']['kind'];
  rig: Pulling;
  takeOff: number; // m/s
  cruise: number; // m/s
  hold: Hold;
}

export const RIGS: Readonly<Record<Pulling, Pick<Brief, 'upwardPull' | 'driveHeight'>>> = {
  none: { upwardPull: 0, driveHeight: null },
  wing: { upwardPull: 0.1, driveHeight: 2.2 },
  kite: { upwardPull: 0.25, driveHeight: 2.1 },
};

/** Hold index asked for; a flat wing has none, strongly curved ones ten and more. */
export const HOLDS: Readonly<Record<Hold, number>> = { loose: 1, middle: 3, firm: 6 };

interface Kind {
  label: string;
  brief: string; // of BRIEFS
  hold: Hold;
  rig: Pulling;
  aspectRatio: number;
  droop: number; // degrees
  span: number; // m, most
  tipChord: number; // m, least
  sections: [root: string, tip: string];
  top: number; // top speed over cruise
}

export const GUIDED: Readonly<Record<GuidedKind, Kind>> = {
  downwind: {
    label: 'Downwind wing',
    brief: 'downwind glide',
    hold: 'middle',
    rig: 'none',
    aspectRatio: 10,
    droop: 20,
    span: 1.25,
    tipChord: 0.03,
    sections: ['3412', '2410'],
    top: 1.5,
  },
  race: {
    label: 'Race wing',
    brief: 'wing race',
    hold: 'middle',
    rig: 'wing',
    aspectRatio: 9,
    droop: 22,
    span: 0.9,
    tipChord: 0.025,
    sections: ['2411', '2410'],
    top: 1.55,
  },
  firstFlights: {
    label: 'First flights',
    brief: 'first flights',
    hold: 'firm',
    rig: 'wing',
    aspectRatio: 6.5,
    droop: 16,
    span: 1.05,
    tipChord: 0.05,
    sections: ['3412', '2412'],
    top: 1.5,
  },
};

const GRAVITY = 9.80665; // m/s2, standard
const TAKE_OFF_LIFT = 0.9; // mean lift coefficient at take-off: below the sections' greatest by the spread of lift
const TAIL = { area: 0.17, aspectRatio: 5.5, arm: 0.65, droop: 16 }; // of the wing's area; m; degrees

function briefOf(kind: GuidedKind): Brief {
  return BRIEFS.find(({ name }) => name === GUIDED[kind].brief)!.brief;
}

/** The answers to begin with. */
export function usualAnswers(kind: GuidedKind): GuidedAnswers {
  const { allUpMass, water, speeds } = briefOf(kind);
  const { rig, hold } = GUIDED[kind];
  return { allUpMass, water: water.kind, rig, takeOff: speeds.takeOff, cruise: speeds.cruise, hold };
}

export function guidedDesign(kind: GuidedKind, answers: GuidedAnswers): Design {
  const { label, aspectRatio, droop, sections } = GUIDED[kind];
  const brief = guidedBrief(kind, answers);
  const area = wingArea(brief);
  const length = round(Math.sqrt(aspectRatio * area), 3);
  const tail = guidedTail(area);
  const [root, tip] = sections.map((code): Outline => ({ kind: 'naca4', code }));
  return {
    format: 'downcurve-design',
    version: 1,
    name: `${label}, ${Math.round(answers.allUpMass)} kg`,
    brief,
    wing: {
      length: { kind: 'unrolled', value: length },
      chord: { kind: 'superelliptic', root: round((1.17 * area) / length, 4), n: 2.4, m: 2 },
      sweep: { kind: 'rake', angle: 4, tip: 0.03, power: 3 },
      droop: { kind: 'arc', tipAngle: droop },
      twist: { kind: 'linear', tip: -1 },
      section: { root: root!, tip: tip! },
      incidence: 1,
    },
    stabilizer: tail,
    fuselage: { diameter: 0.022, nose: 0.14 },
    strut: { x: 0.1, length: 0.95, chord: 0.115, thickness: 0.014 },
    wanted: guidedWanted(kind, answers, { length, area, tail }),
  };
}

function guidedBrief(kind: GuidedKind, { allUpMass, water, rig, takeOff, cruise }: GuidedAnswers): Brief {
  const { depths: _depths, sidePull: _sidePull, ...usual } = briefOf(kind);
  return {
    ...usual,
    allUpMass,
    ...RIGS[rig],
    speeds: { takeOff, cruise, top: round(GUIDED[kind].top * cruise, 3) },
    water: { ...usual.water, kind: water },
  };
}

/** Projected area that lifts off at the take-off speed, m2. */
function wingArea({ allUpMass, upwardPull, speeds, water }: Brief): number {
  const { density } = waterProperties(water.kind, water.temperature);
  const weight = (1 - upwardPull) * allUpMass * GRAVITY;
  return weight / (0.5 * density * speeds.takeOff ** 2 * TAKE_OFF_LIFT);
}

function guidedTail(wingArea: number): Stabilizer {
  const area = TAIL.area * wingArea;
  const length = round(Math.sqrt(TAIL.aspectRatio * area), 3);
  const root = round((1.25 * area) / length, 4);
  const section: Outline = { kind: 'naca4', code: '0010' };
  return {
    length: { kind: 'unrolled', value: length },
    chord: { kind: 'taper', root, tip: round(0.6 * root, 4) },
    sweep: { kind: 'straight', angle: 8 },
    droop: { kind: 'arc', tipAngle: TAIL.droop },
    twist: { kind: 'linear', tip: 0 },
    section: { root: section, tip: section },
    incidence: -1,
    arm: TAIL.arm,
    height: 0.015,
  };
}

function guidedWanted(
  kind: GuidedKind,
  { takeOff, hold }: GuidedAnswers,
  { length, area, tail }: { length: number; area: number; tail: Stabilizer },
): Wanted {
  const { span, tipChord } = GUIDED[kind];
  const within = (value: number, low: number, high: number, decimals: number) => ({
    least: round(low * value, decimals),
    most: round(high * value, decimals),
  });
  return {
    limits: {
      takeOffSpeed: { most: takeOff },
      holdIndex: { least: HOLDS[hold] },
      staticMargin: { least: 0 },
      span: { most: span },
      tipChord: { least: tipChord },
    },
    free: {
      length: within(length, 0.6, 1.4, 3),
      area: within(area, 0.6, 1.5, 4),
      fullness: { least: 1.5, most: 4 },
      droop: { least: 0, most: 45 },
      rake: { least: 0, most: 0.06 },
      twist: { least: -5, most: 2 },
      stabilizerDroop: { least: 0, most: 40 },
      stabilizerArea: within(TAIL.area * area, 0.5, 1.7, 5),
      arm: within(tail.arm, 0.8, 1.25, 3),
      stabilizerIncidence: { least: -6, most: 4 },
    },
  };
}

function round(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
