import { css, html, nothing, svg } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { stabilizerSurface } from '../session/foil-surfaces.ts';
import { surfaceFor } from '../session/planform-edits.ts';
import { formatWithUnit, type UnitSystem } from '../session/units.ts';
import type { Design } from '../solver/design/document.ts';
import type { Surface } from '../solver/geometry/surface.ts';
import type { Report } from '../solver/report.ts';
import { balanceMark, neutralMark } from './craft-marks.ts';
import { DragHandles, refusalNote } from './drag-handle.ts';
import { drawingStyles } from './drawing-styles.ts';
import type { Ghost } from './ghost.ts';
import { handleStyles } from './handle-styles.ts';
import { InSight } from './in-sight.ts';
import { panelStyles } from './panel-styles.ts';
import { planHandles } from './plan-handles.ts';
import {
  acrossX,
  alongY,
  BEHIND_WING,
  type Cut,
  cutOf,
  fuselageTail,
  layOutPlan,
  NAME_LINE,
  outlinePath,
  type PlanLayout,
  reachOf,
  spacedLabels,
  sternOf,
  strutPath,
  withMarks,
} from './plan-shapes.ts';
import { ViewFrame } from './view-frame.ts';

const MOST_HEIGHT = 0.72; // share of the window that a drawing in full length may take

/**
 * The foil from above at the scale of the head-on view, wing and stabilizer in true position; where that is too tall
 * for the window a stretch of bare fuselage is left out, and a button brings it back. Handles set chords, span, sweep
 * and the stabilizer's arm. Sends `design-edit`.
 */
@customElement('plan-view')
export class PlanView extends InSight {
  static override styles = [
    panelStyles,
    drawingStyles,
    handleStyles,
    css`
      .planform {
        fill: color-mix(in oklab, var(--carry) 16%, var(--raised));
        stroke: var(--ink);
        stroke-width: 1.3;
        stroke-linejoin: round;
      }
      .tailform {
        fill: color-mix(in oklab, var(--tail) 20%, var(--raised));
        stroke: var(--tail);
        stroke-width: 1.3;
        stroke-linejoin: round;
      }
      .head {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0.2rem 0.8rem;
      }
      /* Nothing to see. A drawing that grows or shrinks as it is dragged has the browser sort the page's layers anew. */
      .extent {
        fill: transparent;
        pointer-events: none;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) report: Report | null = null;
  @property() units: UnitSystem = 'workshop';
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;
  /** What the button asks for; null: shortened where the full length does not fit. */
  @state() private shortened: boolean | null = null;

  readonly #frame = new ViewFrame(this);
  readonly #handles = new DragHandles(this);

  protected override render() {
    const { design, units } = this;
    const wing = design && surfaceFor(design.wing);
    if (!design || !wing) return nothing;
    const stabilizer = stabilizerSurface(design);
    const layout = this.#layOut(design, wing, stabilizer);
    const { width, height, cut } = layout;
    const placed = Object.values({ ...layout, ...cut, cut: null });
    return html`<figure class="onPaper">
      <div class="head">
        <figcaption>From above, same scale${cut ? ' (the fuselage is shortened)' : ''}</figcaption>
        ${this.#lengthButton(cut)}
      </div>
      <svg viewBox="0 0 ${width} ${height}" height=${height} role="group" aria-label="The foil from above">
        <rect class="extent" width=${width} height=${height}></rect>
        <g role="img" aria-label=${this.#summary(design, wing)}>
          ${drawBody(design, layout)}
          ${guard([wing, stabilizer, ...placed], () => drawSurfaces(wing, stabilizer, layout))}
          ${this.ghost ? drawGhost(this.ghost, layout) : nothing}
          ${design.strut ? svg`<path class="strut" d=${strutPath(design.strut, layout)}></path>` : nothing}
          ${this.#drawMarks(design, wing, layout)} ${drawArm(design, layout, units)}
        </g>
        ${this.#handles.draw([design, ...placed], () => planHandles(design, layout), units)}
      </svg>
      ${refusalNote(this.#handles.refusal)}
    </figure>`;
  }

  #layOut(design: Design, wing: Surface, stabilizer: Surface | null): PlanLayout {
    const frame = this.#frame;
    const designs = this.ghost ? [design, this.ghost.design] : [design];
    const scale = frame.scaleOf(designs);
    const own = withMarks(reachOf(design, wing, stabilizer), wing, this.#marksOf(design), scale);
    const reach = { fore: frame.held('fore', own.fore), aft: frame.growing('aft', own.aft) };
    return layOutPlan(frame.width, scale, reach, this.#cut(design, wing, stabilizer, own, scale));
  }

  #cut(
    design: Design,
    wing: Surface,
    stabilizer: Surface | null,
    { fore, aft }: { fore: number; aft: number },
    scale: number,
  ): Cut | null {
    const isTall = (aft - fore) * scale > MOST_HEIGHT * window.innerHeight;
    const isShort = this.#frame.held('short', (this.shortened ?? isTall) ? 1 : 0) === 1;
    const cut = cutOf(design, wing, stabilizer, this.#marksOf(design));
    const removed = this.#frame.held('removed', isShort && cut ? cut.removed : 0);
    return cut && removed > 0 ? { ...cut, removed: Math.min(removed, cut.to - cut.from) } : null;
  }

  /** Places of balance point and neutral point, m aft. */
  #marksOf({ brief }: Design): number[] {
    const neutral = this.report?.stability.neutralPoint;
    return neutral === undefined ? [brief.balance.x] : [brief.balance.x, neutral];
  }

  #lengthButton(cut: Cut | null) {
    const canCut = cut || this.shortened === false;
    if (!canCut) return nothing;
    return html`<button type="button" @click=${() => (this.shortened = !cut)}>
      ${cut ? 'Show its full length' : 'Shorten the fuselage'}
    </button>`;
  }

  #summary(design: Design, wing: Surface): string {
    const write = (value: number) => formatWithUnit(value, 'length', this.units);
    const chords = `root chord ${write(wing.chord(0))}, tip chord ${write(wing.chord(1))}`;
    const arm = design.stabilizer ? ` Stabilizer arm ${write(design.stabilizer.arm)}.` : ' No stabilizer.';
    return `Wing from above: span ${write(wing.span)}, ${chords}.${arm}`;
  }

  /** Balance point and neutral point on the centre line, their names beside it. */
  #drawMarks(design: Design, wing: Surface, layout: PlanLayout) {
    const neutral = this.report?.stability.neutralPoint;
    const marks = [
      { x: design.brief.balance.x, name: 'balance point', draw: balanceMark },
      ...(neutral === undefined ? [] : [{ x: neutral, name: 'neutral point', draw: neutralMark }]),
    ]
      .filter(({ x }) => alongY(layout, x) > 0 && alongY(layout, x) < layout.height)
      .sort((one, other) => one.x - other.x); // names in the order of their marks: lines to them do not cross
    const places = marks.map(({ x }) => alongY(layout, x));
    const clear = alongY(layout, sternOf(wing)) + BEHIND_WING; // names stand behind the wing, not on it
    const lines = spacedLabels(
      places.map((place) => Math.max(place, clear)),
      NAME_LINE,
    );
    const { originX } = layout;
    return marks.map(({ name, draw, x }, k) => {
      const [place, line] = [places[k]!, lines[k]!];
      const label = `${name} ${formatWithUnit(x, 'length', this.units)}`;
      return svg`<path class="measure" d="M${originX + 8} ${place}L${originX + 24} ${line}h6"></path>
        <text x=${originX + 34} y=${line + 4}>${label}</text>${draw(originX, place)}`;
    });
  }
}

function drawBody(design: Design, layout: PlanLayout) {
  const { fuselage } = design;
  if (!fuselage) return nothing;
  const { originX, scale, cut } = layout;
  const half = Math.max(2, (fuselage.diameter / 2) * scale);
  const nose = alongY(layout, -fuselage.nose);
  const tail = alongY(layout, fuselageTail(design));
  const middle = cut ? (alongY(layout, cut.from) + alongY(layout, cut.to)) / 2 : 0;
  const slant = (y: number) => `M${originX - half - 5} ${y + 3}L${originX + half + 5} ${y - 3}`;
  return svg`<rect class="body" x=${originX - half} y=${nose} width=${2 * half} height=${Math.max(0, tail - nose)} rx=${half}></rect>
    ${cut ? svg`<path class="gap" d=${slant(middle)}></path><path class="cut" d="${slant(middle - 3)}${slant(middle + 3)}"></path>` : nothing}`;
}

function drawSurfaces(wing: Surface, stabilizer: Surface | null, layout: PlanLayout) {
  return svg`<path class="planform" d=${outlinePath(wing, layout)}></path>
    ${stabilizer ? svg`<path class="tailform" d=${outlinePath(stabilizer, layout)}></path>` : nothing}`;
}

function drawGhost({ design }: Ghost, layout: PlanLayout) {
  const surfaces = [surfaceFor(design.wing), stabilizerSurface(design)];
  return surfaces.map((surface) =>
    surface ? svg`<path class="ghost" d=${outlinePath(surface, layout)}></path>` : nothing,
  );
}

/** The arm as a dimension to port of the fuselage. */
function drawArm({ stabilizer }: Design, layout: PlanLayout, units: UnitSystem) {
  if (!stabilizer) return nothing;
  const x = acrossX(layout, 0) - 26;
  const [from, to] = [alongY(layout, 0), alongY(layout, stabilizer.arm)];
  const label = `arm ${formatWithUnit(stabilizer.arm, 'length', units)}`;
  return svg`<path class="measure" d="M${x - 4} ${from}h8M${x} ${from}V${to}M${x - 4} ${to}h8"></path>
    <text x=${x - 8} y=${(from + to) / 2 + 30} text-anchor="end">${label}</text>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'plan-view': PlanView;
  }
}
