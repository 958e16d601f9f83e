import { canonicalBytes } from '../core/ledger/canonical.js';
import { leafHash } from '../core/ledger/tree.js';

/**
 * The ledger of a copy that leaves entries out: in the place of each stands one line `{"leaf":"…"}` with its leaf
 * hash, so that the tree hash still comes out and everyone can count what is missing.
 * @param entries bytes of every entry in order, without line feeds
 * @param leaveOut numbers (`seq`) of the entries whose words are not to be in the copy
 * @returns the attachment's bytes, and the numbers for `record.leftOut` of the manifest
 */
export function redactLedger(
  entries: readonly Uint8Array[],
  leaveOut: ReadonlySet<number>,
): { bytes: Uint8Array; leftOut: number[] } {
  const unknown = [...leaveOut].find((seq) => entries[seq] === undefined);
  if (unknown !== undefined) throw new Error(`there is no entry ${unknown} to leave out`);
  const newline = Uint8Array.of(0x0a);
  const rows = entries.flatMap((entry, seq) => [
    leaveOut.has(seq) ? canonicalBytes({ leaf: leafHash(entry) }) : entry,
    newline,
  ]);
  return { bytes: Buffer.concat(rows), leftOut: [...leaveOut].sort((a, b) => a - b) };
}
