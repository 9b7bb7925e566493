/** Parts of Curve that show one answer with the ghost's behind it: the plots over the droop, and what load does. */
import { html } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { decimalMark } from '../../session/number-format.ts';
import type { RiddenHold } from '../../session/ridden.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { CurveStudy } from '../../solver/studies/curve-study.ts';
import { cellsWithGhost, withGhost } from '../ghost.ts';
import { trustNote } from '../hold/index-trust.ts';
import '../line-chart.ts';
import { couplingTable, independentReading } from './independent.ts';
import './plot-grid.ts';
import type { PlotCell } from './plot-model.ts';
import { indexReading, loadingReading } from './readings.ts';
import { couplingCell, droopMarks, indexSeries, withRidden } from './sweep-cells.ts';

export interface ShownStudy {
  found: CurveStudy;
  behind: CurveStudy | null; // the ghost's
  units: UnitSystem;
  ridden: RiddenHold;
}

/** Made anew only for another answer: news of the studies' progress must not redraw the curves. */
export function studyGrid(
  { found, behind, units, ridden }: ShownStudy,
  heading: string,
  cells: (study: CurveStudy) => readonly PlotCell[],
  isSecond = false,
) {
  const { sweep } = found;
  return guard([found, behind, units, decimalMark(), JSON.stringify(ridden)], () => {
    const x = [...sweep.columns.amplitude];
    const ghost = behind && { cells: cells(behind), x: [...behind.sweep.columns.amplitude] };
    return html`<plot-grid
      .heading=${heading}
      .x=${x}
      x-name="Droop"
      x-unit="°"
      .xDecimals=${1}
      .cells=${withRidden(cellsWithGhost(cells(found), x, ghost), ridden)}
      .marks=${droopMarks(found, behind)}
      .home=${sweep.present}
      ?plain=${isSecond}
      ?wide=${isSecond}
      verb="Bend to"
    ></plot-grid>`;
  });
}

/** `isArc`: the wing bends by the law of the foil that was computed independently. */
export function loadingPart(shown: ShownStudy, isArc: boolean) {
  const { found, behind, units } = shown;
  const { coupling, indexKind } = found;
  const speed = (value: number) => formatWithUnit(value, 'speed', units);
  const index = indexKind === 'holdIndex' ? 'hold index' : 'roll term';
  return html`<h2 id="loading">More load wants more curve</h2>
    <p class="say">${loadingReading(coupling, units)}</p>
    <div class="pair">
      ${studyGrid(shown, 'More load wants more curve', (of) => [couplingCell(of, speed)], true)}
      ${couplingTable(coupling, behind?.coupling ?? null, units)}
    </div>
    <p class="note">${independentReading(coupling, isArc)}</p>
    <h3>How far the simple index can be trusted</h3>
    <p class="say">${indexReading(coupling, indexKind)}</p>
    <p class="note">${trustNote()}</p>
    <div class="half">
      ${guard(
        [found, behind, units, decimalMark()],
        () => html`<line-chart
          .heading=${`Solved C_lr by CL against the ${index}`}
          .xName=${index}
          .xDecimals=${indexKind === 'holdIndex' ? 2 : 3}
          y-name="C_lr / CL"
          .yDecimals=${3}
          .summary=${indexReading(coupling, indexKind)}
          .series=${withGhost(indexSeries(found, speed), behind && indexSeries(behind, speed))}
        ></line-chart>`,
      )}
    </div>`;
}
