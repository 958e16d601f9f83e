import type { ByteShelf } from '../../core/model/columns/kept-blocks.js';
import { NumberWriter, type PackedNumbers } from '../../core/model/columns/packed-numbers.js';
import { TextWriter } from '../../core/model/columns/text-column.js';
import { DossierError } from '../../core/model/error.js';
import type { EvidenceId, LogMapping } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { toCelsius } from '../../core/model/temperature.js';
import type { RowProblem, UnitLog } from '../../core/model/unit-log.js';
import type { ByteSource } from '../table/bytes.js';
import { eachRow } from '../table/rows.js';
import { isPossible, oddValue } from './cells/cell-value.js';
import { readNumber } from './cells/numbers.js';
import { type FoldedRow, resolveFolds, sortedOnce } from './rows/order-rows.js';
import { PlainCells } from './rows/plain-cells.js';
import { repeatedRow } from './rows/repeated-rows.js';
import { RowNotes } from './rows/row-notes.js';
import { RowTimes } from './rows/row-times.js';
import { StatedReader } from './stated.js';
import { TemporaryShelf } from './temporary-shelf.js';

export interface LogReadOptions {
  evidence: EvidenceId;
  /** Seconds to add to the log's clock, from a measured comparison. */
  addedSeconds: number;
  /** Where what does not fit into memory lies; a temporary file of its own if not given. */
  shelf?: ByteShelf;
}

/** A unit log, how many rows could not be placed in time or stood twice, and how often each kind of note was made. */
export interface ReadLog extends UnitLog {
  rowsLeftOut: number;
  counts: Partial<Record<RowProblem['is'], number>>;
}

const MOST_ROWS = 5_000_000;
/** Rows of more cells are read the slow way. */
const MOST_CELLS = 64;
/** The sign of a negative number of nines, the only possible value that is a fault mark. */
const NINES_BELOW = /^\s*[-−]99/;

/**
 * Reads a log as its mapping says: times to UTC, temperatures to °C, rows sorted by time. Streams, with
 * memory for the first few megabytes of packed columns alone: what is more lies on the shelf. A value that is missing is NaN; so is one that is a fault mark, a text or
 * impossible, which is also noted. A row without a readable time, in the hour that daylight saving skips,
 * with more cells than the header, or with the time of an earlier row and other values is left out and noted;
 * one that repeats or completes an earlier row is joined to it. A file that ends within a row loses that row.
 * Throws DossierError only when reading cannot go on (too many rows, an endless line, an unreadable file).
 */
export async function readUnitLog(
  source: ByteSource,
  mapping: LogMapping,
  { evidence, addedSeconds, shelf = new TemporaryShelf() }: LogReadOptions,
): Promise<ReadLog> {
  const reader = new LogReader(mapping, shelf);
  const text =
    mapping.sheet === undefined
      ? source
      : await (await import('../table/sheet.js')).sheetText(source, mapping.sheet);
  await eachRow(
    text,
    mapping,
    (cells, line) => reader.row(cells, line),
    (all, start, end, line) => reader.plainRow(all, start, end, line),
  );
  return reader.finish(evidence, addedSeconds);
}

class LogReader {
  readonly #mapping: LogMapping;
  readonly #notes = new RowNotes();
  readonly #times: NumberWriter;
  readonly #rows: NumberWriter;
  readonly #folded: FoldedRow[] = [];
  readonly #channels;
  readonly #states;
  readonly #rowTimes: RowTimes;
  readonly #stated = new StatedReader();
  readonly #needed: number;
  #width = Number.POSITIVE_INFINITY;
  #widthAbove = 0;
  #leftOut = 0;
  /** A row with too few cells; whether the file ends within it shows only with the next row. */
  #short: { cells: string[]; line: number } | undefined;

  readonly #plain: PlainCells;
  /** Temperatures of the row that is looked at. */
  readonly #found: Float64Array;

  constructor(mapping: LogMapping, shelf: ByteShelf) {
    this.#mapping = mapping;
    this.#times = new NumberWriter(shelf);
    this.#rows = new NumberWriter(shelf);
    this.#plain = new PlainCells(mapping, MOST_CELLS);
    this.#found = new Float64Array(mapping.channels.length);
    this.#channels = mapping.channels.map((c) => ({ ...c, values: new NumberWriter(shelf) }));
    this.#states = mapping.states.map((s) => ({ ...s, values: new TextWriter(shelf) }));
    this.#rowTimes = new RowTimes(mapping.time);
    this.#needed = 1 + Math.max(...mapping.channels.map((c) => c.column), ...mapping.time.columns);
  }

  row(cells: string[], line: number): boolean {
    if (line <= this.#mapping.headerRow) return this.#above(cells);
    if (this.#short !== undefined) this.#takeShort(this.#short);
    if (cells.length < this.#needed) this.#short = { cells, line };
    else this.#take(cells, line);
    return true;
  }

  /**
   * Takes a row that is plain numbers, a time of the day before it, and words as in the row before, without cutting
   * it; false for every other, and nothing is taken.
   */
  plainRow(text: string, start: number, end: number, line: number): boolean {
    if (line <= this.#mapping.headerRow || this.#short !== undefined) return false;
    const cells = this.#plain;
    if (!cells.cut(text, start, end)) return false;
    if (cells.count < this.#needed || cells.count > this.#width || this.#times.length >= MOST_ROWS)
      return false;
    const [first = 0, second] = this.#mapping.time.columns;
    const time = this.#rowTimes.plain(
      text,
      { start: cells.startOf(first), end: cells.endOf(first) },
      second === undefined ? undefined : { start: cells.startOf(second), end: cells.endOf(second) },
    );
    if (Number.isNaN(time)) return false;
    const found = this.#found;
    let i = 0;
    for (const { column, unit } of this.#channels) {
      const number = cells.number(column);
      const celsius = toCelsius(number, unit);
      if ((!isPossible(celsius) || number <= -99) && !cells.isEmpty(column)) return false;
      found[i++] = celsius;
    }
    for (const { column, values } of this.#states) {
      const { last } = values;
      if (last === undefined || column >= cells.count || !cells.says(column, last)) return false;
    }
    this.#times.push(time);
    this.#rows.push(line);
    i = 0;
    for (const { values } of this.#channels) values.push(found[i++] as number);
    for (const { values } of this.#states) values.pushLast();
    return true;
  }

  #above(cells: string[]): boolean {
    this.#stated.add(cells);
    // A line of units may stand under the headings and be shorter or longer.
    this.#width = Math.max(cells.length, this.#widthAbove);
    this.#widthAbove = cells.length;
    return true;
  }

  #takeShort({ cells, line }: { cells: string[]; line: number }): void {
    this.#short = undefined;
    const before = this.#times.length;
    this.#take(cells, line);
    if (this.#times.length > before)
      this.#notes.add(line, 'ragged', `${cells.length} of ${this.#needed} cells; the others are not known`);
  }

  #leave(line: number, is: RowProblem['is'], detail: string): void {
    this.#leftOut += 1;
    this.#notes.add(line, is, detail);
  }

  #take(cells: string[], line: number): void {
    if (this.#times.length >= MOST_ROWS)
      throw new DossierError('file-too-large', `more than ${MOST_ROWS} rows`, { where: { row: line } });
    if (cells.length > this.#width && cells.slice(this.#width).some((cell) => cell.trim() !== '')) {
      this.#leave(
        line,
        'ragged',
        `${cells.length} cells where the header has ${this.#width}: is the decimal mark the mark between the columns too?`,
      );
      return;
    }
    const [first = 0, second] = this.#mapping.time.columns;
    const time = this.#rowTimes.read(
      cells[first] ?? '',
      second === undefined ? undefined : (cells[second] ?? ''),
    );
    if (typeof time === 'number') this.#times.push(time);
    else if (time.is === 'twice') {
      this.#folded.push({ index: this.#times.length, earlier: time.earlier, later: time.later });
      this.#times.push(time.earlier);
    } else {
      this.#leave(line, time.is, time.detail);
      return;
    }
    this.#rows.push(line);
    for (const c of this.#channels) {
      const text = cells[c.column] ?? '';
      const number = readNumber(text, this.#mapping.decimal);
      const celsius = toCelsius(number, c.unit);
      if (isPossible(celsius) && !(number <= -99 && NINES_BELOW.test(text))) c.values.push(celsius);
      else
        c.values.push(
          oddValue(text, { unit: c.unit, decimal: this.#mapping.decimal }, (is, detail) =>
            this.#notes.add(line, is, `${c.heading}: ${detail}`),
          ),
        );
    }
    for (const s of this.#states) s.values.push((cells[s.column] ?? '').trim());
  }

  finish(evidence: EvidenceId, addedSeconds: number): ReadLog {
    const notes = this.#notes;
    if (this.#short !== undefined) this.#leave(this.#short.line, 'ragged', 'the file ends within this row');
    for (const { index, which } of resolveFolds(this.#times, this.#folded))
      notes.add(
        this.#rows.at(index),
        'time-in-fold',
        `this wall time happened twice; read as the ${which} by its neighbours`,
      );
    const order = sortedOnce(this.#times, (index, kept) => {
      const same = repeatedRow(this.#channels, this.#states, index, kept);
      const row = this.#rows.at(kept);
      if (same.is === 'repeated')
        notes.add(this.#rows.at(index), 'repeated', `the same moment as row ${row}`);
      else notes.add(this.#rows.at(index), 'duplicate', `the time of row ${row} with ${same.difference}`);
      this.#leftOut += 1;
    });
    const times = later(this.#times.finish(order), addedSeconds * 1000);
    const { stated } = this.#stated;
    return {
      evidence,
      zone: this.#mapping.time.zone,
      times,
      channels: Object.fromEntries(this.#channels.map((c) => [c.channel, c.values.finish(order)])),
      states: Object.fromEntries(this.#states.map((s) => [s.state, s.values.finish(order)])),
      rows: this.#rows.finish(order),
      ...omitUndefined({ stated }),
      problems: notes.kept(),
      problemCount: notes.total,
      addedSeconds,
      rowsLeftOut: this.#leftOut,
      counts: notes.counts,
    };
  }
}

function later(times: PackedNumbers, milliseconds: number): PackedNumbers {
  if (milliseconds === 0) return times;
  const moved = new NumberWriter(times.shelf);
  for (const at of times) moved.push(at + milliseconds);
  return moved.finish();
}
