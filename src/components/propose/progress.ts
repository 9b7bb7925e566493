/** What a search or a front is doing, how far it is, and a way to stop it. */
import { html, nothing } from 'lit';
import type { Activity, Proposals } from '../../session/proposals.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';

const DOING: Readonly<Record<Exclude<Activity, 'idle'>, string>> = {
  searching: 'Trying wings',
  settling: 'Settling the best one',
  fronting: 'Drawing the front',
};

/** Nothing while none of `mine` is under way. */
export function progressOf(proposals: Proposals, mine: readonly Activity[], units: UnitSystem) {
  const { activity, share, bestDrag } = proposals;
  if (activity === 'idle' || !mine.includes(activity)) return nothing;
  const what = DOING[activity];
  const best =
    bestDrag === null || activity === 'fronting'
      ? ''
      : ` best so far ${formatWithUnit(bestDrag, 'force', units, { decimals: 1 })}, drawn behind the wing`;
  return html`<div class="wait">
    <span role="status">${what} …${best}</span>
    <progress max="1" .value=${share} aria-label=${what}></progress>
    <button type="button" @click=${() => proposals.cancel()}>Cancel</button>
  </div>`;
}
