/** What the readings of a bench test say: springs and moduli with their intervals, what cannot be told, reading by reading. */
import { html, nothing } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type Quantity, type UnitSystem } from '../../session/units.ts';
import type { BenchReading } from '../../solver/design/document.ts';
import type { BenchFit, FittedLink } from '../../solver/studies/bench-fit.ts';
import { figureTable } from '../figure-table.ts';

export function fitAnswer(fit: BenchFit, list: readonly BenchReading[], units: UnitSystem) {
  return html`${fit.problems.map(({ index, message }) => html`<p class="trouble" role="status">Reading ${index + 1}: ${message}.</p>`)}
    ${fit.advice ? html`<p class="trouble" role="status">${fit.advice}</p>` : nothing}
    ${
      fit.fitted.length > 0
        ? figureTable(
            'What the readings say',
            ['', 'now', 'fitted', 'between', 'and', 'how well'],
            fit.fitted.map((link) => ({
              cells: [
                link.label,
                writeLink(link.present, link, units),
                writeLink(link.value, link, units),
                writeLink(link.low, link, units),
                link.high === null ? 'rigid' : writeLink(link.high, link, units),
                wellness(link),
              ],
            })),
          )
        : nothing
    }
    ${fit.held.map(({ label, why }) => html`<p class="note">${label}: kept as it is; ${why}.</p>`)}
    ${
      fit.readings.length > 0
        ? figureTable(
            'Reading by reading',
            ['', 'read', 'by the values now', 'by the fit'],
            fit.readings.map(({ index, measured, before, fitted, isOdd }) => {
              const quantity: Quantity = list[index]?.pull === 'twist' ? 'angle' : 'length';
              const write = (value: number) =>
                formatWithUnit(value, quantity, units, quantity === 'angle' ? { decimals: 2 } : {});
              return {
                cells: [
                  `reading ${index + 1}${isOdd ? ', odd' : ''}`,
                  write(measured),
                  write(before),
                  write(fitted),
                ],
                isHere: isOdd,
              };
            }),
          )
        : nothing
    }
    ${remarks(fit)}`;
}

function remarks({ hysteresis, scatter, readings }: BenchFit) {
  if (readings.length === 0) return nothing;
  return html`<p class="note">
    ${hysteresis === null ? nothing : `Unloading differs from loading by ${writeFixed(100 * hysteresis, 0)} %: play or friction in the joints.`}
    ${
      scatter === null
        ? 'No reading is left over to tell the scatter: half a millimetre and a tenth of a degree are assumed.'
        : `Readings lie ${writeFixed(scatter, 1)} times the expected error (half a millimetre, a tenth of a degree) off the fit.`
    }
    The intervals hold 95 in 100 times.
  </p>`;
}

function writeLink(value: number, { path }: FittedLink, units: UnitSystem): string {
  return formatWithUnit(value, path.startsWith('laminate') ? 'modulus' : 'spring', units);
}

function wellness({ value, low, high }: FittedLink): string {
  const loose = high === null ? 1 : (high - low) / (2 * value);
  if (loose < 0.1) return 'well';
  return loose < 0.3 ? 'fairly' : 'poorly';
}
