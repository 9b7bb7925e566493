/** How the untended craft moves after a nudge: each mode with its times and a sentence; inertia and added mass behind it. */
import { css, html, type TemplateResult } from 'lit';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { HoldStudy } from '../../solver/studies/hold-study.ts';
import type { Mode } from '../../solver/studies/modes.ts';
import { tableFrame, tableWithGhost } from '../figure-table.ts';
import type { GhostFigure } from '../ghost-figures.ts';
import { type Cell, drawCell, figureCell, quantityCell } from '../table-cells.ts';
import {
  bandCell,
  coefficient,
  coefficientCell,
  MODE_NAMES,
  type ModeKind,
  seconds,
  secondsCell,
} from './words.ts';

type AnyMode = Mode<string, ModeKind>;

export const modeStyles = css`
  .modes th[scope='row'] {
    white-space: normal;
    min-width: 15rem;
    color: var(--ink);
    font-weight: 600;
    padding-right: 1rem;
  }
  .modes th small {
    display: block;
    font-size: 1em;
    font-weight: 400;
    color: var(--soft);
  }
  .modes td {
    vertical-align: top;
  }
`;

/** How long, for a sentence: "0.33 s" after "doubles in" or "halves in". */
export function pace({ timeToDouble, timeToHalf }: Pick<AnyMode, 'timeToDouble' | 'timeToHalf'>): string {
  if (timeToDouble !== null) return `doubles in ${seconds(timeToDouble)}`;
  return timeToHalf === null ? 'stays as it is' : `halves in ${seconds(timeToHalf)}`;
}

/** `band`: of the method, 1/s; a mode slower than that may as well grow as die out. */
export function modeSentence(mode: AnyMode, band = 0): string {
  if (mode.kind === 'heading' && Math.abs(mode.real) < band)
    return 'A turn that nobody holds goes on: whether it slowly grows or dies out lies within the method’s band.';
  const how = pace(mode);
  const grows = mode.real > 0;
  switch (mode.kind) {
    case 'fall':
      return `Let go, it falls to one side, and turns as it falls: the lean ${how}. This is what the rider balances.`;
    case 'righting':
      return `The mirror of the fall: one way of moving, with just the right slip, in which a lean comes back; it ${how}.`;
    case 'heading':
      return grows
        ? `Its heading wanders off by itself: it ${how}.`
        : `A turn that nobody holds dies out and it runs straight again: it ${how}.`;
    case 'rollDamping':
      return `The water under wing and strut stops a roll almost at once: it ${how}.`;
    case 'swing':
    case 'secondSwing':
      return `It rolls and turns to and fro, once in ${seconds(mode.period ?? 0)}, and that ${how}.`;
    case 'pitchFall':
      return `Let go, it noses over or rears: the pitch ${how}. This too the rider balances, with the feet.`;
    case 'speed':
      return grows
        ? `Faster makes faster, slower makes slower, but slowly: it ${how}.`
        : `After a puff it drifts back to its speed: it ${how}.`;
    case 'porpoise':
    case 'secondPorpoise':
      return `It rises and dips, once in ${seconds(mode.period ?? 0)}, and that ${how}.`;
    case 'pitchRighting':
      return `A nod of the nose comes back by itself: it ${how}.`;
    case 'depthRighting':
      return `A change of depth comes back by itself: it ${how}.`;
    case 'sinkDamping':
      return `The wing’s own lift stops a heave almost at once: it ${how}.`;
  }
}

/** The ghost's mode of the same kind stands beside each. */
export function modeTable(
  { modes, band }: HoldStudy,
  ghost: HoldStudy | null,
  group: 'lateral' | 'vertical',
): TemplateResult {
  const caption = group === 'lateral' ? 'Sideways: slip, roll, turn' : 'Up and down: speed, pitch, depth';
  const others = (ghost?.modes[group] ?? []) as readonly AnyMode[];
  const rows = (modes[group] as readonly AnyMode[]).map((mode) => {
    const other = others.find(({ kind }) => kind === mode.kind);
    const behind = other && modeCells(other, ghost?.band.modes[other.kind]);
    return html`<tr>
      <th scope="row">${MODE_NAMES[mode.kind]} <small>${modeSentence(mode, band.modes[mode.kind])}</small></th>
      ${modeCells(mode, band.modes[mode.kind]).map((cell, k) => html`<td>${drawCell(cell, behind?.[k])}</td>`)}
    </tr>`;
  });
  const head = ['', 'half or double', 'period', 'damping', 'growth, 1/s'];
  return tableFrame(caption, head, rows, { kind: 'modes', ghostHead: ghost && head });
}

const modeCells = (mode: AnyMode, band: number | undefined): Cell[] => [
  pace(mode),
  secondsCell(mode.period),
  coefficientCell(mode.imaginary === 0 ? null : mode.damping),
  bandCell(mode.real, band),
];

export const FALL_FIGURES: readonly GhostFigure<HoldStudy>[] = [
  {
    label: 'Kept from turning, the lean doubles in',
    read: ({ modes }) => Math.LN2 / modes.fallHeldStraight,
    quantity: 'time',
    decimals: 2,
  },
];

/** What the rider balances, beside the pendulum that it nearly is. */
export function fallReading({ modes }: HoldStudy, balanceHeight: number, units: UnitSystem): string {
  const straight = seconds(Math.LN2 / modes.fallHeldStraight);
  const height = formatWithUnit(balanceHeight, 'length', units);
  return `An untended craft always falls. Kept from turning, the lean doubles in ${straight}, nearly as a pendulum ${height} tall stood on its head, whatever the foil; the rider’s balance is no part of these figures.`;
}

export function massTable(own: HoldStudy, ghost: HoldStudy | null, units: UnitSystem): TemplateResult {
  const kilograms = (value: number) => quantityCell(value, 'mass', units);
  const spin = (value: number) => figureCell(value, (of, sign) => `${coefficient(of, sign)} kg m²`);
  const caption = 'What has to be moved, about the balance point';
  return tableWithGhost(caption, own, ghost, ({ modes: { inertia, addedMass } }) => ({
    head: ['', 'rider, board, foil', 'water moved along'],
    rows: [
      { cells: ['sideways', kilograms(inertia.mass), kilograms(addedMass.sway)] },
      { cells: ['up and down', kilograms(inertia.mass), kilograms(addedMass.heave)] },
      { cells: ['in roll', spin(inertia.roll), spin(addedMass.roll)] },
      { cells: ['in pitch', spin(inertia.pitch), spin(addedMass.pitch)] },
      { cells: ['in yaw', spin(inertia.yaw), spin(addedMass.yaw)] },
    ],
  }));
}
