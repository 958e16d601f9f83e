/** What is written on a paper against clean receipt. */
import { z } from 'zod';
import { tradeQuantity } from '../quantity.js';
import { readingFields } from './fields.js';
import { evidenceId } from './ids.js';
import { outcomeReason } from './outcome.js';
import { signatory } from './signatory.js';

/**
 * An exception that the carrier made at loading, on the bill of lading or another receipt for the goods. An exception
 * that a receiver made is an outcome: goods accepted with exceptions.
 */
export const exception = z
  .strictObject({
    kind: z.literal('exception'),
    ...readingFields,
    words: z.string().min(1).max(2000).meta({ description: 'The words on the paper' }),
    quantity: tradeQuantity.optional().meta({ description: 'How many it is about, where it says so' }),
    reasons: z
      .array(outcomeReason)
      .max(8)
      .default([])
      .meta({ description: 'What is noted against the goods' }),
    writtenBy: signatory.optional().meta({ description: 'Who wrote it' }),
    signedBy: z.array(signatory).max(4).default([]).meta({ description: 'Who signed it' }),
    documents: z.array(evidenceId).max(20).default([]).meta({ description: 'The papers on which it stands' }),
    document: z
      .string()
      .min(1)
      .max(400)
      .optional()
      .meta({ description: 'Or the paper in words, where the record does not hold it' }),
  })
  .meta({ description: 'An exception on a bill of lading or receipt' });
