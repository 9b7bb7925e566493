/** The compliance account: how far the foil gives at the wing and which part gives what share, as bars and a table. */
import { css, html, nothing } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Part } from '../../solver/structure/parts.ts';
import type { CaseAccount, ComplianceAccount, LoadCase } from '../../solver/studies/compliance.ts';
import type { Remedy } from '../../solver/studies/remedies.ts';
import { figureTable } from '../figure-table.ts';
import { CASE_NAMES, PART_NAMES, PART_ORDER, percent } from './words.ts';

export const accountStyles = css`
  .shares {
    display: grid;
    grid-template-columns: auto minmax(4.5rem, auto) 1fr;
    gap: 0.3rem 0.7rem;
    align-items: center;
    margin: 0.3rem 0;
    font-size: var(--step--1);
    font-variant-numeric: tabular-nums;
  }
  .shares b {
    text-align: right;
    font-size: var(--step-0);
  }
  .share-bar {
    display: flex;
    height: 1.25rem;
    border: 1px solid var(--edge);
    border-radius: var(--radius);
    overflow: hidden;
    background: var(--raised);
  }
  .share-bar i {
    flex: none;
    width: calc(100% * var(--share));
  }
  .share-bar i + i {
    border-left: 1px solid var(--raised);
  }
  .key {
    display: flex;
    flex-wrap: wrap;
    gap: 0.1rem 0.8rem;
    margin: 0 0 0.3rem;
    padding: 0;
    list-style: none;
    font-size: var(--step--1);
    color: var(--soft);
  }
  .key i {
    display: inline-block;
    width: 0.9rem;
    height: 0.7rem;
    margin-right: 0.3rem;
    border: 1px solid var(--edge);
    vertical-align: -1px;
  }
  /* Joints are hatched, parts are plain: told apart without colour too. */
  .box {
    background: repeating-linear-gradient(45deg, var(--ink) 0 2px, var(--raised) 2px 6px);
  }
  .strut {
    background: var(--surface);
  }
  .strutJoint {
    background: repeating-linear-gradient(-45deg, var(--surface) 0 3px, var(--raised) 3px 6px);
  }
  .fuselage {
    background: var(--lean);
  }
  .wingJoint {
    background: repeating-linear-gradient(45deg, var(--carry) 0 3px, var(--raised) 3px 6px);
  }
  .wing {
    background: var(--carry);
  }
  .stabilizerJoint {
    background: repeating-linear-gradient(-45deg, var(--tail) 0 3px, var(--raised) 3px 6px);
  }
  .stabilizer {
    background: var(--tail);
  }
  @media (forced-colors: active) {
    .share-bar i,
    .key i {
      forced-color-adjust: none;
    }
  }
  @media (max-width: 30rem) {
    .shares {
      grid-template-columns: 1fr auto;
    }
    .share-bar {
      grid-column: 1 / -1;
    }
  }
`;

const isMoment = (load: LoadCase) => load === 'roll' || load === 'pitch' || load === 'yaw';

export function giveOf({ load, give }: CaseAccount, units: UnitSystem): string {
  return isMoment(load)
    ? formatWithUnit(give, 'angle', units, { decimals: 2 })
    : formatWithUnit(give, 'length', units);
}

export function shareBars({ cases }: ComplianceAccount, units: UnitSystem) {
  const present = PART_ORDER.filter((part) => cases.some(({ shares }) => shares[part] > 0));
  return html`<ul class="key" aria-hidden="true">
      ${present.map((part) => html`<li><i class=${part}></i>${PART_NAMES[part]}</li>`)}
    </ul>
    <div class="shares" aria-hidden="true">
      ${cases.map(
        (
          account,
        ) => html`<span>${isMoment(account.load) ? '10 N m' : '100 N'} ${CASE_NAMES[account.load]}</span>
          <b>${giveOf(account, units)}</b>
          <span class="share-bar">
            ${present
              .filter((part) => account.shares[part] > 0)
              .map(
                (part) => html`<i class=${part} .style="--share: ${account.shares[part].toFixed(4)}"></i>`,
              )}
          </span>`,
      )}
    </div>`;
}

export function accountTable({ cases, root, shares }: ComplianceAccount, units: UnitSystem) {
  const parts = PART_ORDER.filter((part) => shares[part] > 0 || cases.some((each) => each.shares[part] > 0));
  const rows = cases.map((account) => ({
    cells: [
      `${isMoment(account.load) ? '10 N m' : '100 N'} ${CASE_NAMES[account.load]}`,
      giveOf(account, units),
      ...parts.map((part) => percent(account.shares[part])),
    ],
  }));
  const side = root.side;
  const yaw = root.yaw;
  const degrees = (value: number) => formatWithUnit(value, 'angle', units, { decimals: 2, sign: true });
  return html`${figureTable('How far it gives, and what part has in it', ['load at the wing', 'gives', ...parts.map((part: Part) => PART_NAMES[part])], rows)}
    <p class="note">
      Still loads on the drawn shape, held at the board: side and aft pulls at the wing’s root, lift spread over the wing,
      roll as lift to one side, pitch and yaw as a pair of forces at wing and stabilizer. Shares are those of the strain
      energy. 100 N to the side also rolls the wing ${degrees(side.roll)} and yaws it ${degrees(side.yaw)}; 10 N m of yaw
      moves it ${formatWithUnit(yaw.side, 'length', units, { sign: true })} sideways.
    </p>`;
}

/** What stiffens most, and the next best, as a table. */
export function remedyTable(list: readonly Remedy[]) {
  const less = (ratio: number) => {
    const change = Math.round(1000 * (ratio - 1)) / 10;
    return change === 0 ? '–' : `${change > 0 ? '+' : '−'}${writeFixed(Math.abs(change), 1)} %`;
  };
  const rows = list.slice(0, 6).map(({ label, left, byCase }, k) => ({
    cells: [label, less(left), less(byCase.side), less(byCase.roll), less(byCase.pitch), less(byCase.yaw)],
    isHere: k === 0,
  }));
  return rows.length === 0
    ? nothing
    : figureTable(
        'One change by itself, and how much less gives',
        ['change', 'mean of all six', 'to the side', 'roll', 'pitch', 'yaw'],
        rows,
      );
}
