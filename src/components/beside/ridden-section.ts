import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { MARKS, type MarkName } from '../../session/kept-record.ts';
import { writeFixed, writePlain } from '../../session/number-format.ts';
import type { RiddenHold } from '../../session/ridden.ts';
import type { Studies } from '../../session/studies.ts';
import { formatValue } from '../../session/units.ts';
import { LEAST_JUDGED, LEAST_RANKED } from '../../solver/design/marks.ts';
import type { RankPair, RiddenOptions } from '../../solver/studies/ridden.ts';
import { answerStyles } from '../answer-styles.ts';
import { figureTable, tableStyles } from '../figure-table.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';
import { studyWait } from '../study-wait.ts';
import { COLUMNS, MARK_NAMES } from './columns.ts';
import type { Entry } from './entries.ts';
import { bandReading, holdRanks, holdScale, scaleStyles } from './hold-scale.ts';

const RANKED = COLUMNS.filter(({ isRanked }) => isRanked);

/** The rider's marks against the figures: how they rank together, over how many designs, and where good hold begins. */
@customElement('ridden-section')
export class RiddenSection extends LitElement {
  static override styles = [
    answerStyles,
    studyStyles,
    tableStyles,
    scaleStyles,
    css`
      .table {
        max-width: 52rem;
      }
    `,
  ];

  /** The kept designs; those without marks are passed over. */
  @property({ attribute: false }) entries: readonly Entry[] = [];
  @property({ attribute: false }) hold: RiddenHold = { points: [], band: null };
  /** Hold index of the open design, and of the ghost. */
  @property({ attribute: false }) now: number | null = null;
  @property({ attribute: false }) ghost: number | null = null;
  @property({ attribute: false }) studies: Studies | null = null;

  readonly #ranks = new StudyController(this, 'ridden', () => {
    const marked = this.#marked();
    if (marked.length < LEAST_RANKED) return null;
    return { studies: this.studies, design: marked[0]!.design, options: this.#options(marked) };
  });

  protected override render() {
    const marked = this.#marked();
    if (marked.length === 0)
      return html`<p class="note">
        No kept design has marks yet. Give each one you have ridden marks from 1 to 5; with three or more of them the figures are
        ranked against your marks.
      </p>`;
    const reading = bandReading(this.hold);
    return html`${reading ? html`<p class="say">${reading}</p>` : nothing}
      ${holdScale(this.hold, this.now, this.ghost)}
      ${this.hold.points.length >= LEAST_RANKED ? holdRanks(this.hold) : nothing}
      ${
        marked.length < LEAST_RANKED
          ? html`<p class="note">${LEAST_RANKED} or more designs with marks are needed to rank figures against them.</p>`
          : this.#ranksFound(marked)
      }`;
  }

  #ranksFound(marked: readonly Entry[]) {
    const { result } = this.#ranks;
    if (!result || result[0]?.length !== this.#names(marked).length)
      return studyWait(this.#ranks, 'Ranking figures against marks');
    const names = this.#names(marked);
    const judged = result.flat().filter(({ probability }) => probability !== null).length;
    return html`${figureTable(
      'Rank correlation of figures with marks',
      ['', ...names.map((name) => MARK_NAMES[name].toLowerCase())],
      RANKED.map(({ name }, k) => ({ cells: [name, ...result[k]!.map(writePair)] })),
    )}
      <p class="note">
        Spearman’s rank correlation, equal values sharing their mean rank: 1 where the figure rises with every mark, −1 where it
        falls, 0 where they have nothing to do with each other; n is the number of designs.
        ${
          judged === 0
            ? `With fewer than ${LEAST_JUDGED} designs chance alone can do any of this: nothing is claimed of how sure it is.`
            : `p is the probability that chance alone does as much, by all orders of the marks up to nine designs, by 20 000 drawn ones beyond (a permutation test after E. J. G. Pitman, 1937). Of the ${judged} judged here about ${Math.max(1, Math.round(0.05 * judged))} would fall below ${writePlain(0.05)} by chance.`
        }
        One rider’s marks, each design at its own brief: a hint what to look at, no proof.
      </p>`;
  }

  #marked(): readonly Entry[] {
    return this.entries.filter(({ marks }) => Object.keys(marks).length > 0);
  }

  #names(marked: readonly Entry[]): readonly MarkName[] {
    return MARKS.filter((name) => marked.some(({ marks }) => marks[name] !== undefined));
  }

  #options(marked: readonly Entry[]): RiddenOptions {
    return {
      figures: RANKED.map(({ read }) => marked.map(({ report }) => report && read(report))),
      marks: this.#names(marked).map((name) => marked.map(({ marks }) => marks[name] ?? null)),
    };
  }
}

function writePair({ count, correlation, probability }: RankPair): string {
  if (correlation === null) return count < LEAST_RANKED ? `– (n ${count})` : `all alike (n ${count})`;
  const rho = formatValue(correlation, 'ratio', 'si', { decimals: 2, sign: true });
  if (probability === null) return `${rho} (n ${count})`;
  const p = probability < 0.001 ? `p < ${writePlain(0.001)}` : `p ${writeFixed(probability, 3)}`;
  return `${rho} (n ${count}, ${p})`;
}

declare global {
  interface HTMLElementTagNameMap {
    'ridden-section': RiddenSection;
  }
}
