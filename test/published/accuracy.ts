/**
 * The accuracy report: every published check computed now, as the page "How far to trust it". Run by
 * `npm run accuracy`. Misses stay in the table with what is known of their reason.
 */
import { type Checked, check, strain } from './check.ts';
import { convergencePage } from './convergence.ts';
import { GROUPS } from './groups.ts';
import { plot, seriesOf } from './plot.ts';

interface Group {
  title: string;
  checked: Checked[];
}

export interface AccuracyReport {
  page: string; // Markdown
  lines: string[]; // for a terminal
  troubles: string[]; // rows that could not be computed
}

export function accuracyReport(): AccuracyReport {
  const groups = GROUPS.map(({ title, rows }): Group => ({ title, checked: rows.flatMap(check) }));
  const all = groups.flatMap(({ checked }) => checked);
  return {
    page: [INTRODUCTION, summary(groups), missList(all), ...groups.map(section), convergencePage()].join(
      '\n\n',
    ),
    lines: groups.flatMap(({ title, checked }) => [`# ${title}`, ...checked.map(line)]),
    troubles: all
      .filter(({ trouble }) => trouble !== null)
      .map(({ quantity, row, trouble }) => `${quantity} (${row.conditions}): ${trouble}`),
  };
}

const INTRODUCTION = `# How far to trust it

Every figure on this page under *computed* was computed by this program's solver when \`npm run accuracy\` last ran;
every figure under *published* was found by someone else, or derived without this program. Nothing in the solver is
tuned to these checks. What the program misses stays in the tables, marked, with the reason as far as it is known.

The status of a published value: *read* in a copy of the document; *derived* anew, without this program; *from memory*
of the document; *common practice* of the trade. The tolerance is what the program is held to by its tests.`;

function summary(groups: readonly Group[]): string {
  const rows = groups.map(({ title, checked }) => {
    const missed = checked.filter(({ isMissed }) => isMissed).length;
    const strains = checked.filter(({ isMissed }) => !isMissed).map(strain);
    strains.sort((one, other) => one - other);
    const middle = strains[strains.length >> 1] ?? 0;
    return `| ${title} | ${checked.length} | ${checked.length - missed} | ${missed} | ${(100 * middle).toFixed(0)} % |`;
  });
  return [
    '## At a glance',
    '',
    '| subject | values | within tolerance | missed | typical difference, of the tolerance |',
    '| --- | ---: | ---: | ---: | ---: |',
    ...rows,
  ].join('\n');
}

function missList(all: readonly Checked[]): string {
  const missed = all.filter(({ isMissed }) => isMissed);
  const byReason = new Map<string, Checked[]>();
  for (const one of missed) {
    const reason = one.row.missed ?? one.trouble ?? 'not known';
    byReason.set(reason, [...(byReason.get(reason) ?? []), one]);
  }
  const lines = [...byReason].map(([reason, of]) => {
    const shares = of.map(({ found, published }) => Math.abs(found / published - 1)).filter(Number.isFinite);
    const worst = shares.length > 0 ? `, by up to ${(100 * Math.max(...shares)).toPrecision(2)} %` : '';
    const names = [...new Set(of.map(({ quantity }) => quantity))].join(', ');
    return `- ${of.length} of ${names}${worst}: ${reason}.`;
  });
  return ['## What it misses', '', ...(lines.length > 0 ? lines : ['Nothing.'])].join('\n');
}

function section({ title, checked }: Group): string {
  return [
    `## ${title}`,
    '',
    '| quantity | conditions | published | computed | difference | tolerance | source | status | method |',
    '| --- | --- | ---: | ---: | ---: | ---: | --- | --- | --- |',
    ...checked.map(tableRow),
    '',
    ...seriesOf(checked).map(plot),
  ].join('\n');
}

function tableRow(one: Checked): string {
  const { row, quantity, published, found, tolerance, isMissed } = one;
  const cells = [
    quantity,
    row.conditions,
    figure(published),
    figure(found),
    `${difference(one)}${isMissed ? ' **missed**' : ''}`,
    tolerance,
    row.source,
    row.status,
    row.method,
  ];
  return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
}

function line(one: Checked): string {
  const { row, quantity, published, found, tolerance, isMissed } = one;
  const verdict = one.trouble
    ? `NOT COMPUTED: ${one.trouble}`
    : isMissed
      ? `missed: ${row.missed ?? '?'}`
      : 'ok';
  return [
    quantity,
    row.conditions,
    figure(published),
    figure(found),
    difference(one),
    tolerance,
    row.source,
    row.status,
    verdict,
  ].join(' | ');
}

const figure = (value: number) => (Number.isFinite(value) ? String(+value.toPrecision(6)) : 'none');

function difference({ found, published }: Checked): string {
  const gap = found - published;
  if (!Number.isFinite(gap)) return 'none';
  return published === 0 ? gap.toPrecision(2) : `${((100 * gap) / Math.abs(published)).toPrecision(2)} %`;
}
