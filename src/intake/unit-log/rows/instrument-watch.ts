import type { NameColumn } from '../weigh/instruments.js';

/** Several instruments in one table. */
export interface Several {
  heading: string;
  column: number;
  /** Their names with how many rows each has, in the order of the table. */
  names: ReadonlyMap<string, number>;
}

/** More names than this are no names of instruments. */
const MOST_NAMES = 60;
/** Rows for each name, on average, from which the names come again. */
const OFTEN = 2;

interface Watched extends NameColumn {
  names: Map<string, number>;
  last: string | undefined;
  changes: number;
  /** Changes of the name within one moment, or with a step back in time. */
  together: number;
  over: boolean;
  /** There are more names than are kept, and each has come again: instruments, not numbers of rows. */
  many: boolean;
  /** The last value under each name, and how far values of one name lie apart in rows of it that follow each other. */
  values: Map<string, number>;
  within: Steps;
}

/** Steps between values, K. */
interface Steps {
  sum: number;
  count: number;
}

const mean = ({ sum, count }: Steps): number => (count === 0 ? 0 : sum / count);

/** Steps from row to row from which names are worth a look, and how much smaller those within a name are (own judgement). */
const ROUGH = 1;
const SMOOTHER = 3;

/** Watches the rows of a table for names that change from row to row: several instruments in one curve are no log. */
export class InstrumentWatch {
  readonly #columns: Watched[];
  #before = Number.NaN;
  #value = Number.NaN;
  readonly #steps: Steps = { sum: 0, count: 0 };
  #rows = 0;
  #sameMoment = 0;

  constructor(columns: readonly NameColumn[]) {
    this.#columns = columns.map((column) => ({
      ...column,
      ...{ names: new Map(), last: undefined, changes: 0, together: 0, over: false, many: false },
      ...{ values: new Map(), within: { sum: 0, count: 0 } },
    }));
  }

  /** `value`: °C of the first channel. */
  row(cells: readonly string[], at: number, value: number): void {
    this.#rows += 1;
    step(this.#steps, this.#value, value);
    if (!Number.isNaN(value)) this.#value = value;
    const same = at === this.#before;
    if (same) this.#sameMoment += 1;
    for (const watched of this.#columns) {
      if (watched.over) continue;
      const name = (cells[watched.column] ?? '').trim();
      if (name === '') continue;
      watched.names.set(name, (watched.names.get(name) ?? 0) + 1);
      if (watched.names.size > MOST_NAMES) {
        watched.over = true;
        watched.many = this.#rows > OFTEN * MOST_NAMES;
      }
      if (watched.last !== undefined && name !== watched.last) {
        watched.changes += 1;
        if (at <= this.#before) watched.together += 1;
      }
      watched.last = name;
      step(watched.within, watched.values.get(name) ?? Number.NaN, value);
      if (!Number.isNaN(value)) watched.values.set(name, value);
    }
    this.#before = at;
  }

  /** The column of places that one instrument was at, one after the other; undefined where none says more than one. */
  moved(): Several | undefined {
    const places = this.#columns.find((c) => c.named === 'place' && !c.over && c.names.size > 1);
    return places === undefined || this.several() !== undefined
      ? undefined
      : { heading: places.heading, column: places.column, names: places.names };
  }

  /** The column that tells several instruments apart; undefined where the rows are of one. */
  several(): Several | undefined {
    const several = this.#columns
      .filter((c) => (!c.over || c.many) && c.names.size > 1 && c.names.size < this.#rows)
      .find((c) => {
        if (c.named === 'instrument') return true;
        // A unit that moves names one place after the other; rows that go to and fro are of several.
        if (c.over) return false;
        if (c.named === 'place') return c.together > 0 || c.changes > 3 * c.names.size;
        if (c.together > 0.3 * this.#rows && c.together >= 0.9 * this.#sameMoment) return true;
        // Rows that go to and fro between names, each with a curve of its own.
        const rough = mean(this.#steps);
        return c.changes > 3 * c.names.size && rough > ROUGH && mean(c.within) * SMOOTHER < rough;
      });
    return several === undefined
      ? undefined
      : { heading: several.heading, column: several.column, names: several.names };
  }
}

function step(steps: Steps, from: number, to: number): void {
  if (Number.isNaN(from) || Number.isNaN(to)) return;
  steps.sum += Math.abs(to - from);
  steps.count += 1;
}
