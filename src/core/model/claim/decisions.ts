import { z } from 'zod';
import { money } from '../money.js';
import { day, noteFields } from './ids.js';
import { letterForm } from './letters.js';

/** An offer to settle the claim. */
export const offerRecord = z.strictObject({
  is: z.literal('offer'),
  ...noteFields,
  by: z.enum(['carrier', 'claimant', 'insurer']),
  on: day,
  amount: money,
  /** Made firm and in writing (49 CFR 370.9). */
  firm: z.boolean().default(false),
});

export const paymentRecord = z.strictObject({
  is: z.literal('payment'),
  ...noteFields,
  by: z.enum(['carrier', 'insurer', 'shipper', 'other']),
  on: day,
  amount: money,
});

/** Who told whom of a decision, and how. */
const toldOf = {
  /** Left out: the carrier. */
  by: z.enum(['carrier', 'insurer']).optional(),
  to: z.string().min(1).max(200).optional(),
  form: letterForm.optional(),
};

/** One thing that is claimed, and why it is declined. */
const declinedItem = z.strictObject({
  /** A line of the delivery, an item of the worksheet, or both: `romaine market-value`. */
  item: z.string().min(1).max(120),
  reason: z.string().min(1).max(1000),
});

export const claimDeclined = z.strictObject({
  is: z.literal('declined'),
  ...noteFields,
  on: day,
  ...toldOf,
  /** By the insurer: whether the writing says that it acts on behalf of the carrier (49 U.S.C. 14706(e)(2)(B)). */
  onBehalf: z.boolean().optional(),
  /** In writing, saying that the claim or part of it is disallowed, with the reasons. */
  inWriting: z.boolean(),
  /** Of the whole claim when left out. */
  part: money.optional(),
  reasons: z.array(z.string().min(1).max(1000)).max(20).default([]),
  items: z.array(declinedItem).max(100).optional(),
});

/** A part of the claim that the carrier admits (CMR, article 32(2)). */
export const partAdmitted = z.strictObject({
  is: z.literal('admitted'),
  ...noteFields,
  on: day,
  ...toldOf,
  part: money,
});

/** The documents attached to the claim, sent back (CMR, article 32(2)). Whoever relies on it proves it. */
export const papersReturned = z.strictObject({
  is: z.literal('papers-returned'),
  ...noteFields,
  on: day,
  ...toldOf,
});

export const claimClosed = z.strictObject({
  is: z.literal('closed'),
  ...noteFields,
  on: day,
  how: z.enum(['paid', 'settled', 'withdrawn', 'declined', 'suit']),
});
