import { growTree } from '../../ledger/tree.js';
import type { Entry } from '../../model/entry.js';
import type { Sha256 } from '../../model/evidence.js';
import { milliseconds } from '../../model/time.js';
import type { CheckResults } from '../check-results.js';
import { checkStamps } from './check-stamps.js';
import { checkStatements } from './check-statements.js';
import { entriesOf, type LedgerLine, recordName } from './read-ledger.js';

/** A clock that was set by hand or by the network may step back this far without a word. */
const STEP_BACK_MS = 5 * 60_000;

/**
 * What the entries of a ledger say about one another, and about the time at which a dossier of them claims to have been
 * signed.
 */
export async function checkLedger(
  lines: readonly LedgerLine[],
  results: CheckResults,
  trusted: readonly Uint8Array[],
  signedAt?: Date,
): Promise<void> {
  const entries = entriesOf(lines);
  const name = recordName(entries);
  const states = entries.flatMap(stateNamed);
  const roots = rootsAt(
    lines.map(({ leaf }) => leaf),
    new Set(states.map(({ size }) => size)),
  );
  checkEarlierStates(states, roots, results);
  await checkStamps(entries, name, results, trusted);
  checkTimes(entries, results, signedAt);
  await checkStatements(entries, name, results, trusted);
}

interface NamedState {
  seq: number;
  what: string;
  size: number;
  root: Sha256;
}

function stateNamed(entry: Entry): NamedState[] {
  switch (entry.type) {
    case 'fingerprint-published':
      return [{ seq: entry.seq, what: `fingerprint sent to ${entry.body.to}`, ...sizeAndRoot(entry.body) }];
    case 'time-stamp-received':
      return [{ seq: entry.seq, what: `time stamp from ${entry.body.from}`, ...sizeAndRoot(entry.body) }];
    case 'dossier-built':
      return [{ seq: entry.seq, what: `dossier ${entry.body.file}`, ...sizeAndRoot(entry.body) }];
    default:
      return [];
  }
}

const sizeAndRoot = ({ size, root }: { size: number; root: Sha256 }) => ({ size, root });

/** The tree hash at each of the sizes, in one pass. */
function rootsAt(leaves: readonly Sha256[], sizes: ReadonlySet<number>): Map<number, Sha256> {
  const tree = growTree();
  const found = new Map<number, Sha256>();
  for (const leaf of leaves) {
    tree.add(leaf);
    if (sizes.has(tree.size)) found.set(tree.size, tree.root());
  }
  return found;
}

/**
 * A state that was sent out, stamped or built is named in an entry after it. A ledger that was rewritten no longer
 * has that tree hash at that size.
 */
function checkEarlierStates(
  states: readonly NamedState[],
  roots: ReadonlyMap<number, Sha256>,
  results: CheckResults,
): void {
  const wrong = states.flatMap(({ seq, what, size, root }) => {
    if (size > seq) return [`entry ${seq}, ${what}: it names ${size} entries when there were ${seq}`];
    return roots.get(size) === root
      ? []
      : [`entry ${seq}, ${what}: the first ${size} entries are no longer the ones that it names`];
  });
  results.failIf('ledger.earlier-states', wrong, `${states.length} earlier states`);
}

/** The machine's clock says when an entry was made: a step back shows that it was wrong before or is now. */
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
  // A signature that was dated back is older than what it covers.
  const later = entries.find(
    ({ at }) => signedAt !== undefined && milliseconds(at) > signedAt.getTime() + STEP_BACK_MS,
  );
  if (later !== undefined)
    back.push(
      `entry ${later.seq} was made at ${later.at} by the machine's clock, after the signature that covers it says that it was made`,
    );
  results.noteIf('ledger.times', back, `${entries.length} entries, one after the other`);
}
