/**
 * The quantities that a proposal may move: how each is read from a design and written into a copy of it. SI, angles in
 * degrees, as in the document. A quantity serves only where the design's laws have it.
 */
import type { ChordLaw, Design, Pair, Planform, Stabilizer } from '../../design/document.ts';
import { withDroopAmplitude } from '../../design/laws.ts';
import { RANGES, type Range } from '../../design/ranges.ts';
import { scaledChord } from '../../geometry/scale.ts';
import { surfaceOf } from '../../geometry/surface.ts';
import { withThickness } from '../thin.ts';

export interface Span {
  least: number;
  most: number;
}

export interface Quantity {
  range: Range; // of each of its values
  step: number; // by which a builder would change it
  /** Present values, several for a law of points; null where the design has no such quantity. */
  read(design: Design): number[] | null;
  write(design: Design, values: readonly number[]): Design;
  /** Range to search where none is asked for, from the present values. */
  usual(values: readonly number[]): Span;
}

const DEGREES = 180 / Math.PI;

const around = (low: number, high: number) => (values: readonly number[]) => ({
  least: low * Math.min(...values),
  most: high * Math.max(...values),
});
const beside = (below: number, above: number) => (values: readonly number[]) => ({
  least: Math.min(...values) - below,
  most: Math.max(...values) + above,
});

function withWing(design: Design, changes: Partial<Planform>): Design {
  return { ...design, wing: { ...design.wing, ...changes } };
}

function withStabilizer(design: Design, changes: Partial<Stabilizer>): Design {
  return design.stabilizer ? { ...design, stabilizer: { ...design.stabilizer, ...changes } } : design;
}

/** The chords scaled so that the projected area is as asked; span and droop stay. */
function withArea<P extends Planform>(planform: P, area: number): P {
  return { ...planform, chord: scaledChord(planform.chord, area / surfaceOf(planform).projectedArea) };
}

/** Amplitude of the droop law, degrees; null for a law of points or a formula that is flat and has no shape to scale. */
function droopOf({ droop, ...planform }: Planform): number | null {
  const amplitude = surfaceOf({ droop, ...planform }).amplitude * DEGREES;
  const hasShape = Math.abs(amplitude) > 1e-6 || (droop.kind !== 'points' && droop.kind !== 'formula');
  return hasShape ? amplitude : null;
}

function bent<P extends Planform>(planform: P, amplitude: number): P {
  const present = surfaceOf(planform).amplitude * DEGREES;
  return { ...planform, droop: withDroopAmplitude(planform.droop, present, amplitude) };
}

function endsOf(chord: ChordLaw): [root: number, tip: number] {
  if (chord.kind === 'taper') return [chord.root, chord.tip];
  return chord.kind === 'points' ? [chord.at[0]![1], chord.at[chord.at.length - 1]![1]] : [0, 0];
}

/** Another tip chord over root chord: a straight taper keeps its middle chord, points grow or shrink with eta. */
function tapered(chord: ChordLaw, ratio: number): ChordLaw {
  const [root, tip] = endsOf(chord);
  if (chord.kind === 'taper') {
    const wanted = (root + tip) / (1 + ratio);
    return { ...chord, root: wanted, tip: ratio * wanted };
  }
  if (chord.kind !== 'points') return chord;
  const factor = (ratio * root) / tip;
  return { ...chord, at: chord.at.map(([eta, value]): Pair => [eta, value * (1 + (factor - 1) * eta)]) };
}

function withValues(at: readonly Pair[], values: readonly number[]): Pair[] {
  return at.map(([eta], k): Pair => [eta, values[k]!]);
}

const wingQuantities = {
  length: {
    range: RANGES['wanted.free.length.*'],
    step: 0.01,
    read: ({ wing }) => [wing.length.value],
    write: (design, [value]) => withWing(design, { length: { ...design.wing.length, value: value! } }),
    usual: around(0.75, 1.3),
  },
  droop: {
    range: RANGES['wanted.free.droop.*'],
    step: 1,
    read: ({ wing }) => {
      const amplitude = droopOf(wing);
      return amplitude === null ? null : [amplitude];
    },
    write: (design, [value]) => ({ ...design, wing: bent(design.wing, value!) }),
    usual: ([value]) => ({ least: Math.max(-60, Math.min(0, value!)), most: Math.min(60, value! + 20) }),
  },
  droopFrom: {
    range: RANGES['wanted.free.droopFrom.*'],
    step: 0.05,
    read: ({ wing: { droop } }) => (droop.kind === 'late' ? [droop.from] : null),
    write: (design, [value]) => {
      const { droop } = design.wing;
      return droop.kind === 'late' ? withWing(design, { droop: { ...droop, from: value! } }) : design;
    },
    usual: () => ({ least: 0.2, most: 0.8 }),
  },
  chords: {
    range: RANGES['wanted.free.chords.*'],
    step: 0.001,
    read: ({ wing: { chord } }) => (chord.kind === 'points' ? chord.at.map(([, value]) => value) : null),
    write: (design, values) => {
      const { chord } = design.wing;
      if (chord.kind !== 'points') return design;
      return withWing(design, { chord: { ...chord, at: withValues(chord.at, values) } });
    },
    usual: around(0.6, 1.5),
  },
  taper: {
    range: RANGES['wanted.free.taper.*'],
    step: 0.05,
    read: ({ wing: { chord } }) => {
      const [root, tip] = endsOf(chord);
      return root > 0 && tip > 0 ? [tip / root] : null;
    },
    write: (design, [value]) => withWing(design, { chord: tapered(design.wing.chord, value!) }),
    usual: () => ({ least: 0.2, most: 1 }),
  },
  fullness: {
    range: RANGES['wanted.free.fullness.*'],
    step: 0.1,
    read: ({ wing: { chord } }) => (chord.kind === 'superelliptic' ? [chord.n] : null),
    write: (design, [value]) => {
      const { chord } = design.wing;
      return chord.kind === 'superelliptic' ? withWing(design, { chord: { ...chord, n: value! } }) : design;
    },
    usual: () => ({ least: 1.5, most: 5 }),
  },
  area: {
    range: RANGES['wanted.free.area.*'],
    step: 0.001,
    read: ({ wing }) => [surfaceOf(wing).projectedArea],
    write: (design, [value]) => ({ ...design, wing: withArea(design.wing, value!) }),
    usual: around(0.7, 1.4),
  },
  sweep: {
    range: RANGES['wanted.free.sweep.*'],
    step: 1,
    read: ({ wing: { sweep } }) => ('angle' in sweep ? [sweep.angle] : null),
    write: (design, [value]) => {
      const { sweep } = design.wing;
      return 'angle' in sweep ? withWing(design, { sweep: { ...sweep, angle: value! } }) : design;
    },
    usual: beside(10, 10),
  },
  rake: {
    range: RANGES['wanted.free.rake.*'],
    step: 0.005,
    read: ({ wing: { sweep } }) => (sweep.kind === 'rake' ? [sweep.tip] : null),
    write: (design, [value]) => {
      const { sweep } = design.wing;
      return sweep.kind === 'rake' ? withWing(design, { sweep: { ...sweep, tip: value! } }) : design;
    },
    usual: beside(0.04, 0.04),
  },
  twist: {
    range: RANGES['wanted.free.twist.*'],
    step: 0.5,
    read: ({ wing: { twist } }) => {
      if (twist.kind === 'linear') return [twist.tip];
      return twist.kind === 'points' ? twist.at.slice(1).map(([, value]) => value) : null;
    },
    write: (design, values) => {
      const { twist } = design.wing;
      if (twist.kind === 'linear') return withWing(design, { twist: { ...twist, tip: values[0]! } });
      if (twist.kind !== 'points') return design;
      const at = withValues(twist.at, [twist.at[0]![1], ...values]);
      return withWing(design, { twist: { ...twist, at } });
    },
    usual: beside(4, 3),
  },
} satisfies Record<string, Quantity>;

const stabilizerQuantities = {
  stabilizerLength: {
    range: RANGES['wanted.free.stabilizerLength.*'],
    step: 0.01,
    read: ({ stabilizer }) => stabilizer && [stabilizer.length.value],
    write: (design, [value]) => {
      const { stabilizer } = design;
      return stabilizer
        ? withStabilizer(design, { length: { ...stabilizer.length, value: value! } })
        : design;
    },
    usual: around(0.75, 1.3),
  },
  stabilizerDroop: {
    range: RANGES['wanted.free.stabilizerDroop.*'],
    step: 1,
    read: ({ stabilizer }) => {
      const amplitude = stabilizer && droopOf(stabilizer);
      return amplitude === null ? null : [amplitude];
    },
    write: (design, [value]) =>
      design.stabilizer ? { ...design, stabilizer: bent(design.stabilizer, value!) } : design,
    // Up or down as drawn: through flat the hold is nothing either way, and a search that crosses it gets lost.
    usual: ([value]) =>
      value! < 0
        ? { least: Math.max(-70, value! - 20), most: 0 }
        : { least: 0, most: Math.min(70, value! + 20) },
  },
  stabilizerArea: {
    range: RANGES['wanted.free.stabilizerArea.*'],
    step: 0.0005,
    read: ({ stabilizer }) => stabilizer && [surfaceOf(stabilizer).projectedArea],
    write: (design, [value]) =>
      design.stabilizer ? { ...design, stabilizer: withArea(design.stabilizer, value!) } : design,
    usual: around(0.6, 1.5),
  },
  arm: {
    range: RANGES['wanted.free.arm.*'],
    step: 0.01,
    read: ({ stabilizer }) => stabilizer && [stabilizer.arm],
    write: (design, [value]) => withStabilizer(design, { arm: value! }),
    usual: around(0.8, 1.25),
  },
  stabilizerIncidence: {
    range: RANGES['wanted.free.stabilizerIncidence.*'],
    step: 0.25,
    read: ({ stabilizer }) => stabilizer && [stabilizer.incidence],
    write: (design, [value]) => withStabilizer(design, { incidence: value! }),
    usual: beside(4, 4),
  },
} satisfies Record<string, Quantity>;

/** In the order in which they are written: shapes before the areas that they are scaled to. */
const ALL = {
  ...wingQuantities,
  ...stabilizerQuantities,
  strutThickness: {
    range: RANGES['wanted.free.strutThickness.*'],
    step: 0.0005,
    read: ({ strut }) => strut && [strut.thickness],
    write: (design, [value]) =>
      design.strut ? { ...design, strut: withThickness(design.strut, value!) } : design,
    usual: around(0.8, 1.3),
  },
} satisfies Record<string, Quantity>;

export type QuantityName = keyof typeof ALL;
export const QUANTITY_NAMES = Object.keys(ALL) as QuantityName[];
export const QUANTITIES: Readonly<Record<QuantityName, Quantity>> = ALL;

/** What may move when nothing is said. */
export const USUALLY_FREE: readonly QuantityName[] = [
  'length',
  'droop',
  'taper',
  'fullness',
  'area',
  'rake',
  'twist',
  'stabilizerDroop',
  'stabilizerArea',
  'arm',
  'stabilizerIncidence',
];

/** The range to search for a quantity as it is: the usual one within what the document allows; null where there is none. */
export function usualRange(design: Design, name: QuantityName): Span | null {
  const { read, usual, range } = QUANTITIES[name];
  const values = read(design);
  if (!values) return null;
  const { least, most } = usual(values);
  return { least: Math.max(range.min, least), most: Math.min(range.max, most) };
}
