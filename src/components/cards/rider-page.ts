import { html, LitElement, nothing, svg } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { makeLink, readPairLink } from '../../session/share-link.ts';
import type { Studies } from '../../session/studies.ts';
import type { UnitSystem } from '../../session/units.ts';
import { CAUTION } from '../../solver/design/caution.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Reading } from '../../solver/design/read.ts';
import type { RiderComparison } from '../../solver/studies/rider.ts';
import { recall } from '../preferences.ts';
import { StudyController } from '../study-controller.ts';
import { studyWait } from '../study-wait.ts';
import { cardStyles } from './card-styles.ts';
import { cardTrouble, markOf, marksExplained } from './marks.ts';
import './rider-picture.ts';
import { riderStyles } from './rider-styles.ts';
import { riderSentences, underWhat } from './rider-words.ts';

const SHOWN = 4000; // ms that the button says what it has done

/** The page for the rider: two designs from the address, drawn over one another, and five sentences. Nothing is edited. */
@customElement('rider-page')
export class RiderPage extends LitElement {
  static override styles = [cardStyles, riderStyles];

  /** The address's fragment, which holds both designs. */
  @property() fragment = '';
  @property({ attribute: false }) read: ((text: string) => Reading) | null = null;
  @property({ attribute: false }) studies: Studies | null = null;

  @state() private designs: readonly [Design, Design] | null = null;
  @state() private trouble = '';
  @state() private said = '';

  readonly #units: UnitSystem = recall('units', 'workshop');
  #timer: ReturnType<typeof setTimeout> | undefined;

  readonly #study = new StudyController(this, 'rider', () =>
    this.designs
      ? { studies: this.studies, design: this.designs[0], options: { against: this.designs[1] } }
      : null,
  );

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#timer);
  }

  protected override willUpdate(changed: Map<string, unknown>): void {
    if ((changed.has('fragment') || changed.has('read')) && this.read) this.#open(this.read);
  }

  #open(read: (text: string) => Reading): void {
    const reading = this.fragment.includes('#rider')
      ? readPairLink(this.fragment, read)
      : ({
          ok: false,
          message:
            'There are no two designs in this address. Open one in the workbench and choose “Rider page”.',
        } as const);
    this.designs = reading.ok ? reading.designs : null;
    this.trouble = reading.ok ? '' : reading.message;
    if (reading.ok) document.title = `${reading.designs[0].name} against ${reading.designs[1].name}`;
  }

  protected override render() {
    if (!this.read) return nothing;
    if (!this.designs) return html`<main>${cardTrouble(this.trouble)}</main>`;
    const [one, other] = this.designs;
    const { resultDesign, failure } = this.#study;
    const result = resultDesign === one ? this.#study.result : null;
    return html`<nav aria-label="Pages">
        <a href="./">‹ Workbench</a>
        <button type="button" @click=${this.#onCopy}>${this.said === COPIED ? COPIED : 'Copy the link'}</button>
      </nav>
      <main>
        <h1><span class="kind">For the rider</span>Two foils, one against the other</h1>
        <ol class="pair" aria-label="The two foils">
          <li>${line('')}<span>${one.name}</span></li>
          <li>${line('dashed')}<span>${other.name}</span></li>
        </ol>
        <p role="status" class=${this.said && this.said !== COPIED ? '' : 'visually-hidden'}>${this.said}</p>
        <rider-picture .one=${one} .other=${other} .units=${this.#units}></rider-picture>
        ${result && !failure ? this.#sentences(result) : studyWait(this.#study, 'Solving both foils')}
        <p class="links back">
          <a href=${linkOf(one)}>Open the first in the workbench</a>
          <a href=${linkOf(other)}>Open the second</a>
        </p>
        <p class="caution">${CAUTION}</p>
      </main>`;
  }

  #sentences(found: RiderComparison) {
    const problems = [
      ['The first', found.one.problem],
      ['The second', found.other.problem],
    ] as const;
    return html`${problems.map(([who, problem]) =>
      problem ? html`<p class="trouble">${who} cannot run like this everywhere: ${problem}.</p>` : nothing,
    )}
      <p class="note">The first, compared with the second. ${underWhat(found, this.#units)}</p>
      <ol class="five" aria-label="Five differences">
        ${riderSentences(found, this.#units).map(
          (clauses) =>
            html`<li>${clauses.map(({ text, kind }) => html`<p>${text} ${kind ? markOf(kind) : nothing}</p>`)}</li>`,
        )}
      </ol>
      ${marksExplained('these two designs')}`;
  }

  readonly #onCopy = async (): Promise<void> => {
    clearTimeout(this.#timer);
    try {
      await navigator.clipboard.writeText(window.location.href);
      this.said = COPIED;
      this.#timer = setTimeout(() => {
        this.said = '';
      }, SHOWN);
    } catch {
      this.said = 'This browser does not let the page copy. Copy the address from its address line.';
    }
  };
}

const COPIED = 'Link copied';

const line = (kind: string) =>
  html`<svg viewBox="0 0 48 8" aria-hidden="true">${svg`<path class=${kind} d="M0 4H48"></path>`}</svg>`;

function linkOf(design: Design): string {
  const made = makeLink(design, './');
  return made.ok ? made.link : './';
}

declare global {
  interface HTMLElementTagNameMap {
    'rider-page': RiderPage;
  }
}
