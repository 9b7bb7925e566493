/**
 * How a foil swings, and when its own speed would bend it away: first bending and torsion of strut and wing in water and
 * in air, how the flow moves them together or apart as speed grows, and the static divergence speed. Quasi-steady forces
 * (elastic.ts); added mass by strips (structure/masses.ts). Hz, m/s.
 *
 * No mark for flutter: formulas and tests for aircraft know wings far heavier than the air they move (T. Theodorsen,
 * NACA Report 496, 1935); foils are lighter than the water they move, where those fail (P. K. Besch, Y.-N. Liu, David
 * Taylor reports on strut flutter, 1970s, from memory).
 */
import type { Design } from '../design/document.ts';
import { lumpsOf, type MassSums, massSums } from '../structure/masses.ts';
import type { Part } from '../structure/parts.ts';
import type { Shape, Symmetry } from '../structure/shapes.ts';
import { massMatrix, swingsOf } from '../structure/vibration.ts';
import {
  type Divergence,
  FASTEST,
  firstOf,
  RunningSwings,
  type Spacing,
  type SwingSetting,
  settingOf,
} from './running-swings.ts';
import type { Study } from './study.ts';

export interface WaterAndAir {
  water: number | null; // Hz; null where there is no such swing
  air: number | null;
}

export interface BendingAndTwist {
  bending: WaterAndAir;
  twist: WaterAndAir;
}

export interface NamedSwing {
  symmetry: Symmetry;
  frequency: number; // Hz in water
  shares: Array<{ group: string; share: number }>; // of the strain energy, largest first, above a tenth
}

export interface FrequencyStudy {
  masses: MassSums; // kg
  wingMassRatio: number; // own mass over the water it moves
  strut: BendingAndTwist | null; // on its box, the foil at its end
  wing: BendingAndTwist; // held at its root
  whole: NamedSwing[]; // the slowest of each symmetry
  speeds: number[];
  spacing: { wing: Spacing; strut: Spacing | null };
  divergence: Divergence[];
  fastest: number; // m/s, end of the search
}

export interface FrequencyOptions {
  strips?: number;
}

const STRUT: ReadonlySet<Part> = new Set(['box', 'strut', 'strutJoint']);
const WING: ReadonlySet<Part> = new Set(['wing']);

export function* frequencyStudy(
  design: Design,
  { strips = 24 }: FrequencyOptions = {},
): Study<FrequencyStudy> {
  const setting = settingOf(design, { strips, stabilizerStrips: Math.round(strips / 2), rows: 1 });
  const still = new StillSwings(setting).still();
  yield 0.2;
  const running = new RunningSwings(setting);
  const { takeOff, top } = design.brief.speeds;
  const speeds = [0, ...Array.from({ length: 12 }, (_, k) => takeOff + ((1.5 * top - takeOff) * k) / 11)];
  const wing = running.spacing('symmetric', WING, speeds);
  yield 0.5;
  const strut = design.strut ? running.spacing('antisymmetric', STRUT, speeds) : null;
  yield 0.7;
  const from = Math.min(takeOff, 1);
  const divergence: Divergence[] = [];
  for (const [what, symmetry, parts] of [
    ['wing', 'symmetric', WING],
    ['pitching', 'symmetric', undefined],
    ['sideways', 'antisymmetric', undefined],
  ] as const) {
    divergence.push({ what, speed: running.divergence(symmetry, parts, from) });
    yield 0.7 + 0.1 * divergence.length;
  }
  return { ...still, speeds, spacing: { wing, strut }, divergence, fastest: FASTEST };
}

class StillSwings {
  constructor(private readonly setting: SwingSetting) {}

  still(): Pick<FrequencyStudy, 'masses' | 'wingMassRatio' | 'strut' | 'wing' | 'whole'> {
    const { skeleton, lumps, design, craft, shapes } = this.setting;
    const dry = lumpsOf(design, craft, skeleton, 0);
    const { symmetric: even, antisymmetric: odd } = shapes;
    const pair = (list: readonly Shape[], parts: ReadonlySet<Part>, bending: string): BendingAndTwist => {
      const own = list.filter(({ part }) => parts.has(part));
      const [wet, air] = [lumps, dry].map((each) => swingsOf(skeleton.frame, own, massMatrix(each, own)));
      const first = (isTwist: boolean): WaterAndAir => ({
        water: firstOf(wet!, isTwist, bending),
        air: firstOf(air!, isTwist, bending),
      });
      return { bending: first(false), twist: first(true) };
    };
    const wingLumps = lumps.filter(({ body }) => skeleton.wing.starboard.strips.includes(body));
    const half = massSums(wingLumps);
    return {
      masses: massSums(lumps),
      wingMassRatio: half.own / half.water,
      strut: design.strut ? pair(odd, STRUT, 'strut.flap') : null,
      wing: pair(even, WING, 'wing.flap'),
      whole: [...this.named('symmetric', even), ...this.named('antisymmetric', odd)],
    };
  }

  private named(symmetry: Symmetry, shapes: readonly Shape[]): NamedSwing[] {
    const { skeleton, lumps } = this.setting;
    const swings = swingsOf(skeleton.frame, shapes, massMatrix(lumps, shapes));
    return swings.slice(0, 4).map(({ frequency, energies }) => ({
      symmetry,
      frequency,
      shares: Object.entries(energies)
        .map(([group, share]) => ({ group, share }))
        .filter(({ share }) => share > 0.1)
        .sort((a, b) => b.share - a.share),
    }));
  }
}
