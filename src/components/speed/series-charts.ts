/** The charts of the speed series: drag by source, lift to drag, power, and what trims. */
import { html } from 'lit';
import { formatWithUnit, toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { DragSources } from '../../solver/report.ts';
import type { Fix } from '../../solver/studies/level-running.ts';
import type { SpeedPoint } from '../../solver/studies/speed.ts';
import type { SpeedStudy } from '../../solver/studies/speed-study.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { uprightMark } from '../chart-marks.ts';
import '../line-chart.ts';
import { DRAG_NAMES } from './running-tables.ts';

const COLOURS: Record<keyof DragSources, `--${string}`> = {
  wingInduced: '--carry',
  stabilizerInduced: '--tail',
  wingProfile: '--surface',
  stabilizerProfile: '--focus',
  strutProfile: '--thrown',
  fuselage: '--lean',
  junctions: '--ghost',
  spray: '--soft',
  wave: '--ink',
};

type Read = (point: SpeedPoint) => number;

/**
 * `footAt`: the strut, m aft of the origin. Speeds slower than take-off are left out, as no section carries
 * that, and speeds at which no rider can reach the stance. */
export function seriesCharts(study: SpeedStudy, fix: Fix, footAt: number, units: UnitSystem) {
  const points = study.series.flatMap(({ point }) => (point && (point.stallMargin ?? 0) >= 0 ? [point] : []));
  const x = points.map(({ speed }) => toDisplay(speed, 'speed', units));
  const line = (name: string, colour: `--${string}`, read: Read): ChartSeries => ({
    name,
    x,
    y: points.map(read),
    colour,
  });
  const sources = (Object.keys(COLOURS) as Array<keyof DragSources>).map((source) => ({
    ...line(DRAG_NAMES[source], COLOURS[source], ({ drag }) => toDisplay(drag[source], 'force', units)),
    width: 1,
  }));
  return html`<div class="charts">
    ${dragChart(sources, units)}
    ${glideChart(
      study,
      line('lift to drag', '--carry', ({ liftToDrag }) => liftToDrag),
      units,
    )}
    ${powerChart(
      study,
      line('power', '--thrown', ({ power }) => power),
      units,
    )}
    ${
      fix === 'incidence'
        ? feetChart(
            line('feet of an upright rider', '--tail', ({ feet }) =>
              toDisplay(feet - footAt, 'length', units),
            ),
            units,
          )
        : incidenceChart(
            line('incidence', '--tail', ({ incidence }) => incidence),
            units,
          )
    }
  </div>`;
}

function dragChart(series: readonly ChartSeries[], units: UnitSystem) {
  return html`<line-chart
    heading="Drag by source"
    stacked
    x-name="speed"
    .xUnit=${unitOf('speed', units)}
    .xDecimals=${1}
    y-name="drag"
    .yUnit=${unitOf('force', units)}
    .yDecimals=${1}
    .summary=${'Drag by source against speed, each source standing on the one before.'}
    .series=${series}
  ></line-chart>`;
}

function glideChart({ best }: SpeedStudy, curve: ChartSeries, units: UnitSystem) {
  const found = best.bestGlide;
  return html`<line-chart
    heading="Lift to drag"
    x-name="speed"
    .xUnit=${unitOf('speed', units)}
    .xDecimals=${1}
    y-name="weight carried / drag"
    .yDecimals=${1}
    .summary=${'Lift to drag against speed, its best marked.'}
    .series=${found ? [curve, bestMark('best glide', found.speed, curve, units)] : [curve]}
  ></line-chart>`;
}

function powerChart({ best }: SpeedStudy, curve: ChartSeries, units: UnitSystem) {
  const found = best.leastPower;
  return html`<line-chart
    heading="Power"
    x-name="speed"
    .xUnit=${unitOf('speed', units)}
    .xDecimals=${1}
    y-name="drag times speed"
    y-unit="W"
    .summary=${'Power against speed, the least of it marked.'}
    .series=${found ? [curve, bestMark('least power', found.speed, curve, units)] : [curve]}
  ></line-chart>`;
}

function bestMark(name: string, speed: number, curve: ChartSeries, units: UnitSystem): ChartSeries {
  const label = `${name}, ${formatWithUnit(speed, 'speed', units)}`;
  return uprightMark(label, toDisplay(speed, 'speed', units), [curve], '--ghost', [3, 3]);
}

function feetChart(curve: ChartSeries, units: UnitSystem) {
  return html`<line-chart
    heading="Where the feet stand"
    x-name="speed"
    .xUnit=${unitOf('speed', units)}
    .xDecimals=${1}
    y-name="aft of the strut"
    .yUnit=${unitOf('length', units)}
    .yDecimals=${units === 'workshop' ? 0 : 3}
    .summary=${'Place of the feet against speed, aft of the strut.'}
    .series=${[curve]}
  ></line-chart>`;
}

function incidenceChart(curve: ChartSeries, units: UnitSystem) {
  return html`<line-chart
    heading="Stabilizer incidence that trims"
    x-name="speed"
    .xUnit=${unitOf('speed', units)}
    .xDecimals=${1}
    y-name="incidence"
    .yUnit=${unitOf('angle', units)}
    .yDecimals=${2}
    .summary=${'Stabilizer incidence against speed.'}
    .series=${[curve]}
  ></line-chart>`;
}
