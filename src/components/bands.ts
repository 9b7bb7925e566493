/** How wide the figures of a panel stand: asked of the study once a working is open, said in a sentence. */

import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { writePlain } from '../session/number-format.ts';
import type { Studies } from '../session/studies.ts';
import { formatWithUnit, type Quantity, toDisplay, type UnitSystem } from '../session/units.ts';
import type { BandName, Bands } from '../solver/bands.ts';
import type { Design } from '../solver/design/document.ts';
import { STATED, type StatedName } from '../solver/design/stated-bands.ts';
import { StudyController } from './study-controller.ts';

/** A figure's working has been opened or closed. */
export class WorkingToggledEvent extends CustomEvent<{ isOpen: boolean }> {
  static readonly type = 'working-toggled';
  constructor(isOpen: boolean) {
    super(WorkingToggledEvent.type, { detail: { isOpen }, bubbles: true, composed: true });
  }
}

interface Host extends ReactiveControllerHost, HTMLElement {
  design: Design | null;
  studies: Studies | null;
}

/** The bands of a panel's figures, asked for only while a working is open. */
export class BandsController implements ReactiveController {
  #open = 0;
  readonly #study: StudyController<'bands'>;

  constructor(private readonly host: Host) {
    this.#study = new StudyController(host, 'bands', () =>
      this.#open > 0 ? { studies: host.studies, design: host.design, options: {} } : null,
    );
    host.addController(this);
    host.addEventListener(WorkingToggledEvent.type, ({ detail }) => {
      this.#open += detail.isOpen ? 1 : -1;
      host.requestUpdate();
    });
  }

  /** Those of the design on screen; null while they are worked out. */
  get current(): Bands | null {
    return this.#study.resultDesign === this.host.design ? this.#study.result : null;
  }

  hostConnected(): void {
    this.#open = 0;
  }
}

/** One sentence. */
export function sayBand(
  { figures, known }: Bands,
  name: BandName,
  quantity: Quantity,
  units: UnitSystem,
): string {
  const { method, strips, inputs, sections } = figures[name];
  const write = (value: number | null) => (value === null ? 'not known' : sayWidth(value, quantity, units));
  const given = `tip droop to ${writePlain(known.droop)}°, stabilizer to ${writePlain(known.incidence)}°, mass to ${100 * known.mass} %, speed to ${100 * known.speed} %`;
  const measured = sections === null ? '' : `sections ${write(sections)} (scatter of measured ones), `;
  return `method ${write(method)} (four rows along the chord against one), ${measured}strips ${write(strips)} (80 a side against 40), inputs ${write(inputs)} (${given})`;
}

/** Two digits that count, with the unit. */
function sayWidth(value: number, quantity: Quantity, units: UnitSystem): string {
  const shown = toDisplay(value, quantity, units);
  const decimals = shown > 0 ? Math.max(0, Math.min(6, 1 - Math.floor(Math.log10(shown)))) : 0;
  return `±${formatWithUnit(value, quantity, units, { decimals })}`;
}

/** One sentence of a band that measured or closed values tell, the same for every design. */
export function sayStated(name: StatedName): string {
  const { share, values, against } = STATED[name];
  const width = formatWithUnit(share, 'share', 'si', { decimals: share < 0.01 ? 2 : 0 });
  return `method ±${width} (root mean square of ${values} ${against})`;
}

declare global {
  interface HTMLElementEventMap {
    'working-toggled': WorkingToggledEvent;
  }
}
