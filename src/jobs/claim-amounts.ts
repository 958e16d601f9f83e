import { basename } from 'node:path';
import { amountItem, type ClaimNote, quantityState } from '../core/model/claim.js';
import { DossierError, type Problem } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { RecordState } from '../core/model/state.js';
import { readWrittenTable, type WrittenRow } from '../intake/table/written-table.js';
import { unreadable } from '../record/disk/disk-error.js';
import { formatClaimNote } from './claim/format-note.js';
import { existingNote, isSameNote, parseClaimNote } from './claim.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { unknownWord } from './typed/place-options.js';

export const AMOUNT_COLUMNS = [
  'what',
  'line',
  'total',
  'each',
  'quantity',
  'said-by',
  'paper',
  'note',
] as const;

/** A table of amounts to be recorded for a claim. */
export interface AmountsInput extends OpenDelivery {
  /** A CSV table with `AMOUNT_COLUMNS`. */
  file: string;
  /** Defaults for rows that leave them out. */
  standing: {
    claim?: string | undefined;
    saidBy?: string | undefined;
    paper?: readonly string[] | undefined;
  };
  /** Dry run: reports how each row is understood; nothing is written. */
  dryRun: boolean;
}

/** What became of one row of the table. */
export interface AmountRow {
  row: number;
  said: string;
  outcome: 'recorded' | 'already-held' | 'understood';
  /** Ledger entry of the row; undefined for a new row in a dry run. */
  entry?: number;
}

/** What became of a table of amounts. */
export interface AmountsReport {
  rows: AmountRow[];
  counts: { recorded: number; held: number; refused: number };
  problems: Problem[];
  notices: string[];
}

/**
 * Records the rows of a worksheet of amounts and quantities, one entry each. A row that is not understood is a
 * problem with its row and column, and the others are recorded; a row recorded before adds nothing, so that the
 * same file can be corrected and given again. Throws DossierError for an unreadable file or missing columns.
 */
export async function recordAmounts(input: AmountsInput): Promise<AmountsReport> {
  const name = basename(input.file);
  const rows = await rowsOf(input.file, name);
  return withDelivery(input, !input.dryRun, async (record) => {
    const state = record.state();
    const report: AmountsReport = {
      rows: [],
      counts: { recorded: 0, held: 0, refused: 0 },
      problems: [],
      notices: record.notices.map(({ message }) => message),
    };
    const fresh: { row: AmountRow; body: ClaimNote }[] = [];
    for (const one of rows)
      try {
        const body = bodyOfRow(one, input, state);
        const before = existingNote(state, body);
        const twin = fresh.find((other) => isSameNote(other.body, body));
        const held = before !== undefined || twin !== undefined;
        const row: AmountRow = {
          row: one.row,
          said: formatClaimNote(body),
          outcome: held ? 'already-held' : input.dryRun ? 'understood' : 'recorded',
          ...omitUndefined({ entry: before?.seq }),
        };
        report.rows.push(row);
        if (!held) fresh.push({ row, body });
      } catch (error) {
        if (!(error instanceof DossierError) || error.code !== 'bad-value') throw error;
        report.problems.push(ofRow(error.toProblem(), name, one.row));
      }
    report.counts.refused = report.problems.length;
    report.counts.held = report.rows.length - fresh.length;
    const bare = fresh.filter(({ body }) => body.evidence.length === 0).length;
    if (bare > 0)
      report.notices.push(
        `No paper is named for ${bare} of the rows, so that they count for nothing yet: fill the column paper, or add --paper.`,
      );
    if (input.dryRun) return report;
    const entries = await record.append(
      fresh.map(({ body }) => ({ type: 'claim-noted' as const, by: input.by, body })),
    );
    for (const [i, { row }] of fresh.entries()) {
      const entry = entries[i]?.seq;
      if (entry !== undefined) row.entry = entry;
    }
    report.counts.recorded = fresh.length;
    return report;
  });
}

async function rowsOf(file: string, name: string): Promise<WrittenRow[]> {
  const { headings, rows } = await readWrittenTable(file, name).catch((error: unknown) => {
    throw error instanceof DossierError ? error : unreadable(file, error);
  });
  const known: readonly string[] = AMOUNT_COLUMNS;
  const strange = headings.filter((heading) => heading !== '' && !known.includes(heading));
  if (headings.includes('what') && strange.length === 0) return rows;
  throw new DossierError(
    'bad-value',
    strange.length > 0 ? `there is no column for ${strange.join(', ')}` : 'there is no column "what"',
    { where: { file: name, row: 1 }, fix: `Use the columns ${AMOUNT_COLUMNS.join(', ')}.` },
  );
}

function bodyOfRow({ cells }: WrittenRow, { standing, now }: AmountsInput, state: RecordState): ClaimNote {
  const word = cells
    .get('what')
    ?.toLowerCase()
    .replaceAll(/[\s_]+/g, '-');
  const papers = cells.get('paper')?.split(/[\s,;]+/) ?? standing.paper ?? [];
  const fields = {
    claim: standing.claim,
    line: cells.get('line'),
    total: cells.get('total'),
    each: cells.get('each'),
    quantity: cells.get('quantity'),
    saidBy: cells.get('said-by') ?? standing.saidBy,
    paper: papers.map((id) => id.toLowerCase()),
    note: cells.get('note'),
  };
  return parseClaimNote({ is: kindOf(word), word, fields }, state, now());
}

/** Amount items and quantity states share no word. */
function kindOf(word: string | undefined): 'amount' | 'quantity' {
  const states: readonly string[] = quantityState.options;
  const items: readonly string[] = amountItem.options;
  if (word === undefined || items.includes(word)) return 'amount';
  if (states.includes(word)) return 'quantity';
  throw unknownWord('item', word, [...items, ...states], 'what');
}

/** Columns are named like the command's options. */
function ofRow({ where, fix, ...problem }: Problem, file: string, row: number): Problem {
  const column = where.field === 'item' ? 'what' : where.field?.replace(/^--/, '');
  return {
    ...problem,
    where: { file, row, ...omitUndefined({ column }) },
    ...omitUndefined({ fix }),
  };
}
