import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { Draft, tooLong, withoutPath } from './draft.ts';
import type { Change } from './events.ts';
import { below, fieldStyles } from './field-parts.ts';
import { sendEdit } from './send-edit.ts';

/**
 * A line of text in the design: a name, a formula, a section code. Enter or leaving the field commits, Escape
 * restores; text that is refused stays for correction with the reason beside it.
 */
@customElement('text-field')
export class TextField extends LitElement {
  static override styles = fieldStyles;

  @property() label = '';
  @property() value = '';
  @property() path = '';
  /** Names the step for undo; the label when left out. */
  @property({ attribute: 'edit-label' }) editLabel = '';
  @property() hint = '';
  /** Characters. */
  @property({ type: Number, attribute: 'max-length' }) maxLength = 200;
  /** The changes a text makes, where that is more than setting the path; or why it does not count. */
  @property({ attribute: false, hasChanged: () => false }) toChanges:
    | ((text: string) => Change[] | string)
    | null = null;
  /** Label above the control, for long texts. */
  @property({ type: Boolean, reflect: true }) wide = false;
  /** Label for screen readers only. */
  @property({ type: Boolean, reflect: true }) bare = false;

  readonly #draft = new Draft(this, {
    shown: () => this.value,
    accept: (text) => this.#accept(text.trim()),
  });

  /** Text is typed that has not been taken over. */
  get isTyping(): boolean {
    return this.#draft.isOpen;
  }

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector('input')?.focus(options);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (this.hasUpdated && changed.has('value') && !this.matches(':focus-within')) this.#draft.restore();
  }

  protected override render() {
    const { message, text } = this.#draft;
    return html`<div class="field">
      <label for="input">${this.label}</label>
      <span class="control ${message ? 'invalid' : ''}" part="control">
        <input
          id="input"
          autocomplete="off"
          spellcheck="false"
          enterkeyhint="done"
          .value=${live(text)}
          aria-invalid=${message ? 'true' : 'false'}
          aria-describedby=${message || this.hint ? 'note' : nothing}
          @input=${this.#draft.onInput}
          @change=${this.#draft.commit}
          @blur=${this.#draft.commit}
          @keydown=${this.#onKeyDown}
        />
      </span>
      ${below(message, this.hint)}
    </div>`;
  }

  #accept(text: string): string | null {
    const trouble = tooLong(text, this.maxLength);
    if (trouble) return trouble;
    const changes = this.toChanges ? this.toChanges(text) : [{ path: this.path, value: text }];
    if (typeof changes === 'string') return changes;
    const label = this.editLabel || this.label.toLowerCase();
    return withoutPath(sendEdit(this, { changes, label, phase: 'settled' }));
  }

  readonly #onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') this.#draft.commit();
    if (event.key === 'Escape' && this.#draft.restore()) event.stopPropagation();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'text-field': TextField;
  }
}
