import { z } from 'zod';
import { deadlineId, deadlineTerm, governing, letterKind, letterRecord } from './claim.js';
import { calendarDay } from './time.js';

const bothWords = z.strictObject({ en: z.string().min(1).max(600), es: z.string().min(1).max(600) });

const span = z.strictObject({ count: deadlineTerm.shape.count, unit: deadlineTerm.shape.unit });
export type DeadlineSpan = z.infer<typeof span>;

/**
 * What starts a clock.
 * `claim-received`: the day the claim came in. `written-disallowance`: the first writing that declines the claim or
 * part of it. `delivery`: unloaded, or refused, at the last stop. `unloaded`: only that. `at-disposal`: notice of
 * arrival and the truck there, whichever came later. `not-recorded`: nothing that the record holds.
 */
const deadlineStart = z.enum([
  'claim-received',
  'written-disallowance',
  'delivery',
  'unloaded',
  'at-disposal',
  'not-recorded',
]);
export type DeadlineStart = z.infer<typeof deadlineStart>;

/**
 * What meets a clock, or makes it needless. `resolved`: paid, declined in writing, or a firm offer, as 49 CFR 370.9
 * has it, or closed. `settled`: closed, other than as declined. `claimed`: the claim came in; `claimed-in-writing`:
 * and not by word of mouth. `suit`: closed by suit. `refused`, `unloaded`: the event at the stop.
 */
const deadlineAction = z.union([
  z.enum(['resolved', 'settled', 'claimed', 'claimed-in-writing', 'suit', 'refused', 'unloaded']),
  z.strictObject({ letter: letterKind, way: letterRecord.shape.way }),
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
  /** Only hours at work count, as `work` in this file has them. */
  workingHours: z.boolean().default(false),
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
    basis: z.enum(['read', 'secondary', 'from-memory', 'common-practice']),
    binds: z.enum(['carrier', 'claimant', 'receiver']),
    nature: z.enum(['deadline', 'least-time']),
    /** Under which terms it counts; none named: whatever governs. */
    governs: z.array(governing.exclude(['unknown'])).default([]),
    /** Only for such goods; goods that the bill asks to keep at −10 °C or colder are frozen. */
    goods: z.enum(['fresh', 'frozen']).optional(),
    start: deadlineStart,
    span,
    counting: counting.prefault({}),
    /** It comes round again after so long, as long as nothing ends it. */
    every: span.optional(),
    /** An inspection that was asked for in time moves the end to its result and this much more. */
    inspectionExtendsBy: span.optional(),
    /** A claim in writing stops it until it is declined in writing. */
    stoppedByClaim: z.boolean().default(false),
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

const workingTime = z
  .strictObject({
    days: z.array(weekday).min(1),
    /** Local time of the place. */
    from: timeOfDay,
    to: timeOfDay,
    holidays: z.string().optional(),
    /** Nobody has said that these are the receiver's hours. */
    assumed: z.boolean(),
  })
  .refine((work) => work.from < work.to, { error: 'the end is not after the beginning', path: ['to'] });
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
 * docs/formats.md.
 */
export type ClaimDeadlines = z.infer<typeof claimDeadlines>;
