import { DossierError } from '../../core/model/error.js';
import type { EvidenceId, LogMapping } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { toCelsius } from '../../core/model/temperature.js';
import type { ClockShift, CompartmentColumns, RowProblem, UnitLog } from '../../core/model/unit-log.js';
import type { ByteSource } from '../table/bytes.js';
import { eachRow } from '../table/rows.js';
import { isPossible, oddValue } from './cells/cell-value.js';
import { readNumber } from './cells/numbers.js';
import { StateTexts } from './cells/state-texts.js';
import { unitOfCell } from './cells/unit-cell.js';
import { clockSteps } from './rows/clock-steps.js';
import { InstrumentWatch, type Several } from './rows/instrument-watch.js';
import { type FoldedRow, resolveFolds, sortedOnce, stepsBack } from './rows/order-rows.js';
import { repeatedRow, rowDifference } from './rows/repeated-rows.js';
import { RowNotes } from './rows/row-notes.js';
import { RowTimes } from './rows/row-times.js';
import { StepSides } from './rows/step-sides.js';
import { stepInWords, toTheSecond } from './rows/step-words.js';
import { shapeOf, type TimeShape } from './rows/time-shape.js';
import { StatedReader } from './stated.js';
import type { NameColumn } from './weigh/instruments.js';

export interface LogReadOptions {
  evidence: EvidenceId;
  /** Seconds to add to the log's clock, from a measured comparison. */
  addedSeconds: number;
  /** More rows than this are refused; any number is read if not given. */
  mostRows?: number;
  /** Columns whose texts may name the instrument of each row. */
  names?: readonly NameColumn[];
  /** Parts whose clock a person said to be wrong. */
  shifts?: readonly ClockShift[];
}

/** A unit log, how many rows could not be placed in time or stood twice, and how often each kind of note was made. */
export interface ReadLog extends UnitLog {
  /** What is of one compartment each; `channels` and `states` are of the whole trailer. */
  compartments: CompartmentColumns[];
  rowsLeftOut: number;
  /** Set where `names` show rows of more than one instrument. */
  several?: Several;
  /** Set where they show places that one instrument was at in turn. */
  moved?: Several;
  counts: Partial<Record<RowProblem['is'], number>>;
}

/** The sign of a negative number of nines, the only possible value that is a fault mark. */
const NINES_BELOW = /^\s*[-−]99/;

/**
 * Reads a log as its mapping says: times to UTC, temperatures to °C, rows sorted by time. A value that is missing
 * is NaN; so is one that is a fault mark, a text or impossible, which is also noted. A row without a readable time, in the hour that daylight saving skips,
 * with more cells than the header, or with the time of an earlier row and other values is left out and noted;
 * one that repeats or completes an earlier row is joined to it. A file that ends within a row loses that row.
 * Throws DossierError only when reading cannot go on (too many rows, an endless line, an unreadable file).
 */
export async function readUnitLog(
  source: ByteSource,
  mapping: LogMapping,
  { evidence, addedSeconds, mostRows = Number.POSITIVE_INFINITY, names = [], shifts = [] }: LogReadOptions,
): Promise<ReadLog> {
  const reader = new LogReader(mapping, mostRows, names, shifts);
  const text =
    mapping.sheet === undefined
      ? source
      : await (await import('../table/sheet.js')).sheetText(source, mapping.sheet);
  await eachRow(text, mapping, (cells, line) => reader.row(cells, line));
  return reader.finish(evidence, addedSeconds);
}

class LogReader {
  readonly #mapping: LogMapping;
  readonly #mostRows: number;
  readonly #shifts: readonly ClockShift[];
  readonly #notes = new RowNotes();
  readonly #times: number[] = [];
  readonly #rows: number[] = [];
  readonly #folded: FoldedRow[] = [];
  readonly #channels;
  readonly #states;
  readonly #shape: TimeShape;
  readonly #rowTimes: RowTimes;
  readonly #stated = new StatedReader();
  readonly #watch: InstrumentWatch | undefined;
  readonly #needed: number;
  #width = Number.POSITIVE_INFINITY;
  #widthAbove = 0;
  #leftOut = 0;
  /** A row with too few cells; whether the file ends within it shows only with the next row. */
  #short: { cells: string[]; line: number } | undefined;

  constructor(
    mapping: LogMapping,
    mostRows: number,
    names: readonly NameColumn[],
    shifts: readonly ClockShift[],
  ) {
    this.#mapping = mapping;
    this.#shifts = shifts;
    this.#mostRows = mostRows;
    this.#channels = mapping.channels.map((c) => ({ ...c, values: [] as number[] }));
    this.#states = mapping.states.map((s) => ({ ...s, texts: new StateTexts(), values: [] as string[] }));
    this.#shape = shapeOf(mapping.time);
    this.#rowTimes = new RowTimes(mapping.time);
    this.#watch = names.length === 0 ? undefined : new InstrumentWatch(names);
    this.#needed = 1 + Math.max(...mapping.channels.map((c) => c.column), ...mapping.time.columns);
  }

  row(raw: string[], line: number): boolean {
    if (line <= this.#mapping.headerRow) return this.#above(raw);
    const cells = this.#shape.row(raw);
    if (cells === undefined) return true;
    const { only } = this.#mapping;
    // Rows of other instruments or quantities are no rows of this log.
    if (only !== undefined && !only.every(({ column, is }) => (cells[column] ?? '').trim() === is))
      return true;
    if (this.#short !== undefined) this.#takeShort(this.#short);
    if (cells.length < this.#needed) this.#short = { cells, line };
    else this.#take(cells, line);
    return true;
  }

  #above(cells: string[]): boolean {
    this.#stated.add(cells);
    this.#shape.above(cells);
    // A line of units may stand under the headings and be shorter or longer.
    this.#width = Math.max(cells.length, this.#widthAbove, this.#needed);
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
    if (this.#times.length >= this.#mostRows)
      throw new DossierError('file-too-large', `more than ${this.#mostRows.toLocaleString('en-US')} rows`, {
        where: { row: line },
        fix: 'download the log in parts, by date, or with a longer step between its rows, such as a minute',
      });
    if (cells.length > this.#width && cells.slice(this.#width).some((cell) => cell.trim() !== '')) {
      this.#leave(
        line,
        'ragged',
        `${cells.length} cells where the header has ${this.#width}: is the decimal mark the mark between the columns too?`,
      );
      return;
    }
    const [first = 0, second] = this.#shape.columns;
    const time = this.#rowTimes.read(
      cells[first] ?? '',
      second === undefined ? undefined : (cells[second] ?? ''),
    );
    const shift = this.#shiftAt(line);
    if (typeof time === 'number') this.#times.push(time + shift);
    else if (time.is === 'twice') {
      const [earlier, later] = [time.earlier + shift, time.later + shift];
      this.#folded.push({ index: this.#times.length, earlier, later });
      this.#times.push(earlier);
    } else {
      this.#leave(line, time.is, time.detail);
      return;
    }
    this.#rows.push(line);
    const { unitColumn } = this.#mapping;
    const own = unitColumn === undefined ? undefined : unitOfCell(cells[unitColumn] ?? '');
    for (const c of this.#channels) {
      const text = cells[c.column] ?? '';
      const unit = own ?? c.unit;
      const number = readNumber(text, this.#mapping.decimal);
      const celsius = toCelsius(number, unit);
      if (isPossible(celsius) && !(number <= -99 && NINES_BELOW.test(text))) c.values.push(celsius);
      else
        c.values.push(
          oddValue(text, { unit, decimal: this.#mapping.decimal }, (is, detail) =>
            this.#notes.add(line, is, `${c.heading}: ${detail}`),
          ),
        );
    }
    this.#watch?.row(cells, this.#times.at(-1) ?? Number.NaN, this.#channels[0]?.values.at(-1) ?? Number.NaN);
    for (const s of this.#states) s.values.push(s.texts.read(cells[s.column] ?? ''));
  }

  /** Milliseconds that a person said are to be added to the clock at a line. */
  #shiftAt(line: number): number {
    let seconds = 0;
    for (const { rows, addSeconds } of this.#shifts)
      if ('from' in rows ? line >= rows.from : line < rows.before) seconds += addSeconds;
    return seconds * 1000;
  }

  finish(evidence: EvidenceId, addedSeconds: number): ReadLog {
    const notes = this.#notes;
    if (this.#short !== undefined) this.#leave(this.#short.line, 'ragged', 'the file ends within this row');
    for (const { index, which } of resolveFolds(this.#times, this.#folded))
      notes.add(
        this.#rows[index] ?? 0,
        'time-in-fold',
        `this wall time happened twice; read as the ${which} by its neighbours`,
      );
    const found = clockSteps(
      this.#times,
      (index, other) => rowDifference(this.#channels, this.#states, index, other) === undefined,
    );
    const sides = new StepSides(this.#times, found);
    const repeats = new Set<number>();
    const order = sortedOnce(this.#times, (index, kept) => {
      if (sides.hides(index, kept)) {
        this.#leftOut += 1;
        repeats.add(index);
        return;
      }
      const same = repeatedRow(this.#channels, this.#states, index, kept);
      const [row = 0, first = 0] = [this.#rows[index], this.#rows[kept]];
      if (same.is === 'repeated') {
        repeats.add(index);
        notes.add(row, 'repeated', `the same moment as row ${first}`);
      } else notes.add(row, 'duplicate', `the time of row ${first} with ${same.difference}`);
      this.#leftOut += 1;
    });
    const steps = sides.steps((index) => this.#rows[index] ?? 0);
    for (const one of steps) notes.add(one.row, 'clock-step', stepInWords(one));
    for (const { index, from, to } of stepsBack(this.#times, repeats)) {
      if (found.some((one) => one.index === index)) continue;
      notes.add(
        this.#rows[index] ?? 0,
        'time-steps-back',
        `the log goes from ${toTheSecond(from)} back to ${toTheSecond(to)}; its rows are put in the order of their times`,
      );
    }
    const column = (values: readonly number[]) => atPlaces(order, values);
    const times = column(this.#times).map((at) => at + addedSeconds * 1000);
    const { stated } = this.#stated;
    const columnsOf = (compartment: string | undefined): Pick<UnitLog, 'channels' | 'states'> => ({
      channels: Object.fromEntries(
        this.#channels.filter((c) => c.compartment === compartment).map((c) => [c.channel, column(c.values)]),
      ),
      states: Object.fromEntries(
        this.#states
          .filter((s) => s.compartment === compartment)
          .map((s) => [s.state, order.map((index) => s.values[index] ?? '')]),
      ),
    });
    const own = [...this.#channels, ...this.#states].flatMap(({ compartment }) => compartment ?? []);
    return {
      evidence,
      zone: this.#mapping.time.zone,
      times,
      ...columnsOf(undefined),
      compartments: [...new Set(own)].map((compartment) => ({ compartment, ...columnsOf(compartment) })),
      rows: column(this.#rows),
      ...omitUndefined({ stated, several: this.#watch?.several(), moved: this.#watch?.moved() }),
      problems: notes.kept(),
      problemCount: notes.total,
      addedSeconds,
      ...omitUndefined({
        clockSteps: steps.length === 0 ? undefined : steps,
        clockShifts: this.#shifts.length === 0 ? undefined : this.#shifts,
      }),
      rowsLeftOut: this.#leftOut,
      counts: notes.counts,
    };
  }
}

/** A plain loop: a call for each value takes three to ten times as long. */
function atPlaces(places: readonly number[], values: readonly number[]): Float64Array {
  const column = new Float64Array(places.length);
  for (let i = 0; i < places.length; i++) column[i] = values[places[i] ?? 0] ?? Number.NaN;
  return column;
}
