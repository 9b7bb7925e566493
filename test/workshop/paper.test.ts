/** PDF pages measured by a reader that is not ours. */
import { getDocumentProxy, getResolvedPDFJS } from 'unpdf';
import { describe, expect, it } from 'vitest';
import { fingerprint } from '../../src/workshop/fingerprint.ts';
import { PAPERS, type Paper } from '../../src/workshop/paper.ts';
import { goodDesign } from '../support/designs.ts';
import { built } from './files.ts';

// The reader calls this on every platform; Node 20 does not have it yet.
const buffers = ArrayBuffer.prototype as { transferToFixedLength?: (length?: number) => ArrayBuffer };
buffers.transferToFixedLength ??= function (this: ArrayBuffer, length?: number) {
  return this.slice(0, length);
};

const MM = 25.4 / 72; // a point in millimetres

async function textOf(bytes: Uint8Array): Promise<string[]> {
  const pdf = await getDocumentProxy(bytes.slice());
  const pages: string[] = [];
  for (let k = 1; k <= pdf.numPages; k++) {
    const { items } = await (await pdf.getPage(k)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  return pages;
}

describe('templates on paper', () => {
  it.each(Object.keys(PAPERS) as Paper[])(
    '%s pages have their size, and a ruler of 100.0 mm',
    { timeout: 30_000 },
    async (paper) => {
      const files = await built(goodDesign('curved-race'), 'pdf', { paper, part: 'wing' });
      const pdf = await getDocumentProxy(files.bytes(`templates-${paper}.pdf`).slice());
      const { OPS } = await getResolvedPDFJS();
      const { width, height } = PAPERS[paper];
      expect(pdf.numPages).toBeGreaterThan(3);
      for (let k = 1; k <= pdf.numPages; k++) {
        const page = await pdf.getPage(k);
        const sides = [page.view[2]! * MM, page.view[3]! * MM].sort((a, b) => a - b);
        expect(sides[0]).toBeCloseTo(width, 2);
        expect(sides[1]).toBeCloseTo(height, 2);
        const { fnArray, argsArray } = await page.getOperatorList();
        // Every path's box: [least x, least y, most x, most y] of a horizontal line near the foot.
        const boxes = fnArray.flatMap((fn, at) =>
          fn === OPS.constructPath ? [Array.from(argsArray[at]![2] as ArrayLike<number>)] : [],
        );
        const rulers = boxes.filter(
          ([x0, y0, x1, y1]) => y1! - y0! < 0.01 && y0! * MM < 20 && x0! * MM < 10 && (x1! - x0!) * MM > 50,
        );
        expect(rulers.length).toBe(1);
        expect((rulers[0]![2]! - rulers[0]![0]!) * MM).toBeCloseTo(100, 2);
      }
    },
  );
});

describe('the printed sheet', () => {
  it('names design, day and fingerprint on every page and carries brief, stations, notes and caution', {
    timeout: 30_000,
  }, async () => {
    const design = goodDesign('curved-race');
    design.notes = { laminate: 'two layers of twill, then along the span' };
    const files = await built(design, 'pdf');
    const pages = await textOf(files.bytes('sheet.pdf'));
    for (const page of pages) expect(page).toContain(`Fingerprint ${fingerprint(design)}, 2027-03-21`);
    const whole = pages.join(' ').replace(/\s+/g, ' ');
    for (const words of [
      design.name,
      'Brief',
      'All-up mass: 92 kg',
      'Hold index',
      'From ahead',
      'two layers of twill',
      'no approval of strength',
      'trailing edge',
    ])
      expect(whole).toContain(words);
  });

  it('survives letters that its fonts lack, and very long notes', { timeout: 30_000 }, async () => {
    const design = goodDesign('flat-race');
    design.name = '風の翼 – 74';
    design.notes = { laminate: `${'x'.repeat(3000)}\n測試 ${'word '.repeat(150)}` };
    const files = await built(design, 'pdf');
    expect((await textOf(files.bytes('sheet.pdf'))).length).toBeGreaterThan(1);
  });
});

describe('the fingerprint', () => {
  it('is the same whatever the order of keys, and another for any other design', () => {
    const design = goodDesign('curved-race');
    const turned = Object.fromEntries(Object.entries(design).reverse()) as typeof design;
    expect(fingerprint(turned)).toBe(fingerprint(design));
    expect(fingerprint(design)).toMatch(/^[0-9A-Z]{4}-[0-9A-Z]{4}$/);
    expect(fingerprint({ ...design, name: 'other' })).not.toBe(fingerprint(design));
  });
});
