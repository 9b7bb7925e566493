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
import { falseDifferences, ghostCells } from '../support/ghost-cells.ts';
import { sample } from '../support/sample-report.ts';

const onPage = () =>
  new Studies({
    makeWorker: () => {
      throw new Error('none here');
    },
    loadStudies: async () => STUDIES,
  });

const bent = (more: Record<string, unknown> = {}): Ghost =>
  sample('curved', {
    ...more,
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
    spread: 'ghost: wing',
    curve: 'ghost: Hold index',
    hold: 'ghost: falls over',
    speed: 'ghost: all drag',
    stiffness: 'ghost: flying',
    section: 'ghost: upper side',
    skin: 'ghost: upper side',
  };

  /** Tables in which each question has the ghost's figures. */
  const TABLES: Record<string, string[]> = {
    spread: ['How stall spreads, angle by angle'],
    curve: ['C_lr of the foil alone, about its origin', 'For the same rider and take-off speed'],
    hold: [
      'Choices, balanced at cruise',
      'At cruise, the wedge left as it is',
      'Foil alone, about the wing’s root',
      'Craft, strut and all, about the balance point',
      'Craft, by part',
      'Foil alone, by part',
      'Lift and pitch about the balance point, by part',
      'Ratios',
      'Where it balances',
      'Sideways: slip, roll, turn',
      'Up and down: speed, pitch, depth',
      'What has to be moved, about the balance point',
      'Growth, 1/s, flat and drooped',
      'Derivatives of the craft, flat and drooped',
    ],
    speed: [
      'Running level',
      'Drag by source, N',
      'A wedge under the stabilizer; places from the strut',
      'Heeled at cruise, the same lift across the span',
      'A steady carve at cruise',
      'Balanced at once: lift, side force, roll and pitch',
      'Swing in the waves, margins at its extremes',
      'What a wave must give',
      'Where the water first boils, running level',
      'Lowest pressure',
    ],
    stiffness: [
      'How far it gives, and what part has in it',
      'One change by itself, and how much less gives',
      'As built and as it flies at cruise',
      'At cruise',
      'Change at cruise by part, of the rigid figure',
      'Where the strut’s foot goes',
      'Strain at the most strained place',
      'First swings',
      'The whole foil on its box, in water',
      'Trailing edges',
    ],
    section: ['The layer along the upper side', 'The layer along the lower side'],
    skin: [
      'What the upper side bears',
      'Finish by finish',
      'Common faults at this place, and what each costs',
    ],
    build: [
      'Wing, root to tip',
      'Stabilizer, root to tip',
      'Mass by part, estimated',
      'How exactly each station must be twisted',
    ],
  };

  it.each(Object.keys(TABLES))('stands in %s until let go', { timeout: 120_000 }, async (id) => {
    const question = QUESTIONS.find((each) => each.id === id)!;
    await question.load();
    const pull = { 'brief.sidePull': { share: 0.3, height: 2.2 } };
    const { design, report } = sample('curved', pull);
    const context = {
      design,
      report,
      units: 'workshop' as const,
      studies: onPage(),
      session: { ridden: { points: [], band: null } },
      tick: 0,
    };
    // The finish takes polars of every section at every speed: here the ghost has those of the open design.
    const ghost = id === 'skin' ? sample('curved', { 'wing.length.value': 0.8 }) : bent(pull);
    const show = (of: Ghost | null) => question.render({ ...context, ghost: of } as never);
    const box = await fixture<HTMLElement>(html`<div style="width: 900px">${show(ghost)}</div>`);
    const lines = () => namesWithin(box);
    const line = LINES[id];
    if (line) await until(() => lines().includes(line), `${line} among the lines`);
    for (const caption of TABLES[id]!)
      await until(() => {
        innerOf(box, 'section-choices')[0]?.scrollIntoView();
        innerOf(box, 'spread-stall')[0]?.scrollIntoView();
        return ghostCells(box).some((cell) => cell.caption === caption);
      }, `the ghost in “${caption}”`);
    expect(falseDifferences(ghostCells(box))).to.deep.equal([]);
    for (const panel of box.children) await expect(panel).to.be.accessible();
    for (const panel of box.children) (panel as HTMLElement & { ghost: Ghost | null }).ghost = null;
    await until(() => ghostCells(box).length === 0, 'no figure left');
    await until(() => !lines().some((name) => name.startsWith('ghost')), 'no line left');
  });
});

const until = (done: () => boolean, what: string) => waitUntil(done, what, { timeout: 100_000 });

function innerOf(root: ShadowRoot | HTMLElement, name: string): Element[] {
  return [...root.querySelectorAll('*')].flatMap((each) => [
    ...(each.localName === name ? [each] : []),
    ...(each.shadowRoot ? innerOf(each.shadowRoot, name) : []),
  ]);
}

/** The names of all lines of all charts within. */
function namesWithin(root: ShadowRoot | HTMLElement): string[] {
  const charts = [...root.querySelectorAll<LineChart>('line-chart')].flatMap(({ series }) => series);
  const cells = [...root.querySelectorAll<PlotGrid>('plot-grid')].flatMap((grid) => grid.cells);
  const inner = [...root.querySelectorAll('*')].flatMap((each) =>
    each.shadowRoot ? namesWithin(each.shadowRoot) : [],
  );
  return [...charts, ...cells.flatMap(({ lines }) => lines)].map(({ name }) => name).concat(inner);
}
