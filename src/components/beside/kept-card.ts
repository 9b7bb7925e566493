import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { KeptDesign } from '../../session/kept.ts';
import { MARKS, type MarkName } from '../../session/kept-record.ts';
import type { Session } from '../../session/session.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import { take, toPart } from '../asked.ts';
import '../build/notes-field.ts';
import '../choice-field.ts';
import { headlinesOf } from '../headline-figures.ts';
import { panelStyles } from '../panel-styles.ts';
import '../text-field.ts';
import { MARK_NAMES } from './columns.ts';
import { smallPicture } from './small-picture.ts';

const GIVEN = [
  { value: '', label: '–' },
  { value: '1', label: '1 poor' },
  { value: '2', label: '2' },
  { value: '3', label: '3' },
  { value: '4', label: '4' },
  { value: '5', label: '5 just right' },
];

/** Sent when the design is taken off the shelf; the detail is its id. */
export class KeptRemovedEvent extends CustomEvent<string> {
  static readonly type = 'kept-removed';
  constructor(id: string) {
    super(KeptRemovedEvent.type, { detail: id, bubbles: true, composed: true });
  }
}

/** One kept design: picture, name, when, headline figures; marks and notes of the rider; what can be done with it. */
@customElement('kept-card')
export class KeptCard extends LitElement {
  static override styles = [
    panelStyles,
    css`
      :host {
        border: 1px solid var(--line);
        border-radius: var(--radius);
        padding: 0.5rem 0.7rem 0.6rem;
        background: var(--raised);
      }
      :host([ghost]) {
        border: 1px dashed var(--ghost);
      }
      .picture {
        display: block;
        max-width: 100%;
        margin: 0.2rem auto;
      }
      .wing {
        fill: var(--ink);
        stroke: var(--ink);
      }
      .tail {
        fill: var(--tail);
        stroke: var(--tail);
      }
      :is(.strut, .body) {
        fill: var(--line);
        stroke: var(--edge);
      }
      text-field {
        font-weight: 600;
        margin: 0;
      }
      dl {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0 0.6rem;
        margin: 0.3rem 0;
        font-variant-numeric: tabular-nums;
      }
      dt {
        color: var(--soft);
      }
      dd {
        margin: 0;
        font-weight: 600;
        text-align: right;
      }
      .row {
        display: flex;
        flex-wrap: wrap;
        gap: 0.35rem;
        margin-top: 0.5rem;
      }
      .trouble {
        border-left: 3px solid var(--bad);
        padding-left: 0.5rem;
        margin: 0.4rem 0;
        overflow-wrap: anywhere;
      }
      details {
        margin-top: 0.3rem;
      }
      choice-field {
        --control-width: 7rem;
      }
    `,
  ];

  @property({ attribute: false }) session: Session | null = null;
  @property({ attribute: false }) kept: KeptDesign | null = null;
  @property() units: UnitSystem = 'workshop';
  /** Metres across the picture. */
  @property({ type: Number }) extent = 1;
  /** The session's counter, so that figures are drawn when they come. */
  @property({ type: Number }) tick = 0;
  @property({ type: Boolean, reflect: true }) ghost = false;

  protected override render() {
    const { session, kept } = this;
    if (!session || !kept) return nothing;
    const { reading } = kept;
    return html`<text-field
        bare
        label="Name of the kept design ${kept.name}"
        .value=${kept.name}
        .toChanges=${(name: string) => session.kept.refusalOf(kept.id, name) ?? toPart(name)}
        @design-edit=${take((name) => session.kept.rename(kept.id, name as string))}
      ></text-field>
      <p class="note">
        Kept ${writeTime(kept.kept)}${kept.isStored ? '' : ', in this page only: the browser does not store it'}
      </p>
      ${
        reading.ok
          ? this.#sound(session, kept, reading.design)
          : html`<p class="trouble">
              This copy is damaged and cannot be opened: ${reading.message}. It stays as it is; save it as a file to look
              into it.
            </p>`
      }
      <div class="row">${this.#actions(session, kept)}</div>`;
  }

  #sound(session: Session, kept: KeptDesign, design: Design) {
    const report = session.reports.of(kept);
    const failure = session.reports.failureOf(kept);
    return html`${smallPicture(design, this.extent, this.units)}
      ${
        report
          ? html`<dl>
              ${headlinesOf(report, this.units).map(({ name, value }) => html`<dt>${name}</dt><dd>${value}</dd>`)}
            </dl>`
          : html`<p class="note">${failure ?? 'Figures are on their way …'}</p>`
      }
      <details>
        <summary>${ridden(kept)}</summary>
        ${MARKS.map((mark) => this.#mark(session, kept, mark))}
        <notes-field
          label="Notes"
          .value=${kept.notes}
          @design-edit=${take((notes) => session.kept.annotate(kept.id, (notes as string | undefined) ?? ''))}
        ></notes-field>
      </details>`;
  }

  #mark(session: Session, { id, marks }: KeptDesign, mark: MarkName) {
    return html`<choice-field
      .label=${MARK_NAMES[mark]}
      .value=${String(marks[mark] ?? '')}
      .choices=${GIVEN}
      .toChanges=${toPart}
      @design-edit=${take((value) => session.kept.mark(id, mark, value === '' ? null : Number(value)))}
    ></choice-field>`;
  }

  #actions(session: Session, kept: KeptDesign) {
    const { id, name, reading } = kept;
    const button = (text: string, what: string, act: () => void) =>
      html`<button type="button" aria-label="${text}: ${what}" @click=${act}>${text}</button>`;
    return html`${
      reading.ok
        ? html`${
            this.ghost
              ? button('Let go of the ghost', name, () => session.ghosts.letGo())
              : button('Make it the ghost', name, () => session.ghosts.choose(id))
          }
            ${button('Open', name, () => session.openKept(kept))}`
        : nothing
    }
    ${button('Save as a file', name, () => session.saveKept(kept))}
    ${button('Take off the shelf', name, () => {
      session.kept.remove(id);
      this.dispatchEvent(new KeptRemovedEvent(id));
    })}`;
  }
}

/** "Ridden: hold 4, glide 3" */
function ridden({ marks, notes }: KeptDesign): string {
  const given = MARKS.flatMap((mark) =>
    marks[mark] === undefined ? [] : [`${MARK_NAMES[mark].toLowerCase()} ${marks[mark]}`],
  );
  const parts = [...given, ...(notes === '' ? [] : ['notes'])];
  return parts.length === 0 ? 'Ridden? Marks and notes' : `Ridden: ${parts.join(', ')}`;
}

export function writeTime(time: number): string {
  if (time === 0) return 'at a time not known';
  return new Date(time).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
}

declare global {
  interface HTMLElementEventMap {
    'kept-removed': KeptRemovedEvent;
  }
  interface HTMLElementTagNameMap {
    'kept-card': KeptCard;
  }
}
