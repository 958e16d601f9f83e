import type { Checkpoint } from '../core/ledger/checkpoint.js';
import { readRow, splitRows } from '../core/ledger/ledger.js';
import { KnownReferences, referenceProblem } from '../core/ledger/references.js';
import { type GrowingTree, growTree } from '../core/ledger/tree.js';
import type { Entry } from '../core/model/entry.js';
import { DossierError } from '../core/model/error.js';
import type { Sha256 } from '../core/model/evidence.js';

/** The three files of a record as found on the disk. */
export interface StoredFiles {
  ledger: Uint8Array;
  /** Name of the ledger file, for messages. */
  ledgerFile: string;
  checkpointFile: string;
  /** Checkpoint of the last finished write; undefined when the file is missing. */
  head: Checkpoint | undefined;
  /** Checkpoint of a write in progress; undefined when there was none. */
  intent: Checkpoint | undefined;
}

/** An irregularity found on opening a record. */
export interface Notice {
  is: 'checkpoint-missing' | 'unconfirmed-kept' | 'set-aside';
  message: string;
}

/** A record's entries, and what a writer has to do to the files to match them. */
export interface RecoveredLedger {
  entries: Entry[];
  leaves: Sha256[];
  tree: GrowingTree;
  known: KnownReferences;
  /** Bytes of the ledger that are kept. */
  ledgerSize: number;
  /** Bytes after them that were never confirmed; empty in a sound record. */
  setAside: Uint8Array;
  /** Whether the checkpoint on disk covers exactly these entries. */
  covered: boolean;
  notices: Notice[];
}

const FROM_COPY =
  'Put ledger.jsonl and checkpoint back from a copy of this folder, both from the same copy. Nothing was changed by this command.';

/**
 * Decides what a record holds. The checkpoint is the commit point: what it covers must be there, byte for byte.
 * Rows beyond it were written but never confirmed:
 * - a write in progress is kept when complete, and set aside as a whole when not (old or new state, never between);
 * - without a write in progress, whole sound rows are kept and an unfinished last row is set aside.
 * @throws DossierError 'record-damaged' naming the file and, where it can be told, the row
 */
export function recover(found: StoredFiles): RecoveredLedger {
  const { head, ledger, ledgerFile } = found;
  const { rows, rest } = splitRows(ledger);
  const confirmed = head?.size ?? 0;
  const standing: RecoveredLedger = {
    entries: [],
    leaves: [],
    tree: growTree(),
    known: new KnownReferences(),
    ledgerSize: 0,
    setAside: new Uint8Array(),
    covered: true,
    notices: [],
  };
  for (const [seq, row] of rows.slice(0, confirmed).entries()) take(standing, row, seq, ledgerFile);
  if (head !== undefined) compareHead(standing, head, found);

  const beyond = rows.slice(confirmed);
  if (beyond.length === 0 && rest.length === 0) {
    if (head === undefined) standing.covered = false;
    return standing;
  }
  if (isUnfinished(found, standing, beyond, rest)) return setRestAside(standing, found, beyond.length);

  for (const [i, row] of beyond.entries()) take(standing, row, confirmed + i, ledgerFile);
  standing.covered = head !== undefined && beyond.length === 0;
  if (head === undefined && found.intent === undefined && rows.length > 1)
    standing.notices.push({
      is: 'checkpoint-missing',
      message: `${found.checkpointFile} is missing, so nothing here tells whether entries are missing at the end of the ledger; ${rows.length} are there. Compare them with a fingerprint that was sent to someone.`,
    });
  else if (beyond.length > 0)
    standing.notices.push({
      is: 'unconfirmed-kept',
      message: `an earlier write was cut off after its ${entriesOf(beyond.length)} reached the ledger; kept`,
    });
  return rest.length === 0 ? standing : setRestAside(standing, found, 0);
}

function take(standing: RecoveredLedger, row: Uint8Array, seq: number, file: string): void {
  const read = readRow(row, seq);
  const problem = read.is === 'bad' ? read.problem : referenceProblem(read.entry, standing.known);
  if (read.is === 'bad' || problem !== undefined)
    throw new DossierError('record-damaged', `row ${seq + 1} of the ledger is damaged: ${problem}`, {
      where: { file, row: seq + 1 },
      fix: FROM_COPY,
    });
  standing.entries.push(read.entry);
  standing.leaves.push(read.leaf);
  standing.tree.add(read.leaf);
  standing.ledgerSize += row.length + 1;
  standing.known.add(read.entry);
}

function compareHead(standing: RecoveredLedger, head: Checkpoint, found: StoredFiles): void {
  if (standing.entries.length < head.size)
    throw new DossierError(
      'record-damaged',
      `the ledger ends after ${entriesOf(standing.entries.length)}, and the checkpoint covers ${head.size}`,
      { where: { file: found.ledgerFile, row: standing.entries.length + 1 }, fix: FROM_COPY },
    );
  if (standing.tree.root() !== head.root)
    throw new DossierError(
      'record-damaged',
      `the ledger was changed: the hash over rows 1 to ${head.size} is ${standing.tree.root()}, and the checkpoint says ${head.root}`,
      { where: { file: found.ledgerFile }, fix: FROM_COPY },
    );
  const name = deliveryName(standing.entries);
  if (name !== undefined && name !== head.delivery)
    throw new DossierError(
      'record-damaged',
      `the checkpoint is that of "${head.delivery}", and the ledger began as "${name}"`,
      { where: { file: found.checkpointFile }, fix: FROM_COPY },
    );
}

/** Whether the bytes beyond the checkpoint are an incomplete write in progress. */
function isUnfinished(
  { intent }: StoredFiles,
  standing: RecoveredLedger,
  beyond: readonly Uint8Array[],
  rest: Uint8Array,
): boolean {
  const size = standing.entries.length;
  if (intent === undefined || intent.size <= size) return false;
  if (size + beyond.length < intent.size) return true;
  if (size + beyond.length > intent.size || rest.length > 0) return false;
  const tree = standing.tree.copy();
  for (const [i, row] of beyond.entries()) {
    const read = readRow(row, size + i);
    if (read.is === 'bad') return true;
    tree.add(read.leaf);
  }
  return tree.root() !== intent.root;
}

function setRestAside(standing: RecoveredLedger, { ledger }: StoredFiles, rows: number): RecoveredLedger {
  standing.setAside = ledger.subarray(standing.ledgerSize);
  const what = rows === 0 ? 'an unfinished last row' : `${entriesOf(rows)} of an unfinished write`;
  standing.notices.push({
    is: 'set-aside',
    message: `a write was cut off or is still under way: ${what} (${standing.setAside.length} bytes) at the end of the ledger, not counted`,
  });
  return standing;
}

/** The delivery's name when the record began; it stays the record's name when the facts change. */
export function deliveryName(entries: readonly Entry[]): string | undefined {
  const [first] = entries;
  if (first?.type !== 'delivery-facts') return undefined;
  const name = first.body.facts.delivery;
  return typeof name === 'string' ? name : undefined;
}

function entriesOf(count: number): string {
  return count === 1 ? '1 entry' : `${count} entries`;
}
