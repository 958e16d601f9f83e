import type { RowProblem } from '../../../core/model/unit-log.js';

const KEPT = 1_000;

/** What is so by the log's own word or was settled without loss: counted, and nothing that a person has to mend. */
export const HARMLESS: ReadonlySet<RowProblem['is']> = new Set(['sensor-fault', 'repeated', 'time-in-fold']);

/** Notes on rows: all are counted, a thousand kept, those that someone has to look at before the others. */
export class RowNotes {
  readonly counts: Partial<Record<RowProblem['is'], number>> = {};
  readonly #harmful: RowProblem[] = [];
  readonly #harmless: RowProblem[] = [];

  add(row: number, is: RowProblem['is'], detail: string): void {
    this.counts[is] = (this.counts[is] ?? 0) + 1;
    const list = HARMLESS.has(is) ? this.#harmless : this.#harmful;
    if (list.length < KEPT) list.push({ row, is, detail });
  }

  get total(): number {
    return Object.values(this.counts).reduce((sum, n) => sum + n, 0);
  }

  kept(): RowProblem[] {
    return [...this.#harmful, ...this.#harmless].slice(0, KEPT).sort((a, b) => a.row - b.row);
  }
}
