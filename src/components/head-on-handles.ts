/** The handles of the head-on view: the tip (droop and span), the shape of the curve, where a late droop begins. */
import {
  begunAt,
  bentTo,
  droppedTo,
  MOST_POWER,
  mostDroop,
  powerOf,
  type ShapeGrip,
  shapedTo,
  shapeGrips,
  withPoint,
  withPower,
} from '../session/droop-drag.ts';
import { LENGTHS, withSpan } from '../session/outline-drag.ts';
import { isBent, surfaceFor, tipMeasureOf } from '../session/planform-edits.ts';
import { clamp, round, roundTo } from '../session/rounding.ts';
import type { Design, DroopLaw, Length, Planform } from '../solver/design/document.ts';
import { RANGES } from '../solver/design/ranges.ts';
import { etaAtY, type Surface, surfaceOf } from '../solver/geometry/surface.ts';
import type { Drag, Handle, Move, Slide } from './drag-handle.ts';
import type { Change } from './events.ts';
import { type HeadOnLayout, xOf, yOf } from './head-on-shapes.ts';

const PRESS_ROOM = 3; // px before a direction is read from the pointer
const SLACK = 18; // px across it that a straight drag may stray
const DROP_STEP = 0.0005; // m
const LENGTH_STEP = 0.001; // m
const AIR = 0.01; // m that the tip stays below the surface
const DEGREES = 180 / Math.PI;
const KNEE = RANGES['*.droop.knee'];

const droopChange = (value: DroopLaw): Change => ({ path: 'wing.droop', value });
const lengthChange = (value: Length): Change => ({ path: 'wing.length', value });

export function headOnHandles(design: Design, layout: HeadOnLayout): Handle[] {
  const surface = surfaceFor(design.wing);
  if (!surface) return [];
  const shapes = shapeGrips(design.wing).map((grip) => shapeHandle(design.wing, surface, grip, layout));
  const begin = design.wing.droop.kind === 'late' ? [beginHandle(design.wing, surface, layout)] : [];
  return [...begin, ...shapes, tipHandle(design, surface, layout)];
}

function placed(surface: Surface, eta: number, layout: HeadOnLayout) {
  const { y, z } = surface.point(eta);
  return { x: xOf(layout, y), y: yOf(layout, z), mirrorAt: xOf(layout, -y) };
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
      const changes = [droopChange(droop)];
      if (stray) changes.push(lengthChange(stretch({ ...wing, droop }, bent.span + (2 * stray) / scale)));
      return { changes, label: 'tip droop' };
    }
    const length = stretch(wing, start.span + (2 * x) / scale);
    const stretched = surfaceOf({ ...wing, length });
    const stray = beyond(y, (stretched.tipDrop - start.tipDrop) * scale);
    const changes = [lengthChange(length)];
    if (stray) changes.push(droopChange(bend({ ...wing, length }, stretched.tipDrop + stray / scale)));
    return { changes, label: 'wing span' };
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

/** The length that the document gives, so that nudges stay on its round numbers. */
export function spanSlide(wing: Planform, path = 'wing', owner = 'Wing'): Slide {
  const { kind, value } = wing.length;
  return {
    name: `${owner} span, ${kind === 'unrolled' ? 'unrolled' : 'tip to tip'}`,
    quantity: 'length',
    value,
    min: LENGTHS.min,
    max: LENGTHS.max,
    toward: 'right',
    label: `${path} span`,
    changes: (length) => [{ path: `${path}.length.value`, value: length }],
  };
}

function shapeHandle(wing: Planform, surface: Surface, grip: ShapeGrip, layout: HeadOnLayout): Handle {
  const at = placed(surface, grip.eta, layout);
  const height = surface.point(grip.eta).z;
  const slides = shapeSlides(wing, surface, grip);
  const label = slides[0]!.label;
  const id = grip.kind === 'point' ? `shape-${grip.index}` : 'shape';
  const follow = ({ x, y }: Move): Drag => {
    const wanted = height - y / layout.scale;
    if (grip.kind !== 'knee' || wing.droop.kind !== 'gull')
      return { changes: [droopChange(shapedTo(wing, grip, wanted))], label };
    const eta = etaAtY(surface, surface.point(grip.eta).y + x / layout.scale);
    const knee = clamp(round(eta, 2), KNEE.min, KNEE.max);
    const moved = { ...wing, droop: { ...wing.droop, knee } };
    return { changes: [droopChange(shapedTo(moved, { kind: 'knee', eta: knee }, wanted))], label };
  };
  return { id, ...at, slides, grab: () => follow };
}

function shapeSlides(wing: Planform, surface: Surface, grip: ShapeGrip): Slide[] {
  const law = wing.droop;
  const most = mostDroop(wing);
  const angle = { quantity: 'angle', min: -most, max: most, label: 'droop shape' } as const;
  if (grip.kind === 'power')
    return [
      {
        name: 'Droop shape',
        quantity: 'ratio',
        value: powerOf(law),
        min: 0,
        max: MOST_POWER,
        step: 0.1,
        toward: surface.tipDrop > 0 ? 'up' : 'down',
        label: 'droop shape',
        meaning: { vee: 'straight', arc: 'an even arc' }[law.kind as string] ?? 'bends late',
        changes: (power) => [droopChange(withPower(wing, power))],
      },
    ];
  if (grip.kind === 'knee' && law.kind === 'gull')
    return [
      {
        ...angle,
        name: 'Gull rise at the root',
        value: law.rootAngle,
        toward: 'up',
        changes: (rootAngle) => [droopChange({ ...law, rootAngle })],
      },
      alongSlide('Gull knee', law.knee, [KNEE.min, KNEE.max], 'droop shape', (knee) => ({ ...law, knee })),
    ];
  if (grip.kind === 'point' && law.kind === 'points') {
    const place = `${Math.round(100 * grip.eta)} % of the half length`;
    return [
      {
        ...angle,
        name: `Droop at ${place}`,
        value: law.at[grip.index]![1],
        toward: 'down',
        label: `droop at ${place}`,
        changes: (value) => [droopChange({ ...law, at: withPoint(law.at, grip.index, value) })],
      },
    ];
  }
  return [
    {
      ...angle,
      name: 'Droop, bent from the middle',
      value: 0,
      toward: 'down',
      changes: (value) => [droopChange(bentTo(wing, value))],
    },
  ];
}

function beginHandle(wing: Planform, surface: Surface, layout: HeadOnLayout): Handle {
  const from = wing.droop.kind === 'late' ? wing.droop.from : 0;
  const start = surface.point(from).y;
  const label = 'where the droop begins';
  return {
    id: 'begin',
    ...placed(surface, from, layout),
    slides: [alongSlide('Droop begins at', from, [0, 0.95], label, (share) => begunAt(wing, share))],
    grab:
      () =>
      ({ x }) => {
        const eta = etaAtY(surface, start + x / layout.scale);
        return { changes: [droopChange(begunAt(wing, round(eta, 2)))], label };
      },
  };
}

/** A place along the half length. */
function alongSlide(
  name: string,
  value: number,
  [min, max]: readonly [number, number],
  label: string,
  law: (share: number) => DroopLaw,
): Slide {
  return {
    name: `${name}, share of the half length`,
    quantity: 'share',
    value,
    min,
    max,
    toward: 'right',
    label,
    changes: (share) => [droopChange(law(share))],
  };
}
