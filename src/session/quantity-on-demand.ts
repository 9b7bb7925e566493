/**
 * Reads number fields without waiting for the unit library at the start of the page: a plain number is read at once,
 * everything else by quantity.ts, which loads when a field is first entered.
 */
import { pointed } from './number-format.ts';
import type { Reading } from './quantity.ts';
import { fromDisplay, type Quantity, type UnitSystem, unitNameOf } from './units.ts';

type Reader = typeof import('./quantity.ts');

let reader: Reader | null = null;
let loading: Promise<Reader> | null = null;

/** Starts loading the unit library; once it is there, readings come at once. */
export async function prepareReader(): Promise<void> {
  loading ??= import('./quantity.ts');
  try {
    reader = await loading;
  } catch {
    loading = null; // tried again at the next chance
  }
}

/** The value meant, in SI, or why it cannot be read; a promise while the unit library is on its way. */
export function readOnDemand(
  text: string,
  quantity: Quantity,
  system: UnitSystem,
): Reading | Promise<Reading> {
  const number = plainNumber(text);
  if (number !== null) return { ok: true, value: fromDisplay(number, quantity, system) };
  if (reader) return reader.readQuantity(text, quantity, system);
  return prepareReader().then(
    (): Reading =>
      reader?.readQuantity(text, quantity, system) ?? {
        ok: false,
        message: `Units could not be loaded; write a plain number${inWords(quantity, system)}.`,
      },
  );
}

function plainNumber(text: string): number | null {
  const marked = pointed(text.trim().replace('\u2212', '-'));
  if (!marked.ok) return null; // quantity.ts says why
  const plain = marked.text;
  return /^-?\d{1,15}(?:\.\d{1,15})?$/.test(plain) ? Number(plain) : null;
}

function inWords(quantity: Quantity, system: UnitSystem): string {
  const name = unitNameOf(quantity, system);
  return name && ` in ${name}`;
}
