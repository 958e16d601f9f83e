import type { LogMapping } from '../../../core/model/evidence.js';
import { type DateOrder, dateParts, readTimeOfDay, wallOf } from '../../time/wall-time.js';
import { dateOfLine } from './date-lines.js';
import { composedTime, type TimePart } from './time-parts.js';
import { withOffset, withoutLetters } from './zone-letters.js';

/** How the times of a table's rows are put together, where one or two columns do not hold them whole. */
export interface TimeForm {
  columns: readonly number[];
  parts?: readonly TimePart[] | undefined;
  dated?: 'above' | undefined;
  /** Offsets in minutes of the letters that rows state; `dropped` while they are not known. */
  letters?: Readonly<Record<string, number | null>> | 'dropped' | undefined;
  /** Known once the dates are weighed; until then a date line is taken as it is written. */
  order?: DateOrder | undefined;
}

const DAY = 86_400_000;

/** Gives each row a cell with its whole time in place of what the table has: parts, a date above, letters of a zone. */
export class TimeShape {
  /** The columns with the times of shaped rows: date and time, or date and time of day. */
  readonly columns: number[];
  readonly #form: TimeForm;
  readonly #plain: boolean;
  #date: string | undefined;
  #days = 0;
  #before = 0;

  constructor(form: TimeForm) {
    this.#form = form;
    const { columns, parts, dated, letters } = form;
    this.columns = parts === undefined ? [...columns] : columns.slice(0, 1);
    this.#plain = parts === undefined && dated === undefined && letters === undefined;
  }

  /** Takes a line above the rows, which may state their date. */
  above(cells: readonly string[]): void {
    if (this.#form.dated === undefined) return;
    const date = dateOfLine(cells);
    if (date !== undefined) this.#begin(date);
  }

  /** The row with its time whole; undefined for a line that is none but states the date of the rows below it. */
  row(cells: string[]): string[] | undefined {
    if (this.#plain) return cells;
    const { columns, parts, dated } = this.#form;
    const [first = 0] = columns;
    if (parts !== undefined)
      return cells.with(first < cells.length ? first : 0, this.#composed(cells, columns, parts));
    if (dated !== undefined) {
      const date = dateOfLine(cells);
      if (date !== undefined) {
        this.#begin(date);
        return undefined;
      }
      return first < cells.length ? cells.with(first, this.#dated(cells[first] ?? '')) : cells;
    }
    const last = columns.at(-1) ?? 0;
    return last < cells.length ? cells.with(last, this.#lettered(cells[last] ?? '')) : cells;
  }

  #composed(cells: readonly string[], columns: readonly number[], parts: readonly TimePart[]): string {
    return composedTime(
      columns.map((column) => cells[column] ?? ''),
      parts,
    );
  }

  #lettered(cell: string): string {
    const { letters } = this.#form;
    if (letters === undefined) return cell;
    const text = cell.trim();
    return letters === 'dropped' ? withoutLetters(text) : withOffset(text, letters);
  }

  #begin(date: string): void {
    this.#date = date;
    this.#days = 0;
    this.#before = 0;
  }

  /** The time of day behind the date above it. A clock that begins again without a new date is in the next day. */
  #dated(cell: string): string {
    const clock = this.#lettered(cell);
    const ms = readTimeOfDay(clock)?.ms;
    if (this.#date === undefined || ms === undefined) return '';
    if (ms < this.#before - DAY / 2) this.#days += 1;
    this.#before = ms;
    const { order } = this.#form;
    const parts = dateParts(this.#date);
    const midnight = order === undefined || parts === undefined ? undefined : wallOf(parts, order, undefined);
    return midnight === undefined
      ? `${this.#date} ${clock}`
      : `${new Date(midnight.wall + this.#days * DAY).toISOString().slice(0, 10)} ${clock}`;
  }
}

/** How the rows of a log are shaped by its mapping. */
export const shapeOf = (time: LogMapping['time']): TimeShape => new TimeShape(time);
