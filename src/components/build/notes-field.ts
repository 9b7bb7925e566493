import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { Draft, tooLong, withoutPath } from '../draft.ts';
import { below, fieldStyles } from '../field-parts.ts';
import { sendEdit } from '../send-edit.ts';

const LONGEST = 4000; // characters, as in the document

/** The builder's own notes, several lines; leaving the field commits, Escape restores. */
@customElement('notes-field')
export class NotesField extends LitElement {
  static override styles = [
    fieldStyles,
    css`
      .field {
        grid-template-columns: minmax(0, 1fr);
      }
      textarea {
        font: inherit;
        color: inherit;
        background: none;
        border: 0;
        outline: none;
        padding: 0.3rem 0.5rem;
        width: 100%;
        min-height: 4.5rem;
        resize: vertical;
      }
    `,
  ];

  @property() label = '';
  @property() value = '';
  @property() path = '';
  @property() hint = '';

  readonly #draft = new Draft(this, {
    shown: () => this.value,
    accept: (text) => {
      const trouble = tooLong(text, LONGEST);
      if (trouble) return trouble;
      const value = text.trim() === '' ? undefined : text;
      return withoutPath(
        sendEdit(this, {
          changes: [{ path: this.path, value }],
          label: this.label.toLowerCase(),
          phase: 'settled',
        }),
      );
    },
  });

  /** Text is typed that has not been taken over. */
  get isTyping(): boolean {
    return this.#draft.isOpen;
  }

  protected override render() {
    const { message, text } = this.#draft;
    return html`<div class="field">
      <label for="input">${this.label}</label>
      <span class="control ${message ? 'invalid' : ''}">
        <textarea
          id="input"
          aria-describedby=${message || this.hint ? 'note' : nothing}
          .value=${live(text)}
          @input=${this.#draft.onInput}
          @change=${this.#draft.commit}
          @blur=${this.#draft.commit}
          @keydown=${this.#onKeyDown}
        ></textarea>
      </span>
      ${below(message, this.hint)}
    </div>`;
  }

  readonly #onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && this.#draft.restore()) event.stopPropagation();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'notes-field': NotesField;
  }
}
