import { html, LitElement, nothing, svg } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { stabilizerSurface, stationsOf } from '../session/foil-surfaces.ts';
import { surfaceFor } from '../session/planform-edits.ts';
import { formatWithUnit, type UnitSystem } from '../session/units.ts';
import type { Design } from '../solver/design/document.ts';
import type { Surface } from '../solver/geometry/surface.ts';
import type { Report } from '../solver/report.ts';
import { px } from './corners.ts';
import { DragHandles, refusalNote } from './drag-handle.ts';
import { drawingStyles } from './drawing-styles.ts';
import type { Ghost } from './ghost.ts';
import { handleStyles } from './handle-styles.ts';
import { headOnHandles } from './head-on-handles.ts';
import { drawHeeled, heelControl, heeledFoil, heelStyles } from './head-on-heel.ts';
import { forceStyles, headOnKey, keyStyles, leanHatch } from './head-on-key.ts';
import { cruiseDepth, drawGhost, drawStrut, drawSurfaces, drawTip, drawWater } from './head-on-parts.ts';
import {
  type Arrow,
  arrowScale,
  arrowsOf,
  type HeadOnLayout,
  layOutHeadOn,
  stationCount,
  stationForces,
} from './head-on-shapes.ts';
import { ViewFrame } from './view-frame.ts';

/**
 * The foil seen from ahead at true scale under the water surface, with the force on each station: what carries, what is
 * pushed sideways, what is leaned away. Handles bend the wing and set its span. The line follows the design at once;
 * the forces follow with the report. A slide heels the picture under the water line. Sends `design-edit`.
 */
@customElement('head-on-view')
export class HeadOnView extends LitElement {
  static override styles = [drawingStyles, forceStyles, keyStyles, handleStyles, heelStyles];

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) report: Report | null = null;
  @property() units: UnitSystem = 'workshop';
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  /** Degrees, starboard down: how the picture is looked at, no part of the design. */
  @state() private heel = 0;

  readonly #frame = new ViewFrame(this);
  readonly #handles = new DragHandles(this);

  protected override render() {
    const { design, report, units } = this;
    const wing = design && surfaceFor(design.wing);
    if (!design || !wing) return nothing;
    const stabilizer = stabilizerSurface(design);
    const layout = this.#layOut(design, wing, stabilizer);
    const { width, height } = layout;
    const heeled = heeledFoil(design, wing, stabilizer, this.heel, this.ghost?.design);
    return html`<figure>
      <figcaption>
        ${
          heeled?.isHeeled
            ? 'Head-on, heeled, true scale. Forces and handles come back when it is level.'
            : `Head-on, true scale${layout.breakY === null ? '' : ' (the strut is broken)'}. Drag a handle, or focus it and use the arrow keys.`
        }
      </figcaption>
      <svg viewBox="0 0 ${width} ${height}" height=${height} role="group" aria-label="The foil seen head-on">
        <defs>${leanHatch}</defs>
        ${
          heeled?.isHeeled
            ? drawHeeled(heeled, layout, units)
            : this.#drawLevel(design, wing, stabilizer, layout)
        }
      </svg>
      ${heeled ? heelControl(heeled, units, this.#onHeel) : nothing}
      ${refusalNote(this.#handles.refusal)} ${headOnKey(report, units)}
    </figure>`;
  }

  #drawLevel(design: Design, wing: Surface, stabilizer: Surface | null, layout: HeadOnLayout) {
    const { report, units, ghost } = this;
    return svg`<g role="img" aria-label=${this.#summary(design, wing)}>
        ${drawWater(design, layout, units)} ${drawStrut(design, layout)}
        ${ghost ? drawGhost({ wing: surfaceFor(ghost.design.wing), stabilizer: stabilizerSurface(ghost.design) }, layout) : nothing}
        ${guard([wing, stabilizer, layout.scale, layout.originX, layout.originY], () =>
          drawSurfaces(design, wing, stabilizer, layout),
        )}
        ${report ? drawForces(report, wing, stabilizer, layout, this.#arrowScale(report, layout)) : nothing}
        ${drawTip(wing, layout, units)}
      </g>
      ${this.#handles.draw([design, ...Object.values(layout)], () => headOnHandles(design, layout), units)}`;
  }

  readonly #onHeel = (heel: number): void => {
    this.heel = heel;
  };

  #layOut(design: Design, wing: Surface, stabilizer: Surface | null): HeadOnLayout {
    const designs = this.ghost ? [design, this.ghost.design] : [design];
    const heights = [wing, stabilizer].flatMap((surface) => (surface ? heightsOf(surface) : []));
    return layOutHeadOn({
      width: this.#frame.width,
      scale: this.#frame.scaleOf(designs),
      top: this.#frame.held('top', Math.max(...heights)),
      low: this.#frame.growing('low', -Math.min(...heights)),
      depth: cruiseDepth(design),
      strutLength: design.strut?.length ?? 0,
    });
  }

  #arrowScale(report: Report, layout: HeadOnLayout): number {
    const { condition, geometry } = report;
    const scale = arrowScale(condition.weightCarried, geometry.wing.unrolledLength, layout.arrowRoom);
    return this.#frame.held('arrows', scale);
  }

  #summary(design: Design, wing: Surface): string {
    const { units, report } = this;
    const write = (value: number) => formatWithUnit(value, 'length', units);
    const depth = cruiseDepth(design);
    const place = depth === null ? 'in deep water' : `${write(depth)} below the surface`;
    const shape = `Wing of ${write(wing.span)} span, its tips ${write(Math.abs(wing.tipDrop))} ${wing.tipDrop < 0 ? 'above' : 'below'} its root, ${place}.`;
    if (!report) return shape;
    const { verticalLift, pushedSideways, leanedAway } = report.ledger;
    const [carries, sideways, leaned] = [verticalLift, pushedSideways, leanedAway].map((force) =>
      formatWithUnit(force, 'force', units),
    );
    return `${shape} It carries ${carries}; ${sideways} is pushed sideways and cancels; ${leaned} is leaned away.`;
  }
}

const heightsOf = (surface: Surface): number[] => stationsOf(surface).map(({ z }) => z);

const TAIL_STATIONS = 4;

function drawForces(
  report: Report,
  wing: Surface,
  stabilizer: Surface | null,
  layout: HeadOnLayout,
  perLoad: number,
) {
  const arrows = (surface: Surface, strips: 'wing' | 'stabilizer', count: number) =>
    arrowsOf(stationForces(report.strips[strips], count), surface, layout, perLoad);
  const tail = stabilizer ? arrows(stabilizer, 'stabilizer', TAIL_STATIONS) : [];
  const main = arrows(wing, 'wing', stationCount(layout.width));
  return svg`<path class="tail-force" d=${path(tail, leaning)}></path>
    <path class="force" d=${path(main, leaning)}></path>
    <path class="carry" d=${path(main, ({ x, y, tipY }) => `M${px(x)} ${px(y)}V${px(tipY)}`)}></path>
    <path class="thrown" d=${path(main, ({ x, tipX, tipY }) => `M${px(x)} ${px(tipY)}H${px(tipX)}`)}></path>
    <path class="lean" d=${path(main, leanedAway)}></path>
    <path class="end" d=${path(main, ({ tipX, tipY }) => `M${px(tipX)} ${px(tipY)}h0`)}></path>`;
}

/** One path for all stations: a drag repaints six shapes, not a hundred. */
const path = (arrows: readonly Arrow[], draw: (arrow: Arrow) => string): string => arrows.map(draw).join('');

const leaning = ({ x, y, tipX, tipY }: Arrow): string => `M${px(x)} ${px(y)}L${px(tipX)} ${px(tipY)}`;

/** Nothing where it would be thinner than a hair. */
const leanedAway = ({ x, tipY, fullY }: Arrow): string =>
  Math.abs(tipY - fullY) < 0.3 ? '' : `M${px(x - 3)} ${px(tipY)}V${px(fullY)}h6V${px(tipY)}Z`;

declare global {
  interface HTMLElementTagNameMap {
    'head-on-view': HeadOnView;
  }
}
