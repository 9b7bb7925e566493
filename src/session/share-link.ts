/**
 * Share links: a whole design in the fragment of the page's address, which browsers send to no server.
 * `#design.1.DATA` is a mark, the version of the packing, and the data in base64url (RFC 4648, section 5): the document
 * as JSON in UTF-8, deflated (RFC 1951), and the Adler-32 sum of what was deflated (RFC 1950) in the last four bytes.
 * Unpacking is bounded while it goes on; what comes out is read like a file.
 */
import { deflateSync, Inflate } from 'fflate';
import type { Design } from '../solver/design/document.ts';
import { LARGEST_TEXT, type Reading } from '../solver/design/read.ts';

export type Making = { ok: true; link: string } | { ok: false; message: string };

const VERSION = 1;
export const LONGEST_DATA = 100_000; // characters; a design has about 1000, with two imported sections some 5000
const PIECE = 256; // bytes; deflate expands at most 1032 fold, so that one piece gives no more than 270 kB
const SUM_BYTES = 4;
const MARK = /#design\.([^.\s]{0,20})\.?([\w-]*)/;

/** The link that opens `design` on the page at the address `page`. */
export function makeLink(design: Design, page: string): Making {
  const bytes = new TextEncoder().encode(JSON.stringify(design));
  const data = toBase64(withSum(deflateSync(bytes, { level: 9 }), adler32(bytes)));
  if (data.length > LONGEST_DATA || bytes.length > LARGEST_TEXT)
    return {
      ok: false,
      message: `“${design.name}” is too large for a link: ${data.length} characters, allowed up to ${LONGEST_DATA}. Save it as a file.`,
    };
  return { ok: true, link: `${page.split('#')[0]}#design.${VERSION}.${data}` };
}

/** Whether there is a share link in the text, sound or not. */
export function hasLink(text: string): boolean {
  return MARK.test(text);
}

/** Reads the first share link in the text; its document passes through `read` as that of a file does. */
export function readLink(text: string, read: (text: string) => Reading): Reading {
  const [, version = '', data = ''] = MARK.exec(text) ?? [];
  if (!/^[1-9]\d*$/.test(version)) return refuse('it is damaged');
  if (Number(version) > VERSION)
    return refuse(`a newer Downcurve made it (packing ${version}, allowed up to ${VERSION})`);
  if (data.length > LONGEST_DATA)
    return refuse(`it has ${data.length} characters, allowed up to ${LONGEST_DATA}`);
  const document = unpack(data);
  if (typeof document !== 'string') return document;
  const reading = read(document);
  return reading.ok ? reading : refuse(reading.message);
}

function refuse(reason: string): { ok: false; message: string } {
  return { ok: false, message: `The link cannot be opened: ${reason}.` };
}

function unpack(data: string): string | { ok: false; message: string } {
  try {
    const packed = fromBase64(data);
    const bytes = inflate(packed.subarray(0, -SUM_BYTES));
    if (!bytes) return refuse(`what it holds is larger than ${LARGEST_TEXT} bytes`);
    if (adler32(bytes) === sumOf(packed)) return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // The packing or the text in it is broken, said below.
  }
  return refuse('it is cut short or damaged');
}

/** What was deflated, or null as soon as it grows beyond what a document may have; throws where it is damaged. */
function inflate(packed: Uint8Array): Uint8Array | null {
  const parts: Uint8Array[] = [];
  let size = 0;
  const stream = new Inflate((part) => {
    parts.push(part);
    size += part.length;
  });
  for (let at = 0; at < packed.length; at += PIECE) {
    stream.push(packed.subarray(at, at + PIECE), at + PIECE >= packed.length);
    if (size > LARGEST_TEXT) return null;
  }
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

function withSum(packed: Uint8Array, sum: number): Uint8Array {
  const all = new Uint8Array(packed.length + SUM_BYTES);
  all.set(packed);
  new DataView(all.buffer).setUint32(packed.length, sum);
  return all;
}

/** The sum in the last four bytes; throws where there are fewer. */
function sumOf(packed: Uint8Array): number {
  return new DataView(packed.buffer, packed.byteOffset).getUint32(packed.length - SUM_BYTES);
}

/** RFC 1950, section 8.2. */
function adler32(bytes: Uint8Array): number {
  let [low, high] = [1, 0];
  for (const byte of bytes) {
    low = (low + byte) % 65521;
    high = (high + low) % 65521;
  }
  return high * 65536 + low;
}

function toBase64(bytes: Uint8Array): string {
  const characters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(characters).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

function fromBase64(text: string): Uint8Array {
  const characters = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(characters, (character) => character.charCodeAt(0));
}
