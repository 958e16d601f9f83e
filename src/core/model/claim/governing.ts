import { z } from 'zod';
import { noteFields } from './ids.js';

/** What governs the carriage. Never assumed: said by a person, with the paper it rests on. Several can hold together. */
export const governing = z.enum([
  /** 49 U.S.C. 14706 by its own force. */
  'us-carriage-by-law',
  /** The same, or 49 CFR part 370, because the contract of carriage brings it in. */
  'us-carriage-by-contract',
  /** The same, because the bill of lading brings it in. */
  'us-carriage-by-bill',
  /** Convention on the Contract for the International Carriage of Goods by Road, Geneva 1956. */
  'cmr',
  /** The law of a state, where unmanufactured produce is exempt (49 U.S.C. 13506(a)(6)). */
  'state-law',
  /** A contract by which shipper and carrier expressly waive those rights in writing (49 U.S.C. 14101(b)(1)). */
  'us-carriage-waived',
  /** Terms of the uniform straight bill of lading, beside what governs otherwise. */
  'uniform-bill',
  /** Uniform conditions of carriage, as carriers in Canada print them. */
  'ca-uniform-conditions',
  'unknown',
]);
/** The terms that govern a claim. */
export type Governing = z.infer<typeof governing>;

/** Clocks that a contract term can set otherwise; the list of them is templates/claim-deadlines.yaml. */
export const deadlineId = z.string().regex(/^[a-z][a-z0-9-]{2,60}$/);

/** How the goods are valued. */
export const valueMeasure = z.enum(['destination-value', 'origin-value', 'invoice-value', 'agreed-value']);
/** How the goods are valued. */
export type ValueMeasure = z.infer<typeof valueMeasure>;

export const termsGoverning = z.strictObject({
  is: z.literal('terms'),
  ...noteFields,
  governs: governing,
  /** How these terms say that the goods are valued; left out: they do not say. */
  measure: valueMeasure.optional(),
});

const LIMITED = { error: 'a whole number, at most 3650' };

/** A clock as the contract sets it, in place of the one in the rules. */
export const deadlineTerm = z.strictObject({
  is: z.literal('clock-set'),
  ...noteFields,
  clock: deadlineId,
  count: z.int(LIMITED).min(0, LIMITED).max(3650, LIMITED),
  unit: z.enum(['hours', 'days', 'working-days', 'months', 'years']),
});
