import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { setDecimalMark, withMark } from '../session/number-format.ts';
import type { Session } from '../session/session.ts';
import type { UnitSystem } from '../session/units.ts';
import { CAUTION } from '../solver/design/caution.ts';
import type { Report } from '../solver/report.ts';
import { Announcer } from './announcer.ts';
import { Arrivals } from './arrivals.ts';
import type { DesignEditEvent, DesignKeepEvent } from './events.ts';
import './band-list.ts';
import './ghost-chip.ts';
import './head-on-view.ts';
import './headline-figures.ts';
import './page-header.ts';
import type { DecimalMarkChosenEvent, Demo, UnitsChosenEvent } from './page-header.ts';
import { pageNotices } from './page-notices.ts';
import './panels/brief-panel.ts';
import './panels/hold-panel.ts';
import './panels/ledger-panel.ts';
import './panels/shape-panel.ts';
import './plan-view.ts';
import { recall, remember } from './preferences.ts';
import './question-tabs.ts';
import { redrawAll } from './redraw.ts';
import { SessionController } from './session-controller.ts';
import { Shortcuts } from './shortcuts.ts';
import './side-view.ts';
import './solid-fold.ts';

/** Sent when the figures on screen have changed; the detail is the design revision they belong to. */
const FIGURES_SHOWN = 'figures-shown';

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

  protected override willUpdate(): void {
    this.#tick++;
    if (this.session) this.#announcer.consider(this.session, this.units);
  }

  protected override updated(_changed: PropertyValues): void {
    const { session } = this;
    if (!session || session.report === this.#shown) return;
    this.#shown = session.report;
    this.dispatchEvent(new CustomEvent(FIGURES_SHOWN, { detail: session.reportRevision }));
  }

  protected override render() {
    const { session, units } = this;
    if (!session) return nothing;
    const { design, report, isPending } = session;
    const ghost = session.ghosts.current;
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
        <section class="head-on" aria-label="Head-on view">
          <ghost-chip .ghost=${ghost}></ghost-chip>
          <head-on-view .design=${design} .report=${report} .units=${units} .ghost=${ghost}></head-on-view>
        </section>
        <section class="headline" aria-label="Headline figures">
          <headline-figures .report=${report} .units=${units} .ghost=${ghost}></headline-figures>
          <band-list .design=${design} .units=${units} .studies=${session.studies} question="headline"></band-list>
          ${session.isFirst ? html`<p class="first">First figures, by thin-airfoil theory: the sections are being worked out.</p>` : nothing}
        </section>
        <section class="editors" aria-label="Editors" tabindex="-1">
          <brief-panel .brief=${design.brief} .units=${units}></brief-panel>
          <shape-panel .design=${design} .units=${units}></shape-panel>
        </section>
        <section class="more-views" aria-label="Plan and side views">
          <plan-view .design=${design} .report=${report} .units=${units} .ghost=${ghost}></plan-view>
          <side-view .design=${design} .report=${report} .units=${units} .ghost=${ghost}></side-view>
          <solid-fold
            .design=${design}
            .report=${report}
            .units=${units}
            .ghost=${ghost}
            .studies=${session.studies}
          ></solid-fold>
        </section>
        <section class="answers" id="answers" aria-label="Answers" tabindex="-1">
          ${this.#trouble(session)}
          <ledger-panel
            .design=${design}
            .report=${report}
            .units=${units}
            .studies=${session.studies}
            .ghost=${ghost}
          ></ledger-panel>
          <hold-panel
            .design=${design}
            .report=${report}
            .units=${units}
            .pending=${isPending}
            .studies=${session.studies}
            .ghost=${ghost}
          ></hold-panel>
          <p class="caution">${CAUTION}</p>
        </section>
        <section class="questions" id="questions" aria-label="Questions" tabindex="-1">
          <question-tabs
            .context=${{ design, report, units, ghost, session, tick: this.#tick, studies: session.studies, exporter: session.exporter, proposals: session.proposals }}
          ></question-tabs>
        </section>
      </main>
      <footer>
        <a href="help/accuracy.html">How far to trust it</a>
        <a href="help/theory.html">Theory</a>
        <a href="help/design-document.html">The design document</a>
        <a href="help/batch.html">The batch command</a>
      </footer>
      <p class="visually-hidden" role="status" aria-live="polite">${this.#announcer.text}</p>
      ${this.#arrivals.isHovering ? html`<div class="drop-mark" role="status"><p>Drop a design to open it</p></div>` : nothing}`;
  }

  #hint() {
    return html`<div class="notice hint">
      <p>
        This is a finished wing, seen head-on as it comes towards you. Drag a tip up or down, or set any number.<br />
        What its curve costs in lift and buys in hold is counted as you move.<br />
        Everything is kept in this browser, and every step can be undone.
      </p>
      <button type="button" @click=${this.#dismissHint}>Understood</button>
    </div>`;
  }

  #trouble({ failure, report }: Session) {
    if (failure === null) return nothing;
    return html`<p class="notice trouble" role="status">
      ${withMark(failure)} ${report ? 'The figures here belong to the shape before it.' : ''}
    </p>`;
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
