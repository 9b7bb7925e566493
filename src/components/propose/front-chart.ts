/** The front drawn, as comma-separated values, and as a picture. */
import { html, type TemplateResult } from 'lit';
import { saveFile } from '../../session/files.ts';
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { Front, FrontPlace } from '../../solver/studies/propose/front.ts';
import type { Standing } from '../../solver/studies/propose/standing.ts';
import { type ChartSeries, toCsv } from '../chart-columns.ts';
import type { LineChart } from '../line-chart.ts';
import '../line-chart.ts';

const HEADING = 'Least drag for each hold';

export function frontReading({ points, drawn, over }: Front, units: UnitSystem): string {
  const [first, last] = [points[0]!, points.at(-1)!];
  const force = (value: number) => formatWithUnit(value, 'force', units, { decimals: 1 });
  const whole = `From a hold index of ${writeFixed(first.holdIndex, 1)} at ${force(first.drag)} to ${writeFixed(last.holdIndex, 1)} at ${force(last.drag)}.`;
  if (!drawn) return `${whole} The drawn wing cannot run at all three speeds.`;
  if (over === null)
    return `${whole} The drawn wing, ${writeFixed(drawn.holdIndex, 1)}, holds more than the front was drawn for.`;
  if (over < 0.002 * drawn.drag) return `${whole} The drawn wing is on it.`;
  return `${whole} The drawn wing pays ${force(over)} more than the best one of its hold.`;
}

/** What the ghost pays in this brief; null without one. */
export function ghostReading(ghost: Standing | null, units: UnitSystem): string | null {
  if (!ghost) return null;
  const { front, over } = ghost;
  if (!front) return 'The ghost cannot run at all three speeds of this brief.';
  const force = (value: number) => formatWithUnit(value, 'force', units, { decimals: 1 });
  const stands = `In this brief the ghost, ${writeFixed(front.holdIndex, 1)} at ${force(front.drag)},`;
  if (over === null) return `${stands} holds more than the front was drawn for.`;
  return over < 0
    ? `${stands} lies ${force(-over)} below the front: it has something that is held here.`
    : `${stands} pays ${force(over)} more than the best wing of its hold.`;
}

export function frontChart(front: Front, ghost: Standing | null, units: UnitSystem): TemplateResult {
  return html`<line-chart
    .heading=${HEADING}
    x-name="hold index"
    .xDecimals=${1}
    y-name="drag above the least"
    .yUnit=${unitOf('force', units)}
    .yDecimals=${2}
    .summary=${frontReading(front, units)}
    .series=${seriesOf(front, ghost, units)}
  ></line-chart>`;
}

/** Above the lightest wing of all: the price of hold would not be seen beside the whole drag. */
function seriesOf({ points, drawn }: Front, ghost: Standing | null, units: UnitSystem): ChartSeries[] {
  const force = (value: number) => toDisplay(value - points[0]!.drag, 'force', units);
  const line: ChartSeries = {
    name: 'least drag',
    x: points.map(({ holdIndex }) => holdIndex),
    y: points.map(({ drag }) => force(drag)),
    colour: '--carry',
  };
  // A short bar at a wing's place, as a line chart has no single points: by the whole axis, which begins at zero.
  const reach = 0.012 * Math.max(...[...points, drawn, ghost?.front].map((place) => place?.holdIndex ?? 0));
  const bar = (name: string, { holdIndex, drag }: FrontPlace, colour: `--${string}`): ChartSeries => ({
    name,
    x: [holdIndex - reach, holdIndex + reach],
    y: [force(drag), force(drag)],
    colour,
    width: 7,
  });
  return [
    line,
    ...(drawn ? [bar('as drawn', drawn, '--thrown')] : []),
    ...(ghost?.front ? [bar('ghost', ghost.front, '--ghost')] : []),
  ];
}

/** One line a point, the drawn wing last; drag in N. */
export function frontCsv({ points, drawn }: Front): string {
  const rows = [
    ...points.map(({ holdIndex, drag, design }) => [holdIndex, drag, design.wing.length.value]),
    ...(drawn ? [[drawn.holdIndex, drawn.drag, null]] : []),
  ];
  const column = (k: number) => rows.map((row) => row[k] ?? null);
  return toCsv(['hold index', 'weighted drag, N', 'wing length, m (none: as drawn)'], {
    x: rows.map(([index]) => index!),
    y: [column(1), column(2)],
  });
}

/** The chart as it stands on the page, on its paper and with its heading, as a PNG file. */
export async function savePicture(chart: LineChart, name: string): Promise<void> {
  const plot = chart.renderRoot.querySelector('canvas');
  if (!plot) return;
  const style = getComputedStyle(chart);
  const ratio = plot.width / plot.clientWidth;
  const top = 28 * ratio;
  const picture = document.createElement('canvas');
  picture.width = plot.width;
  picture.height = plot.height + top;
  const pen = picture.getContext('2d')!;
  pen.fillStyle = style.getPropertyValue('--paper') || 'white';
  pen.fillRect(0, 0, picture.width, picture.height);
  pen.drawImage(plot, 0, top);
  pen.fillStyle = style.getPropertyValue('--ink') || 'black';
  pen.font = `600 ${14 * ratio}px system-ui, sans-serif`;
  pen.fillText(chart.heading, 10 * ratio, 18 * ratio);
  const blob = await new Promise<Blob | null>((resolve) => picture.toBlob(resolve, 'image/png'));
  if (blob) saveFile(blob, name);
}
