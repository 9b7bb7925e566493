/**
 * The coupling of slip, roll and turn in words a rider understands, with the numbers behind it; what each part adds.
 * Roll positive starboard down, yaw positive nose to starboard, side force positive to starboard.
 */
import { css, html, type TemplateResult } from 'lit';
import type { UnitSystem } from '../../session/units.ts';
import type { Derivatives } from '../../solver/report.ts';
import type { LateralCoupling, Ratios } from '../../solver/studies/coupling.ts';
import type { HoldStudy } from '../../solver/studies/hold-study.ts';
import { tableFrame, tableWithGhost } from '../figure-table.ts';
import type { GhostFigure } from '../ghost-figures.ts';
import { drawCell, figureCell, quantityCell } from '../table-cells.ts';
import {
  bandCell,
  coefficient,
  coefficientCell,
  LATERAL_KEYS,
  LATERAL_NAMES,
  VERTICAL_KEYS,
  VERTICAL_NAMES,
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
  .matrix .ghost {
    padding: 0 0 0 0.35rem;
    border-right: 0;
    border-left: 2px dashed var(--ghost);
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

export function couplingMatrix(
  study: HoldStudy,
  ghost: HoldStudy | null,
  whole: Whole,
  units: UnitSystem,
): TemplateResult {
  const behind = ghost && { study: ghost, total: totalOf(ghost.coupling[whole]) };
  const own = { study, total: totalOf(study.coupling[whole]) };
  const caption =
    whole === 'foil' ? 'Foil alone, about the wing’s root' : 'Craft, strut and all, about the balance point';
  const rows = (Object.keys(CAUSES) as Cause[]).map(
    (cause) => html`<tr>
      <th scope="row">${CAUSES[cause].title} <small>${CAUSES[cause].by}</small></th>
      ${(Object.keys(EFFECTS) as Effect[]).map((effect) => cell(own, behind, whole, units, cause, effect))}
    </tr>`,
  );
  const head = ['when it …', ...Object.values(EFFECTS).map((title) => `it ${title}`)];
  return tableFrame(caption, head, rows, { kind: 'matrix', ghostHead: ghost && head });
}

/** A study with the sum of its parts. */
interface Summed {
  study: HoldStudy;
  total: Derivatives;
}

function cell(
  own: Summed,
  behind: Summed | null,
  whole: Whole,
  units: UnitSystem,
  cause: Cause,
  effect: Effect,
) {
  const key = `${effect}${cause}` as const;
  const value = own.total[key];
  const isResolved = Math.abs(value) > own.study.band[whole][key];
  const size = ({ study, total }: Summed) => {
    const { force, moment, rate } = study.scale;
    const amount = (effect === 'CY' ? force : moment) * (cause === 'beta' ? SLIP : RATE * rate);
    return quantityCell(Math.abs(total[key]) * amount, effect === 'CY' ? 'force' : 'moment', units);
  };
  const banded = ({ study, total }: Summed) => bandCell(total[key], study.band[whole][key]);
  return html`<td>
    <b>${isResolved ? SAYINGS[key][value > 0 ? 0 : 1] : 'hardly: not resolved'}</b>
    <small>${drawCell(size(own), behind ? size(behind) : undefined)}</small>
    <small>${drawCell(banded(own), behind ? banded(behind) : undefined)}</small>
  </td>`;
}

export function partsTable(own: HoldStudy, ghost: HoldStudy | null, whole: Whole): TemplateResult {
  const parts =
    whole === 'foil' ? (['wing', 'stabilizer'] as const) : (['wing', 'stabilizer', 'strut'] as const);
  const caption = whole === 'foil' ? 'Foil alone, by part' : 'Craft, by part';
  return tableWithGhost(caption, own, ghost, ({ coupling, band }) => {
    const { vortex, profile } = coupling[whole];
    return {
      head: ['', ...parts, 'all ± method', 'of it drag'],
      rows: LATERAL_KEYS.map((key) => ({
        cells: [
          LATERAL_NAMES[key],
          ...parts.map((part) => coefficientCell(vortex[part][key] + profile[part][key])),
          bandCell(vortex.total[key] + profile.total[key], band[whole][key]),
          coefficientCell(profile.total[key]),
        ],
      })),
    };
  });
}

export function verticalTable(own: HoldStudy, ghost: HoldStudy | null): TemplateResult {
  const parts = ['wing', 'stabilizer', 'total'] as const;
  const caption = 'Lift and pitch about the balance point, by part';
  return tableWithGhost(caption, own, ghost, ({ coupling: { vertical } }) => ({
    head: ['', 'wing', 'stabilizer', 'all'],
    rows: VERTICAL_KEYS.map((key) => ({
      cells: [VERTICAL_NAMES[key], ...parts.map((part) => coefficientCell(vertical[part][key]))],
    })),
  }));
}

const RATIOS: Record<keyof Ratios, string> = {
  rollFromYaw: 'roll from yaw, Clr over |Clp|',
  yawFromRoll: 'yaw from roll, Cnp over |Cnr|',
  rollOverYaw: 'roll over yaw in a slip, Clβ over Cnβ',
};

export function ratioTable(own: HoldStudy, ghost: HoldStudy | null): TemplateResult {
  return tableWithGhost('Ratios', own, ghost, ({ ratios: { foilVortex, foil, craft } }) => ({
    head: ['', 'foil, vortex part', 'foil', 'craft'],
    rows: (Object.keys(RATIOS) as Array<keyof Ratios>).map((key) => ({
      cells: [
        RATIOS[key],
        ...[foilVortex, foil, craft].map((of) => coefficientCell(of[key], 'not resolved')),
      ],
    })),
  }));
}

/** A study with the place of its design's balance point, m aft of the origin. */
export interface Balanced {
  study: HoldStudy;
  balance: number;
}

/** Where it balances: millimetres first, then two margins that are easily taken for one another. */
export function marginTable(own: Balanced, ghost: Balanced | null, units: UnitSystem): TemplateResult {
  const chords = (value: number) =>
    figureCell(value, (of, isDifference) => `${coefficient(of, isDifference)} mean chords`);
  return tableWithGhost('Where it balances', own, ghost, ({ study, balance }) => ({
    head: ['', ''],
    rows: [
      { cells: ['neutral point, aft of the wing’s root', quantityCell(study.neutralPoint, 'length', units)] },
      { cells: ['balance point, aft of the wing’s root', quantityCell(balance, 'length', units)] },
      { cells: ['geometric static margin', chords(study.margins.geometric)] },
      { cells: ['−dCm/dCL, every drag at its own depth', chords(study.margins.withDrag)] },
      ...(study.stabilizer
        ? [
            { cells: ['stabilizer volume', coefficientCell(study.stabilizer.volume)] },
            { cells: ['downwash slope at the stabilizer', coefficientCell(study.stabilizer.downwashSlope)] },
          ]
        : []),
    ],
  }));
}

/** What else is said in the sentences. */
export const COUPLING_FIGURES: readonly GhostFigure<HoldStudy>[] = [
  {
    label: 'Of the side force of a slip, the strut bears',
    read: ({ strutShare }) => strutShare,
    quantity: 'share',
    decimals: 0,
  },
];

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
