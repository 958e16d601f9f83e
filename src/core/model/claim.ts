import { z } from 'zod';
import { evidenceId, sha256 } from './evidence.js';
import { money } from './money.js';
import { calendarDay, zone } from './time.js';

/** A claim of this delivery: c1, c2 … in the order received. */
export const claimId = z
  .string()
  .regex(/^c[1-9]\d*$/)
  .transform((id) => id as ClaimId);
export type ClaimId = string & z.$brand<'ClaimId'>;

/** A day of the calendar at a place; clocks count days in that zone. */
export const day = z.strictObject({ date: calendarDay, zone });
export type Day = z.infer<typeof day>;

/** What governs the carriage. Never assumed: said by a person, with the paper it rests on. */
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
  'unknown',
]);
export type Governing = z.infer<typeof governing>;

/** Who claims, by the part they play in the delivery. */
export const claimantRole = z.enum(['shipper', 'receiver', 'broker', 'insurer', 'owner', 'other']);

/** How a letter came or went. */
const letterForm = z.enum(['paper', 'e-mail', 'portal', 'in-person']);

/** Letters of a claim: those that the tool can write, and others. */
export const letterKind = z.enum([
  'acknowledgement',
  'request-for-papers',
  'status-report',
  'denial',
  'offer',
  'notice-to-shipper',
  'notice-to-insurer',
  'inspection-request',
  'reservation',
  'other',
]);
export type LetterKind = z.infer<typeof letterKind>;

/** What a line of the worksheet of amounts stands for. Each has its place in the sum: docs/method.md. */
export const amountItem = z.enum([
  /** What the goods would have been worth at destination, sound, on the day they were due. */
  'market-value',
  /** What the invoice says of them. */
  'invoice-value',
  /** What they were worth as they arrived. */
  'arrived-value',
  /** What a sale of the damaged goods brought in, before its costs. */
  'salvage',
  'salvage-cost',
  'freight-paid',
  'freight-due',
  /** Already credited or paid to the claimant by another. */
  'credit',
  /** The most that can be claimed, as agreed or declared in writing. */
  'released-value',
  /** What the claimant spent to keep the loss small. */
  'mitigation-cost',
  'inspection-cost',
  'disposal-cost',
]);
export type AmountItem = z.infer<typeof amountItem>;

const quantity = z
  .string()
  .regex(/^\d{1,9}(\.\d{1,3})?$/, { error: 'at most nine digits and three decimals, such as 876 or 12.5' });
export const quantityUnit = z.enum(['cartons', 'pallets', 'lb', 'kg', 'pieces']);
export const quantityState = z.enum(['shipped', 'accepted', 'rejected', 'damaged', 'short']);

/** Who says a thing of the claim. */
export const statementSource = z.enum([
  'claimant',
  'carrier',
  'shipper',
  'receiver',
  'inspector',
  'market-report',
  'other',
]);

/** Causes that excuse a carrier who was not negligent (377 U.S. 134). */
export const exceptedCause = z.enum([
  'act-of-god',
  'public-enemy',
  'act-of-shipper',
  'public-authority',
  'nature-of-goods',
]);
export type ExceptedCause = z.infer<typeof exceptedCause>;

/** Clocks that a contract term can set otherwise; the list of them is templates/claim-deadlines.yaml. */
export const deadlineId = z.string().regex(/^[a-z][a-z0-9-]{2,60}$/);

const common = {
  claim: claimId,
  /** The papers it rests on. */
  evidence: z.array(evidenceId).max(40).default([]),
  note: z.string().max(4000).optional(),
  /** The earlier entry that this one corrects; both stay in the record. */
  replaces: z.int().nonnegative().optional(),
};

/** Whether the letter says what 49 CFR 370.3(b) asks of a claim; left out: nobody has looked. */
const claimContents = z.strictObject({
  /** It tells which shipment. */
  shipment: z.boolean().optional(),
  /** It says that the carrier is liable. */
  liability: z.boolean().optional(),
  /** It asks for a stated amount, or one that can be worked out. */
  amount: z.enum(['stated', 'can-be-worked-out', 'none']).optional(),
  /** It was made in writing, or electronically as the two agreed. */
  form: z.enum(['written', 'electronic-agreed', 'electronic-not-agreed', 'spoken']).optional(),
});

const claimReceived = z.strictObject({
  is: z.literal('received'),
  ...common,
  claimant: z.strictObject({
    name: z.string().min(1).max(200),
    role: claimantRole,
    address: z.string().max(400).optional(),
  }),
  theirNumber: z.string().max(80).optional(),
  /** The carrier's own number for it (49 CFR 370.5(b)). */
  ourNumber: z.string().min(1).max(80),
  received: day,
  form: letterForm.optional(),
  amount: money.optional(),
  grounds: z.array(z.string().min(1).max(500)).max(20).default([]),
  contents: claimContents.prefault({}),
});

const termsGoverning = z.strictObject({ is: z.literal('terms'), ...common, governs: governing });

const LIMITED = { error: 'a whole number, at most 3650' };

/** A clock as the contract sets it, in place of the one in the rules. */
export const deadlineTerm = z.strictObject({
  is: z.literal('clock-set'),
  ...common,
  clock: deadlineId,
  count: z.int(LIMITED).min(0, LIMITED).max(3650, LIMITED),
  unit: z.enum(['hours', 'days', 'working-days', 'months', 'years']),
});

export const letterRecord = z.strictObject({
  is: z.literal('letter'),
  ...common,
  way: z.enum(['received', 'sent']),
  letter: letterKind,
  on: day,
  with: z.string().min(1).max(200),
  form: letterForm.optional(),
});

const offerRecord = z.strictObject({
  is: z.literal('offer'),
  ...common,
  by: z.enum(['carrier', 'claimant', 'insurer']),
  on: day,
  amount: money,
  /** Made firm and in writing (49 CFR 370.9). */
  firm: z.boolean().default(false),
});

const paymentRecord = z.strictObject({
  is: z.literal('payment'),
  ...common,
  by: z.enum(['carrier', 'insurer', 'shipper', 'other']),
  on: day,
  amount: money,
});

const claimDeclined = z.strictObject({
  is: z.literal('declined'),
  ...common,
  on: day,
  /** In writing, saying that the claim or part of it is disallowed, with the reasons. */
  inWriting: z.boolean(),
  /** Of the whole claim when left out. */
  part: money.optional(),
  reasons: z.array(z.string().min(1).max(1000)).max(20).default([]),
});

export const claimClosed = z.strictObject({
  is: z.literal('closed'),
  ...common,
  on: day,
  how: z.enum(['paid', 'settled', 'withdrawn', 'declined', 'suit']),
});

/** One line of the worksheet: a value with the paper that says it. Papers that disagree are lines of their own. */
const amountStatement = z.strictObject({
  is: z.literal('amount'),
  ...common,
  item: amountItem,
  saidBy: statementSource,
  /** Line of the delivery; the whole claim when left out. */
  line: z.string().optional(),
  /** The whole of this line. */
  total: money.optional(),
  /** Or so much each. */
  each: money.optional(),
  quantity: quantity.optional(),
  unit: quantityUnit.optional(),
});

/** How much of a line was in which state, and who says so. */
const quantityStatement = z.strictObject({
  is: z.literal('quantity'),
  ...common,
  line: z.string(),
  state: quantityState,
  quantity,
  unit: quantityUnit,
  saidBy: statementSource,
});

/** Letters that can come before there is a claim: notices, requests and reservations of the carrier's own. */
export const LETTERS_BEFORE_CLAIM: ReadonlySet<LetterKind> = new Set([
  'notice-to-shipper',
  'notice-to-insurer',
  'inspection-request',
  'reservation',
  'other',
]);

/** What was put together to be sent: nothing is sent by the tool. */
const claimAnswered = z.strictObject({
  is: z.literal('answered'),
  ...common,
  /** Left out when there is no claim yet; only letters of BEFORE_A_CLAIM do without. */
  claim: claimId.optional(),
  letter: letterKind,
  to: z.string().min(1).max(200),
  /** Files of the answer as they were written. */
  files: z
    .array(
      z.strictObject({
        name: z.string().min(1).max(400),
        what: z.enum(['letter', 'letter-text', 'dossier', 'bag', 'enclosures', 'certificate']),
        bytes: z.int().nonnegative(),
        sha256,
      }),
    )
    .max(40),
});

/** What somebody holds brought the damage. Without evidence behind it no cause is kept. */
const causeStatement = z.strictObject({
  is: z.literal('cause'),
  ...common,
  evidence: z.array(evidenceId).min(1, { error: 'name the evidence behind it' }).max(40),
  cause: exceptedCause,
});

/** What is said of a claim, one thing an entry. */
export const claimNote = z.discriminatedUnion('is', [
  claimReceived,
  termsGoverning,
  deadlineTerm,
  letterRecord,
  offerRecord,
  paymentRecord,
  claimDeclined,
  claimClosed,
  amountStatement,
  quantityStatement,
  causeStatement,
  claimAnswered,
]);
export type ClaimNote = z.infer<typeof claimNote>;
export type ClaimNoteKind = ClaimNote['is'];
export type ClaimNoteOf<K extends ClaimNoteKind> = Extract<ClaimNote, { is: K }>;
