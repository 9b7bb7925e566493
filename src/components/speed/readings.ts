/** What the numbers of Speed say, in sentences. */
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { SpeedCase } from '../../solver/studies/speed.ts';
import type { SpeedDetails } from '../../solver/studies/speed-details.ts';
import type { SpeedStudy } from '../../solver/studies/speed-study.ts';
import type { GhostFigure } from '../ghost-figures.ts';

const KNOT = 1852 / 3600; // m/s
const NOISY_WAVES = 0.03; // share of the induced drag above which waves are worth a warning

export const SERIES_FIGURES: readonly GhostFigure<SpeedStudy>[] = [
  {
    label: 'Best lift to drag',
    read: ({ best }) => best.bestGlide?.liftToDrag,
    quantity: 'ratio',
    decimals: 1,
  },
  { label: 'Speed of the best glide', read: ({ best }) => best.bestGlide?.speed, quantity: 'speed' },
  {
    label: 'Least power, W',
    read: ({ best }) => best.leastPower?.power,
    quantity: 'ratio',
    decimals: 0,
  },
  { label: 'Speed of the least power', read: ({ best }) => best.leastPower?.speed, quantity: 'speed' },
  {
    label: 'Feet move aft, take-off to top speed',
    read: ({ named: { takeOff, top } }) =>
      takeOff.point && top.point ? top.point.feet - takeOff.point.feet : null,
    quantity: 'length',
  },
  { label: 'Wing and stabilizer lined up at', read: ({ lineUp }) => lineUp, quantity: 'angle' },
];

export const detailFigures = (units: UnitSystem): readonly GhostFigure<SpeedDetails>[] => [
  { label: 'Lowest take-off speed', read: ({ takeOff }) => takeOff?.speed, quantity: 'speed' },
  { label: 'Wing CL there', read: ({ takeOff }) => takeOff?.CLwing, quantity: 'ratio', decimals: 2 },
  {
    label: `${formatWithUnit(10, 'mass', units, { decimals: 0 })} more rider costs`,
    read: ({ takeOff }) => takeOff?.perTenKilograms,
    quantity: 'speed',
    decimals: 2,
  },
  {
    label: '10 % more chord saves',
    read: ({ takeOff }) => takeOff && -takeOff.perTenPercentArea,
    quantity: 'speed',
    decimals: 2,
  },
  {
    label: 'Heel at which a tip breaks the surface',
    read: ({ breachHeel }) => breachHeel,
    quantity: 'angle',
    decimals: 0,
    why: 'none does',
  },
];

export function seriesReading({ best, shift, named }: SpeedStudy, units: UnitSystem): string[] {
  const sentences: string[] = [];
  if (best.bestGlide)
    sentences.push(
      `It glides best at ${formatWithUnit(best.bestGlide.speed, 'speed', units)}, ${writeFixed(best.bestGlide.liftToDrag, 1)} to 1.`,
    );
  if (best.leastPower)
    sentences.push(
      `It takes the least power at ${formatWithUnit(best.leastPower.speed, 'speed', units)}, ${writeFixed(best.leastPower.power, 0)} W.`,
    );
  const [slow, fast] = [named.takeOff.point, named.top.point];
  if (shift !== null && slow && fast) {
    const way = shift > 0 ? 'aft' : 'forward';
    const all = formatWithUnit(Math.abs(fast.feet - slow.feet), 'length', units);
    const each = formatWithUnit(Math.abs(shift) * KNOT, 'length', units);
    sentences.push(
      `From take-off to top speed the feet have to move ${all} ${way}, ${each} a knot: what a rider feels as pressure on the ${shift > 0 ? 'front' : 'back'} foot.`,
    );
  }
  return sentences;
}

/** Speeds that cannot be ridden as drawn, each with its reason; empty when all can. */
export function troubles(
  cases: ReadonlyArray<[string, SpeedCase]>,
  reach: number,
  units: UnitSystem,
): string[] {
  return cases.flatMap(([name, { speed, point, problem }]) => {
    const at = `At ${name}, ${formatWithUnit(speed, 'speed', units)}`;
    if (!point) return [`${at}: ${problem}.`];
    if (point.stallMargin !== null && point.stallMargin < 0)
      return [`${at}, the wing would have to carry more than its sections can: it is slower than take-off.`];
    if (point.stabilizerMargin !== null && point.stabilizerMargin < 0)
      return [`${at}, the stabilizer would have to pull more than its section can: it stalls first.`];
    if (!point.isReachable)
      return [
        `${at}, the rider would have to stand more than ${formatWithUnit(reach, 'length', units)} from the drawn stance: out of reach, so no figures are given. A wedge under the stabilizer brings it back.`,
      ];
    return [];
  });
}

export function takeOffReading({ takeOff }: SpeedDetails, design: Design, units: UnitSystem): string {
  if (!takeOff) return 'No speed up to 30 m/s lifts it off within the usable lift of its sections.';
  const speed = formatWithUnit(takeOff.speed, 'speed', units);
  const where =
    takeOff.eta < 0.08 ? 'at the root' : `at ${Math.round(100 * takeOff.eta)} % of the half length`;
  const wanted = design.brief.speeds.takeOff;
  const against =
    takeOff.speed > wanted
      ? `${formatWithUnit(takeOff.speed - wanted, 'speed', units)} above the brief`
      : 'within the brief';
  return `It lifts off at ${speed}, ${against}, at wing CL ${writeFixed(takeOff.CLwing, 2)}; the section ${where} sets the limit. ${formatWithUnit(10, 'mass', units, { decimals: 0 })} more rider costs ${formatWithUnit(takeOff.perTenKilograms, 'speed', units, { decimals: 2 })}, 10 % more chord saves ${formatWithUnit(-takeOff.perTenPercentArea, 'speed', units, { decimals: 2 })}.`;
}

export function breachReading({ breachHeel, heel }: SpeedDetails, design: Design, units: UnitSystem): string {
  if (design.brief.depth === null) return 'Deep water: no tip can break the surface.';
  const level = heel.find((row) => row.heel === 0);
  const tips = level
    ? `Level, the tips run ${formatWithUnit(level.upperTipDepth, 'length', units)} deep. `
    : '';
  return breachHeel === null
    ? `${tips}At cruise depth no heel brings a wing tip to the surface.`
    : `${tips}At cruise depth the upper wing tip breaks the surface at ${formatWithUnit(breachHeel, 'angle', units, { decimals: 0 })} of heel; the head-on view shows it.`;
}

/** Which of the choices turns tightest; null where there is nothing to compare. */
export function turnsReading({ turns }: SpeedDetails): string | null {
  const present = turns.find(({ factor }) => factor === 1);
  const best = turns.reduce<(typeof turns)[0] | null>(
    (least, row) =>
      row.radius !== null && (least?.radius == null || row.radius < least.radius) ? row : least,
    null,
  );
  if (!present?.radius || !best?.radius) return null;
  if (best === present) return 'None of these turns tighter than the foil as drawn.';
  const what = best.change === 'arm' ? 'fuselage' : 'stabilizer';
  const how =
    best.change === 'arm' ? 'shorter' : best.factor > 1 ? 'more drooped, smaller' : 'flatter, larger';
  const is = best.change === 'arm' && best.factor > 1 ? 'longer' : how;
  return `For the same hold a ${is} ${what} turns tighter: ${writeFixed(best.radius, 1)} m instead of ${writeFixed(present.radius, 1)} m for the same move of the feet; its pitch volume goes from ${writeFixed(present.volume, 2)} to ${writeFixed(best.volume, 2)}.`;
}
const SLOW = 6; // m/s, below which gravity takes part at the surface

/** At slow speeds the surface is not the weightless one of the solver: all that this takes of the lift is in doubt. */
export function surfaceBand({ named, surfaceShare }: SpeedStudy, units: UnitSystem): string | null {
  const { point } = named.takeOff;
  if (!point?.froude || surfaceShare === null || point.speed >= SLOW) return null;
  return `Below ${formatWithUnit(SLOW, 'speed', units)} gravity takes part at the surface: lift at an angle at take-off is good to ±${writeFixed(100 * surfaceShare, 0)} %, what the surface takes of it here (V/√(g h) ${writeFixed(point.froude.depth, 1)}, V/√(g b) ${writeFixed(point.froude.span, 1)}).`;
}

/** Where waves are more than a small share of the induced drag, the infinite-Froude figures carry a band. */
export function waveWarning(cases: ReadonlyArray<[string, SpeedCase]>): string | null {
  const noisy = cases.flatMap(([name, { point }]) => {
    if (!point) return [];
    const induced = point.drag.wingInduced + point.drag.stabilizerInduced;
    const share = Math.abs(point.drag.wave) / induced;
    return share > NOISY_WAVES ? [`${Math.round(100 * share)} % at ${name}`] : [];
  });
  return noisy.length === 0
    ? null
    : `Waves at finite Froude number are a noticeable share of the induced drag: ${noisy.join(', ')}.`;
}
