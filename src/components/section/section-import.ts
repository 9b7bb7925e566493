import { css, html, LitElement } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Design } from '../../solver/design/document.ts';
import { LARGEST_OUTLINE_TEXT } from '../../solver/geometry/outline-text.ts';
import { readOutline } from '../../solver/geometry/read-outline.ts';
import { withoutPath } from '../draft.ts';
import type { Change } from '../events.ts';
import { panelStyles } from '../panel-styles.ts';
import { sendEdit } from '../send-edit.ts';

const PLACES = [
  { value: 'wing', label: 'wing, root and tip', ends: ['wing.section.root', 'wing.section.tip'] },
  { value: 'wing-root', label: 'wing, root', ends: ['wing.section.root'] },
  { value: 'wing-tip', label: 'wing, tip', ends: ['wing.section.tip'] },
  {
    value: 'stabilizer',
    label: 'stabilizer, root and tip',
    ends: ['stabilizer.section.root', 'stabilizer.section.tip'],
  },
  { value: 'stabilizer-root', label: 'stabilizer, root', ends: ['stabilizer.section.root'] },
  { value: 'stabilizer-tip', label: 'stabilizer, tip', ends: ['stabilizer.section.tip'] },
];

/** Takes a section as plain text: pasted, dropped or from a file. Refused text stays, with the reason beside it. */
@customElement('section-import')
export class SectionImport extends LitElement {
  static override styles = [
    panelStyles,
    css`
      textarea {
        display: block;
        box-sizing: border-box;
        width: 100%;
        min-height: 8.5rem;
        resize: vertical;
        font: var(--step--1) / 1.4 ui-monospace, monospace;
        color: inherit;
        background: var(--raised);
        border: 1px solid var(--edge);
        border-radius: var(--radius);
        padding: 0.35rem 0.5rem;
      }
      textarea[aria-invalid='true'] {
        border-color: var(--bad);
      }
      .over textarea {
        border-style: dashed;
        border-color: var(--carry);
      }
      :is(textarea, select, input):focus-visible {
        outline: 2px solid var(--focus);
        outline-offset: 1px;
      }
      .tools {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0.4rem 0.8rem;
        margin: 0.4rem 0;
      }
      select {
        font: inherit;
        color: inherit;
        background: var(--raised);
        border: 1px solid var(--edge);
        border-radius: var(--radius);
        padding: 0.2rem;
        min-height: 1.7rem;
      }
      label {
        color: var(--soft);
      }
      input[type='file'] {
        position: absolute;
        width: 1px;
        height: 1px;
        overflow: hidden;
        clip-path: inset(50%);
      }
      .message {
        margin: 0;
        font-size: var(--step--1);
        color: var(--bad);
      }
      .message::before {
        content: '⚠ ' / '';
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;

  @state() private text = '';
  @state() private place = 'wing';
  @state() private message = '';
  @state() private said: string[] = [];
  @state() private isOver = false;
  @query('input[type=file]') private readonly file!: HTMLInputElement;

  protected override render() {
    const places = PLACES.filter(({ ends }) => this.design?.stabilizer || !ends[0]!.startsWith('stabilizer'));
    return html`<details>
      <summary>Bring a section of your own: paste, drop or open coordinates</summary>
      <div
        class=${this.isOver ? 'over' : ''}
        @dragover=${this.#onDragOver}
        @dragleave=${() => {
          this.isOver = false;
        }}
        @drop=${this.#onDrop}
      >
        <label for="text">Coordinates, x and y line by line</label>
        <textarea
          id="text"
          spellcheck="false"
          autocomplete="off"
          placeholder=${'my section\n1.000  0.001\n0.950  0.008\n…'}
          aria-invalid=${this.message ? 'true' : 'false'}
          aria-describedby=${this.message ? 'message' : 'hint'}
          .value=${this.text}
          @input=${this.#onInput}
        ></textarea>
      </div>
      ${
        this.message
          ? html`<p class="message" id="message" role="alert">${this.message}</p>`
          : html`<p class="note" id="hint">
              From the trailing edge round the nose and back, either way, or the two sides one after the other. Any size;
              comments are skipped.
            </p>`
      }
      <div class="tools">
        <label for="place">For the</label>
        <select id="place" @change=${this.#onPlace}>
          ${places.map(({ value, label }) => html`<option value=${value} ?selected=${value === this.place}>${label}</option>`)}
        </select>
        <button type="button" ?disabled=${this.text.trim() === ''} @click=${() => this.#use()}>Use this section</button>
        <button type="button" @click=${() => this.file.click()}>Open a file</button>
        <input type="file" tabindex="-1" aria-label="Coordinate file" accept=".txt,.dat,.csv,.xy,text/plain" @change=${this.#onFile} />
      </div>
      <div role="status">${this.said.map((sentence) => html`<p class="note">${sentence}</p>`)}</div>
    </details>`;
  }

  #use(fallback?: string): void {
    const reading = readOutline(this.text, fallback);
    this.said = [];
    if (!reading.ok) {
      this.message = sentenceOf(reading.message);
      return;
    }
    const { ends, label } = PLACES.find(({ value }) => value === this.place)!;
    const changes = ends.map((path): Change => ({ path, value: structuredClone(reading.outline) }));
    const refusal = withoutPath(
      sendEdit(this, { changes, label: `section of the ${label}`, phase: 'settled' }),
    );
    this.message = refusal ?? '';
    if (refusal !== null) return;
    const { name, points } = reading.outline;
    this.said = [
      `“${name}” is now the section of the ${label}: ${points.length} points.`,
      ...reading.remarks,
    ];
    this.text = '';
  }

  async #take(file: File | undefined): Promise<void> {
    if (!file) return;
    if (file.size > LARGEST_OUTLINE_TEXT) {
      this.message = `${file.name} has ${file.size} bytes; a section has at most ${LARGEST_OUTLINE_TEXT}.`;
      return;
    }
    this.text = await file.text();
    this.#use(file.name.replace(/\.[^.]*$/, '').slice(0, 80));
  }

  readonly #onInput = (event: Event): void => {
    this.text = (event.target as HTMLTextAreaElement).value;
    this.message = '';
  };

  readonly #onPlace = (event: Event): void => {
    this.place = (event.target as HTMLSelectElement).value;
  };

  readonly #onFile = (): void => {
    void this.#take(this.file.files?.[0]);
    this.file.value = '';
  };

  readonly #onDragOver = (event: DragEvent): void => {
    event.preventDefault();
    this.isOver = true;
  };

  readonly #onDrop = (event: DragEvent): void => {
    event.preventDefault();
    this.isOver = false;
    const file = event.dataTransfer?.files[0];
    if (file) void this.#take(file);
    else {
      this.text = event.dataTransfer?.getData('text/plain') ?? '';
      this.message = '';
    }
  };
}

/** "line 12: found ..." to "Line 12: found ...". */
function sentenceOf(message: string): string {
  return `${message[0]!.toUpperCase()}${message.slice(1)}.`;
}

declare global {
  interface HTMLElementTagNameMap {
    'section-import': SectionImport;
  }
}
