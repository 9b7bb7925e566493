/** Every kind of file made in the browser, downloaded, and read back with readers that are not ours. */
import { DOMParser } from '@xmldom/xmldom';
import DxfParser from 'dxf-parser';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright';
import { getDocumentProxy } from 'unpdf';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openStage, type Stage, visit } from './page.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(async () => {
  await stage?.close();
});

const MM = 25.4 / 72; // a point in millimetres
const LONG = 120_000;

// The PDF reader calls this on every platform; Node 20 does not have it yet.
const buffers = ArrayBuffer.prototype as { transferToFixedLength?: (length?: number) => ArrayBuffer };
buffers.transferToFixedLength ??= function (this: ArrayBuffer, length?: number) {
  return this.slice(0, length);
};

async function openBuild() {
  const visited = await visit(stage);
  await visited.page.getByRole('tab', { name: 'Build' }).click();
  await visited.page.locator('measured-table').waitFor({ timeout: 60_000 });
  return visited;
}

async function download(
  page: Page,
  kind: string,
): Promise<{ name: string; files: Record<string, Uint8Array> }> {
  const coming = page.waitForEvent('download', { timeout: LONG });
  await page.locator(`build-files [data-export=${kind}]`).click();
  const file = await coming;
  const parts: Buffer[] = [];
  for await (const part of await file.createReadStream()) parts.push(part as Buffer);
  const bytes = new Uint8Array(Buffer.concat(parts));
  const name = file.suggestedFilename();
  return { name, files: name.endsWith('.zip') ? unzipSync(bytes) : { [name]: bytes } };
}

async function fingerprintOn(page: Page): Promise<string> {
  const [first] = await page
    .locator('build-panel b')
    .filter({ hasText: /^[0-9A-Z]{4}-[0-9A-Z]{4}$/ })
    .allTextContents();
  return first!;
}

const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

/** Triangles of a binary STL: each edge must be run once each way. */
function inspectStl(bytes: Uint8Array) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  const edges = new Map<string, number>();
  let widest = 0;
  for (let k = 0; k < count; k++) {
    const names = [0, 1, 2].map((corner) => {
      const at = 84 + 50 * k + 12 + 12 * corner;
      const place = [0, 4, 8].map((offset) => view.getFloat32(at + offset, true));
      widest = Math.max(widest, Math.abs(place[1]!));
      return place.join();
    });
    for (let side = 0; side < 3; side++) {
      const edge = `${names[side]} ${names[(side + 1) % 3]}`;
      edges.set(edge, (edges.get(edge) ?? 0) + 1);
    }
  }
  const loose = [...edges].filter(([edge, times]) => {
    const [from, to] = edge.split(' ');
    return times !== 1 || edges.get(`${to} ${from}`) !== 1;
  });
  return { isWhole: bytes.length === 84 + 50 * count, count, loose: loose.length, widest };
}

describe('from the screen to the mould', () => {
  it('hands out stations, drawings, sheet and templates that other readers understand', {
    timeout: LONG,
  }, async () => {
    const { page, faults, close } = await openBuild();
    const { span } = await page.evaluate(
      () => document.querySelector('app-shell')!.session!.report!.geometry.wing,
    );
    const mark = await fingerprintOn(page);

    const csv = await download(page, 'csv');
    expect(csv.name).toBe('aldersund-sprint-74-curved-csv.zip');
    const rows = text(csv.files['aldersund-sprint-74-curved-wing-stations.csv']!).trim().split('\r\n');
    expect(rows[0]).toContain('along the curve mm');
    expect(Number(rows.at(-1)!.split(',')[2])).toBeCloseTo(500 * span, 1); // y of the tip

    const svg = await download(page, 'svg');
    const plan = text(svg.files['aldersund-sprint-74-curved-wing-plan-projected.svg']!);
    const root = new DOMParser().parseFromString(plan, 'text/xml').documentElement!;
    expect(root.getAttribute('width')).toMatch(/^[\d.]+mm$/);
    expect(plan).toContain(mark);

    const dxf = await download(page, 'dxf');
    expect(Object.keys(dxf.files).length).toBe(Object.keys(svg.files).length);
    for (const bytes of Object.values(dxf.files)) {
      expect(text(bytes)).toContain(mark);
      const drawing = new DxfParser().parseSync(text(bytes))!;
      expect(drawing.header.$INSUNITS).toBe(4); // DXF reference: millimetres
      expect(drawing.entities.length).toBeGreaterThan(2);
    }

    const pdf = await download(page, 'pdf');
    const [sheet, templates] = ['sheet.pdf', 'templates-a4.pdf'].map(
      (end) => pdf.files[`aldersund-sprint-74-curved-${end}`]!,
    );
    const pages = await getDocumentProxy(templates!);
    for (let k = 1; k <= pages.numPages; k++) {
      const { view } = await pages.getPage(k);
      expect([view[2]! * MM, view[3]! * MM].sort((a, b) => a - b).map(Math.round)).toEqual([210, 297]); // ISO 216
    }
    const first = await (await getDocumentProxy(sheet!)).getPage(1);
    const words = (await first.getTextContent()).items
      .map((item) => ('str' in item ? item.str : ''))
      .join(' ');
    expect(words).toContain(mark);
    expect(faults).toEqual([]);
    await close();
  });

  it('hands out closed solids and moulds', { timeout: LONG }, async () => {
    const { page, faults, close } = await openBuild();
    const tolerance = page.getByRole('spinbutton', { name: 'Tolerance of solids' });
    await tolerance.fill('0.05');
    await tolerance.press('Enter');
    const { span } = await page.evaluate(
      () => document.querySelector('app-shell')!.session!.report!.geometry.wing,
    );
    for (const kind of ['stl', 'strut', 'fuselage', 'mould']) {
      const { files } = await download(page, kind);
      expect(Object.keys(files).length).toBe({ stl: 2, strut: 1, fuselage: 1, mould: 8 }[kind]);
      for (const [name, bytes] of Object.entries(files)) {
        const { isWhole, count, loose, widest } = inspectStl(bytes);
        expect([name, isWhole, loose]).toEqual([name, true, 0]);
        expect(count).toBeGreaterThan(100);
        if (name.endsWith('-wing.stl')) expect(widest).toBeCloseTo(500 * span, 1);
      }
    }
    expect(faults).toEqual([]);
    await close();
  });

  it('shows progress, can be cancelled, and keeps the page working meanwhile', {
    timeout: LONG,
  }, async () => {
    const { page, close } = await openBuild();
    const tolerance = page.getByRole('spinbutton', { name: 'Tolerance of solids' });
    await tolerance.fill('0.001');
    await tolerance.press('Enter');
    await page.locator('build-files [data-export=mould]').click();
    const bar = page.getByRole('progressbar', { name: 'Making Moulds, STL' });
    await bar.waitFor();
    await page.getByRole('slider', { name: 'Wing tip droop' }).focus();
    await page.keyboard.press('ArrowDown');
    await expect
      .poll(() => page.evaluate(() => document.querySelector('app-shell')!.session!.isCurrent), {
        timeout: 20_000,
      })
      .toBe(true);
    expect(await bar.count()).toBe(1); // still making
    await page.locator('build-files').getByRole('button', { name: 'Cancel' }).click();
    await page.getByText('Moulds, STL: cancelled.').waitFor();
    expect(await bar.count()).toBe(0);
    await close();
  });

  it('prints the sheet alone, with its fingerprint on every page', { timeout: LONG }, async () => {
    const { page, close } = await openBuild();
    const notes = page.getByRole('textbox', { name: 'Laminate notes' });
    await notes.fill('Two of twill, then along the span');
    await notes.blur();
    await page.locator('print-sheet .notes', { hasText: 'Two of twill' }).waitFor({ state: 'attached' });
    const mark = await fingerprintOn(page);
    const printed = await getDocumentProxy(new Uint8Array(await page.pdf({ format: 'A4' })));
    const pages: string[] = [];
    for (let k = 1; k <= printed.numPages; k++) {
      const { items } = await (await printed.getPage(k)).getTextContent();
      pages.push(
        items
          .map((item) => ('str' in item ? item.str : ''))
          .join(' ')
          .replace(/\s+/g, ' '),
      );
    }
    for (const each of pages) expect(each).toContain(`fingerprint ${mark}`);
    const whole = pages.join(' ');
    for (const words of [
      'Brief',
      'Headline figures',
      'From ahead',
      'trailing edge',
      'Two of twill',
      'no approval',
    ])
      expect(whole).toContain(words);
    for (const words of ['Workshop settings', 'Before you cut', 'Leaned away'])
      expect(whole).not.toContain(words);
    await close();
  });
});
