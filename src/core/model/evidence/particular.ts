/** Particulars of goods, unit and papers that a person states. */
import { z } from 'zod';
import { tradeQuantity } from '../quantity.js';
import { readingFields } from './fields.js';
import { evidenceId } from './ids.js';
import { signatory } from './signatory.js';

/**
 * What a particular is of. Who loaded and who counted; how many were counted; when goods were harvested and cooled, and how;
 * what the trailer carried before; the unit's defrost setting and fresh-air vent; the market price of the day; payment for
 * the goods, and title to them.
 */
export const particularSubject = z.enum([
  'loaded-by',
  'counted-by',
  'count',
  'harvest',
  'cooling',
  'previous-load',
  'defrost',
  'fresh-air-vent',
  'market-price',
  'payment',
  'title',
]);
/** What a particular is of. */
export type ParticularSubject = z.infer<typeof particularSubject>;

const OF_A_PERSON: ReadonlySet<ParticularSubject> = new Set(['loaded-by', 'counted-by']);

export const particular = z
  .strictObject({
    kind: z.literal('particular'),
    ...readingFields,
    of: particularSubject.meta({ description: 'What it is of' }),
    words: z.string().min(1).max(2000).optional().meta({ description: 'What is stated' }),
    who: signatory.optional().meta({ description: 'Who did it; needed for who loaded or counted' }),
    quantity: tradeQuantity.optional().meta({ description: 'How many; needed for a count' }),
    documents: z.array(evidenceId).max(20).default([]).meta({ description: 'The papers on which it stands' }),
    document: z.string().min(1).max(400).optional().meta({ description: 'Or the paper in words' }),
  })
  .superRefine(({ of: subject, who, quantity, words, documents, document }, ctx) => {
    const lack = (path: string, message: string) => ctx.addIssue({ code: 'custom', message, path: [path] });
    if (OF_A_PERSON.has(subject)) {
      if (who === undefined) lack('who', 'not told who');
    } else if (subject === 'count') {
      if (quantity === undefined) lack('quantity', 'not told how many');
    } else if (words === undefined && documents.length === 0 && document === undefined)
      lack('words', 'not told what is stated, or on which paper');
  })
  .meta({ description: 'A particular of goods, unit or papers' });
