import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { describe, it } from 'vitest';
import { stackColumns } from '../../src/components/chart-columns.ts';
import type { PlotGrid } from '../../src/components/curve/plot-grid.ts';
import { cellsWithGhost, withGhost } from '../../src/components/ghost.ts';
import '../../src/components/ghost-chip.ts';
import type { GhostChip } from '../../src/components/ghost-chip.ts';
import '../../src/components/headline-figures.ts';
import type { LineChart } from '../../src/components/line-chart.ts';
import { QUESTIONS } from '../../src/components/questions.ts';
import type { Ghost } from '../../src/session/ghost.ts';
import { Studies } from '../../src/session/studies.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import '../../web/tokens.css';
import { sample } from '../support/sample-report.ts';

const onPage = () =>
  new Studies({
    makeWorker: () => {
      throw new Error('none here');
    },
    loadStudies: async () => STUDIES,
  });

const bent = (): Ghost =>
  sample('curved', {
    'wing.droop': { kind: 'arc', tipAngle: 12 },
    'wing.section.root': { kind: 'naca4', code: '2409' },
  });

describe('the ghost beside figures and behind curves', () => {
  it('has a chip with its name, which lets it go by key', async () => {
    const chip = await fixture<GhostChip>(
      html`<ghost-chip .ghost=${{ ...bent(), name: 'Outer bay', id: 'a' }}></ghost-chip>`,
    );
    await expect(chip).to.be.accessible();
    let isGone = false;
    chip.addEventListener('ghost-let-go', () => {
      isGone = true;
    });
    const button = chip.shadowRoot!.querySelector('button')!;
    expect(chip.shadowRoot!.textContent!.replace(/\s+/g, ' ')).to.contain('Ghost: Outer bay');
    button.click();
    expect(isGone).to.equal(true);
    chip.ghost = null;
    await chip.updateComplete;
    expect(chip.shadowRoot!.querySelector('p')).to.equal(null);
  });

  it('stands in the headline figures with the difference', async () => {
    const { report } = sample();
    const ghost = bent();
    const figures = await fixture(
      html`<headline-figures .report=${report} .ghost=${ghost}></headline-figures>`,
    );
    const other = ghost.report!.stability.holdIndex!;
    const difference = report.stability.holdIndex! - other;
    expect(figures.shadowRoot!.textContent).to.contain(
      `ghost ${other.toFixed(2)} (+${difference.toFixed(2)})`,
    );
    await expect(figures).to.be.accessible();
  });

  it('is put behind lines under its own names', () => {
    const line = { name: 'power', x: [1, 2], y: [3, 4], colour: '--carry' as const };
    const [own, ghost] = withGhost([line], [{ ...line, y: [5, 6] }]);
    expect(own).to.equal(line);
    expect(ghost).to.deep.include({ name: 'ghost: power', colour: '--ghost', y: [5, 6] });
    expect(withGhost([line], null)).to.deep.equal([line]);
  });

  it('is read at the places of the plots it stands in, and no further than it goes', () => {
    const cell = { name: 'Hold index', unit: '', decimals: 2, summary: '' };
    const line = (y: number[]) => [{ name: 'Hold index', y, colour: '--tail' as const }];
    const [joined] = cellsWithGhost([{ ...cell, lines: line([0, 1, 2, 3]) }], [0, 10, 20, 30], {
      cells: [{ ...cell, lines: line([0, 4]) }],
      x: [0, 20],
    });
    expect(joined!.lines[1]!.y).to.deep.equal([0, 2, 4, Number.NaN]);
  });

  it('stands beside a stack, not on it', () => {
    const columns = [
      [1, 2],
      [10, 20],
      [5, 5],
    ];
    expect(stackColumns(columns, 1)).to.deep.equal([
      [1, 2],
      [11, 22],
      [5, 5],
    ]);
  });

  // A line that every question's first charts have of a ghost.
  const LINES: Record<string, string> = {
    spread: 'ghost wing',
    curve: 'ghost: Hold index',
    hold: 'ghost: falls over',
    speed: 'ghost: all drag',
    stiffness: 'ghost: flying',
    section: 'ghost: upper side',
    skin: 'ghost: upper side',
  };

  it.each(Object.keys(LINES))('is drawn in %s until let go', { timeout: 60_000 }, async (id) => {
    const question = QUESTIONS.find((each) => each.id === id)!;
    await question.load();
    const { design, report } = sample();
    const context = {
      design,
      report,
      units: 'workshop' as const,
      studies: onPage(),
      session: { ridden: { points: [], band: null } },
      tick: 0,
    };
    const show = (ghost: Ghost | null) => question.render({ ...context, ghost } as never);
    const box = await fixture<HTMLElement>(html`<div style="width: 900px">${show(bent())}</div>`);
    const panel = box.firstElementChild as HTMLElement & {
      ghost: Ghost | null;
      updateComplete: Promise<boolean>;
    };
    const lines = () => namesWithin(panel.shadowRoot!);
    await waitUntil(() => lines().includes(LINES[id]!), `${LINES[id]} among ${lines().join(', ')}`, {
      timeout: 50_000,
    });
    panel.ghost = null;
    await panel.updateComplete;
    await waitUntil(() => !lines().some((name) => name.startsWith('ghost')), 'let go');
  });
});

/** The names of all lines of all charts within. */
function namesWithin(root: ShadowRoot): string[] {
  const charts = [...root.querySelectorAll<LineChart>('line-chart')].flatMap(({ series }) => series);
  const cells = [...root.querySelectorAll<PlotGrid>('plot-grid')].flatMap((grid) => grid.cells);
  const inner = [...root.querySelectorAll('*')].flatMap((each) =>
    each.shadowRoot ? namesWithin(each.shadowRoot) : [],
  );
  return [...charts, ...cells.flatMap(({ lines }) => lines)].map(({ name }) => name).concat(inner);
}
