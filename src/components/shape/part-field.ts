/** A number of a part of the foil, as the shape panel shows it. */
import { html, type TemplateResult } from 'lit';
import type { Quantity, UnitSystem } from '../../session/units.ts';
import type { Change } from '../events.ts';
import '../number-field.ts';

export interface FieldOptions {
  step?: number;
  hint?: string;
  derived?: boolean;
  toChanges?: (value: number) => Change[] | string;
}

/** `owner` names the part in the history; `value` null: the shape has none at the moment. */
export function partField(
  units: UnitSystem,
  owner: string,
  label: string,
  path: string,
  quantity: Quantity,
  value: number | null,
  options: FieldOptions = {},
): TemplateResult {
  return html`<number-field
    .label=${label}
    edit-label="${owner} ${label.toLowerCase()}"
    .quantity=${quantity}
    .units=${units}
    .path=${path}
    .value=${value}
    .step=${options.step ?? null}
    .hint=${options.hint ?? ''}
    ?derived=${options.derived ?? false}
    .toChanges=${options.toChanges ?? null}
  ></number-field>`;
}
