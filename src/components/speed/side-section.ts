import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Studies } from '../../session/studies.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Fix } from '../../solver/studies/level-running.ts';
import type { SideCase } from '../../solver/studies/side-study.ts';
import type { SideRule, SideTrim } from '../../solver/studies/side-trim.ts';
import '../choice-field.ts';
import { askedNumber, take, toPart } from '../asked.ts';
import { tableWithGhost } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import { GhostStudy } from '../ghost-study.ts';
import { StudyController } from '../study-controller.ts';
import { studyWait } from '../study-wait.ts';
import { type Cell, figureCell, quantityCell } from '../table-cells.ts';
import { sectionStyles } from './section-styles.ts';
import { fixedCell, footPlace, pressureCell, signed } from './words.ts';

const NAMES: Record<SideCase['name'], string> = { takeOff: 'take-off', cruise: 'cruise', top: 'top speed' };
const RULES = [
  { value: 'strut', label: 'unloading the strut' },
  { value: 'heel', label: 'holding this heel' },
  { value: 'roll', label: 'a rider who stays in line' },
];

/** Against the rig's sideways pull: heel, leeway, what the strut bears, and what its suction could draw down. */
@customElement('speed-side')
export class SpeedSide extends LitElement {
  static override styles = sectionStyles;

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** What is kept in pitch. */
  @property() fix: Fix = 'incidence';
  /** Its figures stand beside these, against the pull of its own brief. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private by: SideRule['by'] = 'strut';
  @state() private heel = 0; // degrees, where it is held

  readonly #study = new StudyController(this, 'sidePull', () =>
    this.design?.brief.sidePull
      ? { studies: this.studies, design: this.design, options: { rule: this.#rule, fix: this.fix } }
      : null,
  );

  readonly #ghost = new GhostStudy(this, 'sidePull', ({ brief }) =>
    this.design?.brief.sidePull && brief.sidePull ? { rule: this.#rule, fix: this.fix } : null,
  );

  get #rule(): SideRule {
    return this.by === 'heel' ? { by: 'heel', heel: this.heel } : { by: this.by };
  }

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    return html`<h2>Against the sideways pull</h2>
      ${
        design.brief.sidePull
          ? this.#asked(design)
          : html`<p class="note">The brief names no sideways pull of the rig; it is under Brief, other depths, side pull, board.</p>`
      }`;
  }

  #asked(design: Design) {
    const found = this.#study.result;
    return html`<div class="controls">
        <choice-field
          label="Balanced by"
          .value=${this.by}
          .choices=${RULES}
          .toChanges=${toPart}
          @design-edit=${take((value) => {
            this.by = value as SideRule['by'];
          })}
        ></choice-field>
        ${
          this.by === 'heel'
            ? askedNumber('Heel, starboard down', this.heel, 'angle', this.units, [-60, 60], (value) => {
                this.heel = value;
              })
            : nothing
        }
      </div>
      ${found ? this.#answers(found, design) : studyWait(this.#study, 'Balancing the pull')}`;
  }

  #answers(found: readonly SideCase[], design: Design) {
    const cruise = found.find(({ name }) => name === 'cruise');
    return html`${cruise?.trim ? html`<p class="say">${this.#reading(cruise.trim)}</p>` : nothing}
      ${found.flatMap(({ name, problem }) =>
        problem ? [html`<p class="trouble">At ${NAMES[name]}: ${problem}.</p>`] : [],
      )}
      ${this.#table(found, design)}
      ${
        this.ghost && !this.ghost.design.brief.sidePull
          ? html`<p class="note">The ghost’s own brief names no sideways pull: it has no figures here.</p>`
          : nothing
      }
      <p class="note">
        The heeled foil is solved whole, strut included; drags other than the induced one are those of upright running. Stiffness
        bends the strut by the same balance at cruise, upright unless asked otherwise.
      </p>`;
  }

  #reading(trim: SideTrim): string {
    const { units } = this;
    const side = (value: number) => (value < 0 ? 'to port' : 'to starboard');
    const heel = `${formatWithUnit(Math.abs(trim.heel), 'angle', units)} ${side(trim.heel)}`;
    const slip = `${formatWithUnit(Math.abs(trim.leeway), 'angle', units)} ${side(trim.leeway)}`;
    return `At cruise it heels ${heel} and slips ${slip}; the strut bears ${formatWithUnit(Math.abs(trim.strutForce), 'force', units)}.`;
  }

  #table(found: readonly SideCase[], design: Design) {
    const { units, ghost } = this;
    const behind = this.#ghost.result;
    const own = { found, footAt: design.strut?.x ?? 0 };
    const other = ghost && behind && { found: behind, footAt: ghost.design.strut?.x ?? 0 };
    const caption = 'Balanced at once: lift, side force, roll and pitch';
    return tableWithGhost(caption, own, other, (of) => ({
      head: [
        '',
        ...of.found.map(({ name, speed }) => `${NAMES[name]}, ${formatWithUnit(speed, 'speed', units)}`),
      ],
      rows: rowsOf(of.footAt, units).map(([name, read]) => ({
        cells: [
          name,
          ...of.found.map((each) => (each.trim ? read({ ...each, trim: each.trim }) : 'not possible')),
        ],
      })),
    }));
  }
}

type Row = [string, (each: SideCase & { trim: SideTrim }) => Cell];

function rowsOf(footAt: number, units: UnitSystem): Row[] {
  return [
    ['heel, starboard down', ({ trim }) => signed(trim.heel, 'angle', units)],
    ['leeway, to starboard', ({ trim }) => signed(trim.leeway, 'angle', units)],
    ['fuselage to the flow', ({ trim }) => signed(trim.alpha, 'angle', units)],
    ['stabilizer incidence', ({ trim }) => signed(trim.incidence, 'angle', units)],
    ['balance point, from the strut', ({ trim }) => footPlace(trim.stance, footAt, units)],
    ['rider shifts', ({ trim }) => shiftCell(trim.riderShift, units)],
    ['strut bears, to starboard', ({ trim }) => signed(trim.strutForce, 'force', units)],
    ['wing and stabilizer bear', ({ trim }) => signed(trim.foilSideForce, 'force', units)],
    ['drag', ({ trim }) => quantityCell(trim.totalDrag, 'force', units)],
    ['strut, to boiling', ({ strut }) => signed(strut?.margin ?? null, 'ratio', units, 2)],
    ['strut, against the air', ({ strut }) => pressureCell(strut?.againstAir ?? null, 1)],
    ['depth Froude number', ({ froude }) => froudeCell(froude)],
  ];
}

function shiftCell(toStarboard: number, units: UnitSystem) {
  return figureCell(toStarboard, (value) => {
    if (Math.abs(value) < 5e-4) return 'nowhere';
    const size = formatWithUnit(Math.abs(value), 'length', units);
    return `${size} ${value < 0 ? 'to port' : 'to starboard'}`;
  });
}

const TESTED = 2.5; // depth Froude number that strut tests reach

function froudeCell(froude: number | null) {
  const plain = fixedCell(froude, 1);
  return figureCell(
    froude,
    (value, isDifference) =>
      `${plain.write(value, isDifference)}${!isDifference && value > TESTED ? ', outside the tests' : ''}`,
    '',
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'speed-side': SpeedSide;
  }
}
