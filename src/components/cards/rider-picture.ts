import { html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { stabilizerSurface, stationsOf } from '../../session/foil-surfaces.ts';
import { surfaceFor } from '../../session/planform-edits.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import { drawingStyles } from '../drawing-styles.ts';
import { cruiseDepth, drawStrut, drawSurfaces, drawWater } from '../head-on-parts.ts';
import { type HeadOnLayout, layOutHeadOn, silhouette } from '../head-on-shapes.ts';
import { ViewFrame } from '../view-frame.ts';
import { pictureStyles } from './rider-styles.ts';

/** Two foils seen head-on at one true scale, the first solid, the second as a dashed outline. Nothing to drag. */
@customElement('rider-picture')
export class RiderPicture extends LitElement {
  static override styles = [drawingStyles, pictureStyles];

  @property({ attribute: false }) one: Design | null = null;
  @property({ attribute: false }) other: Design | null = null;
  @property() units: UnitSystem = 'workshop';

  readonly #frame = new ViewFrame(this);

  protected override render() {
    const { one, other, units } = this;
    const wing = one && surfaceFor(one.wing);
    if (!one || !other || !wing) return nothing;
    const layout = this.#layOut(one, other);
    const { width, height } = layout;
    return html`<figure>
      <svg viewBox="0 0 ${width} ${height}" height=${height} role="img" aria-label=${this.#summary(one, other)}>
        ${drawWater(one, layout, units)} ${drawStrut(one, layout)}
        ${drawSurfaces(one, wing, stabilizerSurface(one), layout)} ${outlines(other, layout)}
      </svg>
    </figure>`;
  }

  #layOut(one: Design, other: Design): HeadOnLayout {
    const heights = [one, other].flatMap((design) =>
      [surfaceFor(design.wing), stabilizerSurface(design)].flatMap((surface) =>
        surface ? stationsOf(surface).map(({ z }) => z) : [],
      ),
    );
    return layOutHeadOn({
      width: this.#frame.width,
      scale: this.#frame.scaleOf([one, other]),
      top: Math.max(...heights),
      low: -Math.min(...heights),
      depth: cruiseDepth(one),
      strutLength: one.strut?.length ?? 0,
    });
  }

  #summary(one: Design, other: Design): string {
    const size = ({ wing }: Design) => {
      const surface = surfaceFor(wing);
      const write = (value: number) => formatWithUnit(value, 'length', this.units);
      return surface
        ? `${write(surface.span)} span with a tip drop of ${write(surface.tipDrop)}`
        : 'no drawing';
    };
    return `Both foils seen head-on at the same scale: the first of ${size(one)}, the second of ${size(other)}.`;
  }
}

function outlines({ wing, stabilizer, ...rest }: Design, layout: HeadOnLayout) {
  const tail = stabilizerSurface({ wing, stabilizer, ...rest });
  const main = surfaceFor(wing);
  return svg`${main ? svg`<path class="second" d=${silhouette(main, wing.section, layout)}></path>` : nothing}
    ${tail && stabilizer ? svg`<path class="second" d=${silhouette(tail, stabilizer.section, layout)}></path>` : nothing}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'rider-picture': RiderPicture;
  }
}
