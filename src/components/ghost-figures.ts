/** Figures that otherwise stand in sentences alone, beside the ghost's. Nothing without a ghost. */
import { html, nothing } from 'lit';
import type { Quantity, UnitSystem } from '../session/units.ts';
import './figure-value.ts';

export interface GhostFigure<Answer> {
  label: string;
  read: (of: Answer) => number | null | undefined;
  quantity: Quantity;
  decimals?: number;
  note?: string;
  why?: string;
}

export function ghostFigures<Answer>(
  own: Answer,
  ghost: Answer | null | undefined,
  units: UnitSystem,
  figures: readonly GhostFigure<Answer>[],
) {
  if (!ghost) return nothing;
  const shown = figures
    .map((figure) => ({ ...figure, value: known(figure.read(own)), other: known(figure.read(ghost)) }))
    .filter(({ value, other }) => value !== null || other !== null);
  if (shown.length === 0) return nothing;
  return html`<div class="figures" role="group" aria-label="Beside the ghost">
    ${shown.map(
      ({ label, quantity, decimals, note, why, value, other }) => html`<figure-value
        .label=${label}
        .value=${value}
        .ghost=${other}
        .quantity=${quantity}
        .units=${units}
        .decimals=${decimals ?? null}
        .note=${note ?? ''}
        .why=${why ?? 'none'}
      ></figure-value>`,
    )}
  </div>`;
}

const known = (value: number | null | undefined): number | null =>
  value === undefined || value === null || !Number.isFinite(value) ? null : value;
