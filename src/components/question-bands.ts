/** Which figures of which question have a band, and in whose words. */
import type { Quantity } from '../session/units.ts';
import type { BandName } from '../solver/bands.ts';
import type { StatedName } from '../solver/design/stated-bands.ts';

/** A band solved for the design, or one that measured values state, with what else is to be said of it. */
export type Banded = { label: string } & (
  | { name: BandName; quantity: Quantity; also?: string }
  | { stated: StatedName | null; also: string }
);

export type BandedQuestion =
  | 'headline'
  | 'spread'
  | 'curve'
  | 'hold'
  | 'speed'
  | 'stiffness'
  | 'section'
  | 'skin'
  | 'propose'
  | 'build';

const solved = (label: string, name: BandName, quantity: Quantity): Banded => ({ label, name, quantity });
const stated = (label: string, name: StatedName | null, also: string): Banded => ({
  label,
  stated: name,
  also,
});

const INDUCED = solved('Induced drag', 'inducedDrag', 'force');
const HOLD = solved('Hold index', 'holdIndex', 'ratio');
const LOST = solved('Lost to the curve', 'lostFraction', 'share');
const DRAGS = [
  solved('Drag at cruise', 'cruiseDrag', 'force'),
  solved('Lift to drag at cruise', 'liftToDrag', 'ratio'),
  solved('Drag at top speed', 'topDrag', 'force'),
  solved('Lowest take-off speed', 'takeOffSpeed', 'speed'),
];
const LAY_UP =
  'inputs not known: what a hand lay-up really has shows on the bench, whose fit prints its own 95 % intervals; thickness goes in with its cube, so 1 % of it is 3 % of bending stiffness';
const TURNING =
  'no measured place of transition on a section is among the checks: read the range between the clean and the tripped section, shown beside it';

export const QUESTION_BANDS: Readonly<Record<BandedQuestion, readonly Banded[]>> = {
  headline: [
    LOST,
    INDUCED,
    HOLD,
    solved('Stabilizer volume', 'stabilizerVolume', 'ratio'),
    solved('Neutral point', 'neutralPoint', 'length'),
  ],
  spread: [
    INDUCED,
    solved('Span efficiency', 'spanEfficiency', 'ratio'),
    solved('Least drag for this curve, k', 'leastFactor', 'ratio'),
    solved('Least margin to usable lift', 'stallMargin', 'ratio'),
  ],
  curve: [
    LOST,
    solved('Extra drag against the unrolled twin', 'extraDrag', 'force'),
    HOLD,
    solved('Roll from yaw', 'rollFromYaw', 'ratio'),
    solved('Neutral droop', 'neutralDroop', 'angle'),
  ],
  hold: [
    HOLD,
    solved('Roll from yaw', 'rollFromYaw', 'ratio'),
    solved('Yaw from roll', 'yawFromRoll', 'ratio'),
    solved('Neutral point', 'neutralPoint', 'length'),
  ],
  speed: DRAGS,
  stiffness: [
    stated('Stiffness, deflection, frequencies', 'beams', LAY_UP),
    stated(
      'Strain and reserve',
      null,
      'method not known: no measured failure is among the checks; proof-load before riding',
    ),
  ],
  section: [
    stated('Drag, cd', 'sectionDrag', 'strips and inputs do not enter'),
    stated('Greatest lift, cl', 'greatestLift', 'strips and inputs do not enter'),
    stated('Lift slope', 'sectionLiftSlope', 'strips and inputs do not enter'),
    stated('Pressures', 'sectionPressure', 'strips and inputs do not enter'),
    stated('Transition', null, TURNING),
  ],
  skin: [
    stated('Friction, turbulent', 'turbulentFriction', 'laminar friction within 1 %'),
    stated('Drag of a section, smooth', 'sectionDrag', 'what a defect costs is a difference of two of them'),
    stated('Transition and what trips it', null, TURNING),
  ],
  propose: [...DRAGS, HOLD, solved('Static margin', 'staticMargin', 'ratio')],
  build: [
    stated(
      'Volumes and masses of parts',
      'bodies',
      'inputs not known: fibre share, glue and paint are assumptions; weigh the first part',
    ),
  ],
};

export const hasBands = (question: string): question is BandedQuestion => question in QUESTION_BANDS;
