/** What evidence of every kind says, what files add to it, and what readings add. */
import { z } from 'zod';
import { eventTime } from '../time.js';
import { containerRef, fileRef } from './file.js';
import { flag } from './flag.js';
import { evidenceId } from './ids.js';
import { place } from './place.js';
import { subject } from './subject.js';

/** Where a reading was written down: typed in, or a row of a file that is evidence itself. */
export const source = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('typed') }),
  z.strictObject({ is: z.literal('row'), evidence: evidenceId, row: z.int().positive() }),
]);
export type Source = z.infer<typeof source>;

const common = {
  evidence: evidenceId,
  time: eventTime,
  place: place.optional(),
  /** Line id of the delivery. */
  line: z.string().optional(),
  /** Who took it or saw it; the ledger entry's own `by` says who entered it. */
  by: z.string().max(200).optional(),
  caption: z.string().max(2000).optional(),
};

export const fileFields = {
  ...common,
  file: fileRef,
  subject: subject.optional(),
  flags: z.array(flag).default([]),
  within: containerRef.optional(),
};

export const readingFields = { ...common, source };
