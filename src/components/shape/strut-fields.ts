/** Every key of the strut, with what follows from them. */
import { html, nothing, type TemplateResult } from 'lit';
import { describeThickness } from '../../session/parts.ts';
import { tidy } from '../../session/planform-edits.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design, Strut } from '../../solver/design/document.ts';
import { RANGES } from '../../solver/design/ranges.ts';
import { partField } from './part-field.ts';

export function strutFields(strut: Strut, { fuselage }: Design, units: UnitSystem): TemplateResult {
  const x = strut.x ?? 0;
  const nose = fuselage?.nose ?? null;
  const length = (label: string, path: string, value: number, options = {}) =>
    partField(units, 'strut', label, path, 'length', value, options);
  return html`${length('Stands aft of the wing', 'strut.x', x, {
    step: 0.005,
    hint: 'quarter chord to quarter chord',
  })}
  ${
    nose === null
      ? nothing
      : length('From the fuselage nose', '', nose + x, {
          derived: true,
          step: 0.005,
          toChanges: (place: number) => [{ path: 'strut.x', value: tidy(place - nose) }],
        })
  }
  ${length('Length', 'strut.length', strut.length, { step: 0.01 })}
  ${length('Chord', 'strut.chord', strut.chord)}
  ${length('Thickness', 'strut.thickness', strut.thickness, { step: 0.0005, hint: describeThickness(strut) })}
  ${atBoard('Chord at the board', 'chord', strut, units)}
  ${atBoard('Thickness at the board', 'thickness', strut, units)} ${turbulentTo(strut, units)}`;
}

/** A strut of one size from foot to board has no `top`. */
function atBoard(label: string, key: 'chord' | 'thickness', strut: Strut, units: UnitSystem) {
  const { chord, thickness } = strut.top ?? strut;
  return partField(units, 'strut', label, `strut.top.${key}`, 'length', { chord, thickness }[key], {
    ...(key === 'thickness' && { step: 0.0005 }),
    ...(!strut.top && { hint: 'as at the foot' }),
    toChanges: (value) => {
      const top = { chord, thickness, [key]: value };
      const isEven = isSame(top.chord, strut.chord) && isSame(top.thickness, strut.thickness);
      return [{ path: 'strut.top', value: isEven ? undefined : top }];
    },
  });
}

/** Spray and waves trip the layer near the surface; the usual depth leaves no key in the document. */
function turbulentTo({ turbulentTo: own }: Strut, units: UnitSystem) {
  const usual = RANGES['strut.turbulentTo'].default;
  return partField(
    units,
    'strut',
    'Turbulent below the surface to',
    'strut.turbulentTo',
    'length',
    own ?? usual,
    {
      step: 0.01,
      hint: `spray and waves trip the layer: about ${formatWithUnit(usual, 'length', units)} (common practice), 0 for none`,
      toChanges: (value) => [{ path: 'strut.turbulentTo', value: isSame(value, usual) ? undefined : value }],
    },
  );
}

/** Lengths in m that no builder can tell apart: "13 mm" is read as 0.013 and a rounding more. */
const isSame = (one: number, other: number) => Math.abs(one - other) < 1e-9;
