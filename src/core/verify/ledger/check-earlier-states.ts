import { growTree } from '../../ledger/tree.js';
import type { Entry } from '../../model/entry.js';
import type { Sha256 } from '../../model/evidence.js';

/**
 * A state that was sent out, stamped or built is named in an entry after it. A ledger that was rewritten no longer
 * has that tree hash at that size.
 */
export function earlierStateProblems(entries: readonly Entry[], leaves: readonly Sha256[]): string[] {
  const states = entries.flatMap(stateNamed);
  const roots = rootsAt(leaves, new Set(states.map(({ size }) => size)));
  return states.flatMap(({ seq, what, size, root }) => {
    if (size > seq) return [`entry ${seq}, ${what}: it names ${size} entries when there were ${seq}`];
    return roots.get(size) === root
      ? []
      : [`entry ${seq}, ${what}: the first ${size} entries are no longer the ones that it names`];
  });
}

interface NamedState {
  seq: number;
  what: string;
  size: number;
  root: Sha256;
}

/** The state of a record that an entry names, if it names one. */
export function stateNamed(entry: Entry): NamedState[] {
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
