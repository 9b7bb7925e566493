/** The handles of the head-on view: the tip (droop and span), the shape of the curve, where a late droop begins. */
import { bentTo, droppedTo, mostDroop, shapeGrips } from '../session/droop-drag.ts';
import { withSpan } from '../session/outline-drag.ts';
import { isBent, surfaceFor, tipMeasureOf } from '../session/planform-edits.ts';
import { clamp, round, roundTo } from '../session/rounding.ts';
import type { Design, DroopLaw, Length, Planform } from '../solver/design/document.ts';
import { type Surface, surfaceOf } from '../solver/geometry/surface.ts';
import type { Change } from './events.ts';
import type { Drag, Handle, Move, Slide } from './handle-model.ts';
import { type HeadOnLayout, placed } from './head-on-shapes.ts';
import { beginHandle, shapeHandle } from './shape-handles.ts';
import { spanSlide } from './span-slide.ts';

const PRESS_ROOM = 3; // px before a direction is read from the pointer
const SLACK = 18; // px across it that a straight drag may stray
const DROP_STEP = 0.0005; // m
const LENGTH_STEP = 0.001; // m
const AIR = 0.01; // m that the tip stays below the surface
const DEGREES = 180 / Math.PI;

const droopChange = (value: DroopLaw): Change => ({ path: 'wing.droop', value });
const lengthChange = (value: Length): Change => ({ path: 'wing.length', value });

export function headOnHandles(design: Design, layout: HeadOnLayout): Handle[] {
  const surface = surfaceFor(design.wing);
  if (!surface) return [];
  const shapes = shapeGrips(design.wing).map((grip) => shapeHandle(design.wing, surface, grip, layout));
  const begin = design.wing.droop.kind === 'late' ? [beginHandle(design.wing, surface, layout)] : [];
  return [...begin, ...shapes, tipHandle(design, surface, layout)];
}

function tipHandle(design: Design, surface: Surface, layout: HeadOnLayout): Handle {
  const { wing, brief } = design;
  const depth = brief.depths?.cruise ?? brief.depth;
  return {
    id: 'tip',
    ...placed(surface, 1, layout),
    slides: [droopSlide(wing, surface), spanSlide(wing)],
    grab: () => tipDrag(wing, surface, depth, layout.scale),
  };
}

/**
 * The tip follows the pointer up and down by bending and sideways by length. The direction of the first few pixels
 * leads; the other one joins in only when the pointer strays from the way the tip takes by itself.
 */
function tipDrag(wing: Planform, start: Surface, depth: number | null, scale: number) {
  let lead: 'droop' | 'span' | null = null;
  const least = depth === null ? Number.NEGATIVE_INFINITY : AIR - depth;
  const bend = (planform: Planform, drop: number) =>
    droppedTo(planform, Math.max(least, roundTo(drop, DROP_STEP)));
  const stretch = (planform: Planform, span: number): Length => {
    const length = withSpan(planform, span);
    return { ...length, value: roundTo(length.value, LENGTH_STEP) };
  };
  return ({ x, y }: Move): Drag | null => {
    if (!lead && Math.hypot(x, y) < PRESS_ROOM) return null;
    lead ??= Math.abs(y) >= Math.abs(x) ? 'droop' : 'span';
    if (lead === 'droop') {
      const droop = bend(wing, start.tipDrop + y / scale);
      const bent = surfaceOf({ ...wing, droop });
      const stray = beyond(x, (bent.halfSpan - start.halfSpan) * scale);
      const length = stray ? stretch({ ...wing, droop }, bent.span + (2 * stray) / scale) : wing.length;
      return { changes: [droopChange(droop), lengthChange(length)], label: 'tip droop' };
    }
    const length = stretch(wing, start.span + (2 * x) / scale);
    const stretched = surfaceOf({ ...wing, length });
    const stray = beyond(y, (stretched.tipDrop - start.tipDrop) * scale);
    const droop = stray ? bend({ ...wing, length }, stretched.tipDrop + stray / scale) : wing.droop;
    return { changes: [lengthChange(length), droopChange(droop)], label: 'wing span' };
  };
}

/** How far a pointer has strayed from anywhere between where it began and where the tip went by itself, px. */
function beyond(pointer: number, natural: number): number {
  return pointer - clamp(pointer, Math.min(0, natural) - SLACK, Math.max(0, natural) + SLACK);
}

function droopSlide(wing: Planform, surface: Surface): Slide {
  const law = wing.droop;
  const common = { name: 'Wing tip droop', toward: 'down', label: 'tip droop' } as const;
  if (isBent(law) && tipMeasureOf(law) === 'tipDrop') {
    const most = round(surface.halfLength, 3);
    const changes = (drop: number) => [droopChange(droppedTo(wing, drop))];
    return { ...common, quantity: 'length', value: surface.tipDrop, min: -most, max: most, changes };
  }
  const most = mostDroop(wing);
  const value = isBent(law) ? (law.tipAngle ?? 0) : round(surface.amplitude * DEGREES, 4);
  const changes = (angle: number) => [droopChange(bentTo(wing, angle))];
  return { ...common, quantity: 'angle', value, min: -most, max: most, changes };
}
