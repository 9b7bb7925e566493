import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { setDecimalMark } from '../session/number-format.ts';
import type { Session } from '../session/session.ts';
import type { UnitSystem } from '../session/units.ts';
import type { Report } from '../solver/report.ts';
import { Announcer } from './announcer.ts';
import { Arrivals } from './arrivals.ts';
import { ComingUp } from './coming-up.ts';
import type { DesignEditEvent, DesignKeepEvent } from './events.ts';
import { HINT, HINT_ANSWER } from './first-words.ts';
import './page-header.ts';
import type { DecimalMarkChosenEvent, Demo, UnitsChosenEvent } from './page-header.ts';
import { pageNotices } from './page-notices.ts';
import { answers, editors, foot, headline, headOn, moreViews } from './page-parts.ts';
import { recall, remember } from './preferences.ts';
import './question-tabs.ts';
import type { QuestionContext } from './questions.ts';
import { redrawAll } from './redraw.ts';
import { SessionController } from './session-controller.ts';
import { Shortcuts } from './shortcuts.ts';

/** Sent when the figures on screen have changed; the detail is the design revision they belong to. */
const FIGURES_SHOWN = 'figures-shown';

/** The order in which the parts of the page come up: as they stand, so that none pushes another down. */
const PARTS = ['shape', 'editors', 'moreViews', 'answers', 'questions'] as const;
/** Where the answers have a column to themselves they come up early, the many fields late. */
const WIDE_PARTS: (typeof PARTS)[number][] = ['shape', 'answers', 'moreViews', 'editors', 'questions'];
const isWide = () => window.matchMedia('(min-width: 75rem)').matches; // as in page.css

/**
 * The page: holds the session, hands design and figures down, takes edits up. Drawn without a shadow root, so that
 * page.css and print.css arrange it.
 */
@customElement('app-shell')
export class AppShell extends LitElement {
  @property({ attribute: false }) demos: readonly Demo[] = [];

  @state() private units: UnitSystem = recall('units', 'workshop');
  @state() private showsHint = recall('hint', true);

  readonly #controller = new SessionController(this);
  readonly #announcer = new Announcer(this);
  readonly #arrivals = new Arrivals(this, () => this.session);
  readonly #isWide = isWide();
  readonly #parts = new ComingUp(this, this.#isWide ? WIDE_PARTS : PARTS);
  #tick = 0;
  #shown: Report | null = null;

  constructor() {
    super();
    new Shortcuts(this, () => this.session);
    this.addEventListener('design-edit', this.#onEdit);
    this.addEventListener('units-chosen', this.#onUnits);
    this.addEventListener('design-keep', this.#onKeep);
    this.addEventListener('ghost-let-go', () => this.session?.ghosts.letGo());
    this.addEventListener('decimal-mark-chosen', this.#onMark);
    setDecimalMark(recall('decimalMark', '.') === ',' ? ',' : '.');
  }

  @property({ attribute: false })
  get session(): Session | null {
    return this.#controller.session;
  }

  set session(session: Session | null) {
    this.#controller.session = session;
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  /** Settles once the whole page is up. */
  protected override async getUpdateComplete(): Promise<boolean> {
    if (this.session) await this.#parts.done;
    return super.getUpdateComplete();
  }

  protected override willUpdate(): void {
    this.#tick++;
    if (!this.session) return;
    this.#takeOver();
    this.#announcer.consider(this.session, this.units);
  }

  /** Once there is a design to show: what stood on the page ahead of it makes room. */
  #takeOver(): void {
    this.#parts.go();
    const ahead = this.querySelector(':scope > .ahead');
    if (!ahead) return;
    this.showsHint = recall('hint', true);
    ahead.remove();
  }

  protected override updated(_changed: PropertyValues): void {
    const { session } = this;
    if (!session || session.report === this.#shown || !this.#parts.has(this.#isWide ? 'answers' : 'shape'))
      return;
    this.#shown = session.report;
    this.dispatchEvent(new CustomEvent(FIGURES_SHOWN, { detail: session.reportRevision }));
  }

  protected override render() {
    const { session, units } = this;
    if (!session) return nothing;
    const context = this.#context(session);
    return html`<header>
        <nav aria-label="Skip">
          <a class="skip" href="#answers">To the figures</a>
          <a class="skip" href="#questions">To the questions</a>
        </nav>
        <page-header .session=${session} .demos=${this.demos} .units=${units} .tick=${this.#tick}></page-header>
      </header>
      <div class="notices" aria-live="polite" tabindex="-1" @click=${this.#onNotice}>
        ${pageNotices(session)} ${this.showsHint ? this.#hint() : nothing}
      </div>
      <main>
        <section class="head-on" aria-label="Head-on view">${headOn(context)}</section>
        <section class="headline" aria-label="Headline figures">${headline(context)}</section>
        <section class="editors" aria-label="Editors" tabindex="-1">${this.#part('editors', () => editors(context))}</section>
        <section class="more-views" aria-label="Plan and side views">
          ${this.#part('moreViews', () => moreViews(context))}
        </section>
        <section class="answers" id="answers" aria-label="Answers" tabindex="-1">
          ${this.#part('answers', () => answers(context))}
        </section>
        <section class="questions" id="questions" aria-label="Questions" tabindex="-1">
          ${this.#part('questions', () => html`<question-tabs .context=${context}></question-tabs>`)}
        </section>
      </main>
      ${this.#part('questions', () => foot)}
      <p class="visually-hidden" role="status" aria-live="polite">${this.#announcer.text}</p>
      ${this.#arrivals.isHovering ? html`<div class="drop-mark" role="status"><p>Drop a design to open it</p></div>` : nothing}`;
  }

  #part(name: (typeof PARTS)[number], make: () => TemplateResult) {
    return this.#parts.has(name) ? make() : nothing;
  }

  #context(session: Session): QuestionContext {
    const { design, report, studies, exporter, proposals } = session;
    const ghost = session.ghosts.current;
    return {
      design,
      report,
      units: this.units,
      ghost,
      session,
      tick: this.#tick,
      studies,
      exporter,
      proposals,
    };
  }

  #hint() {
    return html`<div class="notice hint">
      <p>${HINT.map((line, k) => html`${k > 0 ? html`<br />` : nothing}${line}`)}</p>
      <button type="button" @click=${this.#dismissHint}>${HINT_ANSWER}</button>
    </div>`;
  }

  readonly #onEdit = (event: DesignEditEvent): void => {
    event.refusal = this.session?.edit(event.detail) ?? null;
  };

  readonly #onKeep = ({ detail }: DesignKeepEvent): void => {
    void this.session?.keep(detail.design, detail.name);
  };

  readonly #onUnits = (event: UnitsChosenEvent): void => {
    this.units = event.detail;
    remember('units', event.detail);
  };

  readonly #onMark = (event: DecimalMarkChosenEvent): void => {
    setDecimalMark(event.detail);
    remember('decimalMark', event.detail);
    this.requestUpdate();
    redrawAll(this);
  };

  /** A notice that is answered takes its button away, and the focus with it: that stays where the notices are. */
  readonly #onNotice = async (): Promise<void> => {
    await this.updateComplete;
    if (document.activeElement === document.body) this.querySelector<HTMLElement>('.notices')?.focus();
  };

  readonly #dismissHint = (): void => {
    this.showsHint = false;
    remember('hint', false);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'app-shell': AppShell;
  }
}
