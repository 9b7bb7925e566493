/** The hold index as a scale: what was ridden, with its mark; where the good marks begin; where the open design stands. */
import { css, html, nothing, svg } from 'lit';
import { writePlain } from '../../session/number-format.ts';
import type { RiddenHold } from '../../session/ridden.ts';
import { formatValue } from '../../session/units.ts';
import { LEAST_JUDGED } from '../../solver/design/marks.ts';
import { figureTable } from '../figure-table.ts';

const WIDTH = 560;
const HEIGHT = 84;
const EDGE = 24;
const LINE = 54;
const CLOSE = 12; // px at which two marks would run into one another

export const scaleStyles = css`
  .scale {
    display: block;
    width: 100%;
    max-width: 42rem;
    height: auto;
  }
  .scale text {
    fill: var(--soft);
    font-size: 12px;
    font-variant-numeric: tabular-nums;
  }
  .scale .mark {
    fill: var(--ink);
    font-weight: 650;
  }
  .scale .axis {
    stroke: var(--edge);
  }
  .scale .ridden {
    fill: var(--carry);
    stroke: var(--paper);
  }
  .scale .begins {
    fill: var(--carry);
    opacity: 0.25;
  }
  .scale .now {
    stroke: var(--ink);
    stroke-width: 2;
  }
  .scale .behind {
    stroke: var(--ghost);
    stroke-width: 2;
    stroke-dasharray: 4 3;
  }
`;

export const writeIndex = (value: number): string => formatValue(value, 'ratio', 'si', { decimals: 2 });

/** What the marks for hold say of the index, in a sentence. */
export function bandReading({ points, band }: RiddenHold): string {
  if (points.length === 0) return '';
  if (points.length < LEAST_JUDGED)
    return `${points.length} ridden ${points.length === 1 ? 'design has' : 'designs have'} a mark for hold: too few to say where good marks begin (${LEAST_JUDGED} or more).`;
  if (!band) return `Over ${points.length} ridden designs good marks for hold do not go with a higher index.`;
  const against =
    band.against === 0
      ? 'none stands against it'
      : `${band.against} ${band.against === 1 ? 'stands' : 'stand'} against it`;
  return `Over ${band.count} ridden designs the good marks for hold, 4 and 5, begin between an index of ${writeIndex(band.low)} and ${writeIndex(band.high)}; ${against}.`;
}

/** `now`: the open design's index; `ghost`: that of the one behind it. */
export function holdScale(ridden: RiddenHold, now: number | null, ghost: number | null) {
  const { points, band } = ridden;
  if (points.length === 0) return nothing;
  const all = [...points.map(({ index }) => index), ...[now, ghost].filter((value) => value !== null)];
  const [least, most] = [Math.min(0, ...all), Math.max(...all, 1e-9)];
  const at = (index: number) => EDGE + ((WIDTH - 2 * EDGE) * (index - least)) / (most - least);
  const tick = (index: number, kind: string, name: string) =>
    svg`<path class=${kind} d="M${at(index)} ${LINE - 26}V${LINE + 6}"></path><text x=${at(index)} y="12" text-anchor="middle">${name}</text>`;
  const said = points.map(({ name, index, mark }) => `${name} ${writeIndex(index)}, mark ${mark}`).join('; ');
  return html`<svg class="scale" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="Ridden designs on the hold index: ${said}.">
      ${band ? svg`<rect class="begins" x=${at(band.low)} y=${LINE - 22} width=${Math.max(2, at(band.high) - at(band.low))} height="28"></rect>` : nothing}
      <path class="axis" d="M${EDGE} ${LINE}H${WIDTH - EDGE}"></path>
      <text x=${EDGE} y=${LINE + 28} text-anchor="middle">${writeIndex(least)}</text>
      <text x=${WIDTH - EDGE} y=${LINE + 28} text-anchor="middle">${writeIndex(most)}</text>
      <text x=${WIDTH / 2} y=${LINE + 28} text-anchor="middle">hold index</text>
      ${ghost === null ? nothing : tick(ghost, 'behind', 'ghost')} ${now === null ? nothing : tick(now, 'now', 'now')}
      ${points.map(({ index, mark }, k) => {
        const isClose = k % 2 === 1 && at(index) - at(points[k - 1]!.index) < CLOSE;
        return svg`<circle class="ridden" cx=${at(index)} cy=${LINE} r="5"></circle><text class="mark" x=${at(index)} y=${isClose ? LINE + 20 : LINE - 10} text-anchor="middle">${mark}</text>`;
      })}
    </svg>
    <p class="note">Each dot is a ridden design with its mark for hold${band ? '; shaded: where the good marks begin' : ''}.</p>`;
}

/** Designs with their rank by index beside their rank by mark. */
export function holdRanks({ points }: RiddenHold) {
  const rank = (values: readonly number[], value: number) => {
    const above = values.filter((other) => other > value).length;
    const same = values.filter((other) => other === value).length;
    return writePlain(above + (same + 1) / 2);
  };
  const [indices, marks] = [points.map(({ index }) => index), points.map(({ mark }) => mark)];
  return figureTable(
    'Ranks by hold index and by the mark for hold, 1 the highest',
    ['Design', 'hold index', 'rank', 'mark', 'rank'],
    [...points].reverse().map(({ name, index, mark }) => ({
      cells: [name, writeIndex(index), rank(indices, index), String(mark), rank(marks, mark)],
    })),
  );
}
