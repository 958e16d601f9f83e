import type { ClaimClocks, ClockRule, Span } from '../../model/claim-deadlines.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { ClaimClock, ClockMoment } from '../../model/results.js';
import type { Moments } from '../milestones.js';
import { daysBetween, plusDays } from './calendar.js';
import { doingsOf, firstOf, isWritten } from './claim-actions.js';
import { dayOf, earlier, endOf, inTime, isOver, onDay } from './deadline-milestones.js';
import { dueOf } from './due.js';
import { claimStart } from './starts.js';
import { type ClaimEntries, countsUnder, entriesOf, setTerm, termsOf } from './terms.js';

/** What clocks are held against. */
export interface ClockContext {
  rules: ClaimClocks;
  moments: Moments;
  /** Milliseconds since 1970 UTC. */
  now: number;
}

/** More turns of a recurring clock than this are not told apart: some eight years of every 60 days. */
const MOST_TURNS = 50;

/**
 * The clocks of one claim under what governs; of each candidate while that is not known. Earliest end first, then
 * those without an end, in the order of the rules.
 */
export function claimClocksOf(claim: ClaimEntries, context: ClockContext): ClaimClock[] {
  const { governs } = termsOf(claim);
  return context.rules.clocks
    .filter((rule) => rule.of === 'claim' && countsUnder(rule, governs))
    .flatMap((rule) => clocksOf(rule, claim, context))
    .sort(byEnd);
}

function byEnd(a: ClaimClock, b: ClaimClock): number {
  if (a.due === undefined || b.due === undefined)
    return Number(a.due === undefined) - Number(b.due === undefined);
  return endOf(a.due) - endOf(b.due);
}

/** What every clock of a rule says of itself. */
export function saidBy(rule: ClockRule): Omit<ClaimClock, 'state'> {
  const { id, title, duty, source, basis, binds, nature, governs, starts } = rule;
  return { id, title, duty, source, basis, binds, nature, governs, starts };
}

/** How a clock stands, by what was done and what made it needless, at a moment. */
export function stateOf(
  due: ClockMoment | undefined,
  now: number,
  done?: ClockMoment,
  ended?: ClockMoment,
): Pick<ClaimClock, 'state' | 'done'> {
  const first = [done, ended].filter((one) => one !== undefined).sort(earlier)[0];
  if (first === undefined) return { state: due !== undefined && isOver(due, now) ? 'overdue' : 'running' };
  if (due !== undefined && !inTime(first, due)) return { state: 'done-late', done: first };
  return first === done ? { state: 'done', done } : { state: 'no-longer-needed' };
}

function clocksOf(rule: ClockRule, claim: ClaimEntries, context: ClockContext): ClaimClock[] {
  const term = setTerm(claim, rule.id);
  const set: Span | undefined = term === undefined ? undefined : { count: term.count, unit: term.unit };
  const said = {
    ...saidBy(rule),
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
  const from = claimStart(rule.start, claim, context.moments);
  if (from === undefined) {
    const { done, state } = stateOf(undefined, context.now, firstOf(rule.done, claim, context.moments));
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
      ...stateOf(
        due,
        context.now,
        firstOf(rule.done, claim, context.moments),
        firstOf(rule.ends, claim, context.moments),
      ),
    },
  ];
}

/**
 * A clock that a claim in writing stops (CMR, article 32(2)) gets as many days more as it stood still: from the day
 * the claim came in to the day it was first declined in writing. It has no end while it stands still.
 */
function stoppedBy(
  claim: ClaimEntries,
  due: ClockMoment,
): { due?: ClockMoment | undefined; stopped?: NonNullable<ClaimClock['stopped']> } {
  const from = claim.received.received;
  if (!isWritten(claim) || from.date > dayOf(due).date) return {};
  const until = entriesOf(claim, 'declined')
    .filter(({ inWriting, on }) => inWriting && on.date >= from.date)
    .map(({ on }) => on)
    .sort((a, b) => a.date.localeCompare(b.date))[0];
  if (until === undefined) return { due: undefined, stopped: { from } };
  const day = dayOf(due);
  const date = plusDays(day.date, daysBetween(from.date, until.date));
  return { due: onDay({ ...day, date }, []), stopped: { from, until } };
}

/**
 * The turns of a clock that comes round again: each whose end has come, and the next, until something ends it. Each
 * doing counts once, for the earliest turn still open. What ends a turn that was missed closes it, late.
 */
function turnsOf(
  rule: ClockRule,
  claim: ClaimEntries,
  { rules, moments, now }: ClockContext,
  from: ClockMoment,
  every: Span,
): (Pick<ClaimClock, 'state' | 'done'> & { turn: number; due: ClockMoment })[] {
  const doings = rule.done.flatMap((doing) => doingsOf(doing, claim, moments)).sort(earlier);
  const ended = firstOf(rule.ends, claim, moments);
  const turns: (Pick<ClaimClock, 'state' | 'done'> & { turn: number; due: ClockMoment })[] = [];
  let { due } = dueOf(rule, rule.span, from, rules);
  let before = from;
  for (let turn = 1; turn <= MOST_TURNS; turn += 1) {
    const last = before;
    const index = doings.findIndex((one) => turn === 1 || !inTime(one, last));
    const done = index < 0 ? undefined : doings.splice(index, 1)[0];
    turns.push({ turn, due, ...stateOf(due, now, done, ended) });
    if ((ended !== undefined && inTime(ended, due)) || !isOver(due, now)) break;
    before = due;
    due = dueOf(rule, every, due, rules).due;
    if (ended !== undefined && inTime(ended, before)) break;
    if (endOf(due) <= endOf(before)) break;
  }
  return turns;
}
