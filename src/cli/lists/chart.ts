import { walkSegments } from '../../core/assess/temperature/segments.js';
import type { TemperatureResult } from '../../core/model/results.js';
import type { UnitLog } from '../../core/model/unit-log.js';
import type { Format } from '../../core/words/format.js';
import { plainSpaces } from '../../core/words/spaces.js';

export interface ChartOptions {
  format: Format;
  /** Columns of the terminal. */
  width: number;
  /** Plain ASCII instead of braille dots. */
  ascii: boolean;
}

const ROWS = 9;
const LABEL = 8;
const MOST_COLUMNS = 110;

/** Lowest and highest known value per column of dots; NaN where nothing is known. */
interface Columns {
  low: Float64Array;
  high: Float64Array;
}

/**
 * A chart of the log over its window in text lines: judged air, edges of the range, and beneath them time out of
 * range or unknown.
 */
export function chartLines(result: TemperatureResult, log: UnitLog, options: ChartOptions): string[] {
  const values = result.judged === undefined ? undefined : log.channels[result.judged];
  if (values === undefined) return [];
  const columns = Math.max(20, Math.min(MOST_COLUMNS, options.width - LABEL - 1));
  const [across, down] = options.ascii ? [1, 1] : [2, 4];
  const air = columnsOf(result, log, values, columns * across);
  const scale = scaleOf(result, air);
  if (scale === undefined) return [];
  const dots = new Dots(columns * across, ROWS * down);
  const y = (value: number) =>
    Math.round(((scale.high - value) / (scale.high - scale.low)) * (ROWS * down - 1));
  if (result.band !== undefined)
    for (const edge of [result.band.low, result.band.high])
      for (let x = 0; x < columns * across; x += options.ascii ? 1 : 4) dots.set(x, y(edge), 1);
  for (let x = 0; x < columns * across; x++) {
    const [low, high] = [air.low[x] as number, air.high[x] as number];
    if (Number.isNaN(low)) continue;
    for (let row = y(high); row <= y(low); row++) dots.set(x, row, 2);
  }
  const label = (row: number) => {
    const value = scale.high - ((scale.high - scale.low) * row) / (ROWS - 1);
    const shown = row % 4 === 0 ? plainSpaces(options.format.short(value)) : '';
    return (options.ascii ? shown.replace('−', '-') : shown).padStart(LABEL);
  };
  const lines = Array.from({ length: ROWS }, (_, row) =>
    `${label(row)} ${options.ascii ? dots.asciiRow(row) : dots.brailleRow(row)}`.trimEnd(),
  );
  return [...lines, `${' '.repeat(LABEL)} ${strip(result, columns, options.ascii)}`.trimEnd()];
}

function columnsOf(result: TemperatureResult, log: UnitLog, values: Float64Array, count: number): Columns {
  const from = result.custody.from.at;
  const wide = (result.custody.to.at - from) / count;
  const low = new Float64Array(count).fill(Number.NaN);
  const high = new Float64Array(count).fill(Number.NaN);
  const take = (x: number, value: number) => {
    const column = Math.min(count - 1, Math.max(0, x));
    if (!(value >= (low[column] as number))) low[column] = value;
    if (!(value <= (high[column] as number))) high[column] = value;
  };
  walkSegments(log.times, values, { from, to: result.custody.to.at }, result.gapLimitSeconds * 1000, {
    segment(t0, v0, t1, v1) {
      const first = Math.floor((t0 - from) / wide);
      const last = Math.floor((t1 - from) / wide);
      take(first, v0);
      for (let x = first + 1; x <= last; x++) {
        const edge = v0 + ((v1 - v0) * (from + x * wide - t0)) / (t1 - t0);
        take(x - 1, edge);
        take(x, edge);
      }
      take(last, v1);
    },
    unknown() {},
    isolatedSample(t, v) {
      take(Math.floor((t - from) / wide), v);
    },
  });
  return { low, high };
}

function scaleOf(result: TemperatureResult, air: Columns): { low: number; high: number } | undefined {
  let low = result.band?.low ?? Number.POSITIVE_INFINITY;
  let high = result.band?.high ?? Number.NEGATIVE_INFINITY;
  for (const value of air.low) if (value < low) low = value;
  for (const value of air.high) if (value > high) high = value;
  if (low > high) return undefined;
  const room = Math.max(0.5, (high - low) * 0.05);
  return { low: low - room, high: high + room };
}

/** Columns that hold an excursion or a data gap. */
function strip(result: TemperatureResult, columns: number, ascii: boolean): string {
  const from = result.custody.from.at;
  const wide = (result.custody.to.at - from) / columns;
  const cells = Array.from({ length: columns }, () => ' ');
  const mark = (start: number, end: number, sign: string) => {
    const last = Math.min(columns - 1, Math.floor((end - from) / wide));
    for (let x = Math.max(0, Math.floor((start - from) / wide)); x <= last; x++) cells[x] = sign;
  };
  for (const gap of result.gaps) mark(gap.from, gap.to, '?');
  for (const one of result.excursions)
    mark(one.from, one.to, one.side === 'above' ? (ascii ? '^' : '▲') : ascii ? 'v' : '▼');
  return cells.join('');
}

/** A grid of dots: 1 for the edge of the range, 2 for the air. */
class Dots {
  private readonly cells: Uint8Array;

  constructor(
    private readonly wide: number,
    private readonly tall: number,
  ) {
    this.cells = new Uint8Array(wide * tall);
  }

  set(x: number, y: number, what: number): void {
    if (x >= 0 && x < this.wide && y >= 0 && y < this.tall)
      this.cells[y * this.wide + x] = Math.max(this.cells[y * this.wide + x] ?? 0, what);
  }

  private at(x: number, y: number): number {
    return this.cells[y * this.wide + x] ?? 0;
  }

  asciiRow(row: number): string {
    return Array.from({ length: this.wide }, (_, x) => ' -*'[this.at(x, row)] ?? ' ').join('');
  }

  /** Unicode braille patterns, U+2800: bit by bit the dots of two columns and four rows. */
  brailleRow(row: number): string {
    const bits = [
      [0x01, 0x08],
      [0x02, 0x10],
      [0x04, 0x20],
      [0x40, 0x80],
    ];
    return Array.from({ length: this.wide / 2 }, (_, cell) => {
      let code = 0;
      bits.forEach((pair, dy) => {
        pair.forEach((bit, dx) => {
          if (this.at(cell * 2 + dx, row * 4 + dy) > 0) code |= bit;
        });
      });
      return code === 0 ? ' ' : String.fromCodePoint(0x2800 + code);
    }).join('');
  }
}
