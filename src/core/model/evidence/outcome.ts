/** What became of the goods at a stop, by the word of those who received them. */
import { z } from 'zod';
import { tradeQuantity } from '../quantity.js';
import { readingFields } from './fields.js';
import { evidenceId } from './ids.js';
import { signatory } from './signatory.js';

export const outcomeVerdict = z.enum(['accepted', 'accepted-with-exceptions', 'refused']);
/** What was done with goods at the dock. */
export type OutcomeVerdict = z.infer<typeof outcomeVerdict>;

export const outcomeReason = z.enum([
  'temperature',
  'decay',
  'damage',
  'shortage',
  'overage',
  'frost',
  'late',
  'other',
]);
/** Why goods were refused, or what was noted against them. */
export type OutcomeReason = z.infer<typeof outcomeReason>;

/** To whom it was said or handed: what the driver hears is no notice to the consignor. */
export const outcomeTold = z.enum([
  'driver',
  'carrier',
  'dispatcher',
  'shipper',
  'consignor',
  'consignee',
  'broker',
  'insurer',
  'other',
]);
/** To whom an outcome was told. */
export type OutcomeTold = z.infer<typeof outcomeTold>;

export const outcomeHow = z.enum(['in-person', 'call', 'message', 'e-mail', 'letter', 'on-document']);
/** How an outcome was told. */
export type OutcomeHow = z.infer<typeof outcomeHow>;

/**
 * An outcome of the goods of a stop, or of one of its lines. Without a quantity it is about those that no other outcome
 * speaks of; with `all`, about every one of them, whatever was said before. With exceptions, the quantity is that of
 * the exception: so many short, over or damaged.
 */
export const outcome = z.strictObject({
  kind: z.literal('outcome'),
  ...readingFields,
  outcome: outcomeVerdict.meta({ description: 'What was done with the goods' }),
  quantity: tradeQuantity
    .optional()
    .meta({ description: 'Of how many; without it, of those that no other outcome speaks of' }),
  all: z.literal(true).optional().meta({ description: 'Of every one of them, whatever was said before' }),
  rest: z
    .enum(['accepted', 'refused'])
    .optional()
    .meta({ description: 'Of a part: what became of the rest of the line, as the same person said' }),
  reasons: z
    .array(outcomeReason)
    .max(8)
    .default([])
    .meta({ description: 'Why they were refused, or what was noted against them' }),
  words: z.string().min(1).max(2000).optional().meta({ description: 'The words of the one who said so' }),
  saidBy: z.string().min(1).max(200).optional().meta({ description: 'Who said so' }),
  writtenBy: signatory.optional().meta({ description: 'Who wrote it on the document' }),
  signedBy: z.array(signatory).max(4).optional().meta({ description: 'Who signed it there' }),
  told: outcomeTold.optional().meta({ description: 'To whom it was said or handed' }),
  toldName: z.string().min(1).max(200).optional().meta({ description: 'The name of the one who was told' }),
  how: outcomeHow.optional().meta({ description: 'How it was said' }),
  documents: z.array(evidenceId).max(20).default([]).meta({ description: 'The papers on which it stands' }),
  document: z
    .string()
    .min(1)
    .max(400)
    .optional()
    .meta({ description: 'Or the paper in words, where the record does not hold it' }),
});
