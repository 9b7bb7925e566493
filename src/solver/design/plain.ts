/**
 * A value from outside as plain data of its own: objects, lists, texts, finite numbers, true, false and null. Bounded in
 * depth and size, free of keys that reach into an object's prototype; keys without a value are dropped, -0 becomes 0.
 */
import { DEEPEST } from './json-text.ts';
import { describe, join, type Problem } from './problem.ts';
import { describeRange, rangeOf } from './ranges.ts';

export type Plain = string | number | boolean | null | Plain[] | { [key: string]: Plain };

const MOST_VALUES = 100_000;
const FORBIDDEN = new Set(['__proto__', 'prototype', 'constructor']);

/** A copy that shares nothing with `value`, or the first thing in it that no document can hold. */
export function plainCopy(value: unknown): { ok: true; value: Plain } | { ok: false; problem: Problem } {
  try {
    return { ok: true, value: new Copier().copy(value, '', 1) };
  } catch (error) {
    if (error instanceof Found) return { ok: false, problem: error.problem };
    // A getter or a proxy that throws.
    return { ok: false, problem: { path: '', found: 'a value that cannot be read', allowed: 'plain data' } };
  }
}

class Found extends Error {
  constructor(readonly problem: Problem) {
    super();
  }
}

class Copier {
  #values = 0;

  copy(value: unknown, path: string, depth: number): Plain {
    if (++this.#values > MOST_VALUES) throw refusal('', `more than ${MOST_VALUES} values`, `${MOST_VALUES}`);
    if (typeof value === 'number') {
      if (!Number.isFinite(value)) throw refusal(path, describe(value), finiteAt(path));
      return value === 0 ? 0 : value;
    }
    if (typeof value === 'string' || typeof value === 'boolean' || value === null) return value;
    if (depth > DEEPEST) throw refusal('', `lists and objects ${depth} deep`, `${DEEPEST}`);
    if (Array.isArray(value))
      return Array.from(value, (item, k) => this.copy(item, join(path, k), depth + 1));
    if (typeof value !== 'object' || !isPlainObject(value))
      throw refusal(path, describe(value), 'plain data');
    return this.#copyObject(value, path, depth);
  }

  #copyObject(value: object, path: string, depth: number): Plain {
    const copy: { [key: string]: Plain } = {};
    for (const [key, inner] of Object.entries(value)) {
      if (FORBIDDEN.has(key)) throw refusal(join(path, key), 'a key of this name', 'any other name');
      if (inner !== undefined) copy[key] = this.copy(inner, join(path, key), depth + 1);
    }
    return copy;
  }
}

function refusal(path: string, found: string, allowed: string): Found {
  return new Found({ path, found, allowed });
}

function finiteAt(path: string): string {
  const range = rangeOf(path);
  return range ? describeRange(range) : 'a finite number';
}

function isPlainObject(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === null || prototype === Object.prototype || Object.getPrototypeOf(prototype) === null;
}
