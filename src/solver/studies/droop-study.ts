/**
 * The wing's droop varied by its own law at the same lift, one of its measures kept: what each degree costs and buys.
 *
 * Lost lift is the ledger's: at the same angle, against the bent wing's own unrolled twin. Everything with "extra" is
 * at the same lift, against the flat end of this family (amplitude 0). Columns run over the amplitudes, in the units
 * named; NaN where a figure does not exist.
 */
import type { Design } from '../design/document.ts';
import type { Kept } from '../geometry/bend.ts';
import type { ConditionOptions } from '../report.ts';
import { COLUMNS, type DroopColumn, DroopFamily, type LoadingLine } from './droop-family.ts';
import type { Study } from './study.ts';

export interface DroopStudyOptions {
  kept?: Kept; // default: the unrolled length
  count?: number; // default 41
  to?: number; // degrees; default: the largest that the geometry allows
  condition?: Omit<ConditionOptions, 'alpha'>;
}

export interface DroopStudy {
  kept: Kept;
  lift: number; // N
  speed: number; // m/s
  present: number; // degrees, the design's own amplitude
  largest: number; // degrees
  largestBy: 'geometry' | 'lift'; // what ends the sweep: the shape, or a lift coefficient beyond GREATEST_LIFT_COEFFICIENT
  columns: Record<DroopColumn, Float64Array>;
  loadings: LoadingLine[]; // take-off, cruise, top speed
  isProfileAssumed: boolean; // the drag of sections is the assumed coefficient
}

export function* droopStudy(design: Design, options: DroopStudyOptions = {}): Study<DroopStudy> {
  const sweep = new DroopFamily(design, options.kept ?? 'unrolled', options.condition ?? {});
  const { largest, by } = sweep.limit();
  const count = Math.max(2, Math.round(options.count ?? 41));
  const to = Math.min(options.to ?? largest, largest);
  const columns = Object.fromEntries(COLUMNS.map((name) => [name, new Float64Array(count)]));
  const loadings = sweep.loadings(count);
  for (let k = 0; k < count; k++) {
    const row = sweep.row((to * k) / (count - 1), (foil) => {
      for (const line of loadings) line.Clr[k] = sweep.rollFromYawAt(foil, line.speed);
    });
    for (const name of COLUMNS) columns[name]![k] = row[name];
    if (k === 0) for (const line of loadings) line.CL = row.CL * (sweep.condition.speed / line.speed) ** 2;
    yield (k + 1) / count;
  }
  return {
    kept: sweep.kept,
    lift: sweep.condition.lift,
    speed: sweep.condition.speed,
    present: sweep.bender.present,
    largest,
    largestBy: by,
    columns: columns as Record<DroopColumn, Float64Array>,
    loadings,
    isProfileAssumed: sweep.profile.source === 'fixed',
  };
}
