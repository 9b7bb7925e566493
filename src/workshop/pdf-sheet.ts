/** The printed sheet as a PDF: text flows down the page and on to the next. */
import type { Point } from './drawing.ts';
import type { Entry } from './entries.ts';
import type { Mark } from './fingerprint.ts';
import { PAPERS, type Paper } from './paper.ts';
import { BLACK, GREY, newBook, PageWriter, type PdfBook } from './pdf-page.ts';
import type { Sheet, Table } from './sheet.ts';
import type { View } from './three-views.ts';

const EDGE = 15; // mm, margin
const BODY = 3.1; // mm, em of running text
const SMALL = 2.5;
const LEAD = 1.45; // line height over em
const FOOT = 8; // mm kept free for the foot line

export async function pdfSheet(sheet: Sheet, paper: Paper, { remark, date }: Mark): Promise<Uint8Array> {
  const book = await newBook(`Build sheet: ${sheet.name}`, remark, date);
  const flow = new Flow(book, paper, remark);
  flow.heading(sheet.name, 6);
  flow.lines(`Fingerprint ${sheet.fingerprint}    ${sheet.date}`, BODY);
  flow.lines(sheet.shape, BODY);
  flow.space(2);
  flow.views(sheet.views);
  flow.columns([
    ['Brief', sheet.brief],
    ['Headline figures', sheet.figures],
    ...(sheet.masses.length > 0 ? ([['Mass and material, estimated', sheet.masses]] as const) : []),
  ]);
  for (const table of sheet.tables) flow.table(table);
  flow.heading('Laminate notes', 4);
  flow.lines(sheet.notes || 'None written.', BODY);
  flow.heading('Caution', 4);
  flow.lines(sheet.caution, BODY);
  return book.document.save();
}

/** Writes from the top down; opens a page when the present one is full. */
class Flow {
  #page!: PageWriter;
  #y = 0;
  readonly #width: number;
  readonly #height: number;

  constructor(
    private readonly book: PdfBook,
    paper: Paper,
    private readonly foot: string,
  ) {
    ({ width: this.#width, height: this.#height } = PAPERS[paper]);
    this.#turnPage();
  }

  get #room(): number {
    return this.#width - 2 * EDGE;
  }

  heading(text: string, size: number): void {
    this.#need(size * 2 + BODY * 2);
    for (const line of this.#wrapped(text, size, this.#room, true)) {
      this.#y -= size * 1.3;
      this.#page.text(line, [EDGE, this.#y], size, { bold: true });
    }
    this.space(size * 0.3);
  }

  lines(text: string, size: number): void {
    for (const line of text.split('\n').flatMap((piece) => this.#wrapped(piece, size, this.#room))) {
      this.#need(size * LEAD);
      this.#y -= size * LEAD;
      this.#page.text(line, [EDGE, this.#y], size);
    }
  }

  space(height: number): void {
    this.#y -= height;
  }

  /** Three views side by side at one scale. */
  views(views: readonly View[]): void {
    const boxes = views.map(({ box }) => box);
    const gap = 6;
    const wide = boxes.reduce((sum, { left, right }) => sum + right - left, 0);
    const high = Math.max(...boxes.map(({ top, bottom }) => top - bottom));
    const scale = Math.min((this.#room - gap * (views.length - 1)) / wide, 70 / high);
    this.#need(high * scale + 8);
    const floor = this.#y - high * scale;
    let x = EDGE;
    for (const [k, { title, paths }] of views.entries()) {
      const { left, right, bottom } = boxes[k]!;
      const place = ([px, py]: Point): Point => [x + (px - left) * scale, floor + (py - bottom) * scale];
      for (const { points, isClosed, layer } of paths)
        this.#page.line(
          points.map(place),
          { width: 0.15, colour: layer === 'reference' ? GREY : BLACK },
          isClosed,
        );
      this.#page.text(title, [x, floor - 4], SMALL, { grey: true });
      x += (right - left) * scale + gap;
    }
    this.#page.text(`1 : ${(1 / scale).toFixed(1)}`, [this.#width - EDGE - 12, floor - 4], SMALL, {
      grey: true,
    });
    this.#y = floor - 7;
  }

  /** Lists of label and value side by side, headings above. */
  columns(lists: ReadonlyArray<readonly [string, readonly Entry[]]>): void {
    const width = this.#room / lists.length;
    const top = this.#y;
    let lowest = top;
    for (const [k, [title, entries]] of lists.entries()) {
      const x = EDGE + k * width;
      let y = top - 5;
      this.#page.text(title, [x, y], 3.6, { bold: true });
      y -= 1.5;
      for (const [label, value] of entries) {
        y -= BODY * LEAD;
        const line = this.#fitted(`${label}: ${value}`, width - 3);
        this.#page.text(line.text, [x, y], line.size);
      }
      lowest = Math.min(lowest, y);
    }
    this.#y = lowest - 3;
  }

  table({ title, head, rows }: Table): void {
    this.heading(title, 3.8);
    const width = this.#room / head.length;
    const heads = head.map((text) => this.#wrapped(text, SMALL, width - 1));
    const tall = Math.max(...heads.map(({ length }) => length)) * SMALL * LEAD;
    this.#need(tall + BODY * 4);
    for (const [k, lines] of heads.entries())
      for (const [row, line] of lines.entries())
        this.#page.text(line, [EDGE + k * width, this.#y - (row + 1) * SMALL * LEAD], SMALL, { grey: true });
    this.#y -= tall + 1;
    for (const cells of rows) {
      this.#need(BODY * LEAD);
      this.#y -= BODY * LEAD;
      for (const [k, cell] of cells.entries()) this.#page.text(cell, [EDGE + k * width, this.#y], BODY);
    }
    this.space(2);
  }

  /** Turns the page unless this height is free. */
  #need(height: number): void {
    if (this.#y - height < EDGE + FOOT) this.#turnPage();
  }

  #turnPage(): void {
    this.#page = new PageWriter(this.book, this.#width, this.#height);
    this.#y = this.#height - EDGE;
    this.#page.text(this.foot, [EDGE, EDGE], SMALL, { grey: true });
  }

  #fitted(text: string, room: number): { text: string; size: number } {
    const wide = this.#page.widthOf(text, BODY);
    return { text, size: wide <= room ? BODY : (BODY * room) / wide };
  }

  #wrapped(text: string, size: number, room: number, bold = false): string[] {
    const lines: string[] = [];
    let line = '';
    for (const word of text.split(/ +/).flatMap((whole) => this.#pieces(whole, size, room, bold))) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (line !== '' && this.#page.widthOf(longer, size, bold) > room) {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    return [...lines, line];
  }

  /** A word too long for a line, in pieces that are not. */
  #pieces(word: string, size: number, room: number, bold: boolean): string[] {
    if (this.#page.widthOf(word, size, bold) <= room) return [word];
    const most = Math.max(1, Math.floor((word.length * room) / this.#page.widthOf(word, size, bold)) - 1);
    return word.match(new RegExp(`.{1,${most}}`, 'gu')) ?? [word];
  }
}
