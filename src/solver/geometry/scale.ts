/** A planform drawn larger or smaller in every length: same angles, same sections, area by the square of the factor. */
import type { ChordLaw, DroopLaw, Pair, Planform, SweepLaw } from '../design/document.ts';

export function scaledPlanform<P extends Planform>(planform: P, factor: number): P {
  return {
    ...planform,
    length: { ...planform.length, value: planform.length.value * factor },
    chord: scaledChord(planform.chord, factor),
    sweep: scaledSweep(planform.sweep, factor),
    droop: scaledDroop(planform.droop, factor),
  };
}

/** The chords alone, so that span and droop stay and the area goes with the factor. */
export function scaledChord(law: ChordLaw, factor: number): ChordLaw {
  switch (law.kind) {
    case 'taper':
      return { ...law, root: law.root * factor, tip: law.tip * factor };
    case 'elliptic':
    case 'superelliptic':
      return { ...law, root: law.root * factor };
    case 'points':
      return { ...law, at: scaledPoints(law.at, factor) };
    case 'formula':
      return { ...law, expression: `${factor} * (${law.expression})` };
  }
}

function scaledSweep(law: SweepLaw, factor: number): SweepLaw {
  switch (law.kind) {
    case 'straight':
      return law;
    case 'rake':
      return { ...law, tip: law.tip * factor };
    case 'points':
      return { ...law, at: scaledPoints(law.at, factor) };
    case 'formula':
      return { ...law, expression: `${factor} * (${law.expression})` };
  }
}

function scaledDroop(law: DroopLaw, factor: number): DroopLaw {
  return 'tipDrop' in law && law.tipDrop !== undefined ? { ...law, tipDrop: law.tipDrop * factor } : law;
}

function scaledPoints(at: readonly Pair[], factor: number): Pair[] {
  return at.map(([eta, value]): Pair => [eta, value * factor]);
}
