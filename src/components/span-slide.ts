import { LENGTHS } from '../session/outline-drag.ts';
import type { Planform } from '../solver/design/document.ts';
import type { Slide } from './handle-model.ts';

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
