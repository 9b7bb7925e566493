import { html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { stabilizerSurface } from '../session/foil-surfaces.ts';
import { surfaceFor } from '../session/planform-edits.ts';
import { clamp } from '../session/rounding.ts';
import { formatWithUnit, type UnitSystem } from '../session/units.ts';
import type { Design, Planform } from '../solver/design/document.ts';
import type { Surface } from '../solver/geometry/surface.ts';
import type { Report } from '../solver/report.ts';
import { balanceMark, neutralMark } from './craft-marks.ts';
import { drawingStyles } from './drawing-styles.ts';
import type { Ghost } from './ghost.ts';
import { InSight } from './in-sight.ts';
import {
  besidePlace,
  layOutSide,
  lengthOf,
  type SideLayout,
  sideProfile,
  sideX,
  sideY,
} from './side-shapes.ts';
import { ViewFrame } from './view-frame.ts';

/**
 * The foil from the port side, bow to the left: arm, strut, depth, balance point and neutral point. Heights that do not
 * fit (the balance point stands chest-high) are broken.
 */
@customElement('side-view')
export class SideView extends InSight {
  static override styles = drawingStyles;

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) report: Report | null = null;
  @property() units: UnitSystem = 'workshop';
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  readonly #frame = new ViewFrame(this);

  protected override render() {
    const { design } = this;
    const wing = design && surfaceFor(design.wing);
    if (!design || !wing) return nothing;
    const stabilizer = stabilizerSurface(design);
    const layout = layOutSide(design, wing, stabilizer, this.#frame.width, (name, value) =>
      this.#frame.held(name, value),
    );
    return html`<figure>
      <figcaption>From the side, true scale; the height of the balance point is broken to fit</figcaption>
      <svg viewBox="0 0 ${layout.width} ${layout.height}" height=${layout.height} role="img" aria-label=${this.#summary(design)}>
        ${this.#drawWater(design, layout)} ${this.#drawStrut(design, layout)} ${guard(
          [wing, stabilizer, design.fuselage, layout.scale, layout.originX, layout.originY],
          () => drawFoil(design, wing, stabilizer, layout),
        )}
        ${this.ghost ? drawGhost(this.ghost.design, layout) : nothing} ${this.#drawMarks(design, layout)} ${this.#drawArm(design, layout)}
      </svg>
    </figure>`;
  }

  #length(value: number): string {
    return formatWithUnit(value, 'length', this.units);
  }

  #summary({ brief, stabilizer, strut }: Design): string {
    const neutral = this.report?.stability.neutralPoint;
    const parts = [
      stabilizer ? `stabilizer arm ${this.#length(stabilizer.arm)}` : 'no stabilizer',
      strut ? `strut ${this.#length(strut.x ?? 0)} aft` : 'no strut',
      `balance point ${this.#length(brief.balance.x)} aft and ${this.#length(brief.balance.height)} up`,
    ];
    if (neutral !== undefined) parts.push(`neutral point ${this.#length(neutral)} aft`);
    return `The foil from the side: ${parts.join(', ')}.`;
  }

  #drawWater(design: Design, layout: SideLayout) {
    const { width, height, surfaceY, depth } = layout;
    if (surfaceY === null || depth === null)
      return svg`<rect class="water" y=${layout.airY} width=${width} height=${height - layout.airY}></rect>
        <text x="8" y=${layout.airY + 16}>deep water</text>`;
    const { strut, stabilizer } = design;
    const aft = strut ? (strut.x ?? 0) + 0.75 * strut.chord : 0;
    const x = sideX(layout, (aft + (stabilizer?.arm ?? aft + 0.2)) / 2) - 40;
    const foot = sideY(layout, 0);
    const label = `depth ${this.#length(depth)}`;
    const name = besidePlace(layout, x - 8, x + 8, label);
    return svg`<rect class="water" y=${surfaceY} width=${width} height=${height - surfaceY}></rect>
      <path class="surface" d="M0 ${surfaceY}H${width}"></path>
      <path class="measure" d="M${x - 4} ${foot}h8M${x} ${foot}V${surfaceY}"></path>
      <text x=${name.x} y=${(surfaceY + foot) / 2 + 4} text-anchor=${name.anchor}>${label}</text>
      ${strut ? nothing : svg`<text x="8" y=${surfaceY + 16}>no strut</text>`}`;
  }

  #drawStrut({ strut }: Design, layout: SideLayout) {
    if (!strut) return nothing;
    const { x = 0, chord, length } = strut;
    const [left, right] = [sideX(layout, x - 0.25 * chord), sideX(layout, x + 0.75 * chord)];
    const top = Math.max(layout.boardY, sideY(layout, length));
    const isCut = top > sideY(layout, length) + 1;
    const y = (top + (layout.surfaceY ?? layout.airY)) / 2;
    const label = `strut ${this.#length(length)}, ${this.#length(x)} aft`;
    const name = besidePlace(layout, left - 10, right + 10, label);
    const slant = (at: number) => `M${left - 5} ${at + 3}L${right + 5} ${at - 3}`;
    return svg`<rect class="strut" x=${left} y=${top} width=${right - left} height=${sideY(layout, 0) - top}></rect>
      <rect class="body" x=${left - 26} y=${top - 5} width=${right - left + 60} height="5" rx="2"></rect>
      ${isCut ? svg`<g class="onPaper"><path class="gap" d=${slant(y)}></path></g><path class="cut" d="${slant(y - 3)}${slant(y + 3)}"></path>` : nothing}
      <text x=${name.x} y=${top + 16} text-anchor=${name.anchor} class="air">${label}</text>`;
  }

  #drawMarks({ brief }: Design, layout: SideLayout) {
    const { x, height } = brief.balance;
    const at = sideX(layout, x);
    const foot = sideY(layout, 0);
    const [top, cut] = [layout.balanceY, layout.balanceY + 20];
    const neutral = this.report?.stability.neutralPoint;
    const neutralX = neutral === undefined ? -1 : sideX(layout, neutral);
    const isNeutralIn = neutralX >= 0 && neutralX <= layout.width;
    const name = neutral === undefined ? '' : `neutral point ${this.#length(neutral)} aft`;
    const half = lengthOf(name) / 2;
    const slant = (y: number) => `M${at - 7} ${y + 2}L${at + 7} ${y - 2}`;
    return svg`<path class="measure thin" d="M${at} ${top}V${foot}"></path>
      <path class="cut" d="${slant(cut - 2)}${slant(cut + 2)}"></path>
      ${balanceMark(at, top)}
      ${this.#balanceLabel(layout, at, `${this.#length(x)} aft, ${this.#length(height)} up`)}
      ${
        neutral === undefined || !isNeutralIn
          ? nothing
          : svg`${neutralMark(neutralX, foot)}
          <path class="measure" d="M${neutralX} ${foot + 9}V${layout.labelY - 12}"></path>
          <text x=${clamp(neutralX, half, layout.width - half)} y=${layout.labelY} text-anchor="middle">${name}</text>`
      }`;
  }

  /** In two lines where one does not fit. */
  #balanceLabel(layout: SideLayout, at: number, place: string) {
    const lines = layout.width < 520 ? ['balance point', place] : [`balance point ${place}`];
    const { x, anchor } = besidePlace(layout, at - 12, at + 12, lines.at(-1)!);
    const first = layout.balanceY + (lines.length > 1 ? -1 : 4);
    return lines.map(
      (line, k) => svg`<text class="air" x=${x} y=${first + 15 * k} text-anchor=${anchor}>${line}</text>`,
    );
  }

  #drawArm({ stabilizer }: Design, layout: SideLayout) {
    if (!stabilizer) return nothing;
    const [from, to] = [sideX(layout, 0), sideX(layout, stabilizer.arm)];
    const y = layout.armY;
    return svg`<path class="measure" d="M${from} ${y - 4}v8M${from} ${y}H${to}M${to} ${y - 4}v8"></path>
      <text x=${(from + to) / 2} y=${y - 5} text-anchor="middle">arm ${this.#length(stabilizer.arm)}</text>`;
  }
}

function drawFoil(design: Design, wing: Surface, stabilizer: Surface | null, layout: SideLayout) {
  const { fuselage } = design;
  const aft = stabilizer ? stabilizer.arm + 0.75 * stabilizer.chord(0) : 0.75 * wing.chord(0);
  const thick = fuselage ? Math.max(4, fuselage.diameter * layout.scale) : 0;
  const left = fuselage ? sideX(layout, -fuselage.nose) : 0;
  return svg`${
    fuselage
      ? svg`<rect class="body" x=${left} y=${sideY(layout, 0) - thick / 2} width=${sideX(layout, aft) - left}
        height=${thick} rx=${thick / 2}></rect>`
      : nothing
  }
    ${stabilizer && design.stabilizer ? drawProfile('tail', stabilizer, design.stabilizer, layout) : nothing}
    ${drawProfile('wing', wing, design.wing, layout)}`;
}

function drawProfile(look: string, surface: Surface, planform: Planform, layout: SideLayout) {
  return sideProfile(surface, planform, layout).map((path) => svg`<path class=${look} d=${path}></path>`);
}

function drawGhost(design: Design, layout: SideLayout) {
  const [wing, tail] = [surfaceFor(design.wing), stabilizerSurface(design)];
  return [
    wing ? drawProfile('ghost', wing, design.wing, layout) : nothing,
    tail && design.stabilizer ? drawProfile('ghost', tail, design.stabilizer, layout) : nothing,
  ];
}

declare global {
  interface HTMLElementTagNameMap {
    'side-view': SideView;
  }
}
