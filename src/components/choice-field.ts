import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { withoutPath } from './draft.ts';
import type { Change } from './events.ts';
import { below, fieldStyles } from './field-parts.ts';
import { sendEdit } from './send-edit.ts';

export interface Choice {
  value: string;
  label: string;
}

/** One of a few: a kind of water, a law. Sends `design-edit`; a refused choice goes back with the reason beside it. */
@customElement('choice-field')
export class ChoiceField extends LitElement {
  static override styles = fieldStyles;

  @property() label = '';
  @property() value = '';
  @property({ attribute: false }) choices: readonly Choice[] = [];
  @property() path = '';
  /** Names the step for undo; the label when left out. */
  @property({ attribute: 'edit-label' }) editLabel = '';
  @property() hint = '';
  /** Label for screen readers only, as in a table. */
  @property({ type: Boolean, reflect: true }) bare = false;
  /** The changes a choice makes, where that is more than setting the path; or why it cannot be. */
  @property({ attribute: false, hasChanged: () => false }) toChanges:
    | ((value: string) => Change[] | string)
    | null = null;

  @state() private refusal: string | null = null;

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector('select')?.focus(options);
  }

  protected override render() {
    return html`<div class="field">
      <label for="input">${this.label}</label>
      <span class="control ${this.refusal ? 'invalid' : ''}" part="control">
        <select
          id="input"
          .value=${live(this.value)}
          aria-describedby=${this.refusal || this.hint ? 'note' : nothing}
          @change=${this.#onChange}
        >
          ${this.choices.map(
            ({ value, label }) =>
              html`<option value=${value} ?selected=${value === this.value}>${label}</option>`,
          )}
        </select>
      </span>
      ${below(this.refusal, this.hint)}
    </div>`;
  }

  readonly #onChange = (event: Event): void => {
    const chosen = (event.target as HTMLSelectElement).value;
    const changes = this.toChanges ? this.toChanges(chosen) : [{ path: this.path, value: chosen }];
    const label = this.editLabel || this.label.toLowerCase();
    this.refusal =
      typeof changes === 'string'
        ? changes
        : withoutPath(sendEdit(this, { changes, label, phase: 'settled' }));
    this.requestUpdate();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'choice-field': ChoiceField;
  }
}
