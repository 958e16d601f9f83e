import type { LogPreview, PreviewRow } from '../../intake/unit-log/preview.js';
import type { Output } from '../output.js';
import { terminalFormat } from '../quantities.js';
import { tableLines } from '../table.js';

/** The mapping of a log and its first rows as understood: UTC and local time, °F and °C. */
export function printLogPreview(output: Output, { mapping, unused, zone, rows }: LogPreview): void {
  const { time } = mapping;
  const dates = { iso: 'year first', 'month-day-year': 'month first', 'day-month-year': 'day first' };
  const delimiter = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'bar' }[mapping.delimiter];
  const columns = time.columns.map((column) => column + 1);
  const lines = [
    mapping.sheet === undefined
      ? [
          'table',
          `${delimiter} between the columns, ${mapping.encoding}, decimal ${mapping.decimal === '.' ? 'point' : 'comma'}`,
        ]
      : ['sheet', mapping.sheet],
    ['header', mapping.headerRow === 0 ? 'none' : `row ${mapping.headerRow}`],
    ...(mapping.only ?? []).map(({ column, is }) => ['rows', `those with "${is}" in column ${column + 1}`]),
    [
      'time',
      `${columns.length === 1 ? 'column' : 'columns'} ${columns.join(' and ')}, ${time.count === undefined ? dates[time.order] : `${time.count} since 1970 UTC`}`,
    ],
    ['zone', time.zone === 'offset' ? 'each row states its offset from UTC' : time.zone],
    ...mapping.channels.map((c) => [
      headed(c.channel, c),
      `column ${c.column + 1} "${c.heading}", ${c.unit}`,
    ]),
    ...mapping.states.map((s) => [headed(s.state, s), `column ${s.column + 1} "${s.heading}"`]),
    ['not read', unused.length === 0 ? '-' : unused.map((heading) => `"${heading}"`).join(', ')],
  ];
  const width = Math.max(30, output.width - 8);
  for (const line of tableLines(lines, width)) output.line(`        ${line}`);
  output.line();
  const head = [
    'row',
    'UTC',
    zone,
    ...mapping.channels.map((c) => headed(c.channel, c)),
    ...mapping.states.map((s) => headed(s.state, s)),
  ];
  const table = [head, ...rows.map((row) => cells(row, mapping))];
  // Many columns do not fit side by side: each row is then a list.
  if (head.length * 14 <= width) for (const line of tableLines(table, width)) output.line(`        ${line}`);
  else
    for (const row of table.slice(1))
      output.line(`        ${row.map((cell, i) => `${head[i] ?? ''} ${cell}`).join(' · ')}`);
}

/** `return-air front`: a column, and the compartment that it is of. */
const headed = (name: string, { compartment }: { compartment?: string | undefined }): string =>
  compartment === undefined ? name : `${name} ${compartment}`;

/** °F first: rows say the unit that they were read in, and this is only a look. */
const format = terminalFormat('°F');

function cells(row: PreviewRow, mapping: LogPreview['mapping']): string[] {
  return [
    String(row.row),
    row.utc.replace('T', ' ').replace('.000Z', 'Z'),
    row.local,
    ...mapping.channels.map(({ channel, compartment }) => {
      const found = row.temperatures.find(
        (one) => one.channel === channel && one.compartment === compartment,
      );
      return found === undefined ? '-' : format.temperature(found.celsius);
    }),
    ...mapping.states.map(
      ({ state, compartment }) =>
        row.states.find((one) => one.state === state && one.compartment === compartment)?.text ?? '-',
    ),
  ];
}
