import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Studies } from '../../session/studies.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { BeachAnswer } from '../../solver/studies/beach.ts';
import { figureTable, tableStyles } from '../figure-table.ts';
import { StudyController } from '../study-controller.ts';
import { studyWait } from '../study-wait.ts';
import { type CardFigure, headlines, otherFigures, TABLE_HEAD, tableRow } from './beach-words.ts';
import { cardStyles } from './card-styles.ts';
import { markOf, marksExplained } from './marks.ts';
import { restStyles } from './rest-styles.ts';

/** Below the steps of a beach card: its other figures, how they come about, each step by itself for paper. */
@customElement('beach-rest')
export class BeachRest extends LitElement {
  static override styles = [tableStyles, cardStyles, restStyles];

  @property({ attribute: false }) design: Design | null = null;
  /** Nothing is shown, and no table asked for, before the card has figures. */
  @property({ attribute: false }) answer: BeachAnswer | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** Address of the workbench with this design. */
  @property() workbench = './';

  @state() private hasTable = false;

  readonly #table = new StudyController(this, 'beachTable', () =>
    this.answer ? { studies: this.studies, design: this.design, options: {} } : null,
  );

  protected override render() {
    const { design, answer } = this;
    if (!design || !answer) return nothing;
    const rest = otherFigures(answer, design, this.units);
    const all = [...headlines(answer, design, this.units), ...rest];
    return html`<h2>Also</h2>
      ${answer.set.problem ? html`<p class="trouble">At cruise: ${answer.set.problem}.</p>` : nothing}
      <dl class="rest">${rest.map((figure) => figureRow(figure))}</dl>
      <p class="still">${this.#still(answer)}</p>
      ${marksExplained('this setting')}
      <details>
        <summary>How the figures come about</summary>
        <dl class="how">${all.map(({ name, how }) => html`<dt>${name}</dt><dd>${how}</dd>`)}</dl>
      </details>
      <p class="paper">
        <button type="button" aria-expanded=${this.hasTable} @click=${this.#onTable}>Table of single steps</button>
        <button type="button" @click=${() => window.print()}>Print</button>
      </p>
      <div class="single" ?hidden=${!this.hasTable}>${this.#singleSteps(design)}</div>
      <p class="back"><a href=${this.workbench}>Open this design in the workbench</a></p>`;
  }

  #still({ breachHeel }: BeachAnswer) {
    const heel =
      breachHeel === null
        ? 'no heel brings a wing tip to the surface'
        : `a wing tip comes to the surface at ${formatWithUnit(breachHeel, 'angle', this.units, { decimals: 0 })} of heel`;
    return html`None of this moves the shape: at cruise depth ${heel}. ${markOf('solved')}`;
  }

  #singleSteps(design: Design) {
    const rows = this.#table.resultDesign === design ? this.#table.result : null;
    if (!rows?.[0]) return studyWait(this.#table, 'Single steps');
    const drawn = rows[0].figures;
    return figureTable(
      'Each step by itself. Several at once do not add up: use the steps above.',
      TABLE_HEAD,
      rows.map((row) => ({
        cells: tableRow(row, drawn, design, this.units),
        isHere: row.changes === null,
      })),
    );
  }

  readonly #onTable = (): void => {
    this.hasTable = !this.hasTable;
  };
}

function figureRow({ name, value, was, kind }: CardFigure) {
  return html`<div>
    <dt>${name}</dt>
    <dd><strong>${value}</strong> <span>${was}</span> ${markOf(kind)}</dd>
  </div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'beach-rest': BeachRest;
  }
}
