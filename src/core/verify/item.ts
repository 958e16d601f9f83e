import type { Container } from './container/container.js';

/** One thing to be checked: what the report calls it, and how to get at it. */
export interface Item {
  path: string;
  /** @throws Malformed when it is none of these, or too large; the system's error when it cannot be looked at */
  open: () => Promise<OpenedItem>;
}

/** What an item is, with what is needed to check it. */
export type OpenedItem =
  | { is: 'dossier'; bytes: Uint8Array }
  | {
      is: 'bag' | 'record';
      /** Opens its files; rejects with Malformed. */
      container: () => Promise<Container>;
    }
  | { is: 'unknown' };

/** A dossier is made to be sent by e-mail; what is far larger, in bytes, is not one. */
export const LARGEST_DOSSIER = 1024 * 1024 * 1024;

/** Paths of a delivery folder that belong to the record; the owner may keep anything else beside them. */
const RECORD_FILES =
  /^(?:ledger\.jsonl|checkpoint|delivery\.yaml|originals\/[^/]*|(?:dossiers|assessments)\/(?:[^/]+\.pdf)?)$/i;

/** Whether a path below a delivery folder belongs to the record; that of a folder ends with `/`. */
export function isOfRecord(path: string): boolean {
  return RECORD_FILES.test(path);
}

/** Whether a file is a zip by its first bytes, or by its name where those were changed: a damaged bag is still one. */
export function looksLikeZip(head: string, name: string): boolean {
  if (head.startsWith('PK\x03\x04') || head.startsWith('PK\x05\x06')) return true;
  return /\.zip$/i.test(name) && !head.startsWith('%PDF-');
}
