/** The charts of the speed series: drag by source, lift to drag, power, and what trims. */
import { html } from 'lit';
import { formatWithUnit, toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { DragSources } from '../../solver/report.ts';
import type { Fix } from '../../solver/studies/level-running.ts';
import type { SpeedPoint } from '../../solver/studies/speed.ts';
import type { SpeedStudy } from '../../solver/studies/speed-study.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { uprightMark } from '../chart-marks.ts';
import { withGhost } from '../ghost.ts';
import '../line-chart.ts';
import { DRAG_NAMES } from './running-tables.ts';

const COLOURS: Record<keyof DragSources, `--${string}`> = {
  wingInduced: '--carry',
  stabilizerInduced: '--tail',
  wingProfile: '--surface',
  stabilizerProfile: '--focus',
  strutProfile: '--thrown',
  fuselage: '--lean',
  junctions: '--edge',
  spray: '--soft',
  wave: '--ink',
};

/** `footAt`: the strut, m aft of the origin. */
export interface Run {
  study: SpeedStudy;
  footAt: number;
}

type Read = (point: SpeedPoint, footAt: number) => number;

/**
 * Speeds slower than take-off are left out, as no section carries that, and speeds at which no rider can reach the
 * stance. The ghost's curves stand behind, of its drag the whole.
 */
export function seriesCharts(run: Run, fix: Fix, units: UnitSystem, ghost: Run | null) {
  const { best } = run.study;
  const both = (name: string, colour: `--${string}`, read: Read) =>
    withGhost([line(run, name, colour, read)], ghost && [line(ghost, name, colour, read)]);
  const sources = (Object.keys(COLOURS) as Array<keyof DragSources>).map((source) => ({
    ...line(run, DRAG_NAMES[source], COLOURS[source], ({ drag }) => toDisplay(drag[source], 'force', units)),
    width: 1,
  }));
  const whole: Read = ({ total }) => toDisplay(total, 'force', units);
  const behind = withGhost([], ghost && [line(ghost, 'all drag', '--ghost', whole)]);
  const aft: Read = ({ feet }, footAt) => toDisplay(feet - footAt, 'length', units);
  return html`<div class="charts">
    ${dragChart([...sources, ...behind.map((each) => ({ ...each, isAlone: true }))], units)}
    ${glideChart(
      best,
      both('lift to drag', '--carry', (point) => point.liftToDrag),
      units,
    )}
    ${powerChart(
      best,
      both('power', '--thrown', (point) => point.power),
      units,
    )}
    ${
      fix === 'incidence'
        ? feetChart(both('feet of an upright rider', '--tail', aft), units)
        : incidenceChart(
            both('incidence', '--tail', (point) => point.incidence),
            units,
          )
    }
  </div>`;

  function line({ study, footAt }: Run, name: string, colour: `--${string}`, read: Read): ChartSeries {
    const points = study.series.flatMap(({ point }) =>
      point && (point.stallMargin ?? 0) >= 0 ? [point] : [],
    );
    const x = points.map(({ speed }) => toDisplay(speed, 'speed', units));
    return { name, x, y: points.map((point) => read(point, footAt)), colour };
  }
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

function glideChart(best: SpeedStudy['best'], curves: readonly ChartSeries[], units: UnitSystem) {
  const found = best.bestGlide;
  return html`<line-chart
    heading="Lift to drag"
    x-name="speed"
    .xUnit=${unitOf('speed', units)}
    .xDecimals=${1}
    y-name="weight carried / drag"
    .yDecimals=${1}
    .summary=${'Lift to drag against speed, its best marked.'}
    .series=${found ? [...curves, bestMark('best glide', found.speed, curves, units)] : curves}
  ></line-chart>`;
}

function powerChart(best: SpeedStudy['best'], curves: readonly ChartSeries[], units: UnitSystem) {
  const found = best.leastPower;
  return html`<line-chart
    heading="Power"
    x-name="speed"
    .xUnit=${unitOf('speed', units)}
    .xDecimals=${1}
    y-name="drag times speed"
    y-unit="W"
    .summary=${'Power against speed, the least of it marked.'}
    .series=${found ? [...curves, bestMark('least power', found.speed, curves, units)] : curves}
  ></line-chart>`;
}

function bestMark(
  name: string,
  speed: number,
  curves: readonly ChartSeries[],
  units: UnitSystem,
): ChartSeries {
  const label = `${name}, ${formatWithUnit(speed, 'speed', units)}`;
  return uprightMark(label, toDisplay(speed, 'speed', units), curves, '--soft', [3, 3]);
}

function feetChart(curves: readonly ChartSeries[], units: UnitSystem) {
  return html`<line-chart
    heading="Where the feet stand"
    x-name="speed"
    .xUnit=${unitOf('speed', units)}
    .xDecimals=${1}
    y-name="aft of the strut"
    .yUnit=${unitOf('length', units)}
    .yDecimals=${units === 'workshop' ? 0 : 3}
    .summary=${'Place of the feet against speed, aft of the strut.'}
    .series=${curves}
  ></line-chart>`;
}

function incidenceChart(curves: readonly ChartSeries[], units: UnitSystem) {
  return html`<line-chart
    heading="Stabilizer incidence that trims"
    x-name="speed"
    .xUnit=${unitOf('speed', units)}
    .xDecimals=${1}
    y-name="incidence"
    .yUnit=${unitOf('angle', units)}
    .yDecimals=${2}
    .summary=${'Stabilizer incidence against speed.'}
    .series=${curves}
  ></line-chart>`;
}
