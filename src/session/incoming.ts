/** Text that comes from outside the page: a design document, a share link, or something else. */
import { quote } from '../solver/design/problem.ts';
import type { Reading } from '../solver/design/read.ts';
import { hasLink, readLink } from './share-link.ts';

export type Incoming = 'pasted' | 'dropped';

/** Reads it as what it is; what is neither document nor link answers with one sentence. */
export function readIncoming(text: string, how: Incoming, read: (text: string) => Reading): Reading {
  if (/^[\uFEFF\s]*\{/.test(text)) {
    const reading = read(text);
    return reading.ok ? reading : refuse(`The ${how} text cannot be opened: ${reading.message}.`);
  }
  if (hasLink(text)) return readLink(text, read);
  return refuse(
    `The ${how} text, ${quote(text.trim())}, is neither a design document nor a link to a design.`,
  );
}

function refuse(message: string): Reading {
  return { ok: false, message };
}
