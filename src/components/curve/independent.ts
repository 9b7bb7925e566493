/**
 * An independent computation on one raked foil (derived, without this program): C_lr about the origin near
 * 0.12 CL when flat, falling about 0.0015 a degree of arc tip angle whatever the CL. The program's own tests give its figures
 * on a foil of that kind.
 */
import type { TemplateResult } from 'lit';
import { writeFixed, writePlain } from '../../session/number-format.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { CouplingLine } from '../../solver/studies/curve-study.ts';
import { figureTable } from '../figure-table.ts';
import { quantityCell } from '../table-cells.ts';
import { readBetween } from './plot-model.ts';
import { angle } from './readings.ts';

const SHARE_OF_CL = 0.12;
const PER_DEGREE = 0.0015;
const LOADS = [0.11, 0.21, 0.34, 0.67];
const NEUTRALS = [8, 16, 26, 52]; // degrees of arc tip angle
const NEAR = 0.15; // share within which two neutral droops agree

export function independentReading(coupling: readonly CouplingLine[], isArc: boolean): string {
  const head = `An independent computation on one raked foil found C_lr near ${writePlain(SHARE_OF_CL)} CL when flat, falling ${writePlain(PER_DEGREE)} a degree of arc tip angle whatever the CL; on a foil of that kind this program gives the same.`;
  if (!isArc) return `${head} This wing bends by another law, so its degrees are not those.`;
  const compared = coupling.flatMap(({ CL, neutral }) => {
    const theirs = readBetween(LOADS, NEUTRALS, CL);
    return neutral === null || theirs === null ? [] : [{ CL, neutral, theirs }];
  });
  if (compared.length === 0) return `${head} None of this foil’s neutral droops can be set against it.`;
  const agrees = compared.every(({ neutral, theirs }) => Math.abs(neutral / theirs - 1) < NEAR);
  const list = compared
    .map(({ CL, neutral, theirs }) => `${angle(neutral)} for its ${angle(theirs)} at CL ${writeFixed(CL, 2)}`)
    .join(', ');
  return agrees
    ? `${head} This foil agrees with it: ${list}.`
    : `${head} This foil differs from that one, ${list}: rake, camber and the stabilizer’s own droop take part.`;
}

/** The ghost's at the same of the three speeds, each at its own. */
export function couplingTable(
  coupling: readonly CouplingLine[],
  ghost: readonly CouplingLine[] | null,
  units: UnitSystem,
): TemplateResult {
  const rowsOf = (lines: readonly CouplingLine[]) =>
    lines.map(({ speed, CL, shareOfCL, perDegree, neutral }, k) => ({
      key: String(k),
      cells: [
        formatWithUnit(speed, 'speed', units),
        quantityCell(CL, 'ratio', 'si', { decimals: 2 }),
        quantityCell(shareOfCL, 'ratio', 'si', { decimals: 3 }),
        quantityCell(perDegree, 'ratio', 'si', { decimals: 5, why: '' }),
        quantityCell(neutral, 'angle', 'si', { decimals: 1, why: 'none' }),
      ],
    }));
  const theirs = LOADS.map((CL, k) => ({
    cells: [
      'another foil, independent',
      writeFixed(CL, 2),
      writeFixed(SHARE_OF_CL, 2),
      writeFixed(PER_DEGREE, 4),
      angle(NEUTRALS[k]!, 0),
    ],
  }));
  const head = ['', 'CL', 'flat, by CL', 'fall a degree', 'neutral droop'];
  return figureTable(
    'C_lr of the foil alone, about its origin',
    head,
    [...rowsOf(coupling), ...theirs],
    ghost && { head, rows: rowsOf(ghost) },
  );
}
