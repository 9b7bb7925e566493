/** Fields that set how a question is asked, not the design: their edits go no further than the part they belong to. */
import { html } from 'lit';
import type { Quantity, UnitSystem } from '../session/units.ts';
import type { DesignEditEvent } from './events.ts';
import './number-field.ts';

/** Takes what a field would have set in the design; a gesture given up sets nothing. */
export function take(set: (value: unknown) => void) {
  return (event: DesignEditEvent): void => {
    event.stopPropagation();
    const [change] = event.detail.changes;
    if (change) set(change.value);
  };
}

/** The change of a field without a place in the design. */
export const toPart = (value: number | string) => [{ path: '', value }];

export function askedNumber(
  label: string,
  value: number,
  quantity: Quantity,
  units: UnitSystem,
  [min, max]: readonly [number, number],
  set: (value: number) => void,
) {
  return html`<number-field
    .label=${label}
    .value=${value}
    .quantity=${quantity}
    .units=${units}
    .min=${min}
    .max=${max}
    .toChanges=${toPart}
    @design-edit=${take((found) => set(found as number))}
  ></number-field>`;
}
