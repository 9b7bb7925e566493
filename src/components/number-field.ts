import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Reading } from '../session/quantity.ts';
import { prepareReader, readOnDemand } from '../session/quantity-on-demand.ts';
import { clamp } from '../session/rounding.ts';
import {
  editText,
  formatWithUnit,
  fromDisplay,
  type Quantity,
  stepOf,
  toDisplay,
  type UnitSystem,
  unitNameOf,
  unitOf,
} from '../session/units.ts';
import { rangeOf } from '../solver/design/ranges.ts';
import { Draft, withoutPath } from './draft.ts';
import type { Change, EditDetail } from './events.ts';
import { below, fieldStyles } from './field-parts.ts';
import { sendEdit } from './send-edit.ts';

/**
 * A value with its unit. Takes units and simple arithmetic ("27 in", "740/2 + 5"); Enter or leaving the field
 * commits; the arrow keys nudge (Shift ten times as far, Alt a tenth), a held key being one step of the history;
 * Escape restores. Sends `design-edit`, live while nudged and settled when done. Text that does not count stays for
 * correction with the reason beside it.
 */
@customElement('number-field')
export class NumberField extends LitElement {
  static override styles = fieldStyles;

  @property() label = '';
  /** SI (degrees, degrees Celsius, fraction); null: not given. */
  @property({ type: Number }) value: number | null = null;
  @property() quantity: Quantity = 'ratio';
  @property() units: UnitSystem = 'workshop';
  /** Where the value lives in the document; gives the range too. */
  @property() path = '';
  /** Names the step for undo; the label when left out. */
  @property({ attribute: 'edit-label' }) editLabel = '';
  /** SI; where the document's own range does not hold. */
  @property({ type: Number }) min: number | null = null;
  @property({ type: Number }) max: number | null = null;
  /** One nudge in SI, instead of the unit's own. */
  @property({ type: Number }) step: number | null = null;
  @property() hint = '';
  /** Shown in an empty field. An empty field takes its key out of the document. */
  @property() placeholder = '';
  @property({ type: Boolean }) optional = false;
  /** The changes an emptied field makes, where that is more than taking its key out; the field is then optional. */
  @property({ attribute: false, hasChanged: () => false }) cleared: Change[] | null = null;
  /** The value follows from others: four digits are shown. */
  @property({ type: Boolean }) derived = false;
  /** The changes a value makes, where that is more than setting the path; or why it cannot be. */
  @property({ attribute: false, hasChanged: () => false }) toChanges:
    | ((value: number) => Change[] | string)
    | null = null;
  /** Label for screen readers only, as in a table. */
  @property({ type: Boolean, reflect: true }) bare = false;

  readonly #draft = new Draft(this, {
    shown: () =>
      this.value === null ? '' : editText(this.value, this.quantity, this.units, this.derived ? 4 : 6),
    accept: (text) => this.#accept(text),
  });
  #nudged: number | null = null; // the value under a held arrow key

  /** Text is typed that has not been taken over. */
  get isTyping(): boolean {
    return this.#draft.isOpen;
  }

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector('input')?.focus(options);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const isElsewhere = !this.matches(':focus-within');
    if (this.hasUpdated && (changed.has('value') || changed.has('units')) && isElsewhere)
      this.#draft.restore();
  }

  protected override render() {
    const { message, text } = this.#draft;
    const { min, max } = this.#range();
    const note = message || this.hint;
    return html`<div class="field">
      <label for="input">${this.label}</label>
      <span class="control ${message ? 'invalid' : ''}" part="control">
        <input
          id="input"
          role="spinbutton"
          autocomplete="off"
          spellcheck="false"
          enterkeyhint="done"
          placeholder=${this.placeholder || nothing}
          .value=${live(text)}
          aria-valuenow=${this.value === null ? nothing : this.#shown(this.value)}
          aria-valuetext=${this.#spoken(text)}
          aria-valuemin=${Number.isFinite(min) ? this.#shown(min) : nothing}
          aria-valuemax=${Number.isFinite(max) ? this.#shown(max) : nothing}
          aria-invalid=${message ? 'true' : 'false'}
          aria-describedby=${note ? 'note' : nothing}
          @focus=${prepareReader}
          @input=${this.#draft.onInput}
          @change=${this.#draft.commit}
          @blur=${this.#onBlur}
          @keydown=${this.#onKeyDown}
          @keyup=${this.#onKeyUp}
        />
        <span class="unit" aria-hidden="true">${unitOf(this.quantity, this.units)}</span>
      </span>
      ${below(message, this.hint)}
    </div>`;
  }

  #range(): { min: number; max: number; open?: boolean } {
    const own = rangeOf(this.path);
    return {
      min: this.min ?? own?.min ?? Number.NEGATIVE_INFINITY,
      max: this.max ?? own?.max ?? Number.POSITIVE_INFINITY,
      open: this.min === null && own?.open === true,
    };
  }

  #shown(value: number): number {
    return Number(toDisplay(value, this.quantity, this.units).toPrecision(6));
  }

  #spoken(text: string): string {
    if (text === '') return this.placeholder || 'not given';
    return this.#draft.isOpen ? text : `${text} ${unitNameOf(this.quantity, this.units)}`.trim();
  }

  #accept(text: string): string | null | Promise<string | null> {
    if ((this.optional || this.cleared) && text.trim() === '')
      return this.#send(this.cleared ?? [{ path: this.path, value: undefined }], 'settled');
    const take = (reading: Reading) => (reading.ok ? this.#take(reading.value, 'settled') : reading.message);
    const reading = readOnDemand(text, this.quantity, this.units);
    return reading instanceof Promise ? reading.then(take) : take(reading);
  }

  /** Sends the value up, if it lies in range; null when it counts, else why not. */
  #take(value: number, phase: EditDetail['phase']): string | null {
    const { min, max, open } = this.#range();
    if (value < min || value > max || (open && value === min)) return this.#rangeMessage(value);
    const changes = this.toChanges ? this.toChanges(value) : [{ path: this.path, value }];
    return typeof changes === 'string' ? changes : this.#send(changes, phase);
  }

  #send(changes: Change[], phase: EditDetail['phase']): string | null {
    return withoutPath(sendEdit(this, { changes, label: this.#stepName(), phase }));
  }

  #stepName(): string {
    return this.editLabel || this.label.toLowerCase();
  }

  #rangeMessage(value: number): string {
    const { min, max, open } = this.#range();
    const write = (bound: number) => formatWithUnit(bound, this.quantity, this.units);
    const found = write(value);
    const least = open ? `above ${write(min)}` : write(min);
    if (!Number.isFinite(max)) return `${found} is too small: ${open ? least : `at least ${least}`}.`;
    if (!Number.isFinite(min)) return `${found} is too large: at most ${write(max)}.`;
    return `${found} is out of range: ${least} to ${write(max)}.`;
  }

  readonly #onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') this.#draft.commit();
    if (event.key === 'Escape') this.#cancel(event);
    const direction = NUDGES[event.key];
    if (!direction || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const scale = event.shiftKey ? 10 : event.altKey ? 0.1 : 1;
    this.#nudge(direction * scale);
  };

  #nudge(steps: number): void {
    if (this.#draft.isOpen) this.#draft.commit();
    const from = this.#nudged ?? this.value;
    if (this.#draft.isOpen || from === null) return; // what is typed must count first
    const step = this.step ?? fromDisplay(stepOf(this.quantity, this.units), this.quantity, this.units);
    const zero = this.step === null ? fromDisplay(0, this.quantity, this.units) : 0;
    const shown = toDisplay(from + steps * (step - zero), this.quantity, this.units);
    const rounded = fromDisplay(Number(shown.toPrecision(9)), this.quantity, this.units);
    const { min, max, open } = this.#range();
    const value = clamp(rounded, min, max);
    if (value === from || (open && value === min)) return;
    const refusal = this.#take(value, 'live');
    if (refusal === null) this.#nudged = value;
    this.#draft.refuse(refusal);
  }

  readonly #onKeyUp = (event: KeyboardEvent): void => {
    if (NUDGES[event.key]) this.#settleNudge();
  };

  readonly #onBlur = (): void => {
    this.#settleNudge();
    this.#draft.commit();
  };

  #settleNudge(): void {
    if (this.#nudged === null) return;
    const value = this.#nudged;
    this.#nudged = null;
    this.#draft.refuse(this.#take(value, 'settled'));
  }

  #cancel(event: KeyboardEvent): void {
    if (this.#nudged !== null) {
      this.#nudged = null;
      sendEdit(this, { changes: [], label: this.#stepName(), phase: 'cancelled' });
      event.stopPropagation();
    }
    if (this.#draft.restore()) event.stopPropagation();
  }
}

/** Steps by key; a page is ten. */
const NUDGES: Record<string, number> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 };

declare global {
  interface HTMLElementTagNameMap {
    'number-field': NumberField;
  }
}
