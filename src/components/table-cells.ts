/** The cells of tables: text, or a figure kept as a number, so that the ghost's and the difference to it stand below. */
import { css, html, type TemplateResult } from 'lit';
import { formatValue, formatWithUnit, type Quantity, type UnitSystem } from '../session/units.ts';
import { visuallyHidden } from './visually-hidden.ts';

/** Writes a value; a difference with its sign. */
export type Write = (value: number, isDifference: boolean) => string;

export interface FigureCell {
  value: number | null;
  write: Write;
  why: string; // where there is no value
}

export type Cell = string | FigureCell;

const ownStyles = css`
  .ghost {
    display: block;
    margin-top: 0.1rem;
    padding-right: 0.35rem;
    border-right: 2px dashed var(--ghost);
    font-weight: 400;
    white-space: normal;
    color: var(--soft);
  }
  .ghost > span {
    white-space: nowrap;
  }
  tr:has(.ghost) > :is(th, td) {
    vertical-align: top;
  }
  th .ghost {
    padding: 0 0 0 0.35rem;
    border-right: 0;
    border-left: 2px dashed var(--ghost);
  }
  .ghost-key {
    font-weight: 400;
  }
  .ghost-key::before {
    content: '';
    display: inline-block;
    height: 0.8em;
    margin: 0 0.35rem 0 0.6rem;
    border-left: 2px dashed var(--ghost);
  }
`;

export const cellStyles = [visuallyHidden, ownStyles];

/** A figure in words of its own; a value that is not finite is none. */
export function figureCell(value: number | null | undefined, write: Write, why = '–'): FigureCell {
  return { value: value === undefined || !Number.isFinite(value) ? null : value, write, why };
}

/** The sign before a size written without one; nothing that is written as nothing has one. */
export function signBefore(value: number, size: string, isDifference: boolean): string {
  if (!/[1-9]/.test(size)) return size;
  return value < 0 ? `\u2212${size}` : isDifference ? `+${size}` : size;
}

interface Looks {
  decimals?: number;
  sign?: boolean; // of the value itself too
  bare?: boolean; // the unit stands in the head
  why?: string;
}

/** A figure in its unit. */
export function quantityCell(
  value: number | null | undefined,
  quantity: Quantity,
  units: UnitSystem,
  { decimals, sign = false, bare = false, why = '–' }: Looks = {},
): FigureCell {
  const format = bare ? formatValue : formatWithUnit;
  const write: Write = (of, isDifference) =>
    format(of, quantity, units, { sign: sign || isDifference, ...(decimals !== undefined && { decimals }) });
  return figureCell(value, write, why);
}

export function textOf(cell: Cell): string {
  if (typeof cell === 'string') return cell;
  return cell.value === null ? cell.why : cell.write(cell.value, false);
}

/** A cell with the ghost's below it: of text where it is another, of a figure always, with the difference. */
export function drawCell(own: Cell, ghost?: Cell): TemplateResult | string {
  const text = textOf(own);
  if (ghost === undefined) return text;
  const other = textOf(ghost) || '–';
  const value = typeof ghost === 'string' ? null : ghost.value;
  if (value === null && other === (text || '–')) return text;
  const difference =
    value !== null && typeof ghost !== 'string' && typeof own !== 'string' && own.value !== null
      ? html` <span>(${ghost.write(own.value - value, true)})</span>`
      : '';
  return html`${text}<span class="ghost"><span class="visually-hidden"> ghost </span><span>${other}</span>${difference}</span>`;
}
