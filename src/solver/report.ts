/**
 * What a solve answers: plain data, SI units, angles in degrees, derivatives per radian (docs/batch.md).
 * x aft, y starboard, z up; roll positive starboard down, pitch positive nose up, yaw positive nose to starboard.
 */

export interface SurfaceFigures {
  projectedArea: number; // m2, integral of c dy, both halves
  unrolledArea: number; // m2, integral of c ds
  span: number; // m, tip to tip
  unrolledLength: number; // m
  aspectRatio: number; // span^2 / projectedArea
  meanChord: number; // m, (1/S) integral of c^2 dy
  tipDrop: number; // m, positive down
  effectiveDroop: number; // degrees, integral(-Gamma c y ds)/integral(c y ds)
}

export interface StabilizerFigures extends SurfaceFigures {
  volume: number; // S_s l_s / (S cbar)
  sidewaysShare: number; // X_s, integral(sin^2 Gamma c ds)/integral(c ds)
  sidewaysVolume: number; // X_s S_s l_s / (S b), unrolled stabilizer area
}

/** One strip of the starboard half. Forces in N at the condition. */
export interface StripFigures {
  eta: number; // fraction of the unrolled half length
  x: number; // m, quarter chord
  y: number; // m
  z: number; // m
  width: number; // m along the unrolled line
  droop: number; // degrees, positive down
  chord: number; // m
  circulation: number; // m2/s
  cl: number; // 2 circulation / (speed chord)
  normalForce: number; // N along the untwisted strip normal
  forceY: number; // N, positive to starboard
  forceZ: number; // N, up
  reynolds: number; // by chord
  cd: number; // of the section
  usableCl: number; // greatest lift coefficient counted on, nine tenths of the section's own
  leastCirculation: number; // m2/s, least-drag loading of this curve at the wing's vertical lift (wing only; 0 on the stabilizer)
}

export interface Derivatives {
  CYbeta: number;
  Clbeta: number;
  Cnbeta: number;
  CYp: number;
  Clp: number;
  Cnp: number;
  CYr: number;
  Clr: number;
  Cnr: number;
}

/** Drag by source, N. Interference of the two induced drags is counted once: each row of the wake sum has one owner. */
export interface DragSources {
  wingInduced: number;
  stabilizerInduced: number;
  wingProfile: number;
  stabilizerProfile: number;
  strutProfile: number;
  fuselage: number;
  junctions: number;
  spray: number;
  wave: number;
}

export interface Drag extends DragSources {
  total: number;
}

export interface SectionsUsed {
  source: 'polars' | 'fixed'; // of profile drag and usable lift: the sections' own, or assumed coefficients
  /** Least margin of a wing strip to its usable lift coefficient, and where; negative beyond it. */
  stallMargin: number;
  stallEta: number;
  unsettled: number[]; // chord Reynolds numbers at which no flow settled: the next higher one that does answers there
}

export interface TwinPrice {
  extraAlpha: number; // degrees, design minus twin at the same lift
  extraInducedDrag: number; // N, design minus twin at the same lift
  extraProfileDrag: number; // N, of wing and stabilizer, likewise
  extraTotalDrag: number; // N, both
  alpha: number; // degrees, the twin's
  inducedDrag: number; // N, the twin's
}

/** A bend that was solved: tip angle (degrees) and what a yaw does to roll there. */
export interface DroopTry {
  tipAngle: number;
  Clr: number;
}

export interface Ledger {
  normalForce: number; // N, sum of F_n over the wing, both halves
  verticalLift: number; // N, sum of F_z
  leanedAway: number; // N, normalForce - verticalLift
  pushedSideways: number; // N, sum of |F_y|; port and starboard cancel
  flatLift: number; // N, unrolled twin's vertical lift at the same angle
  metAtSmallerAngle: number; // N, flatLift - normalForce
  lostLift: number; // N, flatLift - verticalLift
  lostFraction: number | null; // of flatLift; null where flatLift is not positive
  deepWater: { lostFraction: number | null; flatLift: number; verticalLift: number }; // N, of twin and wing
  sameLift: { unrolled: TwinPrice; sameSpan: TwinPrice };
}

export interface Report {
  condition: {
    speed: number; // m/s
    density: number; // kg/m3
    viscosity: number; // m2/s, kinematic
    alpha: number; // degrees, x axis to the stream
    depth: number | null; // m, origin below the surface
    froudeDepth: number | null; // V / sqrt(g h)
    froudeSpan: number; // V / sqrt(g b)
    weightCarried: number; // N, (1-u) m g
  };
  geometry: { wing: SurfaceFigures; stabilizer: StabilizerFigures | null };
  lift: { total: number; wing: number; stabilizer: number; CL: number; CLalpha: number };
  inducedDrag: {
    farField: number;
    nearField: number;
    CDi: number;
    spanEfficiency: number | null; // null where there is no drag to divide by
    leastFactor: number; // k of the wing alone, with its image if there is depth
    leastForWing: number; // N, least drag of this curve at the wing's vertical lift
  };
  drag: Drag;
  sections: SectionsUsed;
  ledger: Ledger;
  strips: { wing: StripFigures[]; stabilizer: StripFigures[] };
  stability: {
    foil: Derivatives; // about the origin, no strut
    craft: Derivatives; // about the balance point, with the strut
    foilProfile: Derivatives; // what strip drag adds to `foil`, which is the vortex part
    craftProfile: Derivatives; // likewise to `craft`
    Czalpha: number; // slope of the vertical force at the condition's angle
    Cmalpha: number; // slope of the pitching moment about the origin, on the mean chord
    neutralPoint: number; // m aft of the origin, -meanChord Cmalpha/Czalpha
    staticMargin: number; // (neutralPoint - balance.x)/meanChord
    holdIndex: number | null; // null where C_L is not positive
    holdTerms: { roll: number | null; yaw: number; pitch: number }; // G_w/C_L, V_Y, V_H
    neutralDroop: number | null; // degrees of tip angle; null where none is found or not asked for
    /** The two bends tried next to it, one either way; empty where none is found. */
    neutralDroopTries: DroopTry[];
    rollFromYaw: number | null; // Clr/|Clp| of the foil
    yawFromRoll: number | null; // Cnp/|Cnr| of the foil
  };
  pitch: {
    momentAboutBalance: number; // N m, vortex forces and the sections' camber
    trimIncidence: number | null; // degrees of stabilizer incidence
    trimStance: number | null; // balance.x that trims, m
    downwashSlope: number | null; // d(downwash)/d(alpha) at the stabilizer
  };
}

/** The condition a solve runs at. Left out: cruise speed, the brief's depth, carrying (1-u) m g. */
export interface ConditionOptions {
  speed?: number; // m/s
  alpha?: number; // degrees; excludes lift
  lift?: number; // N; excludes alpha
  depth?: number | null; // m; null: deep water
  strips?: number; // wing, per side
  stabilizerStrips?: number;
  rows?: number;
  /** Real: lift and drag of the sections' own polars (default). Thin: slope 2 pi, thin-airfoil angles, assumed drag. */
  sections?: 'thin' | 'real';
  neutralDroop?: boolean; // default true; false leaves it null and saves about ten solves
}
