import { sha256Of } from '../core/ledger/tree.js';
import { fromHex } from '../core/model/bytes.js';

/** SHA-256 as its 32 bytes. */
export function digestOf(bytes: Uint8Array): Uint8Array {
  return fromHex(sha256Of(bytes));
}
