/** What a search came to: still nothing, stopped, a clash, or the proposal with what can be done with it. */
import { html, nothing } from 'lit';
import { fileNameOf, saveTextFile } from '../../session/files.ts';
import type { Proposals } from '../../session/proposals.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import { writeDesign } from '../../solver/design/read.ts';
import type { Proposal } from '../../solver/studies/propose/proposal.ts';
import type { Standing } from '../../solver/studies/propose/standing.ts';
import * as answer from './answer.ts';

export interface FoundContext {
  proposals: Proposals;
  design: Design; // the open one
  ghost: Standing | null;
  units: UnitSystem;
  take: (proposed: Design) => void;
  keep: (proposed: Design) => void;
}

export function foundPart(context: FoundContext) {
  const { proposals, design, units } = context;
  const { proposal, activity, failure, asked, isUnfinished } = proposals;
  if (failure && !proposals.frontDesign) return html`<p class="trouble" role="status">${failure}</p>`;
  if (isUnfinished)
    return html`<p class="say">Stopped. What was found so far is kept.</p>
      <div class="row">
        <button type="button" class="first" @click=${() => void proposals.finish()}>Finish with the best so far</button>
        ${shownTick(proposals)}
      </div>`;
  if (!proposal) return activity === 'idle' ? html`<p class="note">Nothing yet.</p>` : nothing;
  const other =
    asked && asked.design !== design && !isTaken(design, proposal)
      ? html`<p class="note">This was found for the design as it stood then; it has changed since.</p>`
      : nothing;
  switch (proposal.outcome) {
    case 'clash':
      return html`${other}${answer.clashText(proposal.clash, units)}`;
    case 'nowhere':
      return html`${other}<p class="trouble" role="status">
          Nothing within these ranges can be drawn and run. Widen them, or start from a wing that flies.
        </p>`;
    case 'found':
      return html`${other}${answerPart(context, proposal)}`;
  }
}

function answerPart(context: FoundContext, proposal: answer.FoundProposal) {
  const { proposals, design, ghost, units, take, keep } = context;
  const taken = isTaken(design, proposal);
  return html`<p class="say" role="status">${answer.summary(proposal, units)}</p>
    <div class="row">
      <button type="button" class="first" ?disabled=${taken} @click=${() => take(proposal.design)}>
        ${taken ? 'Taken' : 'Take it'}
      </button>
      <button
        type="button"
        @click=${() => saveTextFile(writeDesign(proposal.design), fileNameOf(`${proposal.design.name} proposal`))}
      >
        Save it as a file
      </button>
      <button type="button" @click=${() => keep(proposal.design)}>Keep beside</button>
      ${shownTick(proposals)}
    </div>
    <div class="next">${answer.costs(proposal, units)} ${answer.nextChanges(proposal, units)}</div>
    <div class="pair">${answer.comparison(proposal, ghost, units)} ${answer.movedTable(proposal, ghost, units)}</div>
    <p class="note">
      Drags with the stabilizer’s incidence as drawn, the rider’s stance following. ${proposal.evaluations} wings tried.
      Figures compare designs: no approval of strength or safety.
    </p>`;
}

function shownTick(proposals: Proposals) {
  return html`<label>
    <input
      type="checkbox"
      .checked=${proposals.isShown}
      @change=${(event: Event) => proposals.show((event.target as HTMLInputElement).checked)}
    />
    Draw it behind the wing
  </label>`;
}

/** Whether the open design is the proposal. */
function isTaken(design: Design, proposal: Proposal): boolean {
  if (proposal.outcome !== 'found') return false;
  return design.wing === proposal.design.wing && design.stabilizer === proposal.design.stabilizer;
}
