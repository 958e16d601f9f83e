import { canonicalBytes } from '../../ledger/canonical.js';
import { type MergedRecord, mergedRecords } from '../../ledger/merge/merged-records.js';
import { renumbered } from '../../ledger/merge/renumber.js';
import { treeHash } from '../../ledger/tree.js';
import { latin1 } from '../../model/bytes.js';
import { claimId } from '../../model/claim.js';
import { type Entry, firstEntered } from '../../model/entry.js';
import { evidenceId, type Sha256 } from '../../model/evidence.js';
import type { CheckResults } from '../check-results.js';
import { Malformed } from '../malformed.js';
import { earlierStateProblems } from './check-earlier-states.js';
import { entriesOf, type LedgerLine, readLedger } from './read-ledger.js';

/** Ledgers of records that were merged in, by their hash; empty where only their leaf hashes are at hand. */
export type KeptLedgers = ReadonlyMap<Sha256, Uint8Array>;

/**
 * Holds each merge against the tree hash of the record that it names, and what was taken over against that record's
 * ledger, where that is at hand: nothing may differ but what the two call evidence, claims and entries.
 */
export function checkMerges(
  lines: readonly LedgerLine[],
  results: CheckResults,
  kept: KeptLedgers,
): MergedRecord[] {
  const entries = entriesOf(lines);
  const merged = mergedRecords(
    entries,
    lines.map(({ leaf }) => leaf),
  );
  const bySeq = new Map(merged.map((one) => [one.seq, one]));
  const wrong: string[] = [];
  let taken = 0;
  let compared = 0;
  for (const entry of entries) {
    const say = (words: string) => wrong.push(`entry ${entry.seq}: ${words}`);
    const record = bySeq.get(entry.origin?.merge ?? entry.seq);
    if (entry.type === 'record-merged') wrong.push(...mergeProblems(entry, bySeq, lines, kept));
    if (entry.origin === undefined) continue;
    taken += 1;
    if (record === undefined) {
      if (lines[entry.origin.merge]?.is === 'entry') say('no merge is told of that it could have come by');
      continue;
    }
    if (record.leaves[entry.origin.entry] !== entry.origin.leaf)
      say(`the merged record has another entry ${entry.origin.entry}`);
  }
  for (const [seq, there] of keptEntries(entries, kept)) {
    for (const entry of entries.filter(({ origin }) => origin?.merge === seq)) {
      compared += 1;
      const first = there[entry.origin?.entry ?? -1];
      if (first === undefined || !isSame(entry, first))
        wrong.push(
          `entry ${entry.seq}: it is not what entry ${entry.origin?.entry} of the merged record says`,
        );
    }
  }
  const detail =
    merged.length === 0
      ? 'none was merged in'
      : `${merged.length} merged in; ${taken} entries taken over, ${compared} of them compared with the ledger that they came from`;
  results.failIf('ledger.merges', wrong, detail);
  return merged;
}

function mergeProblems(
  { seq, body, origin }: Extract<Entry, { type: 'record-merged' }>,
  merged: ReadonlyMap<number, MergedRecord>,
  lines: readonly LedgerLine[],
  kept: KeptLedgers,
): string[] {
  const record = merged.get(seq);
  if (record === undefined) return [];
  const wrong: string[] = [];
  const say = (words: string) => wrong.push(`entry ${seq}: ${words}`);
  const own = origin === undefined ? lines.map(({ leaf }) => leaf) : (merged.get(origin.merge)?.leaves ?? []);
  if (origin === undefined && body.own.size !== seq)
    say(`it names ${body.own.size} entries when there were ${seq}`);
  if (treeHash(own.slice(0, body.own.size)) !== body.own.root)
    say('the entries before the merge are no longer the ones that it names');
  if (record.leaves.length !== record.size || treeHash(record.leaves) !== record.root)
    say('the hashes that it lists are not those of the record that it names');
  const ledger = kept.get(body.ledger.sha256);
  if (ledger === undefined) return wrong;
  try {
    const there = readLedger(ledger);
    const leaves = there.map(({ leaf }) => leaf);
    if (leaves.join() !== record.leaves.join())
      say('the ledger that is kept is not that of the record that it names');
    wrong.push(
      ...earlierStateProblems(entriesOf(there), leaves).map(
        (one) => `entry ${seq}, the merged record: ${one}`,
      ),
    );
  } catch (error) {
    if (!(error instanceof Malformed)) throw error;
    say(`the ledger that is kept: ${error.message}`);
  }
  return wrong;
}

/** The entries of each kept ledger that can be read, by the entry of its merge. */
function keptEntries(entries: readonly Entry[], kept: KeptLedgers): Map<number, Entry[]> {
  const found = new Map<number, Entry[]>();
  for (const { seq, type, body } of entries) {
    const ledger = type === 'record-merged' ? kept.get(body.ledger.sha256) : undefined;
    if (ledger === undefined) continue;
    try {
      found.set(seq, entriesOf(readLedger(ledger)));
    } catch (error) {
      if (!(error instanceof Malformed)) throw error;
    }
  }
  return found;
}

const ANY = {
  evidence: () => evidenceId.parse('e1'),
  claim: () => claimId.parse('c1'),
  entry: () => 0,
};

/** Whether two entries say the same, whatever they call evidence, claims and entries. */
function isSame(here: Entry, there: Entry): boolean {
  const said = (entry: Entry) => latin1(canonicalBytes([entry.type, renumbered(entry.body, ANY)]));
  const [first, again] = [firstEntered(here), firstEntered(there)];
  return first.at === again.at && first.by === again.by && said(here) === said(there);
}
