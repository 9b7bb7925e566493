import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ShownGhost } from '../session/ghost.ts';

/** Which design stands behind the open one, with a way to let it go. Sends `ghost-let-go`. */
@customElement('ghost-chip')
export class GhostChip extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
    span {
      display: inline-flex;
      gap: 0.3rem;
    }
    p {
      display: inline-flex;
      flex-wrap: wrap;
      align-items: center;
      gap: 0.2rem 0.5rem;
      max-width: 100%;
      margin: 0;
      padding: 0.1rem 0.2rem 0.1rem 0.6rem;
      border: 1px dashed var(--ghost);
      border-radius: var(--radius);
      font-size: var(--step--1);
      color: var(--soft);
    }
    b {
      display: -webkit-box;
      -webkit-box-orient: vertical;
      -webkit-line-clamp: 2;
      overflow: hidden;
      font-weight: 600;
      color: var(--ink);
      overflow-wrap: anywhere;
    }
    button {
      font: inherit;
      color: var(--ink);
      background: var(--raised);
      border: 1px solid var(--edge);
      border-radius: var(--radius);
      min-height: 1.7rem;
      padding: 0.1rem 0.6rem;
      cursor: pointer;
    }
    button:hover {
      background: var(--line);
    }
    button:focus-visible {
      outline: 2px solid var(--focus);
      outline-offset: 1px;
    }
    @media (pointer: coarse) {
      button {
        min-height: 2.5rem;
      }
    }
    @media print {
      button {
        display: none;
      }
    }
  `;

  @property({ attribute: false }) ghost: ShownGhost | null = null;

  protected override render() {
    const { ghost } = this;
    if (!ghost) return nothing;
    return html`<p>
      <span>Ghost: <b title=${ghost.name}>${ghost.name}</b></span>
      <button type="button" aria-label="Let go of the ghost, ${ghost.name}" @click=${this.#letGo}>let go</button>
    </p>`;
  }

  #letGo(): void {
    this.dispatchEvent(new CustomEvent('ghost-let-go', { bubbles: true, composed: true }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ghost-chip': GhostChip;
  }
}
