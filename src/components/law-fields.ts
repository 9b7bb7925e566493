/** The fields of each kind of law, as templates: what a builder can set, in their own terms. */
import { html, nothing, type TemplateResult } from 'lit';
import {
  type BentDroop,
  chordForArea,
  droopAs,
  droopFor,
  isBent,
  surfaceFor,
  type TipMeasureKind,
  tipMeasureOf,
} from '../session/planform-edits.ts';
import { formatWithUnit, type Quantity, type UnitSystem } from '../session/units.ts';
import type { Planform, TwistLaw } from '../solver/design/document.ts';
import './choice-field.ts';
import type { Choice } from './choice-field.ts';
import type { Change } from './events.ts';
import './number-field.ts';

export type LawName = 'chord' | 'sweep' | 'droop' | 'twist';

export interface LawPlace {
  law: LawName;
  planform: Planform;
  path: string; // of the planform in the document, and its name in undo steps
  units: UnitSystem;
  /** Turns a worked-out law into a change, or says why there is none. */
  attempt: (work: () => unknown) => Change[] | string;
}

interface FieldOptions {
  step?: number;
  hint?: string;
}

type Fields = TemplateResult | typeof nothing;

const DEGREES = 180 / Math.PI;

/** Fields of the laws that are set by a few numbers. */
export function lawFields(place: LawPlace): Fields {
  switch (place.law) {
    case 'chord':
      return chordFields(place);
    case 'sweep':
      return sweepFields(place);
    case 'droop':
      return droopFields(place);
    case 'twist':
      return twistFields(place);
  }
}

/** One key of the law as a field. */
function keyField(
  place: LawPlace,
  label: string,
  key: string,
  quantity: Quantity,
  options: FieldOptions = {},
): Fields {
  const value = (place.planform[place.law] as unknown as Record<string, number>)[key] ?? null;
  return html`<number-field
    .label=${label}
    edit-label="${place.path} ${label.toLowerCase()}"
    .quantity=${quantity}
    .units=${place.units}
    .path="${place.path}.${place.law}.${key}"
    .value=${value}
    .step=${options.step ?? null}
    .hint=${options.hint ?? ''}
  ></number-field>`;
}

function chordFields(place: LawPlace): Fields {
  switch (place.planform.chord.kind) {
    case 'taper':
      return html`${keyField(place, 'Root chord', 'root', 'length')}
      ${keyField(place, 'Tip chord', 'tip', 'length')}`;
    case 'elliptic':
      return keyField(place, 'Root chord', 'root', 'length');
    case 'superelliptic':
      return html`${keyField(place, 'Root chord', 'root', 'length')}
      ${keyField(place, 'Power on the span', 'n', 'ratio', { hint: '2 is an ellipse; more is fuller' })}
      ${keyField(place, 'Root of the tip', 'm', 'ratio', { hint: '2 is an ellipse; more is blunter' })}`;
    default:
      return nothing;
  }
}

/** Area as a builder gives it, with the aspect ratio beside it; works for every chord law. */
export function areaFields(place: LawPlace): Fields {
  const { planform, units, path } = place;
  const surface = surfaceFor(planform);
  if (!surface) return nothing;
  const write = (area: number) => formatWithUnit(area, 'area', units);
  const follows = planform.chord.kind === 'taper' ? 'sets the tip chord' : 'scales every chord';
  return html`<number-field
      label="Area from above"
      edit-label="${path} area"
      quantity="area"
      .units=${units}
      .value=${surface.projectedArea}
      derived
      .min=${1e-5}
      .hint=${follows}
      .toChanges=${(area: number) => place.attempt(() => chordForArea(planform, area, write))}
    ></number-field>
    <p class="note">
      Aspect ratio ${formatWithUnit(surface.aspectRatio, 'ratio', units, { decimals: 1 })} · mean chord
      ${formatWithUnit(surface.meanChord, 'length', units)} · unrolled area ${write(surface.unrolledArea)}
    </p>`;
}

function sweepFields(place: LawPlace): Fields {
  const angle = keyField(place, 'Sweep', 'angle', 'angle');
  if (place.planform.sweep.kind !== 'rake') return angle;
  return html`${angle} ${keyField(place, 'Tip rake, aft', 'tip', 'length')}
  ${keyField(place, 'Power of the rake', 'power', 'ratio', { step: 0.1, hint: 'more: only the tip bends back' })}`;
}

function twistFields(place: LawPlace): Fields {
  const { tip } = place.planform.twist as Extract<TwistLaw, { kind: 'linear' }>;
  return html`<number-field
    label="Washout to the tip"
    edit-label="${place.path} washout"
    quantity="angle"
    .units=${place.units}
    path="${place.path}.twist.tip"
    .value=${tip === 0 ? 0 : -tip}
    .step=${0.1}
    .toChanges=${(washout: number) => [{ path: `${place.path}.twist.tip`, value: washout === 0 ? 0 : -washout }]}
  ></number-field>`;
}

function droopFields(place: LawPlace): Fields {
  const { droop } = place.planform;
  if (!isBent(droop)) return nothing;
  return html`${droop.kind === 'late' ? lateFields(place) : nothing}
  ${droop.kind === 'gull' ? gullFields(place) : nothing} ${tipFields(place, droop)}`;
}

function lateFields(place: LawPlace): Fields {
  return html`${keyField(place, 'Bends from', 'from', 'share', { hint: 'of the half length' })}
  ${keyField(place, 'Power of the bend', 'power', 'ratio', { step: 0.1 })}`;
}

function gullFields(place: LawPlace): Fields {
  return html`${keyField(place, 'Rise at the root', 'rootAngle', 'angle')}
  ${keyField(place, 'Knee at', 'knee', 'share', { hint: 'of the half length' })}`;
}

const MEASURES: readonly Choice[] = [
  { value: 'tipAngle', label: 'tip angle' },
  { value: 'tipDrop', label: 'tip drop' },
];

/** Tip angle and tip drop: either can be set, the other follows; one of them is what the design keeps. */
function tipFields(place: LawPlace, droop: BentDroop): Fields {
  const { planform, path, units } = place;
  const surface = surfaceFor(planform);
  const values = {
    tipAngle: droop.tipAngle ?? (surface ? surface.tipAngle * DEGREES : null),
    tipDrop: droop.tipDrop ?? surface?.tipDrop ?? null,
  };
  const field = (measure: TipMeasureKind, label: string, quantity: Quantity) => html`<number-field
    .label=${label}
    edit-label="${path} ${label.toLowerCase()}"
    .quantity=${quantity}
    .units=${units}
    path="${path}.droop.${measure}"
    .value=${values[measure]}
    .derived=${tipMeasureOf(droop) !== measure}
    .toChanges=${(value: number) => place.attempt(() => droopFor(planform, droop, measure, value))}
  ></number-field>`;
  return html`${field('tipAngle', 'Tip angle, down', 'angle')}
    ${field('tipDrop', 'Tip drop', 'length')}
    <choice-field
      label="Droop kept by"
      edit-label="${path} droop measure"
      .value=${tipMeasureOf(droop)}
      .choices=${MEASURES}
      .toChanges=${(measure: string) => place.attempt(() => droopAs(planform, droop, measure as TipMeasureKind))}
    ></choice-field>`;
}
