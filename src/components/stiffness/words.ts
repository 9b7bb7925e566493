/** How the parts and figures of stiffness are called on screen. */

import { formatWithUnit } from '../../session/units.ts';
import type { Part } from '../../solver/structure/parts.ts';
import type { LoadCase } from '../../solver/studies/compliance.ts';
import type { RideFigure } from '../../solver/studies/ride.ts';
import { type FigureCell, figureCell } from '../table-cells.ts';

export const PART_NAMES: Record<Part, string> = {
  box: 'box',
  strut: 'strut',
  strutJoint: 'strut joint',
  fuselage: 'fuselage',
  wingJoint: 'wing joint',
  wing: 'wing',
  stabilizerJoint: 'stabilizer joint',
  stabilizer: 'stabilizer',
};

export const PART_ORDER = Object.keys(PART_NAMES) as Part[];

export const CASE_NAMES: Record<LoadCase, string> = {
  side: 'to the side',
  up: 'up',
  aft: 'aft',
  roll: 'in roll',
  pitch: 'in pitch',
  yaw: 'in yaw',
};

export const RIDE_NAMES: Record<RideFigure, string> = {
  Clbeta: 'roll from slip, Clβ',
  Cnbeta: 'yaw from slip, Cnβ',
  Clr: 'roll from yaw, Clr',
  Cnr: 'yaw damping, Cnr',
  Cmalpha: 'pitch stiffness, Cmα',
  rollFromYaw: 'roll from yaw over roll damping, foil alone',
};

/** A change as a share, in tenths of a percent with its sign; a dash where it is none. */
export function changeCell(share: number | null): FigureCell {
  return figureCell(
    share,
    (value, isDifference) =>
      !isDifference && Math.round(1000 * value) === 0
        ? '–'
        : formatWithUnit(value, 'share', 'si', { decimals: 1, sign: true }),
    '',
  );
}

/** "strut.flap" as a builder says it. */
export function swingName(group: string): string {
  const [part = '', how = ''] = group.split('.');
  const name = PART_NAMES[part as Part] ?? part;
  const ways: Record<string, string> = {
    flap: part === 'strut' ? 'bending sideways' : 'bending',
    lag:
      part === 'strut'
        ? 'bending fore and aft'
        : part === 'fuselage'
          ? 'bending sideways'
          : 'bending in its plane',
    twist: 'twisting',
  };
  return `${name} ${ways[how] ?? `in ${how}`}`;
}

/** A share in whole percent; little is little, not nothing. */
export function percent(share: number): string {
  if (share === 0) return '–';
  return share < 0.005 ? '<1 %' : `${Math.round(100 * share)} %`;
}
