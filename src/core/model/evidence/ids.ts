/** What names evidence and bytes. */
import { z } from 'zod';

export const sha256 = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .transform((hex) => hex as Sha256);
/** 64 lower-case hex digits. */
export type Sha256 = string & z.$brand<'Sha256'>;

export const evidenceId = z
  .string()
  .regex(/^e[1-9]\d*$/)
  .transform((id) => id as EvidenceId);
/** `e` and a number, counted from 1 in the order of the ledger. */
export type EvidenceId = string & z.$brand<'EvidenceId'>;
