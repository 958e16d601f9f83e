import { type Channel, channel, type StateColumn, stateColumn } from '../../../core/model/evidence.js';
import { omitUndefined } from '../../../core/model/omit-undefined.js';
import { dateParts, readTimeOfDay, readWall } from '../../time/wall-time.js';
import { unwrapped } from '../cells/cell-value.js';
import { withoutLetters } from '../rows/zone-letters.js';
import { type ColumnValues, valuesOf } from './column-values.js';
import { guessColumns } from './guess.js';
import { type HeadingReading, headingMeaning, plainHeading } from './meaning.js';
import { operationColumn } from './operation-column.js';
import { type PartColumns, partColumns } from './part-columns.js';
import type { Meaning } from './words.js';

/** A column by its heading, or by its number counted from 1. */
export type ColumnName = string | number;

/** What a person says about columns. */
export type ColumnChoice = { [M in Meaning]?: ColumnName | undefined } & {
  /** Columns that are none of these, whatever their headings say. */
  ignore?: readonly ColumnName[] | undefined;
};

export interface Columns {
  /** One column, or date and then time of day; of a time in parts, the first of their columns. */
  time: number[];
  /** Where date and time are spread over more columns. */
  parts?: PartColumns;
  /** The rows have times of day alone, and a line above them has their date. */
  dated?: 'above';
  channels: { channel: Channel; column: number; compartment?: string }[];
  states: { state: StateColumn; column: number; compartment?: string }[];
  /** Headings that were not needed. */
  unused: string[];
}

export type Assignment =
  | { is: 'columns'; columns: Columns; score: number }
  | { is: 'no-time' | 'time-without-date' | 'no-temperature' | 'no-such-column'; column?: string };

/** Gives each meaning one column: what the person chose, else the heading that says it best. */
export function assignColumns(
  headings: readonly string[],
  sample: readonly (readonly string[])[],
  choice: ColumnChoice = {},
  said: (heading: string, column: number) => HeadingReading | undefined = headingMeaning,
  dated?: 'above',
): Assignment {
  const { ignore = [], ...wanted } = choice;
  const chosen = new Map<Meaning, number>();
  for (const [means, name] of Object.entries(wanted)) {
    if (name === undefined) continue;
    const column = columnAt(headings, name);
    if (column === undefined) return { is: 'no-such-column', column: String(name) };
    if (isMeaning(means)) chosen.set(means, column);
  }
  // A column that a person gave away or ruled out is not guessed for anything else.
  const gone = new Set([...chosen.values(), ...ignore.map((name) => columnAt(headings, name))]);
  const guessed = headings.map((heading, column) => (gone.has(column) ? undefined : said(heading, column)));
  const known = new Map<number, ColumnValues>();
  const values = (column: number): ColumnValues => {
    const found = known.get(column) ?? valuesOf(sample, column);
    known.set(column, found);
    return found;
  };
  const taken = guessColumns(guessed, values, (column) => !gone.has(column));
  for (const [means, column] of chosen) taken.set(means, { column, strength: 100 });
  if (!taken.has('operation')) {
    const others = new Set([...taken.values()].map(({ column }) => column));
    const column = operationColumn(sample, (one) => !gone.has(one) && !others.has(one));
    if (column !== undefined) taken.set('operation', { column, strength: 0.4 });
  }
  const whole = withClock(timeColumns(taken, sample), guessed, values, (column) => gone.has(column));
  const given = ['time', 'date', 'clock'].some((name) => isMeaning(name) && chosen.has(name));
  const hasDates = Array.isArray(whole) && holdsDates(whole[0] ?? 0, sample);
  const parts = given || hasDates ? undefined : partColumns(headings, sample, values);
  const alone =
    dated !== undefined && !Array.isArray(whole) && whole.is === 'time-without-date'
      ? whole.column
      : undefined;
  const time = parts?.columns.slice(0, 1) ?? (alone === undefined ? whole : [alone]);
  if (!Array.isArray(time)) {
    const column = time.column === undefined ? undefined : headings[time.column];
    return { is: time.is, ...omitUndefined({ column }) };
  }
  const channels = channel.options.flatMap((name) => {
    const place = taken.get(name);
    return place === undefined ? [] : [{ channel: name, column: place.column }];
  });
  if (channels.length === 0) return { is: 'no-temperature' };
  const states = stateColumn.options.flatMap((name) => {
    const place = taken.get(name);
    return place === undefined ? [] : [{ state: name, column: place.column }];
  });
  const used = new Set([
    ...time,
    ...(parts?.columns ?? []),
    ...channels.map((c) => c.column),
    ...states.map((s) => s.column),
  ]);
  return {
    is: 'columns',
    columns: {
      time,
      ...omitUndefined({ parts, dated: alone === undefined ? undefined : dated }),
      channels,
      states,
      unused: headings.filter((heading, i) => heading.trim() !== '' && !used.has(i)).map((h) => h.trim()),
    },
    score: used.size,
  };
}

function timeColumns(
  taken: ReadonlyMap<Meaning, { column: number }>,
  sample: readonly (readonly string[])[],
): number[] | { is: 'no-time' | 'time-without-date'; column?: number } {
  const [both, date, clock] = [taken.get('time'), taken.get('date'), taken.get('clock')];
  if (both !== undefined && (holdsDates(both.column, sample) || date === undefined)) return [both.column];
  const hours = clock ?? both;
  if (hours !== undefined && holdsDates(hours.column, sample)) return [hours.column];
  if (date !== undefined && hours !== undefined)
    return holdsDates(date.column, sample, 'with-clock') ? [date.column] : [date.column, hours.column];
  if (date !== undefined) return [date.column];
  if (hours === undefined) return { is: 'no-time' };
  // Cells that are neither a time of day nor a date are reported once the dates are read.
  const cells = sample.map((row) => (row[hours.column] ?? '').trim()).filter((cell) => cell !== '');
  if (cells.length > 0 && cells.every((cell) => readTimeOfDay(cell) === undefined)) return [hours.column];
  return { is: 'time-without-date', column: hours.column };
}

const TIMES: ReadonlySet<string> = new Set(['time', 'date', 'clock']);

/**
 * The column of times of day beside one of dates alone: its heading says no more than time, since `Date Time` may stand
 * over both, or is not known and follows at once. A column that a person gave is not guessed for anything else.
 */
function withClock(
  time: ReturnType<typeof timeColumns>,
  guessed: readonly (HeadingReading | undefined)[],
  values: (column: number) => ColumnValues,
  isGiven: (column: number) => boolean,
): ReturnType<typeof timeColumns> {
  if (!Array.isArray(time) || time.length !== 1) return time;
  const [date = 0] = time;
  if (values(date).datesAlone < values(date).filled || values(date).filled === 0) return time;
  const clock = guessed.findIndex((said, column) => {
    const saysTime = said === undefined ? column === date + 1 : TIMES.has(said.means);
    if (column === date || !saysTime || isGiven(column)) return false;
    const { filled, clocks, numbers } = values(column);
    return filled > 0 && clocks >= 0.9 * filled && numbers < clocks;
  });
  return clock < 0 ? time : [date, clock];
}

/** `with-clock`: dates with a time of day behind them. */
function holdsDates(column: number, sample: readonly (readonly string[])[], as?: 'with-clock'): boolean {
  return sample.some((row) => {
    const cell = withoutLetters(unwrapped(row[column] ?? '').trim());
    if (as !== undefined) {
      // A spreadsheet writes midnight behind a date.
      const clock = dateParts(cell)?.clock;
      if (clock === undefined || (readTimeOfDay(clock)?.ms ?? 0) === 0) return false;
    }
    return (['iso', 'month-day-year', 'day-month-year'] as const).some(
      (order) => readWall(cell, order) !== undefined,
    );
  });
}

/** The place of a column by its heading or its number; undefined where there is none. */
export function columnAt(headings: readonly string[], wanted: ColumnName): number | undefined {
  if (typeof wanted === 'number') return wanted >= 1 && wanted <= headings.length ? wanted - 1 : undefined;
  const exact = headings.findIndex((heading) => heading.trim() === wanted.trim());
  if (exact >= 0) return exact;
  const plain = plainHeading(wanted);
  const close = headings.findIndex((heading) => plain !== '' && plainHeading(heading) === plain);
  return close < 0 ? undefined : close;
}

const MEANINGS: ReadonlySet<string> = new Set([
  'time',
  'date',
  'clock',
  ...channel.options,
  ...stateColumn.options,
]);
function isMeaning(name: string): name is Meaning {
  return MEANINGS.has(name);
}
