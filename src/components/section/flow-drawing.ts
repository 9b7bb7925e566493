/** The section at true scale with the state of its boundary layer along both sides, and where it turns or lets go. */
import { css, html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { SectionSide, SectionView } from '../../solver/studies/section-view.ts';

const WIDTH = 1000;
const MARGIN = 30;
const ROOM = 46; // px above and below for the marks

export const flowStyles = css`
  .flow {
    display: block;
    width: 100%;
    height: auto;
    max-width: 62rem;
  }
  .flow .body {
    fill: var(--water);
    stroke: none;
  }
  .flow .ghost-outline {
    fill: none;
    stroke: var(--ghost);
    stroke-width: 2;
    stroke-dasharray: 6 4;
    vector-effect: non-scaling-stroke;
  }
  .flow .laminar,
  .flow .turbulent {
    fill: none;
    stroke: var(--surface);
    stroke-width: 5;
    vector-effect: non-scaling-stroke;
  }
  .flow .turbulent {
    stroke: var(--thrown);
    stroke-dasharray: 7 3;
  }
  .flow .mark {
    fill: var(--ink);
    stroke: none;
  }
  .flow .bubble {
    fill: none;
    stroke: var(--lean);
    stroke-width: 4;
  }
  .flow .gone {
    stroke: var(--bad);
    stroke-width: 3;
    fill: none;
  }
  .flow text {
    fill: var(--ink);
    font-size: 17px;
    font-variant-numeric: tabular-nums;
  }
  .flow-key {
    display: flex;
    flex-wrap: wrap;
    gap: 0.1rem 1rem;
    margin: 0.1rem 0 0.4rem;
    padding: 0;
    list-style: none;
    font-size: var(--step--1);
    color: var(--soft);
  }
  .flow-key svg {
    vertical-align: middle;
    margin-right: 0.3rem;
  }
  @media (max-width: 40rem) {
    .flow text {
      font-size: 34px;
    }
  }
`;

/** The ghost's outline, dashed behind it, on the same chord. */
export function flowDrawing(
  { outline, flow, station }: SectionView,
  ghost: SectionView | null,
): TemplateResult {
  const scale = WIDTH - 2 * MARGIN;
  const heights = [...outline.y, ...(ghost?.outline.y ?? [])];
  const top = Math.max(...heights) * scale + ROOM;
  const height = top - Math.min(...heights) * scale + ROOM;
  const at = (x: number, y: number) => `${(MARGIN + x * scale).toFixed(1)} ${(top - y * scale).toFixed(1)}`;
  const line = (xs: ArrayLike<number>, ys: ArrayLike<number>, from = 0, to = xs.length) =>
    Array.from(
      { length: Math.max(0, to - from) },
      (_, k) => `${k ? 'L' : 'M'}${at(xs[from + k]!, ys[from + k]!)}`,
    ).join('');
  const side = (state: SectionSide, sign: 1 | -1): SVGTemplateResult => {
    const turn = state.isTurbulent.indexOf(1);
    const end = turn < 0 ? state.x.length : turn + 1;
    return svg`<path class="laminar" d=${line(state.x, state.y, 0, end)}></path>
      <path class="turbulent" d=${line(state.x, state.y, end - 1)}></path>
      ${marks(state, sign, (x) => {
        const k = Array.from(state.x).findIndex(
          (place, i) => place >= x && i > state.x.indexOf(Math.min(...state.x)),
        );
        return [MARGIN + x * scale, top - state.y[k < 0 ? state.y.length - 1 : k]! * scale];
      })}`;
  };
  return html`<svg
      class="flow"
      viewBox="0 0 ${WIDTH} ${height.toFixed(0)}"
      role="img"
      aria-label="The ${station.part} section at true scale, its flow marked laminar and turbulent. ${flow ? flowWords(flow.upper, flow.lower) : ''}"
    >
      <path class="body" d="${line(outline.x, outline.y)}Z"></path>
      ${ghost ? svg`<path class="ghost-outline" d="${line(ghost.outline.x, ghost.outline.y)}Z"></path>` : nothing}
      ${flow ? svg`${side(flow.upper, 1)} ${side(flow.lower, -1)}` : svg`<path class="laminar" d="${line(outline.x, outline.y)}Z"></path>`}
    </svg>
    ${flow ? key(flow.upper.bubble !== null || flow.lower.bubble !== null, flow.upper.separation < 1 || flow.lower.separation < 1, ghost !== null) : nothing}`;
}

function marks(state: SectionSide, sign: 1 | -1, at: (x: number) => [number, number]): SVGTemplateResult {
  const { transition, bubble, separation } = state;
  const [tx, ty] = at(transition);
  const tip = ty - sign * 7;
  const base = tip - sign * 13;
  const label = transition < 1 ? `${Math.round(100 * transition)} %` : '';
  const anchor = transition > 0.9 ? 'end' : 'middle';
  return svg`${
    transition < 1
      ? svg`<path class="mark" d="M${tx} ${tip}L${tx - 8} ${base}L${tx + 8} ${base}Z"></path>
          <text x=${tx} y=${sign > 0 ? base - 6 : base + 22} text-anchor=${anchor}>${label}</text>`
      : nothing
  }
    ${bubble ? bracket(at(bubble.from), at(bubble.to), sign) : nothing}
    ${separation < 1 ? cross(at(separation)) : nothing}`;
}

function bracket([x, y]: [number, number], [endX, endY]: [number, number], sign: 1 | -1): SVGTemplateResult {
  const off = 9 * sign;
  return svg`<path class="bubble" d="M${x} ${y}V${y - off}L${endX} ${endY - off}V${endY}"></path>`;
}

function cross([x, y]: [number, number]): SVGTemplateResult {
  return svg`<path class="gone" d="M${x - 9} ${y - 9}L${x + 9} ${y + 9}M${x - 9} ${y + 9}L${x + 9} ${y - 9}"></path>`;
}

function key(hasBubble: boolean, hasGone: boolean, hasGhost: boolean): TemplateResult {
  const item = (drawing: SVGTemplateResult, words: string) =>
    html`<li><svg class="flow" .style=${'display:inline;width:26px;height:12px'} viewBox="0 0 26 12" aria-hidden="true">${drawing}</svg>${words}</li>`;
  return html`<ul class="flow-key">
    ${item(svg`<path class="laminar" d="M0 6H26"></path>`, 'laminar')}
    ${item(svg`<path class="turbulent" d="M0 6H26"></path>`, 'turbulent')}
    ${item(svg`<path class="mark" d="M13 11L6 1H20Z"></path>`, 'turns turbulent')}
    ${hasBubble ? item(svg`<path class="bubble" d="M3 11V4H23V11"></path>`, 'laminar bubble') : nothing}
    ${hasGone ? item(svg`<path class="gone" d="M8 1L18 11M8 11L18 1"></path>`, 'lets go') : nothing}
    ${hasGhost ? item(svg`<path class="ghost-outline" d="M0 6H26"></path>`, 'ghost’s outline') : nothing}
  </ul>`;
}

/** "Upper side laminar to 47 %, lower side to 62 % of the chord." */
export function flowWords(upper: SectionSide, lower: SectionSide): string {
  const run = ({ transition }: SectionSide) =>
    transition < 1 ? `laminar to ${Math.round(100 * transition)} % of the chord` : 'laminar all the way';
  const odd = ([name, { bubble, separation }]: [string, SectionSide]) =>
    bubble?.isOpen
      ? [
          `The laminar layer of the ${name} side lets go at ${Math.round(100 * bubble.from)} % and does not come back.`,
        ]
      : [
          ...(bubble
            ? [
                `A laminar bubble stands on the ${name} side from ${Math.round(100 * bubble.from)} to ${Math.round(100 * bubble.to)} %.`,
              ]
            : []),
          ...(separation < 1
            ? [`The flow lets go of the ${name} side at ${Math.round(100 * separation)} %.`]
            : []),
        ];
  return [
    `Upper side ${run(upper)}, lower side ${run(lower)}.`,
    ...odd(['upper', upper]),
    ...odd(['lower', lower]),
  ].join(' ');
}
