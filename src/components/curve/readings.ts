/** What the numbers of Curve say, in sentences; also where they go against custom. */
import { writeFixed } from '../../session/number-format.ts';
import { formatValue, formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Kept } from '../../solver/geometry/bend.ts';
import type { CouplingLine, CurveStudy } from '../../solver/studies/curve-study.ts';
import type { DroopColumn } from '../../solver/studies/droop-family.ts';
import type { DroopStudy } from '../../solver/studies/droop-study.ts';
import type { PriceBand } from '../../solver/studies/price-band.ts';
import type { GhostFigure } from '../ghost-figures.ts';
import { readBetween } from './plot-model.ts';

export const KEPT_NAMES: Record<Kept, string> = {
  unrolled: 'unrolled length',
  tipToTip: 'tip-to-tip span',
  projectedArea: 'projected area',
};

const EXAMPLE = 24; // degrees read where the design itself is nearly flat
const NEARLY_FLAT = 2;
const NOTICEABLE = 0.002; // of the flat wing's induced drag

export const angle = (value: number, decimals = 1): string =>
  formatWithUnit(value, 'angle', 'si', { decimals });

/** A column of the sweep at a droop; NaN beyond it. */
export function columnAt({ columns }: DroopStudy, name: DroopColumn, at: number): number {
  return readBetween([...columns.amplitude], [...columns[name]], at) ?? Number.NaN;
}

/** The droop that the sentences are about: the design's own, or an example where that is nearly flat. */
export function exampleDroop({ present, columns }: DroopStudy): number {
  const last = columns.amplitude.at(-1)!;
  return present > NEARLY_FLAT && present <= last ? present : Math.min(EXAMPLE, last);
}

/** A column of a sweep at its own design's droop. */
const presentOf =
  (name: DroopColumn) =>
  ({ sweep }: CurveStudy) =>
    columnAt(sweep, name, sweep.present);

/** Of either design as it is drawn, against its own flat wing. */
export const SWEEP_FIGURES: readonly GhostFigure<CurveStudy>[] = [
  { label: 'Droop as drawn', read: ({ sweep }) => sweep.present, quantity: 'angle', decimals: 1 },
  {
    label: 'Extra drag of its curve',
    read: presentOf('extraTotalDrag'),
    quantity: 'force',
    decimals: 2,
  },
  { label: 'Lift lost to it', read: presentOf('lostFraction'), quantity: 'share', decimals: 1 },
  {
    label: 'Angle asked for it',
    read: presentOf('extraAlpha'),
    quantity: 'angle',
    decimals: 2,
  },
];

export const PRICE_FIGURES: readonly GhostFigure<CurveStudy>[] = [
  {
    label: 'Droop at your price',
    read: ({ price }) => price.place.at,
    quantity: 'angle',
    decimals: 1,
  },
  { label: 'Neutral droop', read: ({ price }) => price.neutral, quantity: 'angle', decimals: 1 },
];

/** Which of the two is being paid: induced drag, or wetted area. */
export function paymentReading(sweep: DroopStudy, units: UnitSystem): string[] {
  const at = exampleDroop(sweep);
  const read = (name: DroopColumn) => columnAt(sweep, name, at);
  const flat = (name: DroopColumn) => sweep.columns[name][0]!;
  const force = (value: number, sign = false) => formatWithUnit(value, 'force', units, { decimals: 2, sign });
  const induced = read('extraInducedDrag');
  const profile = read('extraProfileDrag');
  const area = read('unrolledArea') - flat('unrolledArea');
  const span = read('span') - flat('span');
  const moved = (value: number, quantity: 'area' | 'length') =>
    formatWithUnit(value, quantity, units, { sign: true });
  const first = `Bent to ${angle(at)} with its ${KEPT_NAMES[sweep.kept]} kept, the wing makes ${force(read('inducedDrag'))} of induced drag where it made ${force(flat('inducedDrag'))} flat.`;
  const total = `All in all ${force(read('extraTotalDrag'), true)}, ${formatWithUnit(read('extraTotalDrag') / flat('totalDrag'), 'share', units, { decimals: 1, sign: true })} of the drag.`;
  if (induced < 0)
    return [
      `${first} Against custom the curve saves induced drag, ${force(-induced)}, since no span is given up for it. You pay in wing: ${moved(area, 'area')}, ${force(profile, true)} of profile drag. ${total}`,
    ];
  if (Math.abs(profile) > induced)
    return [
      `${first} You pay mostly in wetted area: ${moved(area, 'area')}, ${force(profile, true)} of profile drag, against ${force(induced, true)} induced. ${total}`,
    ];
  return [
    `${first} You pay in induced drag, ${force(induced, true)}, for span given up: ${moved(span, 'length')} tip to tip. The wetted area changes by ${moved(area, 'area')}. ${total}`,
  ];
}

/** Lost lift sounds dear and costs little: it is met by a small angle. */
export function lostLiftReading(sweep: DroopStudy, units: UnitSystem): string {
  const at = exampleDroop(sweep);
  const lost = columnAt(sweep, 'lostFraction', at);
  const extra = columnAt(sweep, 'extraTotalDrag', at) / sweep.columns.totalDrag[0]!;
  const share = (value: number) => formatWithUnit(value, 'share', units, { decimals: 1 });
  const is = `At ${angle(at)} it has lost ${share(lost)} of its lift at the same angle; carrying the same rider then asks ${formatWithUnit(columnAt(sweep, 'extraAlpha', at), 'angle', units, { decimals: 2, sign: true })}`;
  return extra < lost
    ? `${is} and ${share(extra)} more drag: the lost lift is not the price, the drag is.`
    : `${is} and ${share(extra)} more drag: here the drag is dearer than the lost lift.`;
}

/** Why no corner is drawn: how both grow when the droop doubles. */
export function cornerReading(sweep: DroopStudy): string {
  const half = Math.min(15, sweep.columns.amplitude.at(-1)! / 3);
  const times = (name: DroopColumn) => columnAt(sweep, name, 2 * half) / columnAt(sweep, name, half);
  const [drag, hold] = [times('extraTotalDrag'), times('holdIndex')];
  const growth =
    Number.isFinite(hold) && drag > 0
      ? `From ${angle(half, 0)} to ${angle(2 * half, 0)} the extra drag grows ${writeFixed(drag, 1)}-fold, the hold index ${writeFixed(hold, 1)}-fold. `
      : '';
  return `${growth}Drag rises about as droop squared and hold about as droop, so the curves have no corner to settle on: what rises is the price of the next bit.`;
}

/** Where the price passes the user's own, with its interval. */
export function placeReading(
  { price, sweep }: CurveStudy,
  band: PriceBand | null,
  units: UnitSystem,
): string {
  const { place, goods, limit } = price;
  const what = goods === 'holdPoint' ? 'one more point of hold index' : 'one more degree of droop';
  const yours = `${formatWithUnit(limit, 'share', units, { decimals: 2 })} of the total drag`;
  const end = angle(sweep.columns.amplitude.at(-1)!, 0);
  const flatTail =
    goods === 'degree'
      ? ' Behind this stabilizer the index stays nothing, so droop is counted by the degree.'
      : '';
  if (place.why === 'dearerFromTheStart')
    return `From the flat wing on, ${what} costs more than ${yours}.${flatTail}`;
  if (place.at === null)
    return `Up to ${end}, ${what} costs less than ${yours}: at your price nothing here ends the bargain.${flatTail}`;
  const method = band?.place == null ? 0 : Math.abs(band.place);
  const low = place.low === null ? 'flat' : angle(Math.max(0, place.low - method));
  const high = place.high === null ? `beyond ${end}` : angle(place.high + method);
  const why =
    band?.place == null
      ? 'for a quarter less or more than that price'
      : `for a quarter less or more than that price and the method’s own ±${angle(method)}`;
  return `At ${angle(place.at)}, ${what} costs ${yours}, your price; between ${low} and ${high} ${why}. It is a stretch, not a point.${flatTail}`;
}

export function neutralReading({ price, sweep }: CurveStudy, band: PriceBand | null): string {
  const end = angle(sweep.columns.amplitude.at(-1)!, 0);
  if (price.neutral === null)
    return sweep.columns.Clr[0]! < 0
      ? 'A yaw rolls this foil out of the turn even with a flat wing: no droop makes it neutral.'
      : `Up to ${end} a yaw keeps rolling the foil into the turn: the neutral droop lies beyond.`;
  const method = band?.neutral == null ? '' : ` (method ±${angle(Math.abs(band.neutral))})`;
  const at = price.place.at;
  const order =
    at === null
      ? ''
      : at < price.neutral
        ? ' Your price ends before it.'
        : ' Your price would take you past it, to where a yaw rolls the foil out of the turn.';
  return `Neutral droop ${angle(price.neutral)}${method}: there a yaw no longer rolls the foil.${order}`;
}

/** Said only where it is so: the next degree lowers the induced drag. */
export function savedReading({ price, sweep }: CurveStudy, units: UnitSystem): string | null {
  const saved = -Math.min(...sweep.columns.extraInducedDrag) / sweep.columns.inducedDrag[0]!;
  if (!price.isInducedSaved || saved < NOTICEABLE) return null;
  const least = Math.min(...price.inducedPerDegree);
  const at = price.amplitude[price.inducedPerDegree.indexOf(least)]!;
  const isMostly = price.inducedPerDegree.filter((value) => value < 0).length > 0.9 * price.amplitude.length;
  return `With its ${KEPT_NAMES[sweep.kept]} held, the induced price is negative${isMostly ? '' : ' in places'}: a degree more saves up to ${formatWithUnit(-least, 'force', units, { decimals: 3 })} of induced drag, at ${angle(at, 0)}. The total price beside it counts the wetted area too.`;
}

export function loadingReading(coupling: readonly CouplingLine[], units: UnitSystem): string {
  const each = coupling.map(
    ({ CL, speed, neutral }) =>
      `${neutral === null ? 'nowhere in this sweep' : `at ${angle(neutral)}`} at ${formatWithUnit(speed, 'speed', units)} (CL ${writeFixed(CL, 2)})`,
  );
  return `A wing loaded to a higher lift coefficient rolls more with a yaw, so it wants more curve: roll-from-yaw vanishes ${each.join(', ')}.`;
}

/** Whether the index reads the same wherever roll-from-yaw vanishes. */
export function indexReading(coupling: readonly CouplingLine[], kind: CurveStudy['indexKind']): string {
  const name = kind === 'holdIndex' ? 'hold index' : 'roll term';
  const known = coupling.flatMap(({ neutralIndex }) => (neutralIndex === null ? [] : [neutralIndex]));
  const write = (value: number) =>
    formatValue(value, 'ratio', 'si', { decimals: kind === 'holdIndex' ? 2 : 3 });
  if (known.length < 2)
    return `Were the ${name} all there is to it, the lines would lie on one another. Too few of them pass zero here to say more.`;
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const spread = (2 * (high - low)) / (high + low);
  const trust =
    spread < 0.1
      ? 'close, so it may stand in for the solved figure on this foil'
      : spread < 0.3
        ? 'a fair guide, no more'
        : 'too far to go by it: take the solved figure';
  return `Where roll-from-yaw vanishes the ${name} reads ${write(low)} to ${write(high)}, ${Math.round(100 * spread)} % apart; ${trust}. The index knows neither sweep nor strut nor camber.`;
}
