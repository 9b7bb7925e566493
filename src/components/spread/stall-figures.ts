/** The figures of stall with their working. */
import { html, type TemplateResult } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type Quantity, type UnitSystem } from '../../session/units.ts';
import type { StallMark, StallStudy } from '../../solver/studies/stall.ts';
import '../figure-value.ts';
import { stallSpeed } from '../study-workings.ts';
import type { Working } from '../workings.ts';
import { angle, placeOf } from './stall-words.ts';

const plain = (value: number, decimals = 2) => writeFixed(value, decimals);

interface Figure {
  label: string;
  read: (study: StallStudy) => number | null | undefined;
  quantity?: Quantity;
  decimals?: number;
  note?: string;
  working: () => Working;
}

const SOURCE =
  'strips turned until line and sections agree: decambering, R. Mukherjee and A. Gopalarathnam, J. Aircraft 43 (2006) 660, from memory (theory: Stall)';
const TRUST =
  'The greatest lift of a section stands some 5 to 10 % high of clean measurements and more of rough ones; comparing wings does better. Beyond the greatest lift the flow is unsteady and only the trend counts.';

function lifting(stall: StallStudy, mark: StallMark, units: UnitSystem): Working {
  return { ...stallSpeed({ stall, mark, units }), source: SOURCE, trust: TRUST };
}

function stripAt(study: StallStudy, mark: StallMark, share: number): Working {
  const k = Math.max(0, study.eta.indexOf(mark.eta));
  const limit = study.limit[k]!;
  return {
    formula: 'angle at which cl of the first strip = share × greatest cl of its section',
    numbers: [
      ['greatest cl of that section', plain(limit, 3)],
      ['share', plain(share, 2)],
      ['cl there', plain(share * limit, 3)],
      ['angle', angle(mark.alpha)],
      ['strip at, of the half length', formatWithUnit(mark.eta, 'share', 'si')],
    ],
    source: `${SOURCE}; nine tenths of the greatest lift count as usable: common practice`,
    trust: TRUST,
  };
}

/** With the ghost's beside them. */
export function stallFigures(
  study: StallStudy,
  ghost: StallStudy | null,
  units: UnitSystem,
): TemplateResult[] {
  return figuresOf(study, units).map(({ label, read, quantity, decimals, note, working }) => {
    const value = read(study) ?? null;
    return html`<figure-value
      .label=${label}
      .value=${value}
      .ghost=${(ghost && read(ghost)) ?? null}
      .quantity=${quantity ?? 'ratio'}
      .units=${units}
      .decimals=${decimals ?? null}
      .note=${note ?? ''}
      .why=${'not reached'}
      .working=${value === null ? null : working}
    ></figure-value>`;
  });
}

function figuresOf(study: StallStudy, units: UnitSystem): Figure[] {
  const { usable, first, greatest } = study;
  const where = (mark: StallMark | null) => (mark ? placeOf(study, mark, units) : '');
  return [
    {
      label: 'Usable lift coefficient of the wing',
      read: (of) => of.usable?.CLwing,
      decimals: 2,
      working: () => lifting(study, usable!, units),
    },
    {
      label: 'Greatest lift coefficient of the wing',
      read: (of) => of.greatest?.CLwing,
      decimals: 2,
      note: greatest && !greatest.isPassed ? 'still growing at the last angle that settled' : '',
      working: () => lifting(study, greatest!, units),
    },
    {
      label: 'Angle at which the first strip passes its usable lift',
      read: (of) => of.usable?.alpha,
      quantity: 'angle',
      decimals: 1,
      note: where(usable),
      working: () => stripAt(study, usable!, study.usableShare),
    },
    {
      label: 'Speed at usable lift',
      read: (of) => of.usable?.speed,
      quantity: 'speed',
      working: () => lifting(study, usable!, units),
    },
    {
      label: 'Angle at which the first section stalls',
      read: (of) => of.first?.alpha,
      quantity: 'angle',
      decimals: 1,
      note: where(first),
      working: () => stripAt(study, first!, 1),
    },
    {
      label: 'Least speed of the whole foil',
      read: (of) => (of.greatest?.isPassed ? of.greatest.speed : null),
      quantity: 'speed',
      working: () => lifting(study, greatest!, units),
    },
  ];
}
