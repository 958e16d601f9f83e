import type { TimePart } from '../rows/time-parts.js';
import type { ColumnValues } from './column-values.js';
import { plainHeading } from './meaning.js';

/** Columns that hold date and time between them, and what each has of it. */
export interface PartColumns {
  columns: number[];
  parts: TimePart[];
}

/** Headings of a part alone, lower case and without accents, in the languages of the headings. */
const WORDS: Readonly<Record<Exclude<TimePart, 'clock'>, readonly string[]>> = {
  year: ['year', 'yr', 'yyyy', 'yy', 'ano', 'annee', 'jahr', 'anno', 'ar'],
  month: ['month', 'mon', 'mo', 'mm', 'mes', 'mois', 'monat', 'mese', 'manad'],
  day: ['day', 'dd', 'dy', 'dia', 'jour', 'tag', 'day month', 'dom', 'giorno', 'dag'],
  'day-of-year': ['doy', 'jday', 'jd', 'julian', 'julian day', 'day year', 'yday', 'yearday'],
  hour: ['hour', 'hr', 'hh', 'hora', 'heure', 'stunde', 'ora', 'h'],
  minute: ['minute', 'min', 'mi', 'mn', 'minuto', 'minutes'],
  second: ['second', 'sec', 'ss', 'segundo', 'seconde', 'sekunde', 'seconds'],
  hhmm: ['hhmm', 'hour min', 'hrmn', 'hour', 'time', 'hour utc', 'time utc'],
};
const RANGES: Readonly<Record<Exclude<TimePart, 'clock'>, readonly [number, number]>> = {
  year: [0, 2199],
  month: [1, 12],
  day: [1, 31],
  'day-of-year': [1, 366],
  hour: [0, 24],
  minute: [0, 59],
  second: [0, 60],
  hhmm: [0, 2400],
};

/**
 * The columns of year, month and day, or year and day of the year, with those of the time of day; undefined where the
 * headings and the numbers under them are not all of these.
 */
export function partColumns(
  headings: readonly string[],
  sample: readonly (readonly string[])[],
  values: (column: number) => ColumnValues,
): PartColumns | undefined {
  const plain = headings.map((heading) => (heading.length > 60 ? '' : plainHeading(heading)));
  const find = (part: Exclude<TimePart, 'clock'>): number | undefined => {
    const [from, to] = RANGES[part];
    const at = plain.findIndex((words, column) => {
      if (!WORDS[part].includes(words)) return false;
      const numbers = sample.map((row) => (row[column] ?? '').trim()).filter((cell) => cell !== '');
      return (
        numbers.length > 0 &&
        numbers.every((cell) => /^\d{1,4}(?:\.0+)?$/.test(cell) && Number(cell) >= from && Number(cell) <= to)
      );
    });
    return at < 0 ? undefined : at;
  };
  const found: [TimePart, number][] = [];
  const take = (part: Exclude<TimePart, 'clock'>): boolean => {
    const column = find(part);
    if (column !== undefined && found.every(([, other]) => other !== column)) found.push([part, column]);
    return column !== undefined;
  };
  if (!take('year') || !((take('month') && take('day')) || take('day-of-year'))) return undefined;
  const clock = headings.findIndex((_, column) => {
    const { filled, clocks, numbers } = values(column);
    return filled > 0 && clocks >= 0.9 * filled && numbers < clocks;
  });
  if (clock >= 0) found.push(['clock', clock]);
  else if (take('hour')) {
    if (take('minute')) take('second');
  } else take('hhmm');
  return { columns: found.map(([, column]) => column), parts: found.map(([part]) => part) };
}
