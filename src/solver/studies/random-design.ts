/**
 * Designs scattered over what this trade builds: race to downwind, flat to strongly curved, small to large stabilizers.
 * The same row of random numbers gives the same design. Not every one fits its water: the caller checks.
 */
import type { Design, DroopLaw, Planform } from '../design/document.ts';

type Random = () => number;

const SECTIONS = ['0010', '2410', '2412', '3412', '4412', '4415'] as const;

export function randomDesign(random: Random): Design {
  const within = (low: number, high: number) => round(low + (high - low) * random(), 4);
  const pick = <T>(choices: readonly T[]): T => choices[Math.floor(random() * choices.length)]!;
  const length = within(0.55, 1.2);
  const aspectRatio = within(6, 14);
  const depth = random() < 0.15 ? null : within(0.35, 0.8);
  const cruise = within(5.5, 11);
  const strutLength = within(0.8, 1.05);
  const wing = planform(random, length, aspectRatio, pick(SECTIONS), within(0, 45));
  const stabilizerLength = within(0.3, 0.5) * (0.5 + 0.5 * length);
  const stabilizer = planform(random, stabilizerLength, within(5, 9), '0010', within(-30, 30));
  return {
    format: 'downcurve-design',
    version: 1,
    name: 'random',
    brief: {
      allUpMass: within(65, 115),
      upwardPull: random() < 0.5 ? 0 : within(0, 0.4),
      speeds: { takeOff: round(0.55 * cruise, 3), cruise, top: round(1.5 * cruise, 3) },
      water: { kind: pick(['sea', 'fresh'] as const), temperature: within(5, 25), clarity: 'coastal' },
      depth: depth === null ? null : Math.min(depth, strutLength),
      balance: { x: within(0, 0.2), height: within(1.7, 2.1) },
      driveHeight: null,
    },
    wing: { ...wing, incidence: within(0, 1.5) },
    stabilizer: {
      ...stabilizer,
      incidence: within(-2.5, 0),
      arm: within(0.45, 0.85),
      height: within(0, 0.04),
    },
    fuselage: { diameter: 0.022, nose: 0.15 },
    strut: { x: within(0, 0.15), length: strutLength, chord: within(0.1, 0.13), thickness: 0.014 },
  };
}

function planform(
  random: Random,
  length: number,
  aspectRatio: number,
  code: string,
  tipAngle: number,
): Planform {
  const within = (low: number, high: number) => round(low + (high - low) * random(), 4);
  const taper = within(0.25, 0.8);
  const root = round((2 * length) / (aspectRatio * (1 + taper)), 4);
  const laws: DroopLaw[] = [
    { kind: 'vee', tipAngle: round(tipAngle / 2, 3) },
    { kind: 'arc', tipAngle },
    { kind: 'late', tipAngle, from: within(0.2, 0.6), power: within(1, 2) },
  ];
  const outline = { kind: 'naca4', code } as const;
  return {
    length: { kind: random() < 0.5 ? 'unrolled' : 'tipToTip', value: round(length, 4) },
    chord: { kind: 'taper', root, tip: round(taper * root, 4) },
    sweep: { kind: 'straight', angle: within(0, 15) },
    droop: laws[Math.floor(random() * laws.length)]!,
    twist: { kind: 'linear', tip: within(-3, 0) },
    section: { root: outline, tip: outline },
    incidence: 0,
  };
}

function round(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
