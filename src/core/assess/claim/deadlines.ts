import type { ClaimDeadlines, DeadlineRule, DeadlineSpan } from '../../model/claim-deadlines.js';
import type { Line } from '../../model/delivery.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { ClaimDeadline, DeadlineRemark, DeadlineTime } from '../../model/results.js';
import type { Milestones } from '../milestones.js';
import { claimActionsOf, disallows, firstActionOf } from './claim-actions.js';
import { byBeginning, dayOf, endOf, isInTime, isPast } from './deadline-milestones.js';
import { dueOf } from './due.js';
import { suits } from './goods.js';
import { claimStart } from './starts.js';
import { suspensionOf } from './suspension.js';
import { appliesUnder, type ClaimEntries, contractTerm, entriesOf, termsOf } from './terms.js';

/** What deadlines are computed from. */
export interface DeadlineContext {
  rules: ClaimDeadlines;
  milestones: Milestones;
  lines: readonly Line[];
  /** Exceptions that the consignee made at the dock, earliest first. */
  exceptions?: readonly DeadlineTime[];
  /** Milliseconds since 1970 UTC. */
  now: number;
}

/** Turns of a recurring deadline that are listed: some eight years of every 60 days. */
const MOST_TURNS = 50;

/**
 * The deadlines of one claim under the governing terms; under each candidate while those are unknown. Earliest due
 * first, then those without a due time, in the order of the rules.
 */
export function claimDeadlinesOf(claim: ClaimEntries, context: DeadlineContext): ClaimDeadline[] {
  const terms = termsOf(claim);
  return context.rules.clocks
    .filter((rule) => rule.of === 'claim' && appliesUnder(rule, terms) && suits(rule.goods, context.lines))
    .flatMap((rule) => deadlinesOfRule(rule, claim, context))
    .sort(byEnd);
}

function byEnd(a: ClaimDeadline, b: ClaimDeadline): number {
  if (a.due === undefined || b.due === undefined)
    return Number(a.due === undefined) - Number(b.due === undefined);
  return endOf(a.due) - endOf(b.due);
}

/** Fields that every deadline takes from its rule. */
export function ruleFields(rule: DeadlineRule): Omit<ClaimDeadline, 'state'> {
  const { id, title, duty, source, basis, edition, binds, nature, governs, starts } = rule;
  return {
    ...{ id, title, duty, source, basis, binds, nature, governs, starts },
    ...omitUndefined({ edition }),
  };
}

/** The state of a deadline at an instant, from the action that meets it and the event that makes it needless. */
export function deadlineState(
  due: DeadlineTime | undefined,
  now: number,
  done?: DeadlineTime,
  ended?: DeadlineTime,
): Pick<ClaimDeadline, 'state' | 'done'> {
  const first = [done, ended].filter((one) => one !== undefined).sort(byBeginning)[0];
  if (first === undefined) return { state: due !== undefined && isPast(due, now) ? 'overdue' : 'running' };
  if (due !== undefined && !isInTime(first, due)) return { state: 'done-late', done: first };
  return first === done ? { state: 'done', done } : { state: 'no-longer-needed' };
}

function deadlinesOfRule(rule: DeadlineRule, claim: ClaimEntries, context: DeadlineContext): ClaimDeadline[] {
  const term = contractTerm(claim, rule.id);
  const set: DeadlineSpan | undefined =
    term === undefined ? undefined : { count: term.count, unit: term.unit };
  const said = {
    ...ruleFields(rule),
    ...omitUndefined({
      setBy:
        term === undefined
          ? undefined
          : {
              seq: term.seq,
              evidence: term.evidence,
              ...omitUndefined({ note: term.note }),
            },
    }),
  };
  const from = startOf(rule, claim, context);
  if (from === undefined) {
    const { done, state } = deadlineState(
      undefined,
      context.now,
      firstActionOf(rule.done, claim, context.milestones),
    );
    const remarks = incomplete(rule, claim);
    // Without a joint check nothing is to be done after it.
    if (rule.start === 'joint-check') return [{ ...said, state: 'not-started' }];
    return [
      {
        ...said,
        ...(done === undefined ? { state: 'not-started' } : { done, state }),
        ...omitUndefined({ remarks: remarks.length === 0 ? undefined : remarks }),
      },
    ];
  }
  if (rule.every !== undefined)
    return turnsOf(rule, claim, context, from, set ?? rule.every).map((turn) => ({ ...said, from, ...turn }));
  const counted = dueOf(rule, set ?? rule.span, from, context.rules);
  const least =
    set === undefined || rule.nature !== 'least-time'
      ? undefined
      : dueOf(rule, rule.span, from, context.rules).due;
  const held = suspensionOf(rule, claim, counted.due);
  const due = held.stopped === undefined ? counted.due : held.due;
  const done = firstDone(rule, claim, context);
  const judged = judge(rule, due, context.now, done, firstActionOf(rule.ends, claim, context.milestones));
  const unsure = due === undefined ? [] : unsureOf(rule, claim, due, judged.done);
  // An end that is only the earliest possible one shows nothing by being past.
  const open = held.stopped?.notBefore === true && judged.state === 'overdue';
  const remarks = [...held.remarks, ...unsure, ...incomplete(rule, claim)];
  return [
    {
      ...said,
      from,
      ...omitUndefined({
        due,
        counting: counted.counting,
        leastDue: least === undefined || endOf(least) <= endOf(counted.due) ? undefined : least,
        stopped: held.stopped,
      }),
      ...judged,
      ...(unsure.length > 0 ? { state: 'not-shown' as const } : open ? { state: 'running' as const } : {}),
      ...omitUndefined({ remarks: remarks.length === 0 ? undefined : remarks }),
    },
  ];
}

/** The first action that meets a deadline. */
function firstDone(
  { done }: DeadlineRule,
  claim: ClaimEntries,
  { milestones, exceptions = [] }: DeadlineContext,
): DeadlineTime | undefined {
  const noted = done.includes('exception-noted') ? exceptions : [];
  return [firstActionOf(done, claim, milestones), ...noted]
    .filter((one) => one !== undefined)
    .sort(byBeginning)[0];
}

/** The start of a deadline, or the day so long after it. */
function startOf(
  rule: DeadlineRule,
  claim: ClaimEntries,
  { milestones, rules }: DeadlineContext,
): DeadlineTime | undefined {
  const start = claimStart(rule.start, claim, milestones);
  if (start === undefined || rule.delayed === undefined) return start;
  const { due } = dueOf({ counting: rule.counting }, rule.delayed, start, rules);
  return { ...due, evidence: start.evidence };
}

/** Nothing is late when papers need no longer be kept. */
function judge(
  { nature }: DeadlineRule,
  due: DeadlineTime | undefined,
  now: number,
  done: DeadlineTime | undefined,
  ended: DeadlineTime | undefined,
): Pick<ClaimDeadline, 'state' | 'done'> {
  if (nature === 'keep-until')
    return { state: due !== undefined && isPast(due, now) ? 'no-longer-needed' : 'running' };
  return deadlineState(due, now, done, ended);
}

/**
 * Why it is not shown whether an action was in time: a letter that counts by the day on which it was sent, came after
 * the last day, and nobody said when it was sent; or only the day is known where the hour decides.
 */
function unsureOf(
  rule: DeadlineRule,
  claim: ClaimEntries,
  due: DeadlineTime,
  done: DeadlineTime | undefined,
): DeadlineRemark[] {
  const entry = claim.entries.find(({ seq }) => seq === done?.seq);
  if (done === undefined || entry === undefined) return [];
  const remark = (is: DeadlineRemark['is']) => [{ is, evidence: entry.evidence, seq: entry.seq }];
  if (due.is === 'time' && done.is === 'day' && done.day.date === dayOf(due).date)
    return remark('hour-unknown');
  const bySending =
    entry.is === 'received'
      ? rule.done.includes('claimed-in-writing')
      : entry.is === 'letter' && rule.done.some((one) => typeof one !== 'string' && one.counts === 'sent');
  return bySending && 'sent' in entry === false && !isInTime(done, due) ? remark('sent-day-unknown') : [];
}

/** An insurer's writing that starts no time to sue, because it lacks what 49 U.S.C. 14706(e)(2)(B) asks. */
function incomplete({ start }: DeadlineRule, claim: ClaimEntries): DeadlineRemark[] {
  if (start !== 'written-disallowance') return [];
  return entriesOf(claim, 'declined')
    .filter((one) => one.inWriting && !disallows(one))
    .map(({ evidence, seq }) => ({ is: 'insurer-notice-incomplete', evidence, seq }));
}

/**
 * The turns of a recurring deadline: each past one and the next, until an event ends the series. An action counts
 * once, for the earliest open turn. The event that ends a missed turn closes it late.
 */
function turnsOf(
  rule: DeadlineRule,
  claim: ClaimEntries,
  { rules, milestones, now }: DeadlineContext,
  from: DeadlineTime,
  every: DeadlineSpan,
): (Pick<ClaimDeadline, 'state' | 'done'> & { turn: number; due: DeadlineTime })[] {
  const doings = rule.done.flatMap((doing) => claimActionsOf(doing, claim, milestones)).sort(byBeginning);
  const ended = firstActionOf(rule.ends, claim, milestones);
  const turns: (Pick<ClaimDeadline, 'state' | 'done'> & { turn: number; due: DeadlineTime })[] = [];
  let { due } = dueOf(rule, rule.span, from, rules);
  let before = from;
  for (let turn = 1; turn <= MOST_TURNS; turn += 1) {
    const last = before;
    const index = doings.findIndex((one) => turn === 1 || !isInTime(one, last));
    const done = index < 0 ? undefined : doings.splice(index, 1)[0];
    turns.push({ turn, due, ...deadlineState(due, now, done, ended) });
    if ((ended !== undefined && isInTime(ended, due)) || !isPast(due, now)) break;
    before = due;
    due = dueOf(rule, every, due, rules).due;
    if (ended !== undefined && isInTime(ended, before)) break;
    if (endOf(due) <= endOf(before)) break;
  }
  return turns;
}
