/** What faults and finishes cost, in words and tables: newtons and per cent against a perfect surface. */
import type { TemplateResult } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { formatValue, formatWithUnit, type UnitSystem, unitOf } from '../../session/units.ts';
import type { FaultDrag } from '../../solver/studies/defect-drag.ts';
import type { FaultName, FaultRow, FaultStudy } from '../../solver/studies/fault-study.ts';
import type { FinishDrag, FinishStudy } from '../../solver/studies/finish-study.ts';
import { tableWithGhost } from '../figure-table.ts';
import { type Cell, figureCell, quantityCell } from '../table-cells.ts';
import { fine, fineCell } from './heights.ts';

const newtons = (value: number, units: UnitSystem) =>
  value < 0.005 ? '0' : formatValue(value, 'force', units, { decimals: value < 10 ? 2 : 1 });
const percent = (share: number) =>
  share < 0.00005 ? '0 %' : `${writeFixed(100 * share, share < 0.0095 ? 2 : 1)} %`;

/** "0.15 N, 0.18 %"; a range where no limit is published. */
export function rangeWords(drag: FaultDrag | null, total: number | null, units: UnitSystem): string {
  if (!drag) return 'not known';
  const unit = unitOf('force', units);
  const { low, high } = drag;
  if (high < 0.005) return 'nothing';
  const span =
    high - low > 0.005 ? `${newtons(low, units)} to ${newtons(high, units)}` : newtons(high, units);
  const share = total ? `, ${high - low > 0.005 ? 'up to ' : ''}${percent(high / total)}` : '';
  return `${span} ${unit}${share}`;
}

const LAYERS: Record<FaultDrag['layer'], string> = {
  turbulent: 'turbulent already',
  calm: 'takes no notice',
  tripped: 'is tripped',
  doubtful: 'may be tripped',
};

/** What the layer does at cruise and at top speed, said once where both agree. */
export function layerWords({ cruise, top }: FaultRow['drag']): string {
  const say = (drag: FaultDrag | null) => (drag ? LAYERS[drag.layer] : 'not known');
  const [slow, fast] = [say(cruise), say(top)];
  return slow === fast ? slow : `${slow}; at top speed ${fast}`;
}

/** Roughness all over rubs where the layer is turbulent, whether or not it trips the rest. */
function textureWords({ drag }: FaultRow): string {
  const isTripped = drag.cruise?.layer === 'tripped' || drag.top?.layer === 'tripped';
  return isTripped ? 'is tripped, and rubs' : 'rubs where turbulent';
}

const FAULTS: Record<FaultName, string> = {
  pinhole: 'pinhole',
  filler: 'proud filler spot',
  step: 'decal edge or paint step',
  wave: 'wave across',
  scratchAlong: 'scratch along the flow',
  scratchAcross: 'scratch across the flow',
  texture: 'texture all over the part',
  film: 'film of slime all over the part',
};

function sizeWords({ name, height, width, length }: FaultRow, units: UnitSystem): string {
  const size = (value: number) =>
    formatWithUnit(value, 'length', units, units === 'workshop' ? { decimals: value < 0.002 ? 1 : 0 } : {});
  const depth = name === 'pinhole' || name.startsWith('scratch') ? 'deep' : 'high';
  const parts = [`${fine(height, units)} ${depth}`];
  if (length !== null) parts.push(name === 'wave' ? `${size(length)} long` : `${size(length)} wide`);
  if (width !== null)
    parts.push(
      name === 'scratchAlong' || name === 'pinhole' || name === 'filler'
        ? `${size(width)} wide`
        : `over ${size(width)} of span`,
    );
  return parts.join(', ');
}

/** The same faults on the ghost; a cost that is a range has no difference. */
export function faultTable(own: FaultStudy, ghost: FaultStudy | null, units: UnitSystem): TemplateResult {
  return tableWithGhost(
    'Common faults at this place, and what each costs',
    own,
    ghost,
    ({ faults, total }) => ({
      head: ['fault', 'size', 'noticed from', 'the layer', 'at cruise', 'at top speed'],
      rows: faults.map((row) => ({
        cells: [
          FAULTS[row.name],
          sizeWords(row, units),
          fineCell(row.drag.cruise?.critical ?? null, units),
          row.width === null ? textureWords(row) : layerWords(row.drag),
          faultCell(row.drag.cruise, total.cruise, units),
          faultCell(row.drag.top, total.top, units),
        ],
      })),
    }),
  );
}

function faultCell(drag: FaultDrag | null, total: number | null, units: UnitSystem): Cell {
  const words = rangeWords(drag, total, units);
  if (!drag || drag.high - drag.low > 0.005) return words;
  return costCell(drag.high, words, units);
}

/** What something costs, in words; the difference in newtons. */
const costCell = (drag: number, words: string, units: UnitSystem): Cell =>
  figureCell(drag, (value, isDifference) =>
    isDifference ? formatWithUnit(value, 'force', units, { decimals: 2, sign: true }) : words,
  );

export function finishReading({ chosen }: FinishStudy, units: UnitSystem): string | null {
  if (!chosen) return null;
  const say = (drag: FinishDrag | null) =>
    drag === null
      ? 'cannot be told'
      : drag.extra < 0.005
        ? 'costs nothing'
        : `costs ${newtons(drag.extra, units)} ${unitOf('force', units)}, ${percent(drag.share)},`;
  return `The chosen finish, ${fine(chosen.height, units)} high, ${say(chosen.cruise)} at cruise and ${say(chosen.top).replace(/,$/, '')} at top speed, against a perfect surface.`;
}

export function finishTable(own: FinishStudy, ghost: FinishStudy | null, units: UnitSystem): TemplateResult {
  const unit = unitOf('force', units);
  const say = (drag: FinishDrag | null) => {
    if (!drag) return 'not known';
    const words =
      drag.extra < 0.005 ? 'nothing' : `${newtons(drag.extra, units)} ${unit}, ${percent(drag.share)}`;
    return costCell(drag.extra, words, units);
  };
  const trips = (a: FinishDrag | null, b: FinishDrag | null) =>
    a?.isTripping ? 'at cruise' : b?.isTripping ? 'at top speed' : 'no';
  const decimals = units === 'imperial' ? 2 : 1;
  return tableWithGhost('Finish by finish', own, ghost, ({ rows, chosen }) => ({
    head: ['last abrasive', 'height left', 'trips the layer', 'at cruise', 'at top speed'],
    rows: (chosen ? [...rows, chosen] : rows).map((row) => ({
      key: row === chosen ? 'chosen' : row.name,
      cells: [
        row.name,
        quantityCell(row.height, 'fineLength', units, { decimals }),
        trips(row.cruise, row.top),
        say(row.cruise),
        say(row.top),
      ],
      isHere: row === chosen,
    })),
  }));
}
