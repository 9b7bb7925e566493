/** The handles on the wing's trailing edge: root chord, tip chord, points, fullness of the outline. */
import { withPoint } from '../session/droop-drag.ts';
import {
  FULLNESS,
  FULLNESS_AT,
  fullnessFor,
  LEAST_ROOT,
  MOST_CHORD,
  withRootChord,
  withTipChord,
} from '../session/outline-drag.ts';
import { round } from '../session/rounding.ts';
import type { ChordLaw, Planform } from '../solver/design/document.ts';
import type { Surface } from '../solver/geometry/surface.ts';
import type { Change } from './events.ts';
import { type Handle, linearGrab, type Slide } from './handle-model.ts';
import { type PlanLayout, placed } from './plan-shapes.ts';

const CHORD_STEP = 0.0005; // m
const CHORD_BEHIND = 0.75; // share of the chord behind the quarter-chord line

const chordChange = (value: ChordLaw | null): Change[] => (value ? [{ path: 'wing.chord', value }] : []);

const trailingEdge = (surface: Surface, eta: number): number =>
  surface.x(eta) + CHORD_BEHIND * surface.chord(eta);

export function chordHandles(wing: Planform, surface: Surface, layout: PlanLayout): Handle[] {
  const handles = [
    chordHandle('root', 'Wing root chord', 0, LEAST_ROOT, (chord) => withRootChord(wing, chord)),
  ];
  const law = wing.chord;
  if (law.kind === 'taper' || law.kind === 'points')
    handles.push(chordHandle('tip-chord', 'Wing tip chord', 1, 0, (chord) => withTipChord(wing, chord)));
  if (law.kind === 'points')
    law.at.slice(1, -1).forEach(([eta], k) => {
      const place = `${Math.round(100 * eta)} % of the half length`;
      handles.push(
        chordHandle(`chord-${k + 1}`, `Wing chord at ${place}`, eta, 0.001, (chord) => ({
          ...law,
          at: withPoint(law.at, k + 1, chord),
        })),
      );
    });
  if (law.kind === 'superelliptic') handles.push(fullnessHandle(law, surface, layout));
  return handles;

  /** The trailing edge moves three quarters of what the chord does. */
  function chordHandle(
    id: string,
    name: string,
    eta: number,
    min: number,
    law: (chord: number) => ChordLaw | null,
  ): Handle {
    const slide: Slide = {
      name,
      quantity: 'length',
      value: round(surface.chord(eta), 7),
      min,
      max: MOST_CHORD,
      toward: 'down',
      label: name.toLowerCase(),
      changes: (chord) => chordChange(law(chord)),
    };
    const at = placed(layout, surface.point(eta).y, trailingEdge(surface, eta));
    return {
      id,
      ...at,
      slides: [slide],
      grab: linearGrab(slide, 1 / (CHORD_BEHIND * layout.scale), CHORD_STEP),
    };
  }
}

function fullnessHandle(
  law: Extract<ChordLaw, { kind: 'superelliptic' }>,
  surface: Surface,
  layout: PlanLayout,
): Handle {
  const label = 'wing outline';
  const chord = surface.chord(FULLNESS_AT);
  return {
    id: 'fullness',
    ...placed(layout, surface.point(FULLNESS_AT).y, trailingEdge(surface, FULLNESS_AT)),
    slides: [
      {
        name: 'Fullness of the outline',
        quantity: 'ratio',
        value: law.n,
        ...FULLNESS,
        toward: 'down',
        label,
        meaning: '2 is an ellipse, more is fuller',
        changes: (n) => chordChange({ ...law, n }),
      },
    ],
    grab:
      () =>
      ({ y }) => ({
        changes: chordChange({ ...law, n: fullnessFor(law, chord + y / (CHORD_BEHIND * layout.scale)) }),
        label,
      }),
  };
}
