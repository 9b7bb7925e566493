/** What the numbers of Speed say, in sentences. */
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { SpeedCase } from '../../solver/studies/speed.ts';
import type { SpeedDetails, SpeedStudy } from '../../solver/studies/speed-study.ts';

const KNOT = 1852 / 3600; // m/s
const NOISY_WAVES = 0.03; // share of the induced drag above which waves are worth a warning

export function seriesReading({ best, shift }: SpeedStudy, units: UnitSystem): string[] {
  const sentences: string[] = [];
  if (best.bestGlide)
    sentences.push(
      `It glides best at ${formatWithUnit(best.bestGlide.speed, 'speed', units)}, ${best.bestGlide.liftToDrag.toFixed(1)} to 1.`,
    );
  if (best.leastPower)
    sentences.push(
      `It takes the least power at ${formatWithUnit(best.leastPower.speed, 'speed', units)}, ${best.leastPower.power.toFixed(0)} W.`,
    );
  if (shift !== null) {
    const each = formatWithUnit(Math.abs(shift) * KNOT, 'length', units);
    sentences.push(
      `From take-off to top speed the feet have to move ${shift > 0 ? 'aft' : 'forward'} by ${each} a knot: what a rider feels as pressure on the ${shift > 0 ? 'front' : 'back'} foot.`,
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
    if (!point.isReachable)
      return [
        `${at}, the rider would have to stand more than ${formatWithUnit(reach, 'length', units)} from the drawn stance: out of reach, so the figures there are not a running state.`,
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
  return `It lifts off at ${speed}, ${against}, at wing CL ${takeOff.CLwing.toFixed(2)}; the section ${where} sets the limit. ${formatWithUnit(10, 'mass', units, { decimals: 0 })} more rider costs ${formatWithUnit(takeOff.perTenKilograms, 'speed', units, { decimals: 2 })}, 10 % more chord saves ${formatWithUnit(-takeOff.perTenPercentArea, 'speed', units, { decimals: 2 })}.`;
}

export function breachReading({ breachHeel }: SpeedDetails, design: Design, units: UnitSystem): string {
  if (design.brief.depth === null) return 'Deep water: no tip can break the surface.';
  return breachHeel === null
    ? 'At cruise depth no heel brings a wing tip to the surface.'
    : `At cruise depth the upper wing tip breaks the surface at ${formatWithUnit(breachHeel, 'angle', units, { decimals: 0 })} of heel.`;
}

export function pumpingReading({ pumping, pumpSpeed }: SpeedDetails, units: UnitSystem): string {
  const speed = formatWithUnit(pumpSpeed, 'speed', units);
  if (!pumping) return `No stroke below half a metre keeps it running at ${speed} at this rate.`;
  return `Pumping at ${pumping.frequency.toFixed(1)} a second keeps it running at ${speed} with strokes of ±${formatWithUnit(pumping.amplitude, 'length', units)}: ${pumping.power.toFixed(0)} W into the water, of which ${Math.round(100 * pumping.efficiency)} % drives.`;
}

export function sideReading({ side, sideProblem }: SpeedDetails, units: UnitSystem): string | null {
  if (sideProblem) return `Against the sideways pull: ${sideProblem}.`;
  if (!side) return null;
  const heel = `${formatWithUnit(Math.abs(side.heel), 'angle', units)} ${side.heel < 0 ? 'to port' : 'to starboard'}`;
  const shift =
    Math.abs(side.riderShift) < 1e-4
      ? ''
      : ` The rider shifts ${formatWithUnit(Math.abs(side.riderShift), 'length', units)} ${side.riderShift < 0 ? 'to port' : 'to starboard'}.`;
  return `Against the pull to starboard it heels ${heel} and slips ${formatWithUnit(Math.abs(side.leeway), 'angle', units)} ${side.leeway > 0 ? 'to starboard' : 'to port'}; the strut bears ${formatWithUnit(Math.abs(side.strutForce), 'force', units)}.${shift}`;
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
