/** The handles on the curve between root and tip: its shape, and where a late droop begins. */
import {
  begunAt,
  bentTo,
  MOST_POWER,
  mostDroop,
  powerOf,
  type ShapeGrip,
  shapedTo,
  withPoint,
  withPower,
} from '../session/droop-drag.ts';
import { clamp, round } from '../session/rounding.ts';
import type { DroopLaw, Planform } from '../solver/design/document.ts';
import { RANGES } from '../solver/design/ranges.ts';
import { etaAtY, type Surface } from '../solver/geometry/surface.ts';
import type { Change } from './events.ts';
import type { Drag, Handle, Move, Slide } from './handle-model.ts';
import { type HeadOnLayout, placed } from './head-on-shapes.ts';

const KNEE = RANGES['*.droop.knee'];

const droopChange = (value: DroopLaw): Change => ({ path: 'wing.droop', value });

export function shapeHandle(wing: Planform, surface: Surface, grip: ShapeGrip, layout: HeadOnLayout): Handle {
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

export function beginHandle(wing: Planform, surface: Surface, layout: HeadOnLayout): Handle {
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
