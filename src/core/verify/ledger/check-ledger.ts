import type { MergedRecord } from '../../ledger/merge/merged-records.js';
import type { Entry } from '../../model/entry.js';
import { milliseconds } from '../../model/time.js';
import type { CheckResults } from '../check-results.js';
import { earlierStateProblems, stateNamed } from './check-earlier-states.js';
import { checkMerges, type KeptLedgers } from './check-merges.js';
import { checkStamps } from './check-stamps.js';
import { checkStatements } from './check-statements.js';
import { entriesOf, type LedgerLine, recordName } from './read-ledger.js';

/** Milliseconds that a clock may step back unremarked, as when it is set by the network. Common practice, no source. */
const STEP_BACK_MS = 5 * 60_000;

export interface LedgerOptions {
  trusted: readonly Uint8Array[];
  /** Ledgers of records that were merged in, where they are at hand. */
  kept?: KeptLedgers;
  /** The signing time that a dossier claims. */
  signedAt?: Date | undefined;
}

/**
 * What the entries of a ledger say about one another, and about the time at which a dossier of them claims to have been
 * signed. Gives the records that were merged in.
 */
export async function checkLedger(
  lines: readonly LedgerLine[],
  results: CheckResults,
  { trusted, kept = new Map(), signedAt }: LedgerOptions,
): Promise<MergedRecord[]> {
  const entries = entriesOf(lines);
  const name = recordName(entries);
  const leaves = lines.map(({ leaf }) => leaf);
  const states = entries.flatMap(stateNamed);
  results.failIf(
    'ledger.earlier-states',
    earlierStateProblems(entries, leaves),
    `${states.length} earlier states`,
  );
  const merged = checkMerges(lines, results, kept);
  await checkStamps(entries, name, results, trusted);
  checkTimes(entries, results, signedAt);
  await checkStatements(entries, name, results, trusted, merged);
  return merged;
}

/** Notes steps back of the machine's clock between entries: it was wrong before, or is wrong after. */
function checkTimes(entries: readonly Entry[], results: CheckResults, signedAt: Date | undefined): void {
  const back = entries.flatMap((entry, i) => {
    const before = entries[i - 1];
    if (before === undefined) return [];
    const step = milliseconds(before.at) - milliseconds(entry.at);
    return step > STEP_BACK_MS
      ? [
          `entry ${entry.seq} was made at ${entry.at} by the machine's clock, entry ${before.seq} before it at ${before.at}: one of the two is wrong`,
        ]
      : [];
  });
  // Entries newer than the signing time show a signature that was dated back.
  const later = entries.find(
    ({ at }) => signedAt !== undefined && milliseconds(at) > signedAt.getTime() + STEP_BACK_MS,
  );
  if (later !== undefined)
    back.push(
      `entry ${later.seq} was made at ${later.at} by the machine's clock, after the signature that covers it says that it was made`,
    );
  results.noteIf('ledger.times', back, `${entries.length} entries, one after the other`);
}
