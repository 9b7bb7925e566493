/**
 * Bands that no second solution of the program can tell: how far measured or closed values lie from what it computes, as
 * the accuracy page found it. Root mean squares of relative differences, misses included; `stated-bands.test.ts` works
 * them out anew from the rows of that page. Where nothing of the kind is published there is no band.
 */
export interface StatedBand {
  share: number; // of the figure, either way
  values: number; // how many it is taken from
  against: string;
}

export type StatedName =
  | 'sectionDrag'
  | 'greatestLift'
  | 'sectionLiftSlope'
  | 'sectionPressure'
  | 'turbulentFriction'
  | 'beams'
  | 'bodies';

export const STATED: Readonly<Record<StatedName, StatedBand>> = {
  sectionDrag: {
    share: 0.082,
    values: 17,
    against: 'measured drag of four-digit sections (NACA Report 824, NASA TM 4074, ARC R&M 3726)',
  },
  greatestLift: { share: 0.052, values: 11, against: 'measured greatest lift of sections' },
  sectionLiftSlope: { share: 0.046, values: 7, against: 'measured lift slopes of sections' },
  sectionPressure: { share: 0.057, values: 12, against: 'measured pressures on NACA 0012' },
  turbulentFriction: { share: 0.038, values: 12, against: 'lines of friction through measured plates' },
  beams: { share: 0.00082, values: 6, against: 'closed forms of beams and sections' },
  bodies: { share: 0.00039, values: 4, against: 'closed forms of volumes' },
};
