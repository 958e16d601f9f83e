/** What happened, who was told, and what was stated. */

import { z } from 'zod';
import { readingFields } from './fields.js';
import { sha256 } from './ids.js';

export const eventName = z.enum([
  'arrived',
  'doors-opened',
  'loading-began',
  'loading-ended',
  'doors-closed',
  'departed',
  'dropped',
  'picked-up',
  'stopped',
  'resumed',
  'notice-of-arrival',
  'unloading-began',
  'unloaded',
  'refused',
  'diverted',
  'inspection-requested',
  'inspection-unavailable',
  'inspected',
  'jointly-checked',
  'disposed',
]);
/** Something that happened to the load. */
export type EventName = z.infer<typeof eventName>;

/** Why a truck stopped. */
export const stopReason = z.enum([
  'hours-of-service',
  'rest',
  'fuel',
  'traffic',
  'weather',
  'breakdown',
  'road-inspection',
  'border',
  'other',
]);

export const event = z
  .strictObject({
    kind: z.literal('event'),
    ...readingFields,
    event: eventName.meta({ description: 'What happened' }),
    reason: stopReason.optional().meta({ description: 'Of a stop: why' }),
    note: z.string().max(2000).optional().meta({ description: 'Free text' }),
  })
  .meta({ description: 'An event' });

/**
 * What somebody is given notice of. `rejection`: the goods are rejected (7 CFR 46.2(dd)(3)). `inspection-delay`: an
 * inspection cannot be had or made in time (46.2(cc)(3)). `refused-load`: the carrier holds a refused load and asks
 * what is to be done with it (49 CFR 370.11(a)).
 */
export const noticeOf = z.enum(['rejection', 'inspection-delay', 'refused-load']);
export type NoticeOf = z.infer<typeof noticeOf>;

/** What a contact was about; a contact without a subject proves only that it took place. */
export const contactSubject = z.enum([
  'pulp-temperatures',
  'set-point',
  'load-condition',
  'delay',
  'refusal',
  'disposal',
  'claim',
  'other',
]);
export type ContactSubject = z.infer<typeof contactSubject>;

export const contact = z
  .strictObject({
    kind: z.literal('contact'),
    ...readingFields,
    with: z
      .enum(['shipper', 'receiver', 'broker', 'dispatcher', 'insurer', 'carrier', 'inspector', 'other'])
      .meta({ description: 'The other party' }),
    withName: z.string().min(1).max(200).optional().meta({ description: 'The name of the one who was told' }),
    how: z.enum(['call', 'message', 'e-mail', 'in-person', 'letter']).meta({ description: 'Channel' }),
    about: z.string().min(1).max(2000).meta({ description: 'What it was about' }),
    subjects: z
      .array(contactSubject)
      .min(1)
      .max(8)
      .optional()
      .meta({ description: 'Its subjects; without one, the record says only that it took place' }),
    notice: noticeOf.optional().meta({ description: 'What it gives notice of, where a rule turns on it' }),
  })
  .meta({ description: 'A notice or call' });

/** What a statement is about. */
export const statementTopic = z.enum([
  'trailer',
  'unit',
  'pulps',
  'loading',
  'dock-access',
  'seal',
  'alarm',
  'delay',
  'delivery',
  'rejection',
  'other',
]);
export type StatementTopic = z.infer<typeof statementTopic>;

/** A detached signature by the person whose statement it is: see docs/formats/records-and-verification.md, "Signed statement". */
const statementSignature = z.strictObject({
  cms: z.base64().max(100_000).meta({ description: 'CMS SignedData (RFC 5652) in DER, base64' }),
  certificateSha256: sha256,
});
/** A signature under a statement: CMS (RFC 5652) in base64. */
export type StatementSignature = z.infer<typeof statementSignature>;

export const statement = z
  .strictObject({
    kind: z.literal('statement'),
    ...readingFields,
    text: z.string().min(1).max(20000).meta({ description: 'The words' }),
    about: statementTopic.optional().meta({ description: 'Topic; without one it may concern anything' }),
    signature: statementSignature
      .optional()
      .meta({ description: 'A detached signature of the person, see below' }),
  })
  .meta({ description: "A person's account in their own words" });
