import { expect } from 'vitest';
import { canonicalBytes } from '../../../src/core/ledger/canonical.js';
import { leafHash } from '../../../src/core/ledger/tree.js';
import type { CheckedItem } from '../../../src/core/model/verification.js';
import type { VerifyOptions } from '../../../src/core/verify/options.js';
import { ledgerEntries, text } from '../../signing/sample.js';
import { type Files, only, type Scratch, verifyPaths } from './files.js';

/** The entries of the sample, their leaves, and records that differ from it. */
export const own = ledgerEntries();
export const leaves = own.map(leafHash);
const at = '2026-07-17T09:05:00.000Z';

/** The sample's entries and one more. */
export function more(entry: object, entries: readonly Uint8Array[] = own): Uint8Array[] {
  return [...entries, canonicalBytes({ at, by: 'M. Ortega', seq: entries.length, ...entry })];
}

export function edited(entry: Uint8Array | undefined, old: string, by: string): Uint8Array {
  const words = Buffer.from(entry ?? '').toString('utf8');
  expect(words).toContain(old);
  return text(words.replace(old, by));
}

export function published(size: number, root: string): Uint8Array[] {
  return more({ type: 'fingerprint-published', body: { size, root, to: 'R. Vela', how: 'text' } });
}

let count = 0;
/** A name that was not used before. */
export function fresh(name: string): string {
  count += 1;
  return `${name}-${count}`;
}

/** Writes a record to the disk and checks it. */
export async function checkRecord(
  disk: Scratch,
  files: Files,
  options: VerifyOptions = {},
): Promise<CheckedItem> {
  return only(await verifyPaths([await disk.write(fresh('record'), files)], options));
}
