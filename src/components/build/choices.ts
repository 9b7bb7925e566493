/** What is chosen for the files of a build: asked of the workshop, no part of the design. */
import { html } from 'lit';
import type { Order } from '../../workshop/order.ts';
import { take, toPart } from '../asked.ts';
import '../choice-field.ts';

export type FileChoices = Pick<Order, 'paper' | 'side' | 'draw' | 'fliesAsDrawn'>;

export const USUAL_CHOICES: FileChoices = { paper: 'a4', side: 'whole', draw: 'fitted', fliesAsDrawn: false };

type Options = ReadonlyArray<{ value: string; label: string }>;

const SHAPES: Options = [
  { value: 'drawn', label: 'as drawn' },
  { value: 'built', label: 'to fly as drawn' },
];
const PAPERS: Options = [
  { value: 'a4', label: 'A4' },
  { value: 'a3', label: 'A3' },
  { value: 'letter', label: 'Letter' },
];
const SIDES: Options = [
  { value: 'whole', label: 'whole' },
  { value: 'halves', label: 'both halves' },
  { value: 'starboard', label: 'starboard half' },
  { value: 'port', label: 'port half' },
];
const DRAWS: Options = [
  { value: 'fitted', label: 'flat' },
  { value: 'upright', label: 'level' },
  { value: 'edges', label: 'along the edges' },
];

export function choiceFields(choices: FileChoices, choose: (choices: FileChoices) => void) {
  const field = (
    label: string,
    hint: string,
    options: Options,
    value: string,
    change: (value: string) => Partial<FileChoices>,
  ) =>
    html`<choice-field
      .label=${label}
      .hint=${hint}
      .choices=${options}
      .value=${value}
      .toChanges=${toPart}
      @design-edit=${take((chosen) => choose({ ...choices, ...change(chosen as string) }))}
    ></choice-field>`;
  return html`<div class="settings">
    ${field(
      'Shape',
      'to fly as drawn: bent back by what its load at cruise bends it',
      SHAPES,
      choices.fliesAsDrawn ? 'built' : 'drawn',
      (value) => ({ fliesAsDrawn: value === 'built' }),
    )}
    ${field('Paper', 'of templates and sheet', PAPERS, choices.paper, (value) => ({
      paper: value as FileChoices['paper'],
    }))}
    ${field('Solids', 'of wing and stabilizer', SIDES, choices.side, (value) => ({
      side: value as FileChoices['side'],
    }))}
    ${field(
      'Moulds parted',
      'flat: drawn square to it; level: straight up',
      DRAWS,
      choices.draw,
      (value) => ({
        draw: value as FileChoices['draw'],
      }),
    )}
  </div>`;
}
