/** What a foil is put together from, board end first; the compliance account has a line for each. */
export const PARTS = [
  'box',
  'strut',
  'strutJoint',
  'fuselage',
  'wingJoint',
  'wing',
  'stabilizerJoint',
  'stabilizer',
] as const;

export type Part = (typeof PARTS)[number];
