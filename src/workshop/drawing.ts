/** A flat drawing at full size: polylines and words on named layers. Millimetres, x to the right, y up the sheet. */

export type Point = readonly [number, number];

/** What a line is for; the names of the layers in the files. */
export const LAYERS = {
  outline: 'OUTLINE', // to be cut
  core: 'CORE', // to be cut, the laminate taken off
  slot: 'SLOT',
  jig: 'JIG',
  stations: 'STATIONS',
  reference: 'REFERENCE', // chord lines, twist references, crosses
  text: 'TEXT',
} as const;

export type Layer = keyof typeof LAYERS;

export interface Path {
  layer: Layer;
  isClosed: boolean; // the last point is not the first again
  points: readonly Point[];
}

export interface Label {
  at: Point; // left end of the base line
  height: number;
  text: string;
}

export interface Drawing {
  name: string; // part of the file name: "wing-plan-unrolled"
  title: string;
  paths: Path[];
  labels: Label[];
}

export interface Box {
  left: number;
  bottom: number;
  right: number;
  top: number;
}

const LETTER = 0.62; // width of a letter over its height, on the safe side

export const closed = (layer: Layer, points: readonly Point[]): Path => ({ layer, isClosed: true, points });
export const open = (layer: Layer, points: readonly Point[]): Path => ({ layer, isClosed: false, points });

/** An upright cross. */
export function cross([x, y]: Point, arm: number): Path[] {
  return [
    open('reference', [
      [x - arm, y],
      [x + arm, y],
    ]),
    open('reference', [
      [x, y - arm],
      [x, y + arm],
    ]),
  ];
}

export function shiftedPath(path: Path, by: Point): Path {
  return { ...path, points: path.points.map(([x, y]): Point => [x + by[0], y + by[1]]) };
}

export function labelWidth({ text, height }: Label): number {
  return text.length * height * LETTER;
}

const STAMP = 3; // mm, letters

/** The drawing with a line under it that says where it comes from. */
export function stamped(drawing: Drawing, remark: string): Drawing {
  const { left, bottom } = boxOf(drawing);
  const label: Label = { at: [left, bottom - 2 * STAMP], height: STAMP, text: remark };
  return { ...drawing, labels: [...drawing.labels, label] };
}

/** The smallest box round everything, words included. */
export function boxOf({ paths, labels }: Pick<Drawing, 'paths' | 'labels'>): Box {
  const box = { left: Infinity, bottom: Infinity, right: -Infinity, top: -Infinity };
  const take = (x: number, y: number) => {
    box.left = Math.min(box.left, x);
    box.right = Math.max(box.right, x);
    box.bottom = Math.min(box.bottom, y);
    box.top = Math.max(box.top, y);
  };
  for (const { points } of paths) for (const [x, y] of points) take(x, y);
  for (const label of labels) {
    const [x, y] = label.at;
    take(x, y);
    take(x + labelWidth(label), y + label.height);
  }
  return box;
}
