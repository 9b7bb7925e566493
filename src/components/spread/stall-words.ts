/** What the study of stall says, in sentences. */
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { StallMark, StallStudy } from '../../solver/studies/stall.ts';

export const angle = (value: number): string => formatWithUnit(value, 'angle', 'si', { decimals: 1 });

/** A place along the half span: "at the root", "350 mm from the middle (80 % of the half span)". */
export function placeAlong(y: number, tip: number, units: UnitSystem): string {
  const share = y / tip;
  if (share < 0.08) return 'at the root';
  return `${formatWithUnit(y, 'length', units)} from the middle (${Math.round(100 * share)} % of the half span)`;
}

/** The same of a named state. */
export function placeOf({ eta, y }: StallStudy, mark: Pick<StallMark, 'eta'>, units: UnitSystem): string {
  const k = eta.indexOf(mark.eta);
  return placeAlong(y[Math.max(0, k)]!, y.at(-1)!, units);
}

/** Where and when it gives way, and how far that is to be trusted. */
export function stallSentences(study: StallStudy, takeOff: number, units: UnitSystem): string[] {
  const { usable, first, greatest } = study;
  const speed = (mark: StallMark) => formatWithUnit(mark.speed, 'speed', units);
  const lines: string[] = [];
  if (usable)
    lines.push(
      `Slowed down, the wing first passes its usable lift ${placeOf(study, usable, units)}, at ${angle(usable.alpha)} and ${speed(usable)}${
        usable.speed > takeOff
          ? ''
          : `: ${formatWithUnit(takeOff - usable.speed, 'speed', units)} below take-off`
      }.`,
    );
  else lines.push('No strip of the wing passes its usable lift at any angle that was solved.');
  if (first)
    lines.push(
      `A section stalls first ${placeOf(study, first, units)}, at ${angle(first.alpha)} and ${speed(first)}.`,
    );
  if (greatest)
    lines.push(
      greatest.isPassed
        ? `The whole foil lifts most at ${angle(greatest.alpha)}: slower than ${speed(greatest)} nothing carries you.`
        : `Lift still grows at ${angle(greatest.alpha)}, the last angle solved.`,
    );
  return lines;
}

/** Said where take-off asks for more than is counted on; null where it does not. */
export function stallTrouble({ usable }: StallStudy, takeOff: number, units: UnitSystem): string | null {
  if (!usable || usable.speed <= takeOff) return null;
  return `Take-off at ${formatWithUnit(takeOff, 'speed', units)} is slower than the ${formatWithUnit(usable.speed, 'speed', units)} from which every strip stays within its usable lift.`;
}

/** How many angles the strips agreed at, and from where they did not. */
export function settledNote({ points }: StallStudy): string {
  const astray = points.filter(({ isSettled }) => !isSettled);
  const most = Math.max(...points.map(({ alpha }) => alpha));
  if (astray.length === 0)
    return `Converged: strips and sections agree at all ${points.length} angles up to ${angle(most)}.`;
  return `Strips and sections agree at ${points.length - astray.length} of ${points.length} angles; they did not converge at ${astray.map(({ alpha }) => angle(alpha)).join(', ')}, and no figure is taken from there.`;
}
