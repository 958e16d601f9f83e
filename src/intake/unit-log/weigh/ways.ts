import type { LogMapping } from '../../../core/model/evidence.js';
import type { TemperatureUnit } from '../../../core/model/temperature.js';
import type { DateOrder } from '../../time/wall-time.js';
import { readWall } from '../../time/wall-time.js';
import { unwrapped } from '../cells/cell-value.js';
import type { FoundTable } from '../headings/find-table.js';

const SHOWN = 3;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** The first rows whose dates can be read in an order, in words that leave no doubt about day and month. */
export function rowsRead(table: FoundTable, order: DateOrder, shift = 0, zone = ''): string[] {
  const [first = 0, second] = table.columns.time;
  return table.sample
    .flatMap((row) => {
      const written = [row[first], second === undefined ? undefined : row[second]]
        .map((cell) => unwrapped((cell ?? '').trim()))
        .join(' ')
        .trim();
      const wall = readWall(written, order)?.wall;
      if (wall === undefined) return [];
      const values = table.columns.channels.map(({ column }) => (row[column] ?? '').trim()).filter(Boolean);
      return [`${written} is ${inWords(wall + shift)}${zone}: ${values.join(', ')}`];
    })
    .slice(0, SHOWN);
}

/** The first values in each unit that they can be in. */
export function valuesRead(table: FoundTable, column: number, unit: TemperatureUnit): string[] {
  return table.sample
    .map((row) => (row[column] ?? '').trim())
    .filter((cell) => cell !== '')
    .slice(0, SHOWN)
    .map((cell) => `${table.headings[column] ?? ''}: ${cell} ${unit}`);
}

export const ORDER_WORDS: Readonly<Record<LogMapping['time']['order'], string>> = {
  iso: 'year-month-day',
  'month-day-year': 'month-day-year',
  'day-month-year': 'day-month-year',
};

function inWords(wall: number): string {
  const at = new Date(wall);
  const time = at.toISOString().slice(11, 16);
  return `${at.getUTCDate()} ${MONTHS[at.getUTCMonth()] ?? ''} ${at.getUTCFullYear()}, ${time}`;
}
