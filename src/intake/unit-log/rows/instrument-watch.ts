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

interface Watched extends NameColumn {
  names: Map<string, number>;
  last: string | undefined;
  changes: number;
  /** Changes of the name within one moment, or with a step back in time. */
  together: number;
  over: boolean;
}

/** Watches the rows of a table for names that change from row to row: several instruments in one curve are no log. */
export class InstrumentWatch {
  readonly #columns: Watched[];
  #before = Number.NaN;
  #rows = 0;
  #sameMoment = 0;

  constructor(columns: readonly NameColumn[]) {
    this.#columns = columns.map((column) => ({
      ...column,
      ...{ names: new Map(), last: undefined, changes: 0, together: 0, over: false },
    }));
  }

  row(cells: readonly string[], at: number): void {
    this.#rows += 1;
    const same = at === this.#before;
    if (same) this.#sameMoment += 1;
    for (const watched of this.#columns) {
      if (watched.over) continue;
      const name = (cells[watched.column] ?? '').trim();
      if (name === '') continue;
      watched.names.set(name, (watched.names.get(name) ?? 0) + 1);
      if (watched.names.size > MOST_NAMES) watched.over = true;
      if (watched.last !== undefined && name !== watched.last) {
        watched.changes += 1;
        if (at <= this.#before) watched.together += 1;
      }
      watched.last = name;
    }
    this.#before = at;
  }

  /** The column that tells several instruments apart; undefined where the rows are of one. */
  several(): Several | undefined {
    const several = this.#columns
      .filter((c) => !c.over && c.names.size > 1 && c.names.size < this.#rows)
      .find((c) => {
        if (c.named === 'instrument') return true;
        // A unit that moves names one place after the other; rows that go to and fro are of several.
        if (c.named === 'place') return c.together > 0 || c.changes > 3 * c.names.size;
        return c.together > 0.3 * this.#rows && c.together >= 0.9 * this.#sameMoment;
      });
    return several === undefined
      ? undefined
      : { heading: several.heading, column: several.column, names: several.names };
  }
}
