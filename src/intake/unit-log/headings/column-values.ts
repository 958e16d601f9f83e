import { dateParts, readTimeOfDay } from '../../time/wall-time.js';
import { unwrapped } from '../cells/cell-value.js';
import { isFaultMark } from '../cells/fault-marks.js';
import { readNumber, readWithUnit } from '../cells/numbers.js';
import { epochOf } from '../rows/epoch.js';

/** What the first cells of a column are, counted. */
export interface ColumnValues {
  /** Cells that are not empty. */
  filled: number;
  numbers: number;
  integers: number;
  /** Numbers, fault marks and nothing else. */
  readable: number;
  dates: number;
  /** Dates without a time of day. */
  datesAlone: number;
  clocks: number;
  /** Seconds or milliseconds since 1970. */
  counted: number;
  /** Different texts. */
  distinct: number;
  /** Whole numbers that go up by one. */
  running: boolean;
}

/** Rows of a sample that are looked at: enough to tell a name from a number. */
const LOOKED_AT = 40;

export function valuesOf(sample: readonly (readonly string[])[], column: number): ColumnValues {
  const found: ColumnValues = {
    ...{
      filled: 0,
      numbers: 0,
      integers: 0,
      readable: 0,
      dates: 0,
      datesAlone: 0,
      clocks: 0,
      counted: 0,
      distinct: 0,
    },
    running: true,
  };
  const texts = new Set<string>();
  let before: number | undefined;
  for (const row of sample.slice(0, LOOKED_AT)) {
    const cell = unwrapped((row[column] ?? '').trim());
    if (cell === '') continue;
    found.filled += 1;
    texts.add(cell);
    const number = eitherDecimal(cell);
    if (!Number.isNaN(number)) {
      found.numbers += 1;
      if (Number.isInteger(number)) found.integers += 1;
      if (epochOf(number) !== undefined) found.counted += 1;
    }
    if (
      !Number.isNaN(number) ||
      readWithUnit(cell, '.') !== undefined ||
      readWithUnit(cell, ',') !== undefined
    )
      found.readable += 1;
    else if (cell.length <= 40 && isFaultMark(cell, false)) found.readable += 1;
    const date = dateParts(cell);
    if (date !== undefined) found.dates += 1;
    if (date !== undefined && date.clock === undefined) found.datesAlone += 1;
    if (readTimeOfDay(cell) !== undefined) found.clocks += 1;
    if (!Number.isInteger(number) || (before !== undefined && number !== before + 1)) found.running = false;
    before = number;
  }
  found.distinct = texts.size;
  found.running &&= found.filled > 1;
  return found;
}

function eitherDecimal(cell: string): number {
  const pointed = readNumber(cell, '.');
  return Number.isNaN(pointed) ? readNumber(cell, ',') : pointed;
}

/** Whether the cells can be temperatures: most that are not empty are numbers or marks of a fault. */
export function canBeTemperatures({ filled, readable }: ColumnValues): boolean {
  return readable * 2 >= filled;
}

/** Whether nearly all cells are dates: a column of times whatever its heading says. */
export function areDates({ filled, dates, numbers }: ColumnValues): boolean {
  // A number can be a spreadsheet's day; alone it shows nothing.
  return filled > 0 && dates >= 0.9 * filled && numbers < dates;
}
