/** Paper sizes and how a drawing is spread over sheets that overlap. Millimetres. */
import type { Box } from './drawing.ts';

export const PAPERS = {
  a4: { label: 'A4', width: 210, height: 297 }, // ISO 216
  a3: { label: 'A3', width: 297, height: 420 },
  letter: { label: 'Letter', width: 215.9, height: 279.4 }, // ANSI/ASME Y14.1
} as const;

export type Paper = keyof typeof PAPERS;

export const MARGIN = 8; // at all four edges
export const FOOT = 16; // below the drawing: ruler and words
export const OVERLAP = 10; // of neighbouring sheets

export interface Tile {
  name: string; // column letter and row number
  column: number;
  row: number; // from the top
  window: Box; // what of the drawing the sheet shows
}

export interface Tiling {
  width: number; // of the page
  height: number;
  columns: number;
  rows: number;
  tiles: Tile[];
}

/** Upright or across, whichever takes fewer sheets; sheets on which nothing would stand are still counted here. */
export function tileDrawing(box: Box, paper: Paper): Tiling {
  const { width, height } = PAPERS[paper];
  const upright = tiling(box, width, height);
  const across = tiling(box, height, width);
  return across.tiles.length < upright.tiles.length ? across : upright;
}

function tiling(box: Box, width: number, height: number): Tiling {
  const shown = { width: width - 2 * MARGIN, height: height - 2 * MARGIN - FOOT };
  const count = (size: number, room: number) =>
    Math.max(1, Math.ceil((size - OVERLAP) / (room - OVERLAP) - 1e-9));
  const columns = count(box.right - box.left, shown.width);
  const rows = count(box.top - box.bottom, shown.height);
  // The spare room is shared out evenly round the drawing.
  const spare = (n: number, room: number, size: number) => n * (room - OVERLAP) + OVERLAP - size;
  const left = box.left - 0.5 * spare(columns, shown.width, box.right - box.left);
  const top = box.top + 0.5 * spare(rows, shown.height, box.top - box.bottom);
  const tiles: Tile[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const x = left + column * (shown.width - OVERLAP);
      const y = top - row * (shown.height - OVERLAP);
      tiles.push({
        name: `${columnName(column)}${row + 1}`,
        column,
        row,
        window: { left: x, right: x + shown.width, top: y, bottom: y - shown.height },
      });
    }
  return { width, height, columns, rows, tiles };
}

/** A to Z, then AA, AB ... */
function columnName(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnName(Math.floor(column / 26) - 1) + letter;
}
