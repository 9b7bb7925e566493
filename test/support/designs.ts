/** Designs for tests: plain wings built from a few numbers, and the documents that must load and solve as they stand. */
import { readdirSync, readFileSync } from 'node:fs';
import type {
  Brief,
  ChordLaw,
  Design,
  DroopLaw,
  Pair,
  Planform,
  Stabilizer,
  Strut,
} from '../../src/solver/design/document.ts';

const SYMMETRIC = { kind: 'naca4', code: '0010' } as const;

/** A flat, unswept, untwisted wing of 1 m unrolled, aspect ratio 10, with a symmetric section; then what differs. */
export function plainWing(changes: Partial<Planform> = {}): Planform {
  return {
    length: { kind: 'unrolled', value: 1 },
    chord: { kind: 'taper', root: 0.1, tip: 0.1 },
    sweep: { kind: 'straight', angle: 0 },
    droop: { kind: 'flat' },
    twist: { kind: 'linear', tip: 0 },
    section: { root: SYMMETRIC, tip: SYMMETRIC },
    incidence: 0,
    ...changes,
  };
}

export interface PlainRest {
  brief?: Partial<Brief>;
  stabilizer?: Stabilizer | null;
  strut?: Strut | null;
}

/** A wing alone in deep fresh water, unless the rest says otherwise. */
export function plainDesign(wing: Partial<Planform>, rest: PlainRest = {}): Design {
  return {
    format: 'downcurve-design',
    version: 1,
    name: 'plain wing',
    brief: {
      allUpMass: 50,
      upwardPull: 0,
      speeds: { takeOff: 5, cruise: 10, top: 14 },
      water: { kind: 'fresh', temperature: 15, clarity: 'clean' },
      depth: null,
      balance: { x: 0, height: 1 },
      driveHeight: null,
      ...rest.brief,
    },
    wing: plainWing(wing),
    stabilizer: rest.stabilizer ?? null,
    fuselage: null,
    strut: rest.strut ?? null,
  };
}

export function plainStabilizer(changes: Partial<Stabilizer> = {}): Stabilizer {
  return {
    ...plainWing({
      length: { kind: 'unrolled', value: 0.4 },
      chord: { kind: 'taper', root: 0.05, tip: 0.05 },
    }),
    arm: 0.6,
    height: 0,
    ...changes,
  };
}

/** Chord of a straight tapered wing of 1 m; aspect ratio on the unrolled area. */
export function taperedChord(aspectRatio: number, taper: number): ChordLaw {
  const root = 2 / (aspectRatio * (1 + taper));
  return { kind: 'taper', root, tip: taper * root };
}

/** Chord of an elliptic wing of 1 m; aspect ratio on the unrolled area. */
export function ellipticChord(aspectRatio: number): ChordLaw {
  return { kind: 'elliptic', root: 4 / (Math.PI * aspectRatio) };
}

/** Flat out to eta, then at once `tipAngle` degrees down: a kink, as a step within 1e-9 of the length. */
export function kinkedDroop(eta: number, tipAngle: number): DroopLaw {
  const at: Pair[] = [
    [0, 0],
    [eta - 5e-10, 0],
    [eta + 5e-10, tipAngle],
    [1, tipAngle],
  ];
  return { kind: 'points', at };
}

const GOOD = new URL('../designs/good/', import.meta.url);

/** Every document under test/designs/good, by file name. */
export function goodDesigns(): Array<[string, Design]> {
  return readdirSync(GOOD)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => [file, JSON.parse(readFileSync(new URL(file, GOOD), 'utf8')) as Design]);
}

export function goodDesign(name: string): Design {
  return JSON.parse(readFileSync(new URL(`${name}.json`, GOOD), 'utf8')) as Design;
}
