import { readdirSync, readFileSync } from 'node:fs';
import { deflateRawSync, deflateSync, inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LONGEST_DATA, PACKING } from '../../src/session/packing.ts';
import { hasLink, makeLink, readLink } from '../../src/session/share-link.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { type Reading, readDesign } from '../../src/solver/design/read.ts';
import { dice } from '../support/dice.ts';
import { demo } from './designs.ts';

const PAGE = 'https://foils.example/bench/';
const GOOD = new URL('../designs/good/', import.meta.url);

function linkOf(design: Design, page = PAGE): string {
  const made = makeLink(design, page);
  if (!made.ok) throw new Error(made.message);
  return made.link;
}
const bytesOf = (link: string) => Buffer.from(link.split('.').at(-1)!, 'base64url');

describe('a share link', () => {
  it.each(readdirSync(GOOD))('carries %s whole', (name) => {
    const design = JSON.parse(readFileSync(new URL(name, GOOD), 'utf8'));
    const reading = readLink(linkOf(design), readDesign);
    expect(reading).toEqual({ ok: true, design });
  });

  it.each(Array.from({ length: PACKING }, (_, k) => k + 1))(
    'of packing %i, as it was sent then, still opens',
    (packing) => {
      const sent = (name: string) =>
        readFileSync(new URL(`../designs/versions/${name}`, import.meta.url), 'utf8');
      const design = JSON.parse(sent('1.json'));
      expect(sent(`link-${packing}.txt`)).toContain(`#design.${packing}.`);
      expect(readLink(sent(`link-${packing}.txt`), readDesign)).toMatchObject({
        ok: true,
        design: { name: design.name, remarks: design.remarks },
      });
    },
  );

  it('carries any name and any notes', () => {
    const asItStands = (text: string): Reading => ({ ok: true, design: JSON.parse(text) });
    // Quotes, line ends, accents, right-to-left, an emoji, half of one, nothing at all.
    const odd = fc.constantFrom('a', '"', '\\', '\n', '\u2028', 'é', 'ש', '💧', '\ud800', '\0', '#', '%');
    const anything = fc.tuple(fc.string({ unit: odd, maxLength: 60 }), fc.jsonValue());
    fc.assert(
      fc.property(anything, ([name, note]) => {
        const design = JSON.parse(JSON.stringify({ ...demo(), name, remarks: { note } }));
        expect(readLink(linkOf(design), asItStands)).toEqual({ ok: true, design });
      }),
      { seed: 9, numRuns: 60 },
    );
  });

  it('is deflated as RFC 1951 has it, with the sum of RFC 1950 behind', () => {
    // Node's zlib is the reference: it inflates what we deflated, and its zlib format ends in the same sum.
    const bytes = bytesOf(linkOf(demo()));
    const text = JSON.stringify(demo());
    expect(inflateRawSync(bytes.subarray(0, -4)).toString()).toBe(text);
    expect(bytes.subarray(-4)).toEqual(deflateSync(text).subarray(-4));
    const made = Buffer.concat([deflateRawSync(text), deflateSync(text).subarray(-4)]).toString('base64url');
    expect(readLink(`${PAGE}#design.1.${made}`, readDesign)).toEqual({ ok: true, design: demo() });
  });

  it('keeps the page with its query, drops an older fragment, and needs no escapes', () => {
    const link = linkOf(demo(), `${PAGE}?a=b#answers`);
    expect(link).toMatch(/^https:\/\/foils\.example\/bench\/\?a=b#design\.1\.[\w-]+$/);
    expect(new URL(link).href).toBe(link);
    expect(link.length).toBeLessThan(2000); // the least that programs pass on unshortened (common practice)
  });

  it('is found in a sentence, and only where it is one', () => {
    const link = linkOf(demo());
    expect(readLink(`Look: <${link}>, it holds!`, readDesign)).toEqual({ ok: true, design: demo() });
    expect(readLink(`(${link}).`, readDesign)).toEqual({ ok: true, design: demo() });
    for (const other of ['', '#', '#answers', '#design', 'https://foils.example/design.1.abc'])
      expect(hasLink(other)).toBe(false);
  });

  it('is not made where a design is too large for one', () => {
    const roll = dice(1);
    const letters = Array.from({ length: LONGEST_DATA }, () =>
      String.fromCharCode(33 + Math.floor(90 * roll())),
    );
    const made = makeLink({ ...demo(), remarks: letters.join('') } as Design, PAGE);
    expect(made).toMatchObject({ ok: false, message: expect.stringContaining('Save it as a file.') });
  });
});
