/** The document's build block as fields: stations, edges, laminate, solids, spar slot, cloth. */
import { html } from 'lit';
import type { Quantity, UnitSystem } from '../../session/units.ts';
import type { Build, Design } from '../../solver/design/document.ts';
import { RANGES } from '../../solver/design/ranges.ts';
import '../number-field.ts';

type LengthKey = 'spacing' | 'leastEdge' | 'allowance' | 'tolerance' | 'stock';

const LENGTHS: ReadonlyArray<{ key: LengthKey; label: string; hint: string; step: number }> = [
  { key: 'spacing', label: 'Station spacing', hint: 'along the curve', step: 0.005 },
  { key: 'leastEdge', label: 'Least trailing edge', hint: '0: as the section draws it', step: 0.0001 },
  { key: 'allowance', label: 'Laminate allowance', hint: 'taken off the ribs all round', step: 0.0001 },
  { key: 'stock', label: 'Core stock', hint: 'thickness bent over the jig', step: 0.0005 },
  { key: 'tolerance', label: 'Tolerance of solids', hint: 'triangles off the skin', step: 0.000005 },
];

type Slot = NonNullable<Build['slot']>;

const USUAL_SLOT: Slot = { at: 0.35, width: 0.01, height: 0.004 };
const SLOT: ReadonlyArray<{ key: keyof Slot; label: string; hint: string; quantity: Quantity }> = [
  { key: 'at', label: 'Spar slot at', hint: 'of the chord; empty one field for no slot', quantity: 'share' },
  { key: 'width', label: 'Slot width', hint: 'along the chord', quantity: 'length' },
  { key: 'height', label: 'Slot height', hint: 'middle on the mean line', quantity: 'length' },
];

export function buildSettings({ build = {} }: Design, units: UnitSystem) {
  return html`<div class="settings">
    ${LENGTHS.map(({ key, label, hint, step }) =>
      usualField(`build.${key}`, label, hint, 'length', build[key], step, units),
    )}
    ${usualField('build.ply.thickness', 'Ply, cured', 'one layer in the laminate', 'length', build.ply?.thickness, 0.00001, units)}
    ${usualField('build.ply.weight', 'Cloth', 'dry, one layer', 'cloth', build.ply?.weight, 0.01, units)}
    ${SLOT.map((field) => slotField(field, build.slot, units))}
  </div>`;
}

/** A setting with a usual value; emptied, it goes back to that. */
function usualField(
  path: `build.${LengthKey}` | 'build.ply.thickness' | 'build.ply.weight',
  label: string,
  hint: string,
  quantity: Quantity,
  value: number | undefined,
  step: number,
  units: UnitSystem,
) {
  return html`<number-field
    .label=${label}
    .quantity=${quantity}
    .units=${units}
    .path=${path}
    .value=${value ?? RANGES[path].default}
    .step=${step}
    .hint=${hint}
    optional
  ></number-field>`;
}

/** Any field of the slot makes one, its other sizes usual; any field emptied takes it away. */
function slotField(
  { key, label, hint, quantity }: (typeof SLOT)[number],
  slot: Slot | undefined,
  units: UnitSystem,
) {
  return html`<number-field
    .label=${label}
    .quantity=${quantity}
    .units=${units}
    .path="build.slot.${key}"
    edit-label="spar slot"
    .value=${slot?.[key] ?? null}
    .hint=${hint}
    placeholder="none"
    .step=${quantity === 'length' ? 0.0005 : 0.01}
    .toChanges=${(next: number) => [{ path: 'build.slot', value: { ...USUAL_SLOT, ...slot, [key]: next } }]}
    .cleared=${[{ path: 'build.slot', value: undefined }]}
  ></number-field>`;
}
