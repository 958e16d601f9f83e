import { type Channel, channel, type StateColumn, stateColumn } from '../../model/evidence.js';
import { readWall } from '../clock/wall-time.js';
import { meaningOf, plainHeading } from './headings.js';
import type { Meaning } from './words.js';

/** What a person says about columns: for each meaning a heading, or a number counted from 1. */
export type ColumnChoice = Partial<Record<Meaning, string | number>>;

export interface Columns {
  /** One column, or date and then time of day. */
  time: number[];
  channels: { channel: Channel; column: number }[];
  states: { state: StateColumn; column: number }[];
  /** Headings that were not needed. */
  unused: string[];
}

export type Assignment =
  | { is: 'columns'; columns: Columns; score: number }
  | { is: 'no-time' | 'time-without-date' | 'no-temperature'; column?: string };

/** Gives each meaning one column: what the person chose, else the heading that says it best. */
export function assignColumns(
  headings: readonly string[],
  sample: readonly (readonly string[])[],
  choice: ColumnChoice = {},
): Assignment {
  const taken = new Map<Meaning, { column: number; strength: number }>();
  headings.forEach((heading, column) => {
    const meaning = meaningOf(heading);
    if (meaning === undefined) return;
    const rival = taken.get(meaning.means);
    if (rival === undefined || meaning.strength > rival.strength)
      taken.set(meaning.means, { column, strength: meaning.strength });
  });
  for (const [means, wanted] of Object.entries(choice)) {
    const column = typeof wanted === 'number' ? wanted - 1 : findHeading(headings, wanted);
    // A column that a person gave away is not guessed for anything else.
    for (const [other, place] of taken) if (place.column === column) taken.delete(other);
    if (column >= 0 && column < headings.length && isMeaning(means))
      taken.set(means, { column, strength: 100 });
  }
  const time = timeColumns(taken, sample);
  if (!Array.isArray(time)) {
    const column = time.column === undefined ? undefined : headings[time.column];
    return { is: time.is, ...(column === undefined ? {} : { column }) };
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
  const used = new Set([...time, ...channels.map((c) => c.column), ...states.map((s) => s.column)]);
  return {
    is: 'columns',
    columns: {
      time,
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
  if (date !== undefined && hours !== undefined) return [date.column, hours.column];
  if (date !== undefined) return [date.column];
  return hours === undefined ? { is: 'no-time' } : { is: 'time-without-date', column: hours.column };
}

function holdsDates(column: number, sample: readonly (readonly string[])[]): boolean {
  return sample.some((row) => {
    const cell = row[column] ?? '';
    return (['iso', 'month-day-year', 'day-month-year'] as const).some(
      (order) => readWall(cell, order) !== undefined,
    );
  });
}

function findHeading(headings: readonly string[], wanted: string): number {
  const exact = headings.findIndex((heading) => heading.trim() === wanted.trim());
  return exact >= 0 ? exact : headings.findIndex((heading) => plainHeading(heading) === plainHeading(wanted));
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
