import type { Problem, Where } from '../../core/model/error.js';
import { type FoundTable, MOST_COLUMNS, type TableSearch } from './headings/find-table.js';

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

export function noRows(where: Where): Problem {
  return unsupported('the table has no rows', where, 'download the log again, over the whole trip');
}

export function unitUnknown(where: Where, headings: readonly string[]): Problem {
  return unsupported(
    `nothing says whether ${headings.map((h) => `"${h}"`).join(', ')} ${headings.length === 1 ? 'is' : 'are'} in °F or °C`,
    where,
    'say the unit of the log with --log-unit F or --log-unit C',
  );
}

export function datesAmbiguous(where: Where, example: string): Problem {
  return unsupported(
    `dates such as ${example} can be read month first or day first, and nothing in the file decides it`,
    where,
    'say the order of its dates with --log-dates month-day-year or --log-dates day-month-year',
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
