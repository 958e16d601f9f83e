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
  evidence: evidenceId.meta({ description: 'Evidence id: e1, e2 …' }),
  time: eventTime.meta({
    description:
      'When it happened: `known` with instant, zone, basis and uncertainty; `local` of unknown zone; or `none`, with the reason',
  }),
  place: place.optional().meta({ description: 'Place' }),
  line: z.string().optional().meta({ description: 'Commodity line' }),
  by: z
    .string()
    .max(200)
    .optional()
    .meta({ description: "Who took it or saw it; the entry's own `by` is who entered it" }),
  caption: z.string().max(2000).optional().meta({ description: 'Free text' }),
};

export const fileFields = {
  ...common,
  file: fileRef.meta({ description: 'The original' }),
  subject: subject.optional().meta({ description: 'What it shows' }),
  flags: z.array(flag).default([]).meta({ description: 'What a reader should know about the file' }),
  within: containerRef
    .optional()
    .meta({ description: 'The e-mail or archive that it came in, and its name there' }),
};

export const readingFields = {
  ...common,
  source: source.meta({ description: 'Typed, or a row of a file that is evidence' }),
};
