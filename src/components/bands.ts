/** How wide the figures of a panel stand: asked of the study once a working is open, said in a sentence. */

import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { writePlain } from '../session/number-format.ts';
import type { Studies } from '../session/studies.ts';
import { formatWithUnit, type Quantity, toDisplay, type UnitSystem } from '../session/units.ts';
import type { BandName, Bands } from '../solver/bands.ts';
import type { Design } from '../solver/design/document.ts';
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
  const { method, strips, inputs } = figures[name];
  const write = (value: number | null) => {
    if (value === null) return 'not known';
    const shown = toDisplay(value, quantity, units);
    const decimals = shown > 0 ? Math.max(0, Math.min(6, 1 - Math.floor(Math.log10(shown)))) : 0;
    return `±${formatWithUnit(value, quantity, units, { decimals })}`;
  };
  const given = `tip droop to ${writePlain(known.droop)}°, stabilizer to ${writePlain(known.incidence)}°, mass to ${100 * known.mass} %, speed to ${100 * known.speed} %`;
  return `method ${write(method)} (four rows along the chord against one), strips ${write(strips)} (80 a side against 40), inputs ${write(inputs)} (${given})`;
}

declare global {
  interface HTMLElementEventMap {
    'working-toggled': WorkingToggledEvent;
  }
}
