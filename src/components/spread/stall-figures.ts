/** The figures of stall with their working. */
import { html, type TemplateResult } from 'lit';
import type { Quantity, UnitSystem } from '../../session/units.ts';
import type { StallMark, StallStudy } from '../../solver/studies/stall.ts';
import '../figure-value.ts';
import { stalledStrip, stallSpeed } from '../study-workings.ts';
import type { Working } from '../working-parts.ts';
import { placeOf } from './stall-words.ts';

interface Figure {
  label: string;
  read: (study: StallStudy) => number | null | undefined;
  quantity?: Quantity;
  decimals?: number;
  note?: string;
  working: () => Working;
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
      working: () => stallSpeed({ stall: study, mark: usable!, units }),
    },
    {
      label: 'Greatest lift coefficient of the wing',
      read: (of) => of.greatest?.CLwing,
      decimals: 2,
      note: greatest && !greatest.isPassed ? 'still growing at the last angle that settled' : '',
      working: () => stallSpeed({ stall: study, mark: greatest!, units }),
    },
    {
      label: 'Angle at which the first strip passes its usable lift',
      read: (of) => of.usable?.alpha,
      quantity: 'angle',
      decimals: 1,
      note: where(usable),
      working: () => stalledStrip({ stall: study, mark: usable!, units }),
    },
    {
      label: 'Speed at usable lift',
      read: (of) => of.usable?.speed,
      quantity: 'speed',
      working: () => stallSpeed({ stall: study, mark: usable!, units }),
    },
    {
      label: 'Angle at which the first section stalls',
      read: (of) => of.first?.alpha,
      quantity: 'angle',
      decimals: 1,
      note: where(first),
      working: () => stalledStrip({ stall: study, mark: first!, units }),
    },
    {
      label: 'Least speed of the whole foil',
      read: (of) => (of.greatest?.isPassed ? of.greatest.speed : null),
      quantity: 'speed',
      working: () => stallSpeed({ stall: study, mark: greatest!, units }),
    },
  ];
}
