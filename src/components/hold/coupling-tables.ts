/**
 * The coupling of slip, roll and turn in words a rider understands, with the numbers behind it; what each part adds.
 * Roll positive starboard down, yaw positive nose to starboard, side force positive to starboard.
 */
import { css, html, type TemplateResult } from 'lit';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Derivatives } from '../../solver/report.ts';
import type { LateralCoupling, Ratios } from '../../solver/studies/coupling.ts';
import type { HoldStudy } from '../../solver/studies/hold-study.ts';
import { figureTable, tableFrame } from '../figure-table.ts';
import {
  coefficient,
  LATERAL_KEYS,
  LATERAL_NAMES,
  VERTICAL_KEYS,
  VERTICAL_NAMES,
  withBand,
} from './words.ts';

export type Whole = 'foil' | 'craft';
type Cause = 'beta' | 'p' | 'r';
type Effect = 'CY' | 'Cl' | 'Cn';

const SLIP = Math.PI / 180; // rad, what the matrix is told for
const RATE = (10 * Math.PI) / 180; // rad/s

const CAUSES: Record<Cause, { title: string; by: string }> = {
  beta: { title: 'slips to starboard', by: 'by 1°' },
  p: { title: 'rolls starboard down', by: 'at 10° a second' },
  r: { title: 'turns to starboard', by: 'at 10° a second' },
};

const EFFECTS: Record<Effect, string> = { CY: 'is pushed', Cl: 'rolls', Cn: 'turns' };

/** What a rider would say of each, for a positive and for a negative derivative. */
const SAYINGS: Record<keyof Derivatives, readonly [string, string]> = {
  CYbeta: ['on to starboard, with the slip', 'to port, against the slip'],
  Clbeta: ['starboard down, into the slip', 'port down, out of the slip'],
  Cnbeta: ['to starboard, nose into the slip', 'to port, nose out of the slip'],
  CYp: ['to starboard', 'to port'],
  Clp: ['on: nothing resists', 'back: resists the roll'],
  Cnp: ['to starboard, the way it rolls', 'to port, against its roll'],
  CYr: ['to starboard, into the turn', 'to port, out of the turn'],
  Clr: ['starboard down, into the turn', 'port down, out of the turn'],
  Cnr: ['on: nothing resists', 'back: resists the turn'],
};

export const couplingStyles = css`
  .matrix td,
  .matrix th {
    white-space: normal;
    text-align: left;
    vertical-align: top;
    padding: 0.35rem 0.8rem 0.35rem 0;
  }
  .matrix td b {
    display: block;
    font-weight: 600;
    color: var(--ink);
  }
  .matrix small,
  .matrix th small {
    display: block;
    font-size: 1em;
    font-weight: 400;
    color: var(--soft);
    white-space: nowrap;
  }
`;

/** With strip drag: the sum of both parts. */
function totalOf({ vortex, profile }: LateralCoupling): Derivatives {
  const entries = LATERAL_KEYS.map((key) => [key, vortex.total[key] + profile.total[key]]);
  return Object.fromEntries(entries) as Record<keyof Derivatives, number>;
}

export function couplingMatrix(study: HoldStudy, whole: Whole, units: UnitSystem): TemplateResult {
  const total = totalOf(study.coupling[whole]);
  const caption =
    whole === 'foil' ? 'Foil alone, about the wing’s root' : 'Craft, strut and all, about the balance point';
  const rows = (Object.keys(CAUSES) as Cause[]).map(
    (cause) => html`<tr>
      <th scope="row">${CAUSES[cause].title} <small>${CAUSES[cause].by}</small></th>
      ${(Object.keys(EFFECTS) as Effect[]).map((effect) => cell(study, whole, units, total, cause, effect))}
    </tr>`,
  );
  const head = ['when it …', ...Object.values(EFFECTS).map((title) => `it ${title}`)];
  return tableFrame(caption, head, rows, { kind: 'matrix' });
}

function cell(
  study: HoldStudy,
  whole: Whole,
  units: UnitSystem,
  total: Derivatives,
  cause: Cause,
  effect: Effect,
) {
  const key = `${effect}${cause}` as const;
  const value = total[key];
  const band = study.band[whole][key];
  const { force, moment, rate } = study.scale;
  const amount = (effect === 'CY' ? force : moment) * (cause === 'beta' ? SLIP : RATE * rate);
  const size = formatWithUnit(Math.abs(value) * amount, effect === 'CY' ? 'force' : 'moment', units);
  const isResolved = Math.abs(value) > band;
  return html`<td>
    <b>${isResolved ? SAYINGS[key][value > 0 ? 0 : 1] : 'hardly: not resolved'}</b>
    <small>${size}</small>
    <small>${withBand(value, band)}</small>
  </td>`;
}

export function partsTable(study: HoldStudy, whole: Whole): TemplateResult {
  const { vortex, profile } = study.coupling[whole];
  const parts =
    whole === 'foil' ? (['wing', 'stabilizer'] as const) : (['wing', 'stabilizer', 'strut'] as const);
  const rows = LATERAL_KEYS.map((key) => ({
    cells: [
      LATERAL_NAMES[key],
      ...parts.map((part) => coefficient(vortex[part][key] + profile[part][key])),
      withBand(vortex.total[key] + profile.total[key], study.band[whole][key]),
      coefficient(profile.total[key]),
    ],
  }));
  return figureTable(
    whole === 'foil' ? 'Foil alone, by part' : 'Craft, by part',
    ['', ...parts, 'all ± method', 'of it drag'],
    rows,
  );
}

export function verticalTable({ coupling: { vertical } }: HoldStudy): TemplateResult {
  return figureTable(
    'Lift and pitch about the balance point, by part',
    ['', 'wing', 'stabilizer', 'all'],
    VERTICAL_KEYS.map((key) => ({
      cells: [
        VERTICAL_NAMES[key],
        ...(['wing', 'stabilizer', 'total'] as const).map((part) => coefficient(vertical[part][key])),
      ],
    })),
  );
}

export function ratioTable({ ratios }: HoldStudy): TemplateResult {
  const write = (value: number | null) => (value === null ? 'not resolved' : coefficient(value));
  const row = (name: string, key: keyof Ratios) => ({
    cells: [name, write(ratios.foilVortex[key]), write(ratios.foil[key]), write(ratios.craft[key])],
  });
  return figureTable(
    'Ratios',
    ['', 'foil, vortex part', 'foil', 'craft'],
    [
      row('roll from yaw, Clr over |Clp|', 'rollFromYaw'),
      row('yaw from roll, Cnp over |Cnr|', 'yawFromRoll'),
      row('roll over yaw in a slip, Clβ over Cnβ', 'rollOverYaw'),
    ],
  );
}

/** Where it balances: millimetres first, then two margins that are easily taken for one another. */
export function marginTable(study: HoldStudy, balance: number, units: UnitSystem): TemplateResult {
  const chords = (value: number) => `${coefficient(value)} mean chords`;
  return figureTable(
    'Where it balances',
    ['', ''],
    [
      {
        cells: ['neutral point, aft of the wing’s root', formatWithUnit(study.neutralPoint, 'length', units)],
      },
      { cells: ['balance point, aft of the wing’s root', formatWithUnit(balance, 'length', units)] },
      { cells: ['geometric static margin', chords(study.margins.geometric)] },
      { cells: ['−dCm/dCL, every drag at its own depth', chords(study.margins.withDrag)] },
      ...(study.stabilizer
        ? [
            { cells: ['stabilizer volume', coefficient(study.stabilizer.volume)] },
            { cells: ['downwash slope at the stabilizer', coefficient(study.stabilizer.downwashSlope)] },
          ]
        : []),
    ],
  );
}

/** The matrix in three sentences. */
export function couplingReading(study: HoldStudy): string[] {
  const foil = totalOf(study.coupling.foil);
  const craft = totalOf(study.coupling.craft);
  const says = (whole: Whole, total: Derivatives, key: keyof Derivatives, verb: string) =>
    Math.abs(total[key]) > study.band[whole][key]
      ? `${verb} ${SAYINGS[key][total[key] > 0 ? 0 : 1]}`
      : `hardly ${verb}`;
  const sentences = [
    `When the foil alone turns to starboard it ${says('foil', foil, 'Clr', 'rolls')}; when it slips to starboard it ${says('foil', foil, 'Clbeta', 'rolls')}, and ${says('foil', foil, 'Cnbeta', 'turns')}.`,
    `With rider and strut, a slip to starboard ${says('craft', craft, 'Clbeta', 'rolls the craft')}, and ${says('craft', craft, 'Cnbeta', 'turns it')}.`,
  ];
  const { strutShare } = study;
  if (strutShare !== null)
    sentences.push(
      `The strut bears ${Math.round(100 * strutShare)} % of the side force that a slip makes: what is felt of the wing’s droop is the foil’s own coupling.`,
    );
  return sentences;
}
