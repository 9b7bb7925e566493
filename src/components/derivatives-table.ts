import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Derivatives, Report } from '../solver/report.ts';
import { InSight } from './in-sight.ts';
import { cellStyles, drawCell, quantityCell } from './table-cells.ts';

const CAUSES = ['beta', 'p', 'r'] as const;
const EFFECTS = ['CY', 'Cl', 'Cn'] as const;
const NAMES = { beta: 'β', p: 'p b/2V', r: 'r b/2V' };

/**
 * All nine lateral derivatives, for the foil alone and for the whole craft. Stands in what is folded away: an element of its
 * own, so that a drag leaves it alone until it can be seen.
 */
@customElement('derivatives-table')
export class DerivativesTable extends InSight {
  static override styles = [
    cellStyles,
    css`
      :host {
        display: block;
      }
      table {
        border-collapse: collapse;
        width: 100%;
        margin: 0.3rem 0;
        font-variant-numeric: tabular-nums;
      }
      caption {
        text-align: left;
        color: var(--soft);
      }
      th,
      td {
        padding: 0.1rem 0.4rem;
        border-bottom: 1px solid var(--line);
        font-weight: 400;
        text-align: right;
      }
      th[scope='row'] {
        text-align: left;
      }
      p {
        margin: 0.15rem 0;
        color: var(--soft);
      }
    `,
  ];

  @property({ attribute: false }) stability: Report['stability'] | null = null;
  /** Of a second design, whose figures stand below these. */
  @property({ attribute: false }) ghost: Report['stability'] | null = null;

  protected override render() {
    const { stability, ghost } = this;
    if (!stability) return nothing;
    return html`${drawOne('Foil: wing and stabilizer about the wing’s root', stability.foil, ghost?.foil)}
      ${drawOne('Craft: with the strut, about the balance point', stability.craft, ghost?.craft)}
      <p>
        Per radian, along the design’s own axes, not turned into the stream; vortex forces alone. Roll positive starboard
        down, yaw positive nose to starboard.
      </p>`;
  }
}

function drawOne(caption: string, own: Derivatives, ghost: Derivatives | undefined) {
  const cell = (value: number) => quantityCell(value, 'ratio', 'si', { decimals: 4 });
  return html`<table>
    <caption>
      ${caption}
    </caption>
    <thead>
      <tr>
        <th scope="col">by</th>
        <th scope="col">C<sub>Y</sub></th>
        <th scope="col">C<sub>l</sub></th>
        <th scope="col">C<sub>n</sub></th>
      </tr>
    </thead>
    <tbody>
      ${CAUSES.map(
        (cause) =>
          html`<tr>
            <th scope="row">${NAMES[cause]}</th>
            ${EFFECTS.map((effect) => {
              const key = `${effect}${cause}` as const;
              return html`<td>${drawCell(cell(own[key]), ghost && cell(ghost[key]))}</td>`;
            })}
          </tr>`,
      )}
    </tbody>
  </table>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'derivatives-table': DerivativesTable;
  }
}
