/** A disk in memory for the batch command: test documents by name, and what was written. */
import { readFileSync } from 'node:fs';
import type { Files } from '../../src/batch/batch.ts';

export interface MemoryFiles extends Files {
  written: Map<string, string>;
  bytes: Map<string, Uint8Array>;
}

const missing = () => Object.assign(new Error('ENOENT: no such file or directory'), { code: 'ENOENT' });

/** Reads good test documents as NAME.json, and whatever else is given. */
export function memoryFiles(texts: Record<string, string> = {}): MemoryFiles {
  const written = new Map<string, string>();
  const bytes = new Map<string, Uint8Array>();
  return {
    written,
    bytes,
    read(path) {
      const text = texts[path];
      if (text !== undefined) return text;
      try {
        return readFileSync(new URL(`../designs/good/${path}`, import.meta.url), 'utf8');
      } catch {
        throw missing();
      }
    },
    write(path, text) {
      if (path.startsWith('nowhere/')) throw missing();
      written.set(path, text);
    },
    writeBytes(path, content) {
      if (path.startsWith('nowhere/')) throw missing();
      bytes.set(path, content);
    },
  };
}
