import type { Problem, Where } from '../../model/error.js';
import type { FoundTable, TableSearch } from './find-table.js';

const numbered = (headings: readonly string[]): string =>
  headings
    .slice(0, 60)
    .map((heading, i) => `${i + 1} "${heading.slice(0, 60)}"`)
    .join(', ');

const unsupported = (message: string, where: Where, fix: string): Problem => ({
  code: 'unsupported-file',
  message,
  where,
  fix,
});

/** Columns whose words are not known, and how to say what they are. */
export function columnsNotFound(where: Where, lack: Extract<TableSearch, { is: 'not-found' }>): Problem {
  if (lack.why === 'no-rows') return noRows({ ...where, row: lack.row });
  const why = {
    'no-time': 'no column is headed as date or time',
    'time-without-date': `column "${lack.column ?? ''}" has times of day, but no column has the date`,
    'no-temperature': 'no column is headed as set point, return air, supply air, ambient or probe',
  }[lack.why];
  return unsupported(
    `${why}; the columns are: ${numbered(lack.headings)}`,
    { ...where, row: lack.row },
    'say which column is what by heading or number, for example time=1, set-point=2, return-air=3',
  );
}

export function noRows(where: Where): Problem {
  return unsupported('the table has no rows', where, 'download the log again, over the whole trip');
}

export function unitUnknown(where: Where, headings: readonly string[]): Problem {
  return unsupported(
    `nothing says whether ${headings.map((h) => `"${h}"`).join(', ')} ${headings.length === 1 ? 'is' : 'are'} in °F or °C`,
    where,
    'say the unit of the log: °F or °C',
  );
}

export function datesAmbiguous(where: Where, example: string): Problem {
  return unsupported(
    `dates such as ${example} can be read month first or day first, and nothing in the file decides it`,
    where,
    'say the order of its dates: month-day-year or day-month-year',
  );
}

export function noDates(where: Where, table: FoundTable, headings: readonly string[]): Problem {
  const [column = 0] = table.columns.time;
  return unsupported(
    `column "${headings[column] ?? ''}" has no date that can be read; the columns are: ${numbered(headings)}`,
    { ...where, row: table.headerRow + 1, column: headings[column] ?? '' },
    'say which column has the time, by heading or number',
  );
}

export function zoneUnknown(where: Where): Problem {
  return unsupported(
    "the rows do not state the zone of the log's clock, and the stops lie in different zones",
    where,
    'say the zone that the clock is set to, such as America/Phoenix or UTC, and collect the file again',
  );
}
