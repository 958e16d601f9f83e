import type { RowProblem } from '../../../core/model/unit-log.js';

const KEPT = 1_000;
/** Kept of each kind, so that a frequent one does not hide a rare one. */
const KEPT_OF_KIND = 100;

/** What is so by the log's own word or was settled without loss: counted, and nothing that a person has to mend. */
export const HARMLESS: ReadonlySet<RowProblem['is']> = new Set(['sensor-fault', 'repeated', 'time-in-fold']);

/** Notes on rows: all are counted; a thousand are kept, the first of each kind and those that someone has to look at. */
export class RowNotes {
  readonly counts: Partial<Record<RowProblem['is'], number>> = {};
  readonly #first: RowProblem[] = [];
  readonly #harmful: RowProblem[] = [];
  readonly #harmless: RowProblem[] = [];

  add(row: number, is: RowProblem['is'], detail: string): void {
    const before = this.counts[is] ?? 0;
    this.counts[is] = before + 1;
    const rest = HARMLESS.has(is) ? this.#harmless : this.#harmful;
    const list = before < KEPT_OF_KIND ? this.#first : rest;
    if (list.length < KEPT) list.push({ row, is, detail });
  }

  get total(): number {
    return Object.values(this.counts).reduce((sum, n) => sum + n, 0);
  }

  kept(): RowProblem[] {
    const [harmful, harmless] = [false, true].map((mild) =>
      this.#first.filter(({ is }) => HARMLESS.has(is) === mild),
    );
    return [...(harmful ?? []), ...this.#harmful, ...(harmless ?? []), ...this.#harmless]
      .slice(0, KEPT)
      .sort((a, b) => a.row - b.row);
  }
}
