import { z } from 'zod';
import { claimNote } from './claim.js';
import { type Delivery, delivery } from './delivery.js';
import { evidenceId, place, reading, receivedEvidence, region, sha256, subject } from './evidence.js';
import { eventTime, instant } from './time.js';

/** What facts that were checked say, so that nobody reads them a second time. */
const readFacts = new WeakMap<object, Delivery>();

/** Facts are kept as they were written, so that the ledger line can be compared with the YAML. */
const factsAsWritten = z.record(z.string(), z.json()).superRefine((facts, ctx) => {
  const read = delivery.safeParse(facts, { jitless: true });
  if (read.success) readFacts.set(facts, read.data);
  else
    for (const issue of read.error.issues)
      ctx.addIssue({ code: 'custom', message: issue.message, path: issue.path });
});

/** What the facts of an entry say, with defaults filled in. Throws what zod throws for facts that do not hold. */
export function deliveryOf(facts: Readonly<Record<string, unknown>>): Delivery {
  return readFacts.get(facts) ?? delivery.parse(facts);
}

export const description = z.strictObject({
  evidence: evidenceId.meta({ description: 'The item' }),
  subject: subject.optional().meta({ description: 'What it shows' }),
  place: place.optional().meta({ description: 'Place' }),
  line: z.string().optional().meta({ description: 'Commodity line' }),
  by: z.string().optional().meta({ description: 'Who took it' }),
  caption: z.string().optional().meta({ description: 'Free text' }),
  time: eventTime.optional().meta({ description: 'When it was taken' }),
  blackOut: z.array(region).max(40).optional().meta({
    description:
      'Parts to black out in redacted copies, as fractions of the upright picture from left and top; an empty list removes them',
  }),
  why: z.string().optional().meta({ description: 'Why an earlier description is corrected' }),
});

export const clockComparison = z.strictObject({
  clock: z
    .discriminatedUnion('is', [
      z.strictObject({ is: z.literal('unit-log'), evidence: evidenceId.optional() }),
      z.strictObject({ is: z.literal('camera'), camera: z.string() }),
    ])
    .meta({ description: "A unit log's clock, or a camera's by make and model" }),
  at: instant.meta({ description: 'True time' }),
  addSeconds: z.number().meta({ description: "Seconds to add to the clock's reading" }),
  uncertaintySeconds: z.number().nonnegative().meta({ description: 'Uncertainty' }),
  from: z.string().meta({ description: 'Basis of the comparison, in words' }),
  how: z
    .enum(['satellite-time', 'display-photo', 'told'])
    .optional()
    .meta({ description: "Satellite time in photos, a photo of the display, or a person's statement" }),
  photo: evidenceId.optional().meta({ description: 'The photo of the display' }),
  rows: z
    .union([z.strictObject({ from: z.int().positive() }), z.strictObject({ before: z.int().positive() })])
    .optional()
    .meta({
      description:
        'Of a unit log whose clock was set on the way: only the rows from this line of the file on, or before it',
    }),
  replaces: z
    .array(z.int().nonnegative())
    .optional()
    .meta({ description: 'Earlier comparisons of the same clock that this one replaces' }),
});

const why = z.string().min(1).max(2000).meta({ description: 'Why' });
const about = evidenceId.meta({ description: 'The evidence' });
const earlier = z.int().nonnegative().meta({ description: 'Number of the earlier entry' });
/** A state of the record that an entry names. */
const state = {
  size: z.int().positive().meta({ description: 'Number of entries then' }),
  root: sha256.meta({ description: 'Tree hash over them (RFC 9162 §2.1)' }),
};

/** What an entry should have said: an entry of the same kind, about the same evidence or claim. */
const correctedBody = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('evidence-received'), body: receivedEvidence }),
  z.strictObject({ type: z.literal('reading-recorded'), body: reading }),
  z.strictObject({ type: z.literal('evidence-described'), body: description }),
  z.strictObject({ type: z.literal('clock-compared'), body: clockComparison }),
  z.strictObject({ type: z.literal('claim-noted'), body: claimNote }),
]);
/** What an entry should have said: its type, and its body in full. */
export type CorrectedBody = z.infer<typeof correctedBody>;

/** Where an entry was before it was taken over from another record of the same delivery. */
const origin = z.strictObject({
  merge: z.int().positive().meta({ description: 'The entry of this record that tells of the merge' }),
  entry: z.int().nonnegative().meta({ description: 'Its number in the other record' }),
  leaf: sha256.meta({ description: 'Its leaf hash there' }),
  at: instant.meta({ description: 'When it was entered first' }),
  by: z.string().min(1).max(200).meta({ description: 'Who entered it first' }),
  evidence: evidenceId
    .optional()
    .meta({ description: 'What its evidence was called where it was entered first' }),
});
/** Where an entry was before it was taken over from another record of the same delivery. */
export type EntryOrigin = z.infer<typeof origin>;

/** Another record of the same delivery, what this one lacked of it, and the state that each had. */
const recordMerged = z.strictObject({
  other: z
    .strictObject({ delivery: z.string().min(1), size: z.int().positive(), root: sha256 })
    .meta({ description: 'Name, number of entries and tree hash of the other record' }),
  own: z
    .strictObject({ size: z.int().positive(), root: sha256 })
    .meta({ description: 'Number of entries and tree hash of this record before the merge' }),
  shared: z.int().nonnegative().meta({ description: 'Entries with which both begin' }),
  leaves: z.array(sha256).meta({
    description: 'Leaf hashes of the other record from there on: with them its fingerprints stay provable',
  }),
  ledger: z
    .strictObject({ bytes: z.int().positive(), sha256 })
    .meta({ description: 'The ledger of the other record, kept among the originals' }),
});

const head = {
  seq: z.int().nonnegative().meta({ description: 'Number of the entry, from 0' }),
  at: instant.meta({ description: "When it was entered, by the machine's clock" }),
  by: z.string().min(1).max(200).meta({ description: 'Who entered it' }),
  origin: origin
    .optional()
    .meta({ description: 'Of an entry taken over from another record: where it was before' }),
};
const entryOf = <T extends string, B extends z.ZodType>(type: T, body: B) =>
  z.strictObject({ ...head, type: z.literal(type), body });

/** One line of the ledger. */
export const entry = z.discriminatedUnion('type', [
  entryOf(
    'delivery-facts',
    z.strictObject({
      sha256: sha256.meta({ description: 'SHA-256 of the text of delivery.yaml' }),
      facts: factsAsWritten.meta({ description: 'The facts as written, without defaults' }),
    }),
  ),
  entryOf('evidence-received', receivedEvidence),
  entryOf('reading-recorded', reading),
  entryOf('evidence-described', description),
  entryOf(
    'evidence-withheld',
    z.strictObject({ evidence: about, why: z.string().min(1).meta({ description: 'Why' }) }),
  ),
  entryOf('clock-compared', clockComparison),
  entryOf(
    'fingerprint-published',
    z.strictObject({
      ...state,
      to: z.string().meta({ description: 'To whom it was sent' }),
      how: z.string().meta({ description: 'By which way' }),
    }),
  ),
  entryOf(
    'time-stamp-received',
    z.strictObject({
      ...state,
      token: z.string().meta({ description: 'The token (RFC 3161) in DER, base64' }),
      from: z.string().meta({ description: 'The server' }),
    }),
  ),
  entryOf(
    'dossier-built',
    z.strictObject({
      file: z.string().meta({ description: 'Its file' }),
      sha256: sha256.meta({ description: 'SHA-256 of the dossier' }),
      bytes: z.int().positive().meta({ description: 'Its size' }),
      ...state,
      for: z
        .string()
        .min(1)
        .max(60)
        .optional()
        .meta({ description: "For whom, by its name in copies.yaml; the carrier's own when left out" }),
      volume: z
        .literal('assessment')
        .optional()
        .meta({ description: 'Of an assessment, which is the other PDF of the same record' }),
    }),
  ),
  entryOf('claim-noted', claimNote),
  /** The right value of an earlier entry, whose number is `entry`; of several corrections the last counts. */
  entryOf(
    'entry-corrected',
    z.strictObject({
      entry: earlier,
      becomes: correctedBody.meta({ description: 'Type and body that it should have had, in full' }),
      why,
    }),
  ),
  /** An earlier entry, whose number is `entry`, does not count; a strike that is itself struck does not count either. */
  entryOf('entry-struck', z.strictObject({ entry: earlier, why })),
  /** A person says that evidence which the tool judged to belong elsewhere does count. */
  entryOf('evidence-admitted', z.strictObject({ evidence: about, why })),
  /** Another record of this delivery was merged in; the entries that name this one in `origin` came from it. */
  entryOf('record-merged', recordMerged),
]);
/** An entry of the ledger: see docs/formats/records-and-verification.md. */
export type Entry = z.infer<typeof entry>;
/** What an entry says. */
export type EntryType = Entry['type'];
/** An entry of one type. */
export type EntryOf<T extends EntryType> = Extract<Entry, { type: T }>;

/** When and by whom an entry was entered first: in this record, or in the one that it was taken over from. */
export function firstEntered({
  at,
  by,
  origin,
}: Pick<Entry, 'at' | 'by' | 'origin'>): Pick<Entry, 'at' | 'by'> {
  return origin === undefined ? { at, by } : { at: origin.at, by: origin.by };
}
/** What a caller hands in; the store adds sequence number and time. */
export type NewEntry = {
  [T in EntryType]: {
    type: T;
    by: string;
    origin?: EntryOrigin | undefined;
    body: z.input<typeof entry> extends infer E
      ? Extract<E, { type: T }> extends { body: infer B }
        ? B
        : never
      : never;
  };
}[EntryType];
