import type { Problem, Where } from '../../core/model/error.js';
import type { LogMapping } from '../../core/model/evidence.js';
import type { OrderVerdict } from '../time/date-order.js';
import type { MissingColumn } from './headings/compartment-columns.js';
import { type FoundTable, MOST_COLUMNS, type TableSearch } from './headings/find-table.js';
import type { Several } from './rows/instrument-watch.js';
import { ORDER_WORDS, rowsRead, valuesRead } from './weigh/ways.js';

const numbered = (headings: readonly string[]): string => {
  const shown = headings.slice(0, 60).map((heading, i) => `${i + 1} "${heading.slice(0, 60)}"`);
  return headings.length > 60 ? `${shown.join(', ')} … ${headings.length}` : shown.join(', ');
};

const unsupported = (message: string, where: Where, fix: string): Problem => ({
  code: 'unsupported-file',
  message,
  where,
  fix,
});

const MAP =
  'say which column is what, by heading or number, in a file such as "columns: { time: 1, set-point: 2, return-air: 3 }", look with --dry-run --map that-file.yaml, and collect with it';

/** Columns whose words are not known, and how to say what they are. */
export function columnsNotFound(where: Where, lack: Extract<TableSearch, { is: 'not-found' }>): Problem {
  const at = { ...where, row: lack.row };
  switch (lack.why) {
    case 'no-rows':
      return noRows(at);
    case 'too-many-columns':
      return unsupported(
        `more than ${MOST_COLUMNS} columns`,
        at,
        'save the columns of times and temperatures alone as CSV',
      );
    case 'no-such-column':
      return unsupported(
        `there is no column ${lack.column ?? ''}; the columns are: ${numbered(lack.headings)}`,
        at,
        'write the heading as it stands in the file, or its number counted from 1',
      );
    case 'no-headings':
      return unsupported(
        `the table has no headings; its first row is: ${numbered(lack.headings)}`,
        at,
        `${MAP}; header: none in it says that there are no headings`,
      );
    case 'no-time':
      return unsupported(`no column is headed as date or time; ${theColumns(lack)}`, at, MAP);
    case 'time-without-date':
      return unsupported(
        `column "${lack.column ?? ''}" has times of day, but no column has the date; ${theColumns(lack)}`,
        at,
        MAP,
      );
    case 'no-temperature':
      return unsupported(
        `no column is headed as set point, return air, supply air, ambient or probe; ${theColumns(lack)}`,
        at,
        MAP,
      );
  }
}

const theColumns = ({ headings }: { headings: readonly string[] }): string =>
  `the columns are: ${numbered(headings)}`;

/** A column that delivery.yaml names for a compartment, in a log that has others of them. */
export function compartmentColumnMissing(
  where: Where,
  { compartment, means, column }: MissingColumn,
  { channels, states }: Pick<LogMapping, 'channels' | 'states'>,
  unused: readonly string[],
): Problem {
  const there = [...channels, ...states].map(({ heading }) => heading);
  return {
    code: 'bad-value',
    message: `delivery.yaml says that column "${column}" is the ${means.replaceAll('-', ' ')} of compartment "${compartment}", and this log has no such column; its columns are: ${numbered([...there, ...unused])}`,
    where,
    fix: `write the heading as it stands in the log, at equipment: trailer: compartments: ${compartment}: columns, and collect the log again`,
  };
}

export function noRows(where: Where): Problem {
  return unsupported('the table has no rows', where, 'download the log again, over the whole trip');
}

export function unitUnknown(where: Where, table: FoundTable, columns: readonly number[]): Problem {
  const headings = columns.map((column) => `"${table.headings[column] ?? ''}"`);
  return {
    ...unsupported(
      `nothing says whether ${headings.join(', ')} ${headings.length === 1 ? 'is' : 'are'} in °F or °C`,
      where,
      'say the unit of the log with --log-unit F or --log-unit C',
    ),
    ways: (['°F', '°C'] as const).map((unit) => ({
      answer: `--log-unit ${unit.slice(1)}`,
      rows: columns.slice(0, 1).flatMap((column) => valuesRead(table, column, unit)),
    })),
  };
}

export function datesAmbiguous(
  where: Where,
  table: FoundTable,
  { example, orders }: Extract<OrderVerdict, { is: 'ambiguous' }>,
): Problem {
  const firsts = { iso: 'year first', 'month-day-year': 'month first', 'day-month-year': 'day first' };
  const read = orders.map((order) => firsts[order]).join(' or ');
  const answers = orders.map((order) => `--log-dates ${ORDER_WORDS[order]}`);
  return {
    ...unsupported(
      `dates such as ${example} can be read ${read}, and nothing in the file decides it`,
      where,
      `say the order of its dates with ${answers.join(' or ')}`,
    ),
    ways: orders.map((order, i) => ({ answer: answers[i] ?? '', rows: rowsRead(table, order) })),
  };
}

export function columnOfRowsUnknown(
  where: Where,
  only: readonly { column: string | number }[],
  { headings }: FoundTable,
): Problem {
  return unsupported(
    `there is no column ${only.map(({ column }) => column).join(', ')}; ${theColumns({ headings })}`,
    where,
    'write the heading under only: as it stands in the file, or its number counted from 1',
  );
}

/** Rows of several instruments are no log of one; which of them is of this load only a person knows. */
export function severalInstruments(where: Where, { heading, names }: Several): Problem {
  const all = [...names].map(([name, rows]) => `${name} (${rows.toLocaleString('en-US')} rows)`);
  const shown = all.length > 12 ? `${all.slice(0, 12).join(', ')} … ${all.length} in all` : all.join(', ');
  return {
    ...unsupported(
      `the rows are of several instruments or places, by column "${heading}": ${shown}`,
      where,
      'say which one with a map file (--map), or save the rows of each as a file of its own and collect them all',
    ),
    ways: [...names.keys()].slice(0, 12).map((name) => ({
      answer: `only: [{ column: ${JSON.stringify(heading)}, is: ${JSON.stringify(name)} }]`,
      rows: [],
    })),
  };
}

export function severalAtATime(where: Where, rows: number): Problem {
  return unsupported(
    `${rows.toLocaleString('en-US')} rows have the time of another row and other values, and no column says what sets them apart`,
    where,
    'download the log again with one instrument in a file, 24-hour times and seconds',
  );
}

export function cellsCut(where: Where, rows: number): Problem {
  return unsupported(
    `${rows.toLocaleString('en-US')} rows have another number of cells than the headings: the decimal mark may be the mark between the columns too`,
    where,
    'download the log again with a decimal point, or with semicolons between the columns',
  );
}

export function halfDayClock(where: Where): Problem {
  return unsupported(
    'the times of day run from 1 to 12 and begin again, and nothing says which are before noon',
    where,
    'download the log again with 24-hour times, or with AM and PM',
  );
}

export function noDates(where: Where, table: FoundTable): Problem {
  const [column = 0] = table.columns.time;
  return unsupported(
    `column "${table.headings[column] ?? ''}" has no date that can be read; ${theColumns(table)}`,
    { ...where, row: table.headerRow + 1, column: table.headings[column] ?? '' },
    MAP,
  );
}

export function zoneUnknown(where: Where): Problem {
  return unsupported(
    "the rows do not state the zone of the log's clock, and the stops lie in different zones",
    where,
    'say the zone that the clock is set to with --log-zone, such as America/Phoenix or UTC, and collect the file again',
  );
}
