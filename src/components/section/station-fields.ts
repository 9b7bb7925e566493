/** Where on the foil and how fast: the fields that the panels about one section share. They ask, and edit nothing. */
import { html, nothing, type TemplateResult } from 'lit';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design, Speeds } from '../../solver/design/document.ts';
import { LAST_STATION } from '../../solver/geometry/outline-marks.ts';
import type { FoilPart } from '../../solver/studies/section-station.ts';
import { take } from '../asked.ts';
import '../choice-field.ts';
import '../number-field.ts';

/** What the user looks at. */
export interface Look {
  part: FoilPart;
  eta: number;
  speed: keyof Speeds;
}

export const SPEED_NAMES: Record<keyof Speeds, string> = {
  takeOff: 'take-off',
  cruise: 'cruise',
  top: 'top speed',
};

const PART_NAMES: Record<FoilPart, string> = { wing: 'wing', stabilizer: 'stabilizer', strut: 'strut' };

/** The part looked at, or the wing where the design has none such. */
export function presentLook(look: Look, design: Design): Look {
  return design[look.part] ? look : { ...look, part: 'wing' };
}

export function stationFields(
  look: Look,
  design: Design,
  units: UnitSystem,
  change: (look: Look) => void,
  onlyPlace = false,
): TemplateResult {
  const parts = (Object.keys(PART_NAMES) as FoilPart[]).filter((part) => design[part]);
  const speeds = Object.keys(SPEED_NAMES) as Array<keyof Speeds>;
  return html`<choice-field
      label="Look at the"
      .value=${look.part}
      .choices=${parts.map((value) => ({ value, label: PART_NAMES[value] }))}
      .toChanges=${own}
      @design-edit=${take((part) => change({ ...look, part: part as FoilPart }))}
    ></choice-field>
    <number-field
      .label=${look.part === 'strut' ? 'Up from the foot' : 'Out from the root'}
      quantity="share"
      .units=${units}
      .value=${look.eta}
      .min=${0}
      .max=${LAST_STATION}
      .step=${0.05}
      .toChanges=${own}
      @design-edit=${take((eta) => change({ ...look, eta: eta as number }))}
    ></number-field>
    ${
      onlyPlace
        ? nothing
        : html`<choice-field
            label="At"
            .value=${look.speed}
            .choices=${speeds.map((value) => ({
              value,
              label: `${SPEED_NAMES[value]}, ${formatWithUnit(design.brief.speeds[value], 'speed', units)}`,
            }))}
            .toChanges=${own}
            @design-edit=${take((speed) => change({ ...look, speed: speed as keyof Speeds }))}
          ></choice-field>`
    }`;
}

/** The value alone, for a field that belongs to no path of the document. */
export const own = (value: unknown) => [{ path: '', value }];
