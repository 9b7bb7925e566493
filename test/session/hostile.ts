/**
 * What a stranger may send: documents, links and packings made to break, hang or change the program. All drawn from one
 * seed, so that a finding can be repeated.
 */
import { deflateRawSync, deflateSync } from 'node:zlib';
import { makeLink } from '../../src/session/share-link.ts';
import { BROKEN } from '../designs/broken.ts';
import { changed, goodDocument, type PlainDocument } from '../designs/change.ts';
import { dice } from '../support/dice.ts';
import { demo } from './designs.ts';

export interface Hostile {
  what: string;
  text: string;
}

/** A text packed as links pack their document, by Node's zlib. */
export function packed(text: string | Uint8Array): Buffer {
  return Buffer.concat([deflateRawSync(text), deflateSync(text).subarray(-4)]);
}

export const linkWith = (bytes: Uint8Array, version: number | string = 1): string =>
  `https://foils.example/#design.${version}.${Buffer.from(bytes).toString('base64url')}`;

const document = (changes: Record<string, unknown>): string =>
  JSON.stringify(changed(goodDocument(), changes));

/** The text of a good document with `inner`, JSON as it stands, under a key of its own. */
const holding = (inner: string): string =>
  JSON.stringify({ ...goodDocument(), remarks: 0 }).replace('"remarks":0', `"remarks":${inner}`);

const FORMULAS: readonly string[] = [
  '9^9^9^9^9^9',
  'eta'.repeat(140),
  `${'-'.repeat(398)}1`,
  '[1,2;3,4]',
  'ones(10000,10000)',
  '1:1e9',
  'f(x) = f(x); f(eta)',
  'import({a: 1})',
  'createUnit("x")',
  'evaluate("1")',
  'parse("eta")',
  'simplify("eta")',
  'factorial(1e9)',
  'while(1)',
  'a = 1; a',
  'eta.__proto__',
  '__proto__',
  'this',
  'window.location',
  'cos.constructor("return 1")()',
  '"text"',
  'sqrt(-1)',
  'log(0)',
  '\u202e1+1',
];

const KEYS = ['__proto__', 'constructor', 'prototype'];
const PLACES = ['', 'brief', 'wing', 'wing.droop', 'wing.section.root', 'remarks'];

function withKey(place: string, key: string): string {
  const start = changed(goodDocument(), { remarks: {} });
  const holder = place.split('.').reduce((at, step) => (step ? (at[step] as PlainDocument) : at), start);
  Object.defineProperty(holder, key, { value: { isOwned: true }, enumerable: true });
  return JSON.stringify(start);
}

/** Texts that are no good document, each as a file or a pasted text might hold it. */
export const HOSTILE_DOCUMENTS: readonly Hostile[] = [
  ...BROKEN.map(({ what, change, text }) => ({ what, text: text ?? document(change ?? {}) })),
  ...FORMULAS.flatMap((expression) =>
    ['chord', 'droop'].map((law) => ({
      what: `the ${law} formula ${expression.slice(0, 30)}`,
      text: document({ [`wing.${law}`]: { kind: 'formula', expression } }),
    })),
  ),
  ...PLACES.flatMap((place) =>
    KEYS.map((key) => ({ what: `the key ${key} in ${place || 'the document'}`, text: withKey(place, key) })),
  ),
  { what: 'lists 60 deep', text: holding('['.repeat(60) + ']'.repeat(60)) },
  { what: 'objects 5000 deep', text: holding(`${'{"a":'.repeat(5000)}1${'}'.repeat(5000)}`) },
  { what: 'a list of 300 000', text: holding(`[${'0,'.repeat(300_000)}0]`) },
  { what: '120 000 keys', text: holding(`{${Array.from({ length: 120_000 }, (_, k) => `"k${k}":0`)}}`) },
  { what: 'a text of escapes without an end', text: holding(`"${'\\\\'.repeat(400_000)}`) },
  {
    what: 'a number of 900 000 digits',
    text: document({}).replace('"version":1', `"version":${'9'.repeat(900_000)}`),
  },
  { what: 'a number too large', text: holding('1e999') },
];

const good = JSON.stringify(goodDocument());

function spoilt(count: number, seed: number): Hostile[] {
  const next = dice(seed);
  const roll = (most: number) => Math.floor(most * next());
  const bytes = packed(good);
  return Array.from({ length: count }, (_, k) => {
    const copy = Buffer.from(bytes);
    const at = roll(copy.length);
    if (k % 3 === 0) return { what: `cut after ${at} bytes`, text: linkWith(copy.subarray(0, at)) };
    if (k % 3 === 1) copy[at] = copy[at]! ^ (1 << roll(8));
    else copy.fill(roll(256), at, Math.min(at + 8, copy.length));
    return { what: `spoilt at byte ${at}`, text: linkWith(copy) };
  });
}

/** Links whose packing is spoilt, oversized or of another version. */
export const HOSTILE_LINKS: readonly Hostile[] = [
  { what: 'nothing packed', text: 'https://foils.example/#design.1.' },
  { what: 'no version', text: 'https://foils.example/#design.' },
  { what: 'one character', text: 'https://foils.example/#design.1.A' },
  { what: 'three bytes', text: linkWith(Buffer.from([1, 2, 3])) },
  { what: 'no deflated text', text: linkWith(Buffer.alloc(400, 0xff)) },
  { what: 'an empty text', text: linkWith(packed('')) },
  { what: 'no UTF-8', text: linkWith(packed(Uint8Array.of(0x7b, 0xff, 0xfe, 0x7d))) },
  { what: 'a newer packing', text: linkWith(packed(good), 2) },
  { what: 'packing nought', text: linkWith(packed(good), 0) },
  { what: 'packing minus one', text: linkWith(packed(good), -1) },
  { what: 'a packing in words', text: linkWith(packed(good), 'one') },
  { what: 'a packing of 20 digits', text: linkWith(packed(good), '9'.repeat(20)) },
  { what: 'another sum', text: linkWith(Buffer.concat([packed(good).subarray(0, -4), Buffer.alloc(4)])) },
  { what: 'two million characters', text: `https://foils.example/#design.1.${'A'.repeat(2_000_000)}` },
  { what: 'a bomb of 2 MB', text: linkWith(packed(Buffer.alloc(2_000_000))) },
  { what: 'a bomb of 60 MB', text: linkWith(packed(Buffer.alloc(60_000_000, ' '))) },
  { what: 'a bomb within a document', text: linkWith(packed(holding(`"${'x'.repeat(5_000_000)}"`))) },
  ...spoilt(60, 20_061),
];

/** Each hostile document, packed in a sound link. */
export const PACKED_DOCUMENTS: readonly Hostile[] = HOSTILE_DOCUMENTS.map(({ what, text }) => ({
  what: `a link to ${what}`,
  text: linkWith(packed(text)),
}));

/** A link that opens, to see that the others are refused for what is wrong with them. */
export function soundLink(): string {
  const made = makeLink(demo(), 'https://foils.example/');
  if (!made.ok) throw new Error(made.message);
  return made.link;
}
