import type { EvidenceOf } from '../model/evidence.js';
import { asJsonKeeps, canonicalBytes } from './canonical.js';

/**
 * What a person signs of a statement: canonical JSON (RFC 8785) of the record's name and the statement as the
 * ledger keeps it, without the signature itself. With the name in it, a signed statement fits one record only.
 */
export function signedStatementBytes(record: string, statement: EvidenceOf<'statement'>): Uint8Array {
  const { signature: _, ...said } = statement;
  return canonicalBytes(asJsonKeeps({ record, statement: said }));
}
