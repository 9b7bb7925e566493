/**
 * The design document, version 1: what the user draws. SI units, angles in degrees; x aft, y starboard, z up
 * from the origin at the quarter chord of the wing root. Keys are a public interface (docs/design-document.md).
 */

export type Pair = [number, number];

export type Length = { kind: 'unrolled' | 'tipToTip'; value: number };

export type PointsLaw = { kind: 'points'; at: Pair[] };
export type FormulaLaw = { kind: 'formula'; expression: string };

export type ChordLaw =
  | { kind: 'taper'; root: number; tip: number }
  | { kind: 'elliptic'; root: number }
  | { kind: 'superelliptic'; root: number; n: number; m: number }
  | PointsLaw
  | FormulaLaw;

export type SweepLaw =
  | { kind: 'straight'; angle: number }
  | { kind: 'rake'; angle: number; tip: number; power: number }
  | PointsLaw
  | FormulaLaw;

/** How far the tip bends: by angle (degrees) or by drop (metres); exactly one of the two. */
export type TipMeasure = { tipAngle: number; tipDrop?: never } | { tipDrop: number; tipAngle?: never };

export type DroopLaw =
  | { kind: 'flat' }
  | ({ kind: 'vee' } & TipMeasure)
  | ({ kind: 'arc' } & TipMeasure)
  | ({ kind: 'late'; from: number; power: number } & TipMeasure)
  | ({ kind: 'gull'; rootAngle: number; knee: number } & TipMeasure)
  | PointsLaw
  | FormulaLaw;

export type TwistLaw = { kind: 'linear'; tip: number } | PointsLaw | FormulaLaw;

export type Outline =
  | { kind: 'naca4'; code: string }
  | { kind: 'coordinates'; name: string; points: Pair[] };

export interface Planform {
  length: Length;
  chord: ChordLaw;
  sweep: SweepLaw;
  droop: DroopLaw;
  twist: TwistLaw;
  section: { root: Outline; tip: Outline };
  incidence: number;
}

export interface Stabilizer extends Planform {
  arm: number;
  height: number;
}

export interface Fuselage {
  diameter: number;
  nose: number;
}

export interface Strut {
  x?: number;
  length: number;
  chord: number;
  thickness: number;
}

export interface Speeds {
  takeOff: number;
  cruise: number;
  top: number;
}

export interface Brief {
  allUpMass: number;
  upwardPull: number;
  speeds: Speeds;
  water: { kind: 'sea' | 'fresh'; temperature: number; clarity: 'clean' | 'coastal' | 'silty' };
  depth: number | null;
  depths?: Partial<Speeds>;
  balance: { x: number; height: number };
  driveHeight: number | null;
  sidePull?: { share: number; height: number };
  boardAngle?: number;
}

export interface Design {
  format: 'downcurve-design';
  version: 1;
  name: string;
  brief: Brief;
  wing: Planform;
  stabilizer: Stabilizer | null;
  fuselage: Fuselage | null;
  strut: Strut | null;
}
