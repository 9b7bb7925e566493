/**
 * Reads JSON text with a finding a user can act on: line, column, what stands there and what may. The browser's own
 * parser says that differently in each browser, and takes the last of two equal keys without a word. No recursion:
 * nesting is bounded before anything is built.
 */
import { quote } from './problem.ts';

export const DEEPEST = 40; // lists and objects inside one another

type Expected = 'a value' | 'a value or ]' | 'a key or }' | 'a key' | ':' | ', or }' | ', or ]' | 'the end';

interface Frame {
  keys: Set<string> | null; // of an object, so far; null for a list
}

// One word: punctuation, text, or a number, true, false or null.
const WORD = new RegExp(
  [
    '([{}[\\],:])',
    '("[^"\\\\\\x00-\\x1f]*(?:\\\\(?:["\\\\/bfnrt]|u[0-9a-fA-F]{4})[^"\\\\\\x00-\\x1f]*)*")',
    '((?:-?(?:0|[1-9]\\d*)(?:\\.\\d+)?(?:[eE][+-]?\\d+)?|true|false|null)(?![\\w.+-]))',
  ].join('|'),
  'y',
);
const SPACE = /[ \t\n\r]*/y;

/** Why the text is no JSON this program opens, in one sentence; null when it is. */
export function jsonProblem(text: string): string | null {
  const frames: Frame[] = [];
  let expected: Expected = 'a value';
  let at = 0;
  while (true) {
    SPACE.lastIndex = at;
    SPACE.exec(text);
    const start = SPACE.lastIndex;
    if (start === text.length)
      return expected === 'the end' ? null : fault(text, start, 'the end of the text', expected);
    WORD.lastIndex = start;
    const [, mark, string, plain] = WORD.exec(text) ?? [];
    const next = advance(expected, frames, mark, string, plain);
    if (next === null) return fault(text, start, wordAt(text, start), expected);
    if (typeof next === 'object') return fault(text, start, next.found, next.allowed);
    if (frames.length > DEEPEST)
      return fault(text, start, `lists and objects ${frames.length} deep`, `${DEEPEST}`);
    expected = next;
    at = WORD.lastIndex;
  }
}

/** What may follow a word; null where the word itself may not stand here. */
function advance(
  expected: Expected,
  frames: Frame[],
  mark?: string,
  string?: string,
  plain?: string,
): Expected | { found: string; allowed: string } | null {
  const frame = frames[frames.length - 1];
  if (expected === 'a key' || expected === 'a key or }') {
    if (mark === '}' && expected === 'a key or }') return close(frames);
    if (string === undefined || !frame?.keys) return null;
    const key = String(JSON.parse(string));
    if (frame.keys.has(key))
      return { found: `the key ${quote(key)} a second time`, allowed: 'each key once' };
    frame.keys.add(key);
    return ':';
  }
  if (expected === ':') return mark === ':' ? 'a value' : null;
  if (expected === ', or }') return mark === ',' ? 'a key' : mark === '}' ? close(frames) : null;
  if (expected === ', or ]') return mark === ',' ? 'a value' : mark === ']' ? close(frames) : null;
  if (expected === 'the end') return null;
  if (mark === ']' && expected === 'a value or ]') return close(frames);
  if (mark === '{' || mark === '[') {
    frames.push({ keys: mark === '{' ? new Set() : null });
    return mark === '{' ? 'a key or }' : 'a value or ]';
  }
  return string === undefined && plain === undefined ? null : after(frames);
}

function close(frames: Frame[]): Expected {
  frames.pop();
  return after(frames);
}

function after(frames: Frame[]): Expected {
  const frame = frames[frames.length - 1];
  if (!frame) return 'the end';
  return frame.keys ? ', or }' : ', or ]';
}

function fault(text: string, at: number, found: string, allowed: string): string {
  const before = text.slice(0, at);
  const line = before.split('\n').length;
  const column = at - before.lastIndexOf('\n');
  return `line ${line}, column ${column}: found ${found}, allowed ${allowed}`;
}

function wordAt(text: string, at: number): string {
  if (text[at] === '"') return 'a text without an end, or with a line break or a wrong \\ in it';
  return quote(/^(?:[\w.+-]+|.)/su.exec(text.slice(at, at + 80))?.[0] ?? '');
}
