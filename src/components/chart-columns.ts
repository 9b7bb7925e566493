/** Series measured at places of their own, put side by side in columns over one ascending x; plain text of a table. */

export interface ChartSeries {
  name: string;
  x: readonly number[]; // ascending
  y: readonly number[]; // in the shown unit
  colour: `--${string}`; // a custom property of tokens.css
  width?: number; // px
  dash?: readonly number[]; // px
  isAlone?: boolean; // not part of the stack in a stacked chart
}

export interface Columns {
  x: number[];
  y: (number | null)[][]; // one a series; null outside its own range
}

const SAME = 0.003; // share of the range within which two places are one

/**
 * All places of all series, near ones taken as one (the first series' own places are kept as they are); every series is
 * read between its own places by straight lines, never beyond them.
 */
export function joinColumns(series: readonly ChartSeries[]): Columns {
  const most = Math.max(...series.map(({ x }) => x.at(-1) ?? 0));
  const least = Math.min(...series.map(({ x }) => x[0] ?? 0));
  const places = [...(series[0]?.x ?? [])];
  for (const { x } of series.slice(1))
    for (const place of x)
      if (!places.some((known) => Math.abs(known - place) <= SAME * (most - least))) places.push(place);
  places.sort((a, b) => a - b);
  return {
    x: places,
    y: series.map((each) => places.map((place) => readAt(each, place, SAME * (most - least)))),
  };
}

/** Running sums from the first column on; a gap in one is a gap in all that stand on it. The last `alone` stay as they are. */
export function stackColumns(columns: readonly (number | null)[][], alone = 0): (number | null)[][] {
  const stacked: (number | null)[][] = [];
  for (const column of columns.slice(0, columns.length - alone)) {
    const below = stacked.at(-1);
    stacked.push(
      column.map((value, k) => {
        const base = below ? (below[k] ?? null) : 0;
        return value === null || base === null ? null : value + base;
      }),
    );
  }
  return [...stacked, ...columns.slice(columns.length - alone).map((column) => [...column])];
}

function readAt({ x, y }: ChartSeries, place: number, slack: number): number | null {
  const last = x.length - 1;
  if (last < 0 || place < x[0]! - slack || place > x[last]! + slack) return null;
  if (place <= x[0]!) return y[0]!;
  if (place >= x[last]!) return y[last]!;
  const above = x.findIndex((known) => known >= place);
  const share = (place - x[above - 1]!) / (x[above]! - x[above - 1]!);
  return y[above - 1]! + share * (y[above]! - y[above - 1]!);
}

/** Comma-separated values with a heading. */
export function toCsv(heading: readonly string[], { x, y }: Columns): string {
  return csvText([heading, ...x.map((place, k) => [place, ...y.map((column) => column[k] ?? null)])]);
}

/** Rows of comma-separated values; texts with commas or quotes are quoted (RFC 4180), nothing for null. */
export function csvText(rows: readonly (readonly (string | number | null)[])[]): string {
  const quoted = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  const write = (cell: string | number | null) =>
    cell === null ? '' : typeof cell === 'number' ? String(Number(cell.toPrecision(6))) : quoted(cell);
  return rows.map((row) => row.map(write).join(',')).join('\r\n');
}
