import { z } from 'zod';
import { evidenceId } from '../evidence.js';
import { calendarDay, zone } from '../time.js';

/** A claim of this delivery: c1, c2 … in the order received. */
export const claimId = z
  .string()
  .regex(/^c[1-9]\d*$/)
  .transform((id) => id as ClaimId);
/** Number of a claim in its record: c1, c2 and so on. */
export type ClaimId = string & z.$brand<'ClaimId'>;

/** A day of the calendar at a place; clocks count days in that zone. */
export const day = z.strictObject({ date: calendarDay, zone });
/** A day of the calendar at a place; clocks count days in that zone. */
export type Day = z.infer<typeof day>;

/** What every entry about a claim can say. */
export const noteFields = {
  claim: claimId,
  /** The papers it rests on. */
  evidence: z.array(evidenceId).max(40).default([]),
  note: z.string().max(4000).optional(),
  /** The earlier entry that this one corrects; both stay in the record. */
  replaces: z.int().nonnegative().optional(),
};
