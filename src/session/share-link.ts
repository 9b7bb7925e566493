/**
 * Share links: a whole design in the fragment of the page's address, which browsers send to no server.
 * `#design.1.DATA` is a mark, the version of the packing, and the design packed. `#rider.1.DATA.DATA` holds two, for the
 * page that compares them for a rider.
 */
import type { Design } from '../solver/design/document.ts';
import type { Reading } from '../solver/design/read.ts';
import { PACKING, pack, unpack, versionProblem } from './packing.ts';

export type Making = { ok: true; link: string } | { ok: false; message: string };
export type PairReading = { ok: true; designs: [Design, Design] } | { ok: false; message: string };

const MARK = /#design\.([^.\s]{0,20})\.?([\w-]*)/;
const PAIR_MARK = /#rider\.([^.\s]{0,20})\.?([\w-]*)\.?([\w-]*)/;

/** The link that opens `design` on the page at the address `page`. */
export function makeLink(design: Design, page: string): Making {
  const packed = pack(design);
  return packed.ok ? { ok: true, link: linkTo(page, 'design', [packed.data]) } : packed;
}

/** The link to the rider page at the address `page`: the first design against the second. */
export function makePairLink(designs: readonly [Design, Design], page: string): Making {
  const [one, other] = [pack(designs[0]), pack(designs[1])];
  if (!one.ok) return one;
  return other.ok ? { ok: true, link: linkTo(page, 'rider', [one.data, other.data]) } : other;
}

function linkTo(page: string, mark: string, packed: readonly string[]): string {
  return `${page.split('#')[0]}#${mark}.${PACKING}.${packed.join('.')}`;
}

/** Whether there is a share link in the text, sound or not. */
export function hasLink(text: string): boolean {
  return MARK.test(text);
}

/** Reads the first share link in the text; its document passes through `read` as that of a file does. */
export function readLink(text: string, read: (text: string) => Reading): Reading {
  const [, version = '', data = ''] = MARK.exec(text) ?? [];
  const problem = versionProblem(version);
  if (problem) return refuse(problem);
  const unpacked = unpack(data, read);
  return unpacked.ok ? unpacked : refuse(unpacked.reason);
}

/** Reads the first link to a rider page in the text, both documents on the same terms. */
export function readPairLink(text: string, read: (text: string) => Reading): PairReading {
  const [, version = '', ...packed] = PAIR_MARK.exec(text) ?? [];
  const problem = versionProblem(version);
  if (problem) return refuse(problem);
  const designs: Design[] = [];
  for (const [k, name] of ['first', 'second'].entries()) {
    const unpacked = unpack(packed[k] ?? '', read);
    if (!unpacked.ok) return refuse(`its ${name} design: ${unpacked.reason}`);
    designs.push(unpacked.design);
  }
  return { ok: true, designs: designs as [Design, Design] };
}

function refuse(reason: string): { ok: false; message: string } {
  return { ok: false, message: `The link cannot be opened: ${reason}.` };
}
