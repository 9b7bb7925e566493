/** How the lines of the ledger between its headline figures are worked out; workings.ts has those. */
import { formatWithUnit } from '../session/units.ts';
import { coherent, type Given, type Working } from './working-parts.ts';

const METHOD = 'extended lifting line with the surface’s mirror image (theory: Ledger)';
const TRUST =
  'As its parts: linear and without friction, good to about 1 % for slender wings. Compares designs well.';

const force = (value: number, { units }: Given, sign = false) =>
  formatWithUnit(value, 'force', units, { sign });
const share = (value: number | null, { units }: Given) =>
  value === null ? 'none' : formatWithUnit(value, 'share', units, { decimals: 2 });

function parts(given: Given): Array<readonly [string, string]> {
  const { ledger } = given.report;
  return [
    ['Z₀, unrolled twin', force(ledger.flatLift, given)],
    ['A, met at a smaller angle', force(ledger.metAtSmallerAngle, given)],
    ['B, leaned away', force(ledger.leanedAway, given)],
    ['Z, the wing carries', force(ledger.verticalLift, given)],
  ];
}

export const unrolledTwin = (given: Given): Working => ({
  formula: 'Z₀ = Z + A + B',
  numbers: parts(given),
  source: `${METHOD}; the twin keeps chords, twist, sections and unrolled length, loses its droop and meets the stream at the same angle`,
  trust: TRUST,
});

export const wingCarries = (given: Given): Working => ({
  formula: 'Z = Z₀ − A − B',
  numbers: parts(given),
  source: `${METHOD}; the upward parts of the forces on the wing’s strips, added up. The stabilizer carries the rest of the rider`,
  trust: TRUST,
});

export const pushedSideways = (given: Given): Working => ({
  formula: 'P = P_s + P_p',
  numbers: [
    ['P, Σ |F_y| over the strips of the wing', force(given.report.ledger.pushedSideways, given)],
    ['P_s, of the starboard half', force(given.report.ledger.pushedSideways / 2, given)],
    ['P_p, of its mirror to port', force(given.report.ledger.pushedSideways / 2, given)],
  ],
  source: `${METHOD}; the sideways parts of the forces on strips that lean`,
  trust: `${TRUST} As a force on the foil it is nothing: port and starboard cancel.`,
});

export const deepWater = (given: Given): Working => {
  const { deepWater: deep, lostFraction } = given.report.ledger;
  return {
    formula: 'lost = (Z₀ − Z) / Z₀',
    numbers: [
      ['Z₀, unrolled twin without the surface', force(deep.flatLift, given)],
      ['Z, this wing without the surface', force(deep.verticalLift, given)],
      ['lost', share(deep.lostFraction, given)],
      ['at this depth', share(lostFraction, given)],
    ],
    source: 'extended lifting line without the mirror image (theory: Ledger)',
    trust: TRUST,
  };
};

export const givenBack = (given: Given): Working => {
  const { lostFraction, deepWater: deep } = given.report.ledger;
  return {
    formula: 'g = |D − L|',
    numbers: [
      ['D, lost in deep water', share(deep.lostFraction, given)],
      ['L, lost at this depth', share(lostFraction, given)],
      [
        'g',
        share(
          lostFraction === null || deep.lostFraction === null
            ? null
            : Math.abs(deep.lostFraction - lostFraction),
          given,
        ),
      ],
    ],
    source: `${METHOD}; drooped tips run deeper than the root, and the surface takes less from what runs deep`,
    trust: 'A small difference of two figures of the same kind: its sign and size, not its last digit.',
  };
};

export const shorterSpan = (given: Given): Working => {
  const { unrolled, sameSpan } = given.report.ledger.sameLift;
  return {
    formula: 'shorter span = E − F',
    numbers: [
      ['E, extra induced drag against the unrolled twin', force(unrolled.extraInducedDrag, given, true)],
      ['F, against the flat twin of the same span', force(sameSpan.extraInducedDrag, given, true)],
      ['shorter span', force(unrolled.extraInducedDrag - sameSpan.extraInducedDrag, given, true)],
    ],
    source: `${METHOD}; what the span that bending takes would cost a flat wing`,
    trust: 'A difference of solves of the same kind: better than either by itself. Friction is not in it.',
  };
};

export const balancePoint = ({ design, units }: Given): Working => ({
  formula: 'x_b = x',
  numbers: [
    ['x_b', coherent(design.brief.balance.x, 'length', units)],
    ['x, as the brief has it, in metres', formatWithUnit(design.brief.balance.x, 'length', 'si')],
  ],
  source: 'the Brief: where rider, board and foil together balance, aft of the wing root’s quarter chord',
  trust: 'As good as it was measured: it moves with the rider’s feet.',
});
