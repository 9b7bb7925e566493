/** The stations table as comma-separated text, one line a station. */
import { COLUMNS, cellText, type Station } from './stations.ts';

export function stationsCsv(stations: readonly Station[]): string {
  const head = COLUMNS.map(({ head, unit }) => (unit ? `${head} ${unit}` : head));
  const rows = stations.map((station) => COLUMNS.map((column) => cellText(station, column)));
  return `${[head, ...rows].map((cells) => cells.join(',')).join('\r\n')}\r\n`;
}
