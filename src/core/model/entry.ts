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
  evidence: evidenceId,
  subject: subject.optional(),
  place: place.optional(),
  line: z.string().optional(),
  by: z.string().optional(),
  caption: z.string().optional(),
  time: eventTime.optional(),
  /** Parts of its picture that are black in copies for outsiders; an empty list takes earlier ones back. */
  blackOut: z.array(region).max(40).optional(),
  /** Why an earlier statement is corrected. */
  why: z.string().optional(),
});

export const clockComparison = z.strictObject({
  /** Whose clock: a unit log, or a camera by its make and model. */
  clock: z.discriminatedUnion('is', [
    z.strictObject({ is: z.literal('unit-log'), evidence: evidenceId.optional() }),
    z.strictObject({ is: z.literal('camera'), camera: z.string() }),
  ]),
  at: instant,
  /** Seconds to add to what the clock says to get true time. */
  addSeconds: z.number(),
  uncertaintySeconds: z.number().nonnegative(),
  /** What the measurement rests on. */
  from: z.string(),
  /** By satellite time in photos, by a photo of the clock's display, or as a person said. */
  how: z.enum(['satellite-time', 'display-photo', 'told']).optional(),
  /** The photo of the display. */
  photo: evidenceId.optional(),
  /** Entries of earlier comparisons of the same clock that this one takes the place of. */
  replaces: z.array(z.int().nonnegative()).optional(),
});

const why = z.string().min(1).max(2000);

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
  /** The entry of this record that tells of the merge. */
  merge: z.int().positive(),
  /** Its number in the other record, and its leaf hash there. */
  entry: z.int().nonnegative(),
  leaf: sha256,
  /** When and by whom it was entered first. */
  at: instant,
  by: z.string().min(1).max(200),
  /** What its evidence was called where it was entered first. */
  evidence: evidenceId.optional(),
});
/** Where an entry was before it was taken over from another record of the same delivery. */
export type EntryOrigin = z.infer<typeof origin>;

/** Another record of the same delivery, what this one lacked of it, and the state that each had. */
const recordMerged = z.strictObject({
  other: z.strictObject({ delivery: z.string().min(1), size: z.int().positive(), root: sha256 }),
  own: z.strictObject({ size: z.int().positive(), root: sha256 }),
  /** Entries with which both begin. */
  shared: z.int().nonnegative(),
  /** Leaf hashes of the other record from there on: with them its fingerprints stay provable. */
  leaves: z.array(sha256),
  /** The ledger of the other record, kept among the originals. */
  ledger: z.strictObject({ bytes: z.int().positive(), sha256 }),
});

const head = {
  seq: z.int().nonnegative(),
  /** When it was entered, by the machine's clock. */
  at: instant,
  /** Who entered it. */
  by: z.string().min(1).max(200),
  /** Left out of what was entered here first. */
  origin: origin.optional(),
};
const entryOf = <T extends string, B extends z.ZodType>(type: T, body: B) =>
  z.strictObject({ ...head, type: z.literal(type), body });

/** One line of the ledger. */
export const entry = z.discriminatedUnion('type', [
  entryOf('delivery-facts', z.strictObject({ sha256, facts: factsAsWritten })),
  entryOf('evidence-received', receivedEvidence),
  entryOf('reading-recorded', reading),
  entryOf('evidence-described', description),
  entryOf('evidence-withheld', z.strictObject({ evidence: evidenceId, why: z.string().min(1) })),
  entryOf('clock-compared', clockComparison),
  entryOf(
    'fingerprint-published',
    z.strictObject({ size: z.int().positive(), root: sha256, to: z.string(), how: z.string() }),
  ),
  entryOf(
    'time-stamp-received',
    z.strictObject({ size: z.int().positive(), root: sha256, token: z.string(), from: z.string() }),
  ),
  entryOf(
    'dossier-built',
    z.strictObject({
      file: z.string(),
      sha256,
      bytes: z.int().positive(),
      size: z.int().positive(),
      root: sha256,
      /** For whom, by its name in copies.yaml; the carrier's own when left out. */
      for: z.string().min(1).max(60).optional(),
    }),
  ),
  entryOf('claim-noted', claimNote),
  /** The right value of an earlier entry, whose number is `entry`; of several corrections the last counts. */
  entryOf('entry-corrected', z.strictObject({ entry: z.int().nonnegative(), becomes: correctedBody, why })),
  /** An earlier entry, whose number is `entry`, does not count; a strike that is itself struck does not count either. */
  entryOf('entry-struck', z.strictObject({ entry: z.int().nonnegative(), why })),
  /** A person says that evidence which the tool judged to belong elsewhere does count. */
  entryOf('evidence-admitted', z.strictObject({ evidence: evidenceId, why })),
  /** Another record of this delivery was merged in; the entries that name this one in `origin` came from it. */
  entryOf('record-merged', recordMerged),
]);
/** An entry of the ledger: see docs/formats.md. */
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
