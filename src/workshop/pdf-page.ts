/** A thin layer over the PDF library: pages in millimetres from the lower left corner, lines and words. */
import {
  clip,
  closePath,
  endPath,
  lineTo,
  moveTo,
  PDFDocument,
  type PDFFont,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  rgb,
  StandardFonts,
  setDashPattern,
  setLineWidth,
  setStrokingColor,
  stroke,
} from '@cantoo/pdf-lib';
import type { Box, Point } from './drawing.ts';

const POINTS = 72 / 25.4; // a millimetre in points

export interface Pen {
  width: number; // mm
  colour: readonly [number, number, number]; // 0 to 1
  dashes?: readonly number[]; // mm
}

export const BLACK: Pen['colour'] = [0, 0, 0];
export const GREY: Pen['colour'] = [0.4, 0.4, 0.4];

export interface Fonts {
  plain: PDFFont;
  bold: PDFFont;
}

export interface PdfBook {
  document: PDFDocument;
  fonts: Fonts;
}

/** `date` is written into the file. */
export async function newBook(title: string, remark: string, date: Date): Promise<PdfBook> {
  const document = await PDFDocument.create();
  document.setTitle(title);
  document.setSubject(remark);
  document.setCreator('Downcurve');
  document.setCreationDate(date);
  document.setModificationDate(date);
  const plain = await document.embedFont(StandardFonts.Helvetica);
  const bold = await document.embedFont(StandardFonts.HelveticaBold);
  return { document, fonts: { plain, bold } };
}

export class PageWriter {
  readonly #page: PDFPage;

  constructor(
    private readonly book: PdfBook,
    width: number,
    height: number,
  ) {
    this.#page = book.document.addPage([width * POINTS, height * POINTS]);
  }

  line(points: readonly Point[], pen: Pen, isClosed = false): void {
    const [first, ...rest] = points;
    if (!first) return;
    this.#page.pushOperators(
      pushGraphicsState(),
      setLineWidth(pen.width * POINTS),
      setStrokingColor(rgb(...pen.colour)),
      setDashPattern(
        (pen.dashes ?? []).map((dash) => dash * POINTS),
        0,
      ),
      moveTo(first[0] * POINTS, first[1] * POINTS),
      ...rest.map(([x, y]) => lineTo(x * POINTS, y * POINTS)),
      ...(isClosed ? [closePath()] : []),
      stroke(),
      popGraphicsState(),
    );
  }

  /** Draws only inside the box while `draw` runs. */
  within({ left, bottom, right, top }: Box, draw: () => void): void {
    const corners: Point[] = [
      [left, bottom],
      [right, bottom],
      [right, top],
      [left, top],
    ];
    const [first, ...rest] = corners.map(([x, y]): Point => [x * POINTS, y * POINTS]);
    this.#page.pushOperators(
      pushGraphicsState(),
      moveTo(...first!),
      ...rest.map((corner) => lineTo(...corner)),
      closePath(),
      clip(),
      endPath(),
    );
    draw();
    this.#page.pushOperators(popGraphicsState());
  }

  /** Words with their base line from `at`; `size` is the height of the letters' em, mm. */
  text(text: string, at: Point, size: number, { bold = false, grey = false } = {}): void {
    const font = bold ? this.book.fonts.bold : this.book.fonts.plain;
    this.#page.drawText(readable(text, font), {
      x: at[0] * POINTS,
      y: at[1] * POINTS,
      size: size * POINTS,
      font,
      color: rgb(...(grey ? GREY : BLACK)),
    });
  }

  /** Width of words in mm. */
  widthOf(text: string, size: number, bold = false): number {
    const font = bold ? this.book.fonts.bold : this.book.fonts.plain;
    return font.widthOfTextAtSize(readable(text, font), size * POINTS) / POINTS;
  }
}

const PLAIN: Readonly<Record<string, string>> = { '\u202f': ' ', '\u00a0': ' ', '\u2212': '-', '\t': ' ' };

/** The standard fonts hold western letters only; what they lack becomes a question mark. */
function readable(text: string, font: PDFFont): string {
  const known = charactersOf(font);
  return [...text.normalize('NFC')]
    .map((sign) => PLAIN[sign] ?? sign)
    .map((sign) => (known.has(sign.codePointAt(0)!) ? sign : '?'))
    .join('');
}

const characters = new WeakMap<PDFFont, Set<number>>();

function charactersOf(font: PDFFont): Set<number> {
  const set = characters.get(font) ?? new Set(font.getCharacterSet());
  characters.set(font, set);
  return set;
}
