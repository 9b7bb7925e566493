/** The present view as a PNG: what is on the canvas, larger, over its ground, with name, view and legend below. */
import type { Colour } from './skin-canvas.ts';

export interface LegendEntry {
  label: string;
  colour: string; // custom property
}

export interface PictureParts {
  /** Draws the view at this size in px and gives its canvas, good until the next drawing; null without graphics. */
  draw: (width: number, height: number) => HTMLCanvasElement | null;
  width: number; // of the view, CSS px
  height: number;
  title: string;
  note: string;
  legend: readonly LegendEntry[];
  colour: Colour;
}

const LEAST_WIDTH = 1600; // px: sharp on paper at half a page
const LETTERS = 15; // CSS px

/** Size in px of the picture of a view, its foot included. */
export function pictureSize({ width, height, legend }: Pick<PictureParts, 'width' | 'height' | 'legend'>) {
  const scale = Math.max(2, LEAST_WIDTH / width);
  const foot = legend.length > 0 ? 6.2 * LETTERS : 3.6 * LETTERS;
  return {
    scale,
    width: Math.round(width * scale),
    view: Math.round(height * scale),
    height: Math.round((height + foot) * scale),
  };
}

/** Throws an Error where the browser cannot make the file. */
export async function makePicture(parts: PictureParts): Promise<Blob> {
  const { colour, title, note, legend } = parts;
  const { scale, width, view, height } = pictureSize(parts);
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d')!;
  pen.fillStyle = colour('--paper');
  pen.fillRect(0, 0, width, height);
  const ground = pen.createLinearGradient(0, 0, 0, view);
  ground.addColorStop(0, colour('--paper'));
  ground.addColorStop(1, colour('--water'));
  pen.fillStyle = ground;
  pen.fillRect(0, 0, width, view);
  const drawn = parts.draw(width, view);
  if (!drawn) throw new Error('no graphics');
  pen.drawImage(drawn, 0, 0, width, view);
  pen.scale(scale, scale);
  const left = LETTERS;
  const line = view / scale + 1.6 * LETTERS;
  pen.fillStyle = colour('--ink');
  pen.font = `600 ${LETTERS}px system-ui, sans-serif`;
  pen.fillText(title, left, line, width / scale - 2 * left);
  pen.fillStyle = colour('--soft');
  pen.font = `${0.85 * LETTERS}px system-ui, sans-serif`;
  pen.fillText(note, left, line + 1.3 * LETTERS, width / scale - 2 * left);
  drawLegend(pen, legend, colour, left, line + 2.2 * LETTERS, width / scale - 2 * left);
  return new Promise((resolve, reject) =>
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error('no picture could be made'))),
      'image/png',
    ),
  );
}

function drawLegend(
  pen: CanvasRenderingContext2D,
  legend: readonly LegendEntry[],
  colour: Colour,
  left: number,
  top: number,
  room: number,
): void {
  const each = Math.min(150, room / Math.max(1, legend.length));
  for (const [k, entry] of legend.entries()) {
    const x = left + k * each;
    pen.fillStyle = colour(entry.colour);
    pen.fillRect(x, top, each - 6, 0.7 * LETTERS);
    pen.strokeStyle = colour('--edge');
    pen.strokeRect(x, top, each - 6, 0.7 * LETTERS);
    pen.fillStyle = colour('--soft');
    pen.fillText(entry.label, x, top + 1.7 * LETTERS, each - 6);
  }
}
