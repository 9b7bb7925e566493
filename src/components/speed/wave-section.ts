import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Studies } from '../../session/studies.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { WaveStudy } from '../../solver/studies/wave-study.ts';
import { askedNumber } from '../asked.ts';
import type { Ghost } from '../ghost.ts';
import { ghostFigures } from '../ghost-figures.ts';
import { GhostStudy } from '../ghost-study.ts';
import { StudyController } from '../study-controller.ts';
import { studyWait } from '../study-wait.ts';
import { sectionStyles } from './section-styles.ts';
import { FIGURES, glideReading, pumpingReading, rideReading } from './wave-readings.ts';
import { downwindTable, waveTable } from './wave-tables.ts';

/** What given waves do to the foil, and what they and pumping give a downwind rider. */
@customElement('speed-waves')
export class SpeedWaves extends LitElement {
  static override styles = sectionStyles;

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** Its figures stand beside these, in the same waves. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private waves = { height: 0.6, period: 4, heading: 20 };
  @state() private pumpFrequency = 1.5;

  readonly #study = new StudyController(this, 'waves', () => ({
    studies: this.studies,
    design: this.design,
    options: this.#options,
  }));
  readonly #ghost = new GhostStudy(this, 'waves', () => this.#options);

  get #options() {
    return { waves: this.waves, pumpFrequency: this.pumpFrequency };
  }

  protected override render() {
    if (!this.design) return nothing;
    const found = this.#study.result;
    return html`<h2>Waves and downwind</h2>
      <div class="controls">${this.#fields()}</div>
      ${found ? this.#answers(found) : studyWait(this.#study, 'Waves')}`;
  }

  #answers(found: WaveStudy) {
    const { units } = this;
    const glide = glideReading(found, units);
    return html`${glide ? html`<p class="say">${glide}</p>` : nothing}
      <p class="say">${rideReading(found, units)}</p>
      <p class="say">${pumpingReading(found, units)}</p>
      ${ghostFigures(found, this.#ghost.result, units, FIGURES)}
      <div class="tables">
        ${waveTable(found, this.#ghost.result, units)} ${downwindTable(found, this.#ghost.result, units)}
      </div>
      <p class="note">
        Linear waves on deep water (H. Lamb, Hydrodynamics, 1932, art. 229), the foil held at its depth. The lift follows a
        swing by the share of T. Theodorsen, NACA Report 496, 1935; pumping as heave of the wing’s mean chord, strip by strip,
        after I. E. Garrick, NACA Report 567, 1936. Margins at the extremes take the trough overhead.
      </p>`;
  }

  #fields() {
    const { units, waves } = this;
    const wave = (key: keyof typeof waves) => (value: number) => {
      this.waves = { ...this.waves, [key]: value };
    };
    return [
      askedNumber('Wave height', waves.height, 'length', units, [0, 5], wave('height')),
      askedNumber('Period', waves.period, 'time', units, [1, 20], wave('period')),
      askedNumber('Course to the waves', waves.heading, 'angle', units, [0, 180], wave('heading')),
      askedNumber('Pumps a second', this.pumpFrequency, 'ratio', units, [0.3, 4], (value) => {
        this.pumpFrequency = value;
      }),
    ];
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'speed-waves': SpeedWaves;
  }
}
