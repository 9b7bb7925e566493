/** What waves give and ask, in sentences. */
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { WaveStudy } from '../../solver/studies/wave-study.ts';
import type { GhostFigure } from '../ghost-figures.ts';

export const FIGURES: readonly GhostFigure<WaveStudy>[] = [
  {
    label: 'Least slope that carries the glide',
    read: ({ leastSlope }) => leastSlope?.slope,
    quantity: 'angle',
    decimals: 1,
  },
  { label: 'Speed of that glide', read: ({ leastSlope }) => leastSlope?.speed, quantity: 'speed' },
  { label: 'Drag, keeping pace with these waves', read: ({ ride }) => ride?.drag, quantity: 'force' },
  { label: 'Pull of their steepest face', read: ({ ride }) => ride?.pull, quantity: 'force' },
  {
    label: 'Stroke of pumping without waves',
    read: ({ pumping }) => pumping?.amplitude,
    quantity: 'length',
    why: 'not possible',
  },
  {
    label: 'Power of that pumping, W',
    read: ({ pumping }) => pumping?.power,
    quantity: 'ratio',
    decimals: 0,
    why: 'not possible',
  },
];

export function glideReading({ leastSlope }: WaveStudy, units: UnitSystem): string | null {
  if (!leastSlope) return null;
  return `The least slope that carries the glide is ${formatWithUnit(leastSlope.slope, 'angle', units, { decimals: 1 })}, at ${formatWithUnit(leastSlope.speed, 'speed', units)}.`;
}

export function rideReading({ ride }: WaveStudy, units: UnitSystem): string {
  if (!ride) return 'On this course the foil does not keep pace with these waves at a speed it can run.';
  const pace = `Keeping pace with these waves, ${formatWithUnit(ride.speed, 'speed', units)}, their steepest face of ${formatWithUnit(ride.slope, 'angle', units, { decimals: 1 })} pulls with ${formatWithUnit(ride.pull, 'force', units)} against ${formatWithUnit(ride.drag, 'force', units)} of drag`;
  return ride.missingPower <= 0
    ? `${pace}: it carries the glide.`
    : `${pace}: pumping has to find ${writeFixed(ride.missingPower, 0)} W.`;
}

export function pumpingReading({ pumping, pumpSpeed }: WaveStudy, units: UnitSystem): string {
  const speed = formatWithUnit(pumpSpeed, 'speed', units);
  if (!pumping)
    return `No stroke below half a metre keeps it running at ${speed} without waves at this rate.`;
  return `Without waves, pumping at ${writeFixed(pumping.frequency, 1)} a second keeps it running at ${speed} with strokes of ±${formatWithUnit(pumping.amplitude, 'length', units)}: ${writeFixed(pumping.power, 0)} W into the water, of which ${Math.round(100 * pumping.efficiency)} % drives.`;
}
