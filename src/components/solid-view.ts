import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { fileNameOf, saveFile } from '../session/files.ts';
import type { Ghost } from '../session/ghost.ts';
import type { Studies } from '../session/studies.ts';
import type { UnitSystem } from '../session/units.ts';
import type { Design } from '../solver/design/document.ts';
import type { Report } from '../solver/report.ts';
import type { TransitionMap } from '../solver/studies/transition-map.ts';
import { take, toPart } from './asked.ts';
import './choice-field.ts';
import { tableStyles } from './figure-table.ts';
import { panelStyles } from './panel-styles.ts';
import { recall, remember } from './preferences.ts';
import { NAMED_VIEWS, namedView } from './solid/camera.ts';
import * as key from './solid/legend.ts';
import { PAINTS, type PaintName, type SpreadPaint, spreadPaint, spreadWords } from './solid/paint.ts';
import { type LegendEntry, makePicture } from './solid/picture.ts';
import { type Colour, spreadPainter, transitionPainter } from './solid/skin-canvas.ts';
import './solid/solid-canvas.ts';
import type { SolidCanvas } from './solid/solid-canvas.ts';
import type { SkinPainter } from './solid/stage.ts';
import { seenWords, summary, viewTitle } from './solid/words.ts';
import { StudyController } from './study-controller.ts';
import { studyStyles } from './study-styles.ts';
import { studyWait } from './study-wait.ts';
import { visuallyHidden } from './visually-hidden.ts';

/**
 * The foil as a solid to turn: wing, stabilizer, fuselage, strut and water with their true sections, plain or painted with
 * what flows over them. Follows the design at once; paint follows with its figures. Changes nothing; saves its picture.
 */
@customElement('solid-view')
export class SolidView extends LitElement {
  static override styles = [
    studyStyles,
    panelStyles,
    tableStyles,
    key.legendStyles,
    visuallyHidden,
    css`
      .row {
        display: flex;
        flex-wrap: wrap;
        gap: 0.3rem 0.4rem;
        align-items: center;
        justify-content: space-between;
        margin: 0.35rem 0;
      }
      .views {
        justify-content: start;
      }
      .views [aria-pressed='true'] {
        background: var(--ink);
        border-color: var(--ink);
        color: var(--paper);
      }
      choice-field {
        --control-width: 12.5rem;
      }
      @media (forced-colors: active) {
        .views [aria-pressed='true'] {
          forced-color-adjust: none;
          background: Highlight;
          color: HighlightText;
        }
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) report: Report | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) ghost: Ghost | null = null;
  @property({ attribute: false }) studies: Studies | null = null;

  @state() private paint: PaintName = recall('solid', { isOpen: false, paint: 'plain' }).paint;
  @state() private isMissing = false;
  @state() private said = '';
  @query('solid-canvas') private readonly view!: SolidCanvas | null;

  #spread: SpreadPaint | null = null;
  #painter: ((colour: Colour) => SkinPainter) | null = null;
  #map: TransitionMap | null = null; // what the painter paints
  readonly #transition = new StudyController(this, 'transition', () =>
    this.paint === 'transition' && this.design
      ? { studies: this.studies, design: this.design, options: { speed: this.design.brief.speeds.cruise } }
      : null,
  );

  protected override willUpdate(changed: PropertyValues): void {
    const { report, paint, units } = this;
    const map = paint === 'transition' ? this.#transition.result : null;
    if (!['report', 'paint', 'units'].some((name) => changed.has(name)) && map === this.#map) return;
    this.#map = map;
    this.#spread =
      report && (paint === 'lift' || paint === 'coefficient') ? spreadPaint(report, paint, units) : null;
    if (map) this.#painter = transitionPainter(map);
    else if (this.#spread) this.#painter = spreadPainter(this.#spread);
    else this.#painter = null;
  }

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    if (this.isMissing)
      return html`<p class="trouble" role="status">
        This browser gives no WebGL here, which a view to turn needs: it is switched off, or the graphics do not bear it. The
        views from ahead, from above and from the side show the same foil.
      </p>`;
    const pose = this.view?.goal ?? null;
    const label = pose && summary(pose, design, this.report, this.#painted(), this.units);
    return html`<div class="row views" role="group" aria-label="Named views">
        ${NAMED_VIEWS.map(
          (view) =>
            html`<button
              type="button"
              aria-pressed=${pose !== null && namedView(pose) === view}
              @click=${() => this.view?.look(view)}
            >
              ${view.label}
            </button>`,
        )}
      </div>
      <solid-canvas
        .design=${design}
        .ghost=${this.ghost?.design ?? null}
        .painter=${this.#painter}
        .label=${label ?? 'The foil in three dimensions'}
        @eye-moved=${this.#onEyeMoved}
        @no-graphics=${this.#onMissing}
      ></solid-canvas>
      <div class="row">
        <choice-field
          label="Painted on it"
          .value=${this.paint}
          .choices=${PAINTS}
          .toChanges=${toPart}
          @design-edit=${take((paint) => this.#choose(paint as PaintName))}
        ></choice-field>
        <button type="button" @click=${this.#save}>Save picture, PNG</button>
      </div>
      ${this.#key()}
      <p class="visually-hidden" role="status">${this.said}</p>`;
  }

  /** Legend, sentence and table of what is painted. */
  #key() {
    const { report, units } = this;
    if (this.paint === 'plain') return nothing;
    if (this.paint === 'transition') {
      if (!this.#map || this.#transition.failure)
        return studyWait(this.#transition, 'Solving the layer along the span');
      const isOld = this.#transition.resultDesign !== this.design;
      return html`${key.legendList(key.TRANSITION_LEGEND)}
        <p class="note">
          ${this.#painted()} ${isOld ? 'Of the shape before; the new one is being solved.' : ''}
        </p>
        ${tableFold(key.transitionTable(this.#map))}`;
    }
    if (!this.#spread || !report) return html`<p class="note">No figures yet.</p>`;
    return html`${key.legendList(key.spreadLegend(this.#spread, units))}
      <p class="note">${this.#painted()}</p>
      ${tableFold(key.spreadTable(this.#spread, report, units))}`;
  }

  #painted(): string {
    if (this.#map) return `Laminar and turbulent. ${key.transitionWords(this.#map, this.units)}`;
    return this.#spread ? spreadWords(this.#spread, this.units) : '';
  }

  #legend(): readonly LegendEntry[] {
    if (this.#map) return key.TRANSITION_LEGEND;
    return this.#spread ? key.spreadLegend(this.#spread, this.units) : [];
  }

  #choose(paint: PaintName): void {
    this.paint = paint;
    remember('solid', { isOpen: true, paint });
  }

  readonly #onEyeMoved = (): void => {
    const pose = this.view?.goal;
    const title = pose ? viewTitle(pose) : '';
    if (this.hasUpdated && pose && namedView(pose)) this.said = title;
    this.requestUpdate();
  };

  readonly #onMissing = (): void => {
    this.isMissing = true;
  };

  readonly #save = async (): Promise<void> => {
    const { view, design } = this;
    const pose = view?.goal;
    if (!view || !pose || !design) return;
    try {
      const picture = await makePicture({
        draw: (width, height) => view.drawAt(width, height),
        ...view.size,
        title: design.name,
        note: `The foil ${seenWords(pose)}. ${this.#painted()}`,
        legend: this.#legend(),
        colour: view.colour,
      });
      saveFile(picture, fileNameOf(`${design.name} ${namedView(pose)?.name ?? 'turned'}`, 'png'));
      this.said = 'The picture is saved.';
    } catch {
      this.said = 'The browser could not make the picture.';
    }
  };
}

function tableFold(table: unknown) {
  return html`<details>
    <summary>As a table</summary>
    ${table}
  </details>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'solid-view': SolidView;
  }
}
