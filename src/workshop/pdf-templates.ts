/** Full-size drawings over as many sheets of paper as they need, with marks to lay them together and a ruler to check. */
import { type Box, boxOf, type Drawing, type Layer, type Path, type Point } from './drawing.ts';
import type { Mark } from './fingerprint.ts';
import { FOOT, MARGIN, OVERLAP, PAPERS, type Paper, type Tile, type Tiling, tileDrawing } from './paper.ts';
import { BLACK, GREY, newBook, PageWriter, type PdfBook, type Pen } from './pdf-page.ts';

const RULER = 100; // mm
const CROSS = 4; // mm, arm of a mark

const PENS: Record<Layer, Pen> = {
  outline: { width: 0.2, colour: BLACK },
  core: { width: 0.2, colour: [0.04, 0.43, 0.42] },
  slot: { width: 0.2, colour: [0.73, 0.29, 0.14] },
  jig: { width: 0.2, colour: BLACK },
  stations: { width: 0.1, colour: [0.09, 0.33, 0.77] },
  reference: { width: 0.1, colour: GREY, dashes: [4, 1, 1, 1] },
  text: { width: 0.1, colour: BLACK },
};

/** Bytes of one document with every drawing. Async, since the library is; `progress` is told the share done. */
export async function pdfTemplates(
  drawings: readonly Drawing[],
  paper: Paper,
  { remark, date }: Mark,
  progress: (share: number) => void,
): Promise<Uint8Array> {
  const book = await newBook('Templates at full size', remark, date);
  for (const [k, drawing] of drawings.entries()) {
    addDrawing(book, drawing, paper, remark);
    progress((k + 1) / drawings.length);
  }
  return book.document.save();
}

function addDrawing(book: PdfBook, drawing: Drawing, paper: Paper, remark: string): void {
  const tiling = tileDrawing(boxOf(drawing), paper);
  for (const tile of tiling.tiles) {
    if (!drawing.paths.some((path) => touches(path, tile.window))) continue;
    const page = new PageWriter(book, tiling.width, tiling.height);
    const { left, bottom, right, top } = tile.window;
    const place = ([x, y]: Point): Point => [x - left + MARGIN, y - bottom + MARGIN + FOOT];
    const frame = {
      left: MARGIN,
      bottom: MARGIN + FOOT,
      right: right - left + MARGIN,
      top: top - bottom + MARGIN + FOOT,
    };
    page.within(frame, () => {
      for (const { layer, points, isClosed } of drawing.paths)
        page.line(points.map(place), PENS[layer], isClosed);
      for (const { at, height, text } of drawing.labels) page.text(text, place(at), height);
    });
    addMarks(page, tile, tiling, frame);
    addFoot(page, drawing, tile, tiling, paper, remark);
  }
}

function touches({ points, isClosed }: Path, { left, bottom, right, top }: Box): boolean {
  const ends = isClosed ? [...points, points[0]!] : points;
  return ends.some(([x, y], k) => {
    const [fromX, fromY] = ends[Math.max(0, k - 1)]!;
    const [lowX, highX, lowY, highY] = [
      Math.min(x, fromX),
      Math.max(x, fromX),
      Math.min(y, fromY),
      Math.max(y, fromY),
    ];
    return highX >= left && lowX <= right && highY >= bottom && lowY <= top;
  });
}

/** Along the middle of every overlap a dashed line, with a cross at each end: they lie on one another when joined. */
function addMarks(page: PageWriter, tile: Tile, { columns, rows }: Tiling, frame: Box): void {
  const half = 0.5 * OVERLAP;
  const inner = {
    left: frame.left + half,
    right: frame.right - half,
    bottom: frame.bottom + half,
    top: frame.top - half,
  };
  const dashed: Pen = { width: 0.1, colour: GREY, dashes: [2, 2] };
  const solid: Pen = { width: 0.15, colour: BLACK };
  const sides: Array<[boolean, Point, Point]> = [
    [tile.column > 0, [inner.left, inner.bottom], [inner.left, inner.top]],
    [tile.column < columns - 1, [inner.right, inner.bottom], [inner.right, inner.top]],
    [tile.row > 0, [inner.left, inner.top], [inner.right, inner.top]],
    [tile.row < rows - 1, [inner.left, inner.bottom], [inner.right, inner.bottom]],
  ];
  for (const [isJoined, from, to] of sides) {
    if (!isJoined) continue;
    page.line([from, to], dashed);
    for (const [x, y] of [from, to]) {
      page.line(
        [
          [x - CROSS, y],
          [x + CROSS, y],
        ],
        solid,
      );
      page.line(
        [
          [x, y - CROSS],
          [x, y + CROSS],
        ],
        solid,
      );
    }
  }
}

function addFoot(
  page: PageWriter,
  drawing: Drawing,
  tile: Tile,
  tiling: Tiling,
  paper: Paper,
  remark: string,
): void {
  const y = MARGIN + 6;
  const pen: Pen = { width: 0.2, colour: BLACK };
  page.line(
    [
      [MARGIN, y],
      [MARGIN + RULER, y],
    ],
    pen,
  );
  for (let at = 0; at <= RULER; at += 10) {
    const tick = at % 50 === 0 ? 4 : 2;
    page.line(
      [
        [MARGIN + at, y],
        [MARGIN + at, y + tick],
      ],
      pen,
    );
  }
  page.text('100 mm: measure it. Print at actual size, not fitted to the page.', [MARGIN, MARGIN + 1.5], 2.6);
  const x = MARGIN + RULER + 6;
  const sheets =
    tiling.tiles.length > 1
      ? `sheet ${tile.name}, ${tiling.columns} across and ${tiling.rows} down`
      : 'one sheet';
  page.text(shortened(drawing.title, page, tiling.width - MARGIN - x), [x, y + 4], 2.8, { bold: true });
  page.text(`${PAPERS[paper].label}, ${sheets}`, [x, y], 2.6);
  page.text(shortened(remark, page, tiling.width - MARGIN - x), [x, MARGIN + 1.5], 2.6);
}

/** Cut where it would run over the edge of the page. */
function shortened(text: string, page: PageWriter, room: number): string {
  if (page.widthOf(text, 2.8, true) <= room) return text;
  let end = text.length;
  while (end > 1 && page.widthOf(`${text.slice(0, end)}...`, 2.8, true) > room) end--;
  return `${text.slice(0, end)}...`;
}
