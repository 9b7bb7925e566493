/**
 * Designs packed for the fragment of an address: a version, and base64url (RFC 4648, section 5) of the document as JSON in
 * UTF-8, deflated (RFC 1951), with the Adler-32 sum of what was deflated (RFC 1950) in the last four bytes. Unpacking is
 * bounded while it goes on; what comes out is read like a file. Share links and the cards pack alike.
 */
import { deflateSync, Inflate } from 'fflate';
import type { Design } from '../solver/design/document.ts';
import { LARGEST_TEXT, type Reading } from '../solver/design/read.ts';

export const PACKING = 1;
export const LONGEST_DATA = 100_000; // characters; a design has about 1000, with two imported sections some 5000
const PIECE = 256; // bytes; deflate expands at most 1032 fold, so that one piece gives no more than 270 kB
const SUM_BYTES = 4;

export type Packing = { ok: true; data: string } | { ok: false; message: string };
export type Unpacking = { ok: true; design: Design } | { ok: false; reason: string };

export function pack(design: Design): Packing {
  const bytes = new TextEncoder().encode(JSON.stringify(design));
  const data = toBase64(withSum(deflateSync(bytes, { level: 9 }), adler32(bytes)));
  if (data.length > LONGEST_DATA || bytes.length > LARGEST_TEXT)
    return {
      ok: false,
      message: `“${design.name}” is too large for a link: ${data.length} characters, allowed up to ${LONGEST_DATA}. Save it as a file.`,
    };
  return { ok: true, data };
}

/** Why a packing of this version cannot be read, or null. */
export function versionProblem(version: string): string | null {
  if (!/^[1-9]\d*$/.test(version)) return 'it is damaged';
  if (Number(version) <= PACKING) return null;
  return `a newer Downcurve made it (packing ${version}, allowed up to ${PACKING})`;
}

/** Unpacks one design; its document passes through `read` as that of a file does. */
export function unpack(data: string, read: (text: string) => Reading): Unpacking {
  if (data.length > LONGEST_DATA)
    return { ok: false, reason: `it has ${data.length} characters, allowed up to ${LONGEST_DATA}` };
  const document = inflated(data);
  if (typeof document !== 'string') return document;
  const reading = read(document);
  return reading.ok ? reading : { ok: false, reason: reading.message };
}

function inflated(data: string): string | { ok: false; reason: string } {
  try {
    const packed = fromBase64(data);
    const bytes = inflate(packed.subarray(0, -SUM_BYTES));
    if (!bytes) return { ok: false, reason: `what it holds is larger than ${LARGEST_TEXT} bytes` };
    if (adler32(bytes) === sumOf(packed)) return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // The packing or the text in it is broken, said below.
  }
  return { ok: false, reason: 'it is cut short or damaged' };
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
