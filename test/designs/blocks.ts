/**
 * The optional blocks of a document with every number they can hold. A new block or key is added here, in
 * src/solver/design/ranges.ts and in docs/design-document.md; tests hold the three together.
 */

const spring = () => ({ roll: 20_000, pitch: 30_000, yaw: 15_000 });

export const BLOCKS: Readonly<Record<string, unknown>> = {
  'brief.depths': { takeOff: 0.3, cruise: 0.5, top: 0.6 },
  'brief.sidePull': { share: 0.1, height: 2 },
  'brief.boardAngle': 1,
  'wing.section.tip.thicknessScale': 1.1,
  'wing.section.tip.camberScale': 0.5,
  'strut.x': 0.1,
  'strut.turbulentTo': 0.15,
  'strut.top': { chord: 0.12, thickness: 0.015 },
  inertia: {
    boardMass: 5,
    boardLength: 1.3,
    boardWidth: 0.5,
    foilMass: 4,
    riderRoll: 0.4,
    riderPitch: 0.4,
    riderYaw: 0.2,
  },
  laminate: {
    strut: {
      material: 'high',
      along: 0.7,
      diagonal: 0.3,
      modulus: 9e10,
      shear: 1e10,
      strain: 0.004,
      density: 1550,
      build: 'shell',
      skin: 0.003,
    },
    safety: 3,
    limits: {
      strutThickness: 0.013,
      strutDeflection: 0.04,
      fuselageDiameter: 0.02,
      fuselageDeflection: 0.01,
    },
  },
  joints: {
    box: spring(),
    strut: spring(),
    bench: [{ pull: 'twist', mass: 10, at: 0.9, arm: 0.3, station: 0.9, deflection: 0.01, turn: 1 }],
  },
  build: {
    spacing: 0.04,
    leastEdge: 0.0005,
    allowance: 0.001,
    slot: { at: 0.3, width: 0.008, height: 0.003 },
    tolerance: 0.00002,
    stock: 0.006,
    ply: { thickness: 0.0003, weight: 0.3 },
  },
  marks: { hold: 4, glide: 3, turn: 5, takeOff: 2, pump: 1 },
  asBuilt: {
    wing: {
      at: [{ eta: 0.5, port: { twist: -0.5, chord: 0.09 }, starboard: { twist: -0.7, chord: 0.091 } }],
      tipDrop: { port: 0.07, starboard: 0.072 },
    },
  },
  finish: { grade: 400, roughness: 0.000008, grainShare: 0.25 },
  defects: [
    { kind: 'step', on: 'wing', eta: 0.3, side: 'lower', at: 0.2, height: 0.0001, width: 0.05, wedge: 15 },
  ],
  notes: { laminate: 'two layers of 200 g twill' },
  wanted: {
    weights: { takeOff: 0.2, cruise: 0.6, top: 0.2 },
    limits: {
      holdIndex: { least: 10, most: 40 },
      rollFromYaw: { most: 0.1 },
      staticMargin: { least: 0.1, most: 4 },
      span: { most: 0.9 },
      tipChord: { least: 0.03 },
      thickness: { least: 0.004 },
      strutDeflection: { most: 0.04 },
      takeOffSpeed: { most: 5 },
      stallMargin: { least: 0.1 },
      cavitationMargin: { least: 0.05 },
      tipDepth: { least: 0.3 },
      rootMoment: { most: 120 },
      stanceShift: { most: 0.4 },
    },
    free: {
      length: { least: 0.6, most: 0.9 },
      droop: { least: 0, most: 40 },
      droopFrom: { least: 0.2, most: 0.8 },
      chords: { least: 0.03, most: 0.15 },
      taper: { least: 0.2, most: 0.8 },
      fullness: { least: 1.5, most: 4 },
      area: { least: 0.04, most: 0.1 },
      sweep: { least: 0, most: 20 },
      rake: { least: 0, most: 0.06 },
      twist: { least: -4, most: 1 },
      stabilizerLength: { least: 0.3, most: 0.5 },
      stabilizerDroop: { least: -40, most: 0 },
      stabilizerArea: { least: 0.01, most: 0.03 },
      arm: { least: 0.5, most: 0.8 },
      stabilizerIncidence: { least: -4, most: 2 },
      strutThickness: { least: 0.011, most: 0.015 },
    },
    laws: { droop: ['arc', 'late'], chord: ['taper'] },
  },
};
