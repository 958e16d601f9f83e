import { leafHash } from '../../ledger/tree.js';
import { latin1 } from '../../model/bytes.js';
import { type Entry, type EntryOf, entry } from '../../model/entry.js';
import { type Sha256, sha256 } from '../../model/evidence.js';
import { readCanonical } from '../canonical-json.js';
import { refuse } from '../malformed.js';

/** A line of a ledger: an entry, or the leaf hash of one whose words are not in this copy. */
export type LedgerLine = { is: 'entry'; entry: Entry; leaf: Sha256 } | { is: 'left-out'; leaf: Sha256 };

const LEFT_OUT_BYTES = '{"leaf":""}'.length + 64;
/** Bytes. */
export const LARGEST_LEDGER = 256 * 1024 * 1024;

/** The lines of a ledger without their line feeds, and whether the last one has its own. */
export function linesOf(bytes: Uint8Array): { lines: Uint8Array[]; whole: boolean } {
  const lines: Uint8Array[] = [];
  for (let from = 0; from < bytes.length; ) {
    const end = bytes.indexOf(0x0a, from);
    lines.push(bytes.subarray(from, end < 0 ? bytes.length : end));
    from = end < 0 ? bytes.length : end + 1;
  }
  return { lines, whole: bytes.at(-1) === 0x0a };
}

/** The leaf hash in a line that stands in place of an entry left out; undefined for any other line. */
export function redactedLeaf(line: Uint8Array): Sha256 | undefined {
  if (line.length !== LEFT_OUT_BYTES) return undefined;
  const match = /^\{"leaf":"([0-9a-f]{64})"\}$/.exec(latin1(line));
  return match === null ? undefined : sha256.parse(match[1]);
}

/**
 * Reads every line strictly: canonical form, numbers without gap, the delivery's facts first, no evidence
 * twice.
 * @throws Malformed naming the entry
 */
export function readLedger(bytes: Uint8Array): LedgerLine[] {
  const { lines, whole } = linesOf(bytes);
  if (!whole) refuse('the last ledger line is cut off');
  const received = new Set<string>();
  return lines.map((line, seq): LedgerLine => {
    const leaf = redactedLeaf(line);
    if (leaf !== undefined) return { is: 'left-out', leaf };
    const read = readEntry(line, seq);
    if (seq === 0 && read.type !== 'delivery-facts') refuse('the ledger does not begin with the facts');
    if (read.type === 'evidence-received' || read.type === 'reading-recorded') {
      if (received.has(read.body.evidence))
        refuse(`ledger entry ${seq} brings in ${read.body.evidence} a second time`);
      received.add(read.body.evidence);
    }
    return { is: 'entry', entry: read, leaf: leafHash(line) };
  });
}

function readEntry(line: Uint8Array, seq: number): Entry {
  const value = readCanonical(line, `ledger entry ${seq}`);
  const read = entry.safeParse(value, { jitless: true });
  if (!read.success) {
    const [first] = read.error.issues;
    return refuse(`ledger entry ${seq} is not an entry: ${first?.path.join('.')}: ${first?.message}`);
  }
  return read.data.seq === seq ? read.data : refuse(`ledger entry ${seq} has the number ${read.data.seq}`);
}

/** The entries whose words are here, in order. */
export function entriesOf(lines: readonly LedgerLine[]): Entry[] {
  return lines.flatMap((line) => (line.is === 'entry' ? [line.entry] : []));
}

/** The name of the record: that of the delivery when the record began. Empty when this copy leaves that entry out. */
export function recordName(entries: readonly Entry[]): string | undefined {
  const first = entries.find((one) => one.seq === 0);
  return first?.type === 'delivery-facts' ? deliveryOf(first) : undefined;
}

export function deliveryOf({ body }: EntryOf<'delivery-facts'>): string {
  const { delivery } = body.facts;
  return typeof delivery === 'string' ? delivery : '';
}

/** The facts that were entered last. */
export function lastFacts(entries: readonly Entry[]): EntryOf<'delivery-facts'> | undefined {
  return entries.findLast((one): one is EntryOf<'delivery-facts'> => one.type === 'delivery-facts');
}
