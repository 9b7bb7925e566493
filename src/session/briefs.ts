/** Briefs to start from: invented riders, round but plausible numbers. The user's own are kept beside them. */
import type { Brief } from '../solver/design/document.ts';

export interface NamedBrief {
  name: string;
  brief: Brief;
}

const SEA: Brief['water'] = { kind: 'sea', temperature: 15, clarity: 'coastal' };

export const BRIEFS: readonly NamedBrief[] = [
  {
    name: 'kite race',
    brief: {
      allUpMass: 92,
      upwardPull: 0.25,
      speeds: { takeOff: 5.5, cruise: 11, top: 18 },
      water: SEA,
      depth: 0.5,
      depths: { takeOff: 0.35, cruise: 0.5, top: 0.55 },
      balance: { x: 0.14, height: 1.85 },
      driveHeight: 2.1,
      sidePull: { share: 0.35, height: 2.1 },
    },
  },
  {
    name: 'wing race',
    brief: {
      allUpMass: 95,
      upwardPull: 0.1,
      speeds: { takeOff: 4.9, cruise: 9.3, top: 14.4 },
      water: SEA,
      depth: 0.55,
      depths: { takeOff: 0.3, cruise: 0.55, top: 0.6 },
      balance: { x: 0.14, height: 1.9 },
      driveHeight: 2.2,
      sidePull: { share: 0.2, height: 2.2 },
    },
  },
  {
    name: 'downwind glide',
    brief: {
      allUpMass: 88,
      upwardPull: 0,
      speeds: { takeOff: 3.6, cruise: 6.2, top: 9.5 },
      water: SEA,
      depth: 0.45,
      balance: { x: 0.05, height: 1.85 },
      driveHeight: null,
    },
  },
  {
    name: 'first flights',
    brief: {
      allUpMass: 85,
      upwardPull: 0.05,
      speeds: { takeOff: 3.2, cruise: 5, top: 7.5 },
      water: { kind: 'fresh', temperature: 18, clarity: 'silty' },
      depth: 0.4,
      balance: { x: 0.1, height: 1.8 },
      driveHeight: 2,
    },
  },
];
