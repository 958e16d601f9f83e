import type { ClaimDeadlines, DeadlineRule, DeadlineSpan } from '../../model/claim-deadlines.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { ClaimDeadline, DeadlineTime } from '../../model/results.js';
import type { Milestones } from '../milestones.js';
import { addDays, daysBetween } from './calendar.js';
import { claimActionsOf, firstActionOf, isWritten } from './claim-actions.js';
import { byBeginning, dayOf, endOf, isInTime, isPast, onDay } from './deadline-milestones.js';
import { dueOf } from './due.js';
import { claimStart } from './starts.js';
import { appliesUnder, type ClaimEntries, contractTerm, entriesOf, termsOf } from './terms.js';

/** What deadlines are computed from. */
export interface DeadlineContext {
  rules: ClaimDeadlines;
  milestones: Milestones;
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
  const { governs } = termsOf(claim);
  return context.rules.clocks
    .filter((rule) => rule.of === 'claim' && appliesUnder(rule, governs))
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
  const { id, title, duty, source, basis, binds, nature, governs, starts } = rule;
  return { id, title, duty, source, basis, binds, nature, governs, starts };
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
  const from = claimStart(rule.start, claim, context.milestones);
  if (from === undefined) {
    const { done, state } = deadlineState(
      undefined,
      context.now,
      firstActionOf(rule.done, claim, context.milestones),
    );
    return [{ ...said, ...(done === undefined ? { state: 'not-started' } : { done, state }) }];
  }
  if (rule.every !== undefined)
    return turnsOf(rule, claim, context, from, set ?? rule.every).map((turn) => ({ ...said, from, ...turn }));
  const counted = dueOf(rule, set ?? rule.span, from, context.rules);
  const least =
    set === undefined || rule.nature !== 'least-time'
      ? undefined
      : dueOf(rule, rule.span, from, context.rules).due;
  const stopped = rule.stoppedByClaim ? stoppedBy(claim, counted.due) : {};
  const due = 'due' in stopped ? stopped.due : counted.due;
  return [
    {
      ...said,
      from,
      ...omitUndefined({
        due,
        counting: counted.counting,
        leastDue: least === undefined || endOf(least) <= endOf(counted.due) ? undefined : least,
        stopped: stopped.stopped,
      }),
      ...deadlineState(
        due,
        context.now,
        firstActionOf(rule.done, claim, context.milestones),
        firstActionOf(rule.ends, claim, context.milestones),
      ),
    },
  ];
}

/**
 * A deadline that a written claim suspends (CMR, article 32(2)) is extended by the days of suspension: from the day
 * the claim was received to the day of its first written declination. While suspended it has no due time.
 */
function stoppedBy(
  claim: ClaimEntries,
  due: DeadlineTime,
): { due?: DeadlineTime | undefined; stopped?: NonNullable<ClaimDeadline['stopped']> } {
  const from = claim.received.received;
  if (!isWritten(claim) || from.date > dayOf(due).date) return {};
  const until = entriesOf(claim, 'declined')
    .filter(({ inWriting, on }) => inWriting && on.date >= from.date)
    .map(({ on }) => on)
    .sort((a, b) => a.date.localeCompare(b.date))[0];
  if (until === undefined) return { due: undefined, stopped: { from } };
  const day = dayOf(due);
  const date = addDays(day.date, daysBetween(from.date, until.date));
  return { due: onDay({ ...day, date }, []), stopped: { from, until } };
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
