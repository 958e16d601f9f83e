import { concatBytes, isSameBytes } from '../model/bytes.js';
import { type Entry, entry } from '../model/entry.js';
import { DossierError } from '../model/error.js';
import type { Sha256 } from '../model/evidence.js';
import { canonicalBytes } from './canonical.js';
import { leafHash } from './tree.js';

const NEWLINE = 0x0a;

/** The bytes of one entry, as they are hashed: canonical JSON without the line's end. */
export function entryBytes(of: Entry): Uint8Array {
  return canonicalBytes(of);
}

/** One row of the ledger: the entry's bytes and a line feed. */
export function printRow(bytes: Uint8Array): Uint8Array {
  return concatBytes([bytes, Uint8Array.of(NEWLINE)]);
}

/** The rows of a ledger without their line feeds, and the rest after the last line feed: empty in a sound ledger. */
export function splitRows(ledger: Uint8Array): { rows: Uint8Array[]; rest: Uint8Array } {
  const rows: Uint8Array[] = [];
  let from = 0;
  for (let to = ledger.indexOf(NEWLINE); to >= 0; to = ledger.indexOf(NEWLINE, from)) {
    rows.push(ledger.subarray(from, to));
    from = to + 1;
  }
  return { rows, rest: ledger.subarray(from) };
}

/** Constructed once, because construction takes as long as reading a row. */
const UTF_8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

export type RowReading = { is: 'entry'; entry: Entry; leaf: Sha256 } | { is: 'bad'; problem: string };

/**
 * Parses one row without its line feed, which must have the sequence number `seq`. Never throws. Only the canonical
 * form of a row is accepted, so that no two byte strings mean the same entry.
 */
export function readRow(bytes: Uint8Array, seq: number): RowReading {
  const bad = (problem: string): RowReading => ({ is: 'bad', problem });
  let value: unknown;
  let canonical: Uint8Array;
  try {
    value = JSON.parse(UTF_8.decode(bytes));
    canonical = canonicalBytes(value);
  } catch (error) {
    if (error instanceof SyntaxError) return bad('it is not JSON');
    if (error instanceof TypeError) return bad('it is not UTF-8 text');
    if (error instanceof DossierError) return bad(error.message);
    throw error;
  }
  if (!isSameBytes(bytes, canonical)) return bad('it is not in canonical form (RFC 8785)');
  // Walking the schemas is quicker than making them into code, for 100 rows and for 10,000.
  const read = entry.safeParse(value, { jitless: true });
  if (!read.success) {
    const [issue] = read.error.issues;
    return bad(`it is not an entry: ${issue?.path.join('.') ?? ''}: ${issue?.message ?? ''}`);
  }
  if (read.data.seq !== seq) return bad(`its number is ${read.data.seq} where ${seq} belongs`);
  return { is: 'entry', entry: read.data, leaf: leafHash(bytes) };
}
