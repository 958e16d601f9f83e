import { z } from 'zod';
import {
  claimClosed,
  claimDeclined,
  offerRecord,
  papersReturned,
  partAdmitted,
  paymentRecord,
} from './claim/decisions.js';
import { deadlineTerm, termsGoverning } from './claim/governing.js';
import { day, noteFields } from './claim/ids.js';
import { claimAnswered, letterForm, letterRecord } from './claim/letters.js';
import { evidenceId } from './evidence.js';
import { money } from './money.js';
import { tradeUnit, writtenAmount } from './quantity.js';

export * from './claim/decisions.js';
export * from './claim/governing.js';
export * from './claim/ids.js';
export * from './claim/letters.js';

/** Who claims, by the part they play in the delivery. */
export const claimantRole = z.enum(['shipper', 'receiver', 'broker', 'insurer', 'owner', 'other']);

/** What a line of the worksheet of amounts stands for. Each has its place in the sum: docs/method.md. */
export const amountItem = z.enum([
  /** What the goods would have been worth at destination, sound, on the day they were due. */
  'market-value',
  /** What the goods were worth at the place and time at which they were accepted for carriage (CMR, article 23(1)). */
  'origin-value',
  /** What the invoice says of them. */
  'invoice-value',
  /** What the parties agreed in writing that they are worth. */
  'agreed-value',
  /** What they were worth as they arrived. */
  'arrived-value',
  /** What a sale of the damaged goods brought in, before its costs. */
  'salvage',
  'salvage-cost',
  /** Given back to buyers of the damaged goods: comes off the sale as its costs do. */
  'refunds',
  'freight-paid',
  'freight-due',
  /** Customs duties and other charges incurred in respect of the carriage (CMR, article 23(4)). */
  'carriage-charges',
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
/** A cause for which the carrier does not answer. */
export type ExceptedCause = z.infer<typeof exceptedCause>;

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
  ...noteFields,
  claimant: z.strictObject({
    name: z.string().min(1).max(200),
    role: claimantRole,
    address: z.string().max(400).optional(),
  }),
  theirNumber: z.string().max(80).optional(),
  /** The carrier's own number for it (49 CFR 370.5(b)). */
  ourNumber: z.string().min(1).max(80),
  received: day,
  /** The day on which it was sent, where the two differ. */
  sent: day.optional(),
  /** Whether the day of receipt is recorded on the face of the claim itself (49 CFR 370.5(b)). */
  receiptNoted: z.boolean().optional(),
  form: letterForm.optional(),
  amount: money.optional(),
  /** Other carriers to whom a similar claim on the shipment was presented (49 CFR 370.3(e)). */
  alsoFiledWith: z.array(z.string().min(1).max(200)).min(1).max(20).optional(),
  grounds: z.array(z.string().min(1).max(500)).max(20).default([]),
  contents: claimContents.prefault({}),
});

/** One line of the worksheet: a value with the paper that says it. Papers that disagree are lines of their own. */
const amountStatement = z.strictObject({
  is: z.literal('amount'),
  ...noteFields,
  item: amountItem,
  saidBy: statementSource,
  /** Line of the delivery; the whole claim when left out. */
  line: z.string().optional(),
  /** The whole of this line. */
  total: money.optional(),
  /** Or so much each. */
  each: money.optional(),
  quantity: writtenAmount.optional(),
  unit: tradeUnit.optional(),
});

/** How much of a line was in which state, and who says so. */
const quantityStatement = z.strictObject({
  is: z.literal('quantity'),
  ...noteFields,
  line: z.string(),
  state: quantityState,
  quantity: writtenAmount,
  unit: tradeUnit,
  saidBy: statementSource,
});

/** What somebody holds brought the damage. Without evidence behind it no cause is kept. */
const causeStatement = z.strictObject({
  is: z.literal('cause'),
  ...noteFields,
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
  partAdmitted,
  papersReturned,
  claimClosed,
  amountStatement,
  quantityStatement,
  causeStatement,
  claimAnswered,
]);
/** Something that was noted of a claim: that it was filed, what was asked, answered, paid or said of it. */
export type ClaimNote = z.infer<typeof claimNote>;
/** Which of the notes of a claim it is. */
export type ClaimNoteKind = ClaimNote['is'];
/** A note of a claim of one kind. */
export type ClaimNoteOf<K extends ClaimNoteKind> = Extract<ClaimNote, { is: K }>;
