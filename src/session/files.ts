/** Design files: opened from the user's disk, saved to it. */
import type { Reading } from '../solver/design/read.ts';

const LARGEST = 2_000_000; // bytes; a design with imported sections has some tens of thousands

/** Reads a design file; a file that is none answers with one sentence. */
export async function openDesignFile(file: File, read: (text: string) => Reading): Promise<Reading> {
  const refuse = (message: string): Reading => ({ ok: false, message: `${file.name}: ${message}` });
  if (file.size > LARGEST)
    return refuse(`this file has ${(file.size / 1e6).toFixed(1)} MB; a design file has less than 2 MB.`);
  let text: string;
  try {
    text = await file.text();
  } catch {
    return refuse('this file could not be read from the disk.');
  }
  const reading = read(text);
  return reading.ok ? reading : refuse(reading.message);
}

/** Hands the text to the user as a file. */
export function saveTextFile(text: string, name: string, type = 'application/json'): void {
  saveFile(new Blob([text], { type }), name);
}

/** Hands bytes of any kind to the user as a file. */
export function saveBytes(bytes: Uint8Array, name: string): void {
  saveFile(new Blob([bytes as BlobPart]), name);
}

/** Hands anything to the user as a file. */
export function saveFile(content: Blob, name: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A file name from a design's name: "Harbour sprint 74, curved" to "harbour-sprint-74-curved.json". */
export function fileNameOf(name: string, ending = 'json'): string {
  const stem = name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem || 'design'}.${ending}`;
}
