import { z } from 'zod';
import { deadlineId, deadlineTerm, governing, letterKind, letterRecord } from './claim.js';
import { calendarDay } from './time.js';

const bothWords = z.strictObject({ en: z.string().min(1).max(600), es: z.string().min(1).max(600) });

const span = z.strictObject({ count: deadlineTerm.shape.count, unit: deadlineTerm.shape.unit });
export type DeadlineSpan = z.infer<typeof span>;

/**
 * What starts a clock.
 * `claim-received`: the day the claim came in. `written-disallowance`: the first writing that disallows the claim or
 * part of it; one of an insurer only with what 49 U.S.C. 14706(e)(2)(B) asks of it. `unloaded`: the day of unloading
 * at the last stop; `delivery-time`: its time. `delivery`: the same day, or that of a refusal. `at-disposal`: notice
 * of arrival and the truck there, whichever came later. `joint-check`: the goods were checked by consignee and
 * carrier together. `shipped`: the day of the last departure from a place of loading; `taken-over`: the same, of goods
 * that were not delivered.
 * `not-recorded`: nothing that the record holds.
 */
const deadlineStart = z.enum([
  'claim-received',
  'written-disallowance',
  'delivery',
  'delivery-time',
  'unloaded',
  'at-disposal',
  'joint-check',
  'taken-over',
  'shipped',
  'not-recorded',
]);
export type DeadlineStart = z.infer<typeof deadlineStart>;

/**
 * What meets a clock, or makes it needless. `resolved`: paid, declined in writing, or a firm offer, as 49 CFR 370.9
 * has it, or closed; `paid-or-declined`: the same without the offer, as 370.5(a) has it. `settled`: closed, other than
 * as declined. `claimed`: the claim came in; `claimed-in-writing`: and not by word of mouth. `suit`: closed by suit.
 * `refused`, `unloaded`, `diverted`: the event at the stop. `rejection-noticed`: the consignor was told of the
 * rejection. `exception-noted`: the consignee took the goods with exceptions, or refused them. A letter counts by the day on which it was sent, or came.
 */
const deadlineAction = z.union([
  z.enum([
    'resolved',
    'paid-or-declined',
    'settled',
    'claimed',
    'claimed-in-writing',
    'suit',
    'refused',
    'unloaded',
    'diverted',
    'rejection-noticed',
    'exception-noted',
  ]),
  z.strictObject({
    letter: letterKind,
    way: letterRecord.shape.way,
    /** Which day counts of a letter that came in: that on which it came, or was sent. Left out: that on which it came. */
    counts: z.enum(['came', 'sent']).optional(),
  }),
]);
export type DeadlineAction = z.infer<typeof deadlineAction>;

const counting = z.strictObject({
  /** Whether the day of the start is day one. Left out: it is not counted. */
  firstDay: z.enum(['counted', 'not-counted']).default('not-counted'),
  /** Days that are left out of the count. */
  except: z.array(z.enum(['saturdays', 'sundays', 'holidays'])).default([]),
  /** Which list of holidays, by its name in this file. */
  holidays: z.string().optional(),
  /** What holds when the last day is a Saturday, Sunday or holiday. */
  lastDay: z.enum(['as-it-falls', 'next-working-day']).default('as-it-falls'),
  /**
   * Which hours count. `running`: all that pass. `at-work`: only those in `work`. `to-reject`: as 7 CFR 46.2(cc)(4)
   * counts the time to reject.
   */
  hours: z.enum(['running', 'at-work', 'to-reject']).default('running'),
  /** For `to-reject`: begun less than so many hours before the close, the rest runs from the next opening. */
  carriedWithin: z.number().min(0).max(24).default(2),
});

/** What makes the time stand still, and until when: all that is named must have happened. */
const suspension = z.strictObject({
  from: z.literal('claimed-in-writing'),
  until: z.array(z.enum(['declined-in-writing', 'papers-returned'])).min(1),
});

/** What moves the end, who must be told of it before, and to when. */
const extension = z.strictObject({
  /** An inspection was asked for and could not be had in time, or could not be made, as for weather. */
  when: z.literal('inspection-unavailable'),
  /** Who must be told of it within the time. */
  told: z.literal('consignor'),
  /** The end is then so many hours after the result, and not before the end that it moves. */
  after: z.literal('inspected'),
  hours: z.int().min(0).max(240),
});

const deadlineRule = z
  .strictObject({
    id: deadlineId,
    /** Of a claim, or of goods that a receiver refuses, with or without a claim. */
    of: z.enum(['claim', 'refusal']),
    title: bothWords,
    /** What is to be done until then. */
    duty: bothWords,
    /** What starts it, in words. */
    starts: bothWords,
    source: z.string().min(1).max(200),
    /** What the rule's text rests on for us. */
    basis: z.enum(['read', 'secondary', 'common-practice']),
    /** Which edition was read, where that is not the current one. */
    edition: bothWords.optional(),
    binds: z.enum(['carrier', 'claimant', 'receiver']),
    /** `keep-until`: papers are kept so long; nothing is late when it is over. */
    nature: z.enum(['deadline', 'least-time', 'keep-until']),
    /** Under which terms it counts; none named: whatever governs. */
    governs: z.array(governing.exclude(['unknown'])).default([]),
    /** Only for such goods: those that the bill calls frozen, or asks to keep at −10 °C or colder, are frozen. */
    goods: z.enum(['fresh', 'frozen']).optional(),
    /** Of a refusal: only at stops whose time zone begins so, such as `America/`; none named: anywhere. */
    zones: z.array(z.string().min(1).max(60)).default([]),
    start: deadlineStart,
    /** It begins so long after the start. */
    delayed: span.optional(),
    span,
    /** One day more than the span, as a contract that says “two years and one day”. */
    oneDayMore: z.boolean().default(false),
    counting: counting.prefault({}),
    /** It comes round again after so long, as long as nothing ends it. */
    every: span.optional(),
    extended: extension.optional(),
    suspended: suspension.optional(),
    /** Left out: nothing that the record holds. */
    done: z.array(deadlineAction).default([]),
    /** What makes it needless. */
    ends: z.array(deadlineAction).default([]),
  })
  .refine((rule) => !rule.counting.except.includes('holidays') || rule.counting.holidays !== undefined, {
    error: 'name the list of holidays',
    path: ['counting', 'holidays'],
  });
export type DeadlineRule = z.infer<typeof deadlineRule>;

const weekday = z.enum(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']);
export type Weekday = z.infer<typeof weekday>;
const timeOfDay = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, { error: 'write it like 08:00' });
const closingTime = z
  .string()
  .regex(/^(([01]\d|2[0-3]):[0-5]\d|24:00)$/, { error: 'write it like 17:00, and midnight as 24:00' });

const workingTime = z
  .strictObject({
    days: z.array(weekday).min(1),
    /** Local time of the place. Where work goes past midnight, `to` is the earlier one: of the next day. */
    from: timeOfDay,
    to: closingTime,
    holidays: z.string().optional(),
    /** When somebody who may reject a load is there. */
    mayReject: z.enum(['in-hours', 'at-all-hours']).default('in-hours'),
    /** Nobody has said that these are the receiver's hours. */
    assumed: z.boolean(),
  })
  .refine((work) => work.from !== work.to, {
    error: 'the end is the beginning; work round the clock is from 00:00 to 24:00',
    path: ['to'],
  });
export type WorkingTime = z.infer<typeof workingTime>;

/** Holidays of a place: those of 5 U.S.C. 6103 by its rules, or days that are named. */
const holidayList = z.union([z.literal('us-federal'), z.array(calendarDay).max(2000)]);
export type HolidayList = z.infer<typeof holidayList>;

/** Clocks of a claim as data, in templates/claim-deadlines.yaml. */
export const claimDeadlines = z
  .strictObject({
    clocks: z.array(deadlineRule).min(1).max(100),
    work: workingTime,
    holidays: z.record(z.string().regex(/^[a-z][a-z0-9-]{1,60}$/), holidayList).default({}),
  })
  .superRefine((file, ctx) => {
    const issue = (message: string, path: (string | number)[]) =>
      ctx.addIssue({ code: 'custom', message, path });
    const seen = new Set<string>();
    const listed = (name: string | undefined, path: (string | number)[]) => {
      if (name !== undefined && !Object.hasOwn(file.holidays, name))
        issue(`there is no list of holidays "${name}"`, path);
    };
    file.clocks.forEach((rule, i) => {
      if (seen.has(rule.id)) issue(`clock "${rule.id}" stands twice`, ['clocks', i, 'id']);
      seen.add(rule.id);
      listed(rule.counting.holidays, ['clocks', i, 'counting', 'holidays']);
    });
    listed(file.work.holidays, ['work', 'holidays']);
  });
/**
 * The deadlines of claims and refusals as templates/claim-clocks.yaml states them, each with its source: see
 * docs/formats/rule-sets-and-templates.md.
 */
export type ClaimDeadlines = z.infer<typeof claimDeadlines>;
