/** The compliance account: how far the foil gives at the wing and which part gives what share, as bars and a table. */
import { css, html, nothing } from 'lit';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Part } from '../../solver/structure/parts.ts';
import type { CaseAccount, ComplianceAccount, LoadCase } from '../../solver/studies/compliance.ts';
import type { Remedy } from '../../solver/studies/remedies.ts';
import { tableWithGhost } from '../figure-table.ts';
import { figureCell, quantityCell, textOf } from '../table-cells.ts';
import { CASE_NAMES, changeCell, PART_NAMES, PART_ORDER, percent } from './words.ts';

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
  .share-bar.ghost {
    height: 0.5rem;
    border: 1px dashed var(--ghost);
    opacity: 0.75;
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
    .shares > span:has(.share-bar) {
      grid-column: 1 / -1;
    }
  }
`;

const isMoment = (load: LoadCase) => load === 'roll' || load === 'pitch' || load === 'yaw';

const giveCell = ({ load, give }: CaseAccount, units: UnitSystem) =>
  isMoment(load) ? quantityCell(give, 'angle', units, { decimals: 2 }) : quantityCell(give, 'length', units);

const loadName = ({ load }: CaseAccount) => `${isMoment(load) ? '10 N m' : '100 N'} ${CASE_NAMES[load]}`;

/** A share in whole percent, of a difference the points; a dash for none. */
const shareCell = (share: number) =>
  figureCell(share === 0 ? null : share, (value, isDifference) =>
    isDifference ? formatWithUnit(value, 'share', 'si', { decimals: 0, sign: true }) : percent(value),
  );

/** The ghost's shares are a thinner bar under each. */
export function shareBars({ cases }: ComplianceAccount, ghost: ComplianceAccount | null, units: UnitSystem) {
  const present = PART_ORDER.filter((part) => cases.some(({ shares }) => shares[part] > 0));
  const bar = ({ shares }: CaseAccount, kind = '') => html`<span class="share-bar ${kind}">
    ${PART_ORDER.filter((part) => shares[part] > 0).map(
      (part) => html`<i class=${part} .style="--share: ${shares[part].toFixed(4)}"></i>`,
    )}
  </span>`;
  const behind = (load: LoadCase) => ghost?.cases.find((account) => account.load === load);
  return html`<ul class="key" aria-hidden="true">
      ${present.map((part) => html`<li><i class=${part}></i>${PART_NAMES[part]}</li>`)}
    </ul>
    <div class="shares" aria-hidden="true">
      ${cases.map(
        (account) => html`<span>${loadName(account)}</span>
          <b>${textOf(giveCell(account, units))}</b>
          <span>${bar(account)}${behind(account.load) ? bar(behind(account.load)!, 'ghost') : nothing}</span>`,
      )}
    </div>`;
}

export function accountTable(own: ComplianceAccount, ghost: ComplianceAccount | null, units: UnitSystem) {
  const { cases: loads, root, shares } = own;
  const parts = PART_ORDER.filter((part) => shares[part] > 0 || loads.some((each) => each.shares[part] > 0));
  const table = tableWithGhost('How far it gives, and what part has in it', own, ghost, ({ cases }) => ({
    head: ['load at the wing', 'gives', ...parts.map((part: Part) => PART_NAMES[part])],
    rows: cases.map((account) => ({
      cells: [
        loadName(account),
        giveCell(account, units),
        ...parts.map((part) => shareCell(account.shares[part])),
      ],
    })),
  }));
  const side = root.side;
  const yaw = root.yaw;
  const degrees = (value: number) => formatWithUnit(value, 'angle', units, { decimals: 2, sign: true });
  return html`${table}
    <p class="note">
      Still loads on the drawn shape, held at the board: side and aft pulls at the wing’s root, lift spread over the wing,
      roll as lift to one side, pitch and yaw as a pair of forces at wing and stabilizer. Shares are those of the strain
      energy. 100 N to the side also rolls the wing ${degrees(side.roll)} and yaws it ${degrees(side.yaw)}; 10 N m of yaw
      moves it ${formatWithUnit(yaw.side, 'length', units, { sign: true })} sideways.
    </p>`;
}

/** What stiffens most, and the next best, as a table. */
export function remedyTable(own: readonly Remedy[], ghost: readonly Remedy[] | null) {
  if (own.length === 0) return nothing;
  const less = (ratio: number) => changeCell(ratio - 1);
  const shown = own.slice(0, 6).map(({ label }) => label);
  return tableWithGhost('One change by itself, and how much less gives', own, ghost, (list) => ({
    head: ['change', 'mean of all six', 'to the side', 'roll', 'pitch', 'yaw'],
    rows: list
      .filter(({ label }) => shown.includes(label))
      .map(({ label, left, byCase }) => ({
        cells: [
          label,
          less(left),
          less(byCase.side),
          less(byCase.roll),
          less(byCase.pitch),
          less(byCase.yaw),
        ],
        isHere: label === shown[0],
      })),
  }));
}
