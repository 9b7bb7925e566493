/**
 * Polars that a design's strips are going to ask for, made ahead in slices, so that whoever solves it can hear of
 * something newer in between. What is made already costs nothing.
 */
import type { Design } from '../design/document.ts';
import { chordLaw } from '../design/laws.ts';
import { waterProperties } from '../design/water.ts';
import { turbulentLength } from '../forces/profile.ts';
import { sectionBlend } from '../section/blend.ts';
import { strutPolars } from './strut-polars.ts';
import type { Study } from './study.ts';

const PLACES = [0, 0.25, 0.5, 0.7, 0.85, 0.95, 0.99, 0.999]; // eta: chords fall fastest at the tip

/** `speeds` (m/s): those that lift and drag are asked for at. The strut's lift is asked for at the cruise speed alone. */
export function* prepareSections(design: Design, speeds: readonly number[]): Study<void> {
  const { kind, temperature, clarity } = design.brief.water;
  const { viscosity } = waterProperties(kind, temperature);
  for (const part of [design.wing, ...(design.stabilizer ? [design.stabilizer] : [])]) {
    const blend = sectionBlend(part.section.root, part.section.tip, clarity);
    const chord = chordLaw(part.chord);
    for (const speed of speeds)
      for (const eta of PLACES) yield* blend.prepare(eta, (speed * chord.at(eta)) / viscosity);
  }
  const { strut, brief } = design;
  const polars = strut && strutPolars(strut, clarity);
  if (!strut || !polars) return;
  const { eta, natural, turbulent } = polars;
  const perSpeed = strut.chord / viscosity;
  const depths = [brief.depth, ...Object.values(brief.depths ?? {})];
  const isStirred = depths.some((depth) => turbulentLength(strut, depth) > 0);
  for (const blend of isStirred ? [natural, turbulent] : [natural]) {
    for (const speed of speeds) yield* blend.prepareLevel(eta, perSpeed * speed);
    yield* blend.prepareSlope(eta, perSpeed * brief.speeds.cruise);
  }
}
