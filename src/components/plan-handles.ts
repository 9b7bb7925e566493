/** The handles of the plan view: chords, sweep, span, and where the stabilizer stands. */

import { stabilizerSurface } from '../session/foil-surfaces.ts';
import { rakedAngleFor, tipSweepFor, tipSweepOf, withSpan, withTipSweep } from '../session/outline-drag.ts';
import { surfaceFor } from '../session/planform-edits.ts';
import { clamp, round, roundTo } from '../session/rounding.ts';
import type { Design, Planform, SweepLaw } from '../solver/design/document.ts';
import { RANGES } from '../solver/design/ranges.ts';
import type { Surface } from '../solver/geometry/surface.ts';
import { chordHandles } from './chord-handles.ts';
import type { Change } from './events.ts';
import { type Handle, linearGrab, type Move, type Slide } from './handle-model.ts';
import { type PlanLayout, placed } from './plan-shapes.ts';
import { spanSlide } from './span-slide.ts';

const LENGTH_STEP = 0.001; // m
const ANGLE_STEP = 0.1; // degrees
const BESIDE = 17; // px outside the tip, so that the grip does not hide it
const SWEEP_AT = 0.5; // share of the half length where a raked line is taken hold of
const ARM = RANGES['stabilizer.arm'];
const SWEEP = RANGES['*.sweep.angle'];

const sweepChange = (value: SweepLaw): Change[] => [{ path: 'wing.sweep', value }];

export function planHandles(design: Design, layout: PlanLayout): Handle[] {
  const { wing, stabilizer } = design;
  const surface = surfaceFor(wing);
  const tail = stabilizerSurface(design);
  return [
    ...(surface ? wingHandles(wing, surface, layout) : []),
    ...(stabilizer && tail ? stabilizerHandles(stabilizer, tail, layout) : []),
  ];
}

function wingHandles(wing: Planform, surface: Surface, layout: PlanLayout): Handle[] {
  return [
    ...chordHandles(wing, surface, layout),
    ...rakedSweepHandle(wing, surface, layout),
    tipHandle(wing, surface, layout),
  ];
}

/** Sideways the span, fore and aft the sweep or rake; the direction of the first pixels leads and stays alone. */
function tipHandle(wing: Planform, surface: Surface, layout: PlanLayout): Handle {
  const { scale } = layout;
  const span = spanSlide(wing);
  const sweep = tipSweepSlide(wing);
  const reach = surface.x(1) - surface.x(0);
  const step = sweep?.quantity === 'angle' ? ANGLE_STEP : LENGTH_STEP;
  const stretched = (x: number): Change[] => {
    const length = withSpan(wing, surface.span + (2 * x) / scale);
    return [{ path: 'wing.length', value: { ...length, value: roundTo(length.value, LENGTH_STEP) } }];
  };
  const grab = () => {
    let lead: 'span' | 'sweep' | null = null;
    return ({ x, y }: Move) => {
      if (!lead && Math.hypot(x, y) < 3) return null;
      lead ??= sweep && Math.abs(y) > Math.abs(x) ? 'sweep' : 'span';
      if (lead === 'span' || !sweep) return { changes: stretched(x), label: span.label };
      const value = roundTo(tipSweepFor(wing, reach + y / scale), step);
      return { changes: sweep.changes(value), label: sweep.label };
    };
  };
  const at = placed(layout, surface.halfSpan, surface.x(1), BESIDE);
  return { id: 'tip', ...at, slides: sweep ? [span, sweep] : [span], grab };
}

function tipSweepSlide(wing: Planform): Slide | null {
  const sweep = tipSweepOf(wing);
  if (!sweep) return null;
  const { name, quantity, value, min, max } = sweep;
  return {
    name: name === 'sweep' ? 'Wing sweep' : 'Wing tip rake',
    quantity,
    value,
    min: round(min, 3),
    max: round(max, 3),
    toward: 'down',
    label: `wing ${name}`,
    changes: (wanted) => sweepChange(withTipSweep(wing, wanted)),
  };
}

/** A raked line also has an angle: taken hold of at half the half length, on the leading edge. */
function rakedSweepHandle(wing: Planform, surface: Surface, layout: PlanLayout): Handle[] {
  const law = wing.sweep;
  if (law.kind !== 'rake') return [];
  const label = 'wing sweep';
  const reach = surface.x(SWEEP_AT) - surface.x(0);
  const leading = surface.x(SWEEP_AT) - 0.25 * surface.chord(SWEEP_AT);
  return [
    {
      id: 'sweep',
      ...placed(layout, surface.point(SWEEP_AT).y, leading),
      slides: [
        {
          name: 'Wing sweep',
          quantity: 'angle',
          value: law.angle,
          min: SWEEP.min,
          max: SWEEP.max,
          toward: 'down',
          label,
          changes: (angle) => sweepChange({ ...law, angle }),
        },
      ],
      grab:
        () =>
        ({ y }) => {
          const angle = rakedAngleFor(wing, SWEEP_AT, reach + y / layout.scale) ?? law.angle;
          return { changes: sweepChange({ ...law, angle: roundTo(angle, ANGLE_STEP) }), label };
        },
    },
  ];
}

function stabilizerHandles(
  stabilizer: NonNullable<Design['stabilizer']>,
  surface: Surface,
  layout: PlanLayout,
): Handle[] {
  const arm: Slide = {
    name: 'Stabilizer arm',
    quantity: 'length',
    value: stabilizer.arm,
    min: ARM.min,
    max: ARM.max,
    step: 0.005,
    toward: 'down',
    label: 'stabilizer arm',
    changes: (value) => [{ path: 'stabilizer.arm', value }],
  };
  const span = spanSlide(stabilizer, 'stabilizer', 'Stabilizer');
  const stretch = () => (move: Move) => {
    const length = withSpan(stabilizer, surface.span + (2 * move.x) / layout.scale);
    const value = clamp(roundTo(length.value, LENGTH_STEP), span.min, span.max);
    return { changes: span.changes(value), label: span.label };
  };
  return [
    {
      id: 'arm',
      ...placed(layout, 0, stabilizer.arm),
      slides: [arm],
      grab: linearGrab(arm, 1 / layout.scale, LENGTH_STEP),
    },
    {
      id: 'stabilizer-tip',
      ...placed(layout, surface.halfSpan, surface.x(1), BESIDE),
      slides: [span],
      grab: stretch,
    },
  ];
}
