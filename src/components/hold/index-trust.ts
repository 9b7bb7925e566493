/** How far the closed-form index may stand in for the solved figures: what the report over random designs found. */
import { html, type TemplateResult } from 'lit';
import { withMark, writeFixed } from '../../session/number-format.ts';
import type { Correlation, HoldFigure, HoldReport } from '../../solver/studies/hold-report.ts';
import { figureTable } from '../figure-table.ts';
import kept from './hold-report.json' with { type: 'json' };
import { FIGURE_NAMES } from './words.ts';

/** Made by `npm run -s batch -- hold-report`; a test tells when it is no longer what the solver says. */
const report: HoldReport = kept;

/** Rank correlation below which the index stands second to the solved figure. */
const TRUSTED = 0.8;

const FIGURES = Object.keys(FIGURE_NAMES) as HoldFigure[];

export const isIndexSecondary = FIGURES.some((figure) => report.index[figure].value < TRUSTED);

const mark = ({ value }: Correlation) => writeFixed(value, 2);

function list(figures: readonly HoldFigure[]): string {
  const names = figures.map((figure) => `${FIGURE_NAMES[figure]} (${mark(report.index[figure])})`);
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

export function trustReading(): string {
  const weak = FIGURES.filter((figure) => report.index[figure].value < TRUSTED);
  const strong = FIGURES.filter((figure) => report.index[figure].value >= TRUSTED);
  const over = `Over ${report.designs} random valid designs the hold index`;
  if (weak.length === 0)
    return `${over} ranks them as the solved figures do: ${list(strong)}; 1 would be the same order.`;
  const good = strong.length > 0 ? ` and well with ${list(strong)}` : '';
  return `${over} agrees only loosely in rank with ${list(weak)}${good}, where 1 is the same order and 0 no relation. It compares one foil bent or sized differently, not foils that differ in everything: where the two disagree, the solved figure counts.`;
}

/** One short line for beside the index. */
export function trustNote(): string {
  const { value } = report.index.rollFromYaw;
  return `Rank correlation with solved roll from yaw over ${report.designs} random designs: ${mark({ value, designs: 0 })}.`;
}

export function trustTable(): TemplateResult {
  return figureTable(
    'Rank correlation with the solved figures',
    ['', 'hold index', 'stabilizer droops down', 'roll term', 'yaw term', 'designs'],
    FIGURES.map((figure) => ({
      cells: [
        FIGURE_NAMES[figure],
        mark(report.index[figure]),
        mark(report.indexDown[figure]),
        mark(report.rollTerm[figure]),
        mark(report.yawTerm[figure]),
        String(report.index[figure].designs),
      ],
    })),
  );
}

export function trustNoteOfMethod(): TemplateResult {
  return html`<p class="note">
    Spearman’s rank correlation, each figure turned so that more is more hold. ${report.drawn} designs were drawn for the
    ${report.designs} kept (number ${report.seed} of the random row); ones the reader refuses or that carry their weight at
    a lift coefficient outside ${withMark('0.1 to 0.9')} were drawn again; the heading is counted where the craft has such a mode.
  </p>`;
}
