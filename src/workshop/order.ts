/** What is asked for of the workshop, and what every file of one order is made from. */
import type { Design } from '../solver/design/document.ts';
import type { Side } from '../solver/geometry/mesh.ts';
import type { Draw } from '../solver/geometry/parting.ts';
import { type Skin, skinOf } from '../solver/geometry/skin.ts';
import { builtDesign } from '../solver/studies/built-shape.ts';
import { choicesOf } from './choices.ts';
import { type Mark, markOf } from './fingerprint.ts';
import type { Paper } from './paper.ts';
import type { Foil } from './three-views.ts';

export const KINDS = ['csv', 'svg', 'dxf', 'stl', 'pdf'] as const;
export const PARTS = ['wing', 'stabilizer', 'strut', 'fuselage', 'mould'] as const;
export type Kind = (typeof KINDS)[number];
export type Part = (typeof PARTS)[number];

export interface Order {
  kind: Kind;
  part: Part | null; // null: every part that the kind usually holds
  fliesAsDrawn: boolean; // the shape to build, so that loads bring it to the drawn one
  date: Date;
  paper: Paper;
  side: Side | 'halves'; // of solids
  draw: Draw; // of moulds
}

export const USUAL_ORDER = {
  part: null,
  fliesAsDrawn: false,
  paper: 'a4',
  side: 'whole',
  draw: 'fitted',
} as const;

export interface BuildFile {
  name: string;
  bytes: Uint8Array;
}

export type Progress = (share: number) => void;

export interface Workshop {
  order: Order;
  design: Design; // as drawn
  shape: Design; // what is built: the design, or the shape that flies like it
  foil: Foil;
  surfaces: Array<{ part: 'wing' | 'stabilizer'; skin: Skin }>; // those asked for
  mark: Mark;
}

/** Throws an Error with a sentence when the design has no such part, or no shape flies as drawn. */
export function openWorkshop(design: Design, order: Order): Workshop {
  const { part } = order;
  if (part === 'stabilizer' || part === 'strut' || part === 'fuselage')
    if (!design[part]) throw new Error(`part: found ${part}, which this design does not have`);
  const shape = order.fliesAsDrawn ? builtDesign(design) : design;
  const foil = foilOf(shape);
  const surfaces: Workshop['surfaces'] = [];
  if (part === null || part === 'wing' || part === 'mould') surfaces.push({ part: 'wing', skin: foil.wing });
  if (foil.stabilizer && (part === null || part === 'stabilizer' || part === 'mould'))
    surfaces.push({ part: 'stabilizer', skin: foil.stabilizer });
  return { order, design, shape, foil, surfaces, mark: markOf(design, order.fliesAsDrawn, order.date) };
}

export function foilOf(design: Design): Foil {
  const { leastEdge } = choicesOf(design);
  const { wing, stabilizer } = design;
  return {
    wing: skinOf(wing, undefined, leastEdge),
    stabilizer:
      stabilizer && skinOf(stabilizer, { arm: stabilizer.arm, height: stabilizer.height }, leastEdge),
  };
}
