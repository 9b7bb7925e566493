import { css, html } from 'lit';
import type { Derivatives, Report } from '../solver/report.ts';
import { cellStyles, drawCell, quantityCell } from './table-cells.ts';

const CAUSES = ['beta', 'p', 'r'] as const;
const EFFECTS = ['CY', 'Cl', 'Cn'] as const;
const NAMES = { beta: 'β', p: 'p b/2V', r: 'r b/2V' };

const ownStyles = css`
  details.derivatives {
    margin: 0.6rem 0;
    font-size: var(--step--1);
  }
  .derivatives summary {
    cursor: pointer;
    color: var(--soft);
    border-radius: var(--radius);
  }
  .derivatives summary:focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: 1px;
  }
  .derivatives table {
    border-collapse: collapse;
    width: 100%;
    margin: 0.3rem 0;
    font-variant-numeric: tabular-nums;
  }
  .derivatives caption {
    text-align: left;
    color: var(--soft);
  }
  .derivatives :is(th, td) {
    padding: 0.1rem 0.4rem;
    border-bottom: 1px solid var(--line);
    font-weight: 400;
    text-align: right;
  }
  .derivatives th[scope='row'] {
    text-align: left;
  }
`;

export const derivativeStyles = [cellStyles, ownStyles];

/** All nine lateral derivatives, for the foil alone and for the whole craft. */
export function drawDerivatives(
  { foil, craft }: Report['stability'],
  ghost: Report['stability'] | null | undefined,
) {
  return html`<details class="derivatives">
    <summary>All lateral derivatives</summary>
    ${drawOne('Foil: wing and stabilizer about the wing’s root', foil, ghost?.foil)}
    ${drawOne('Craft: with the strut, about the balance point', craft, ghost?.craft)}
    <p class="note">
      Per radian, along the design’s own axes, not turned into the stream; vortex forces alone. Roll positive starboard
      down, yaw positive nose to starboard.
    </p>
  </details>`;
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
