import type { Day } from '../../model/claim.js';
import type { DeadlineRule } from '../../model/claim-deadlines.js';
import type { ClaimDeadline, DeadlineRemark, DeadlineTime } from '../../model/results.js';
import { addDays, daysBetween } from './calendar.js';
import { disallowances, isWritten } from './claim-actions.js';
import { dayOf, onDay } from './deadline-milestones.js';
import { type ClaimEntries, entriesOf } from './terms.js';

interface Suspension {
  /** Absent while it stands still, and where nothing made it stand still. */
  due?: DeadlineTime;
  stopped?: NonNullable<ClaimDeadline['stopped']>;
  remarks: DeadlineRemark[];
}

const later = (a: Day, b: Day): Day => (a.date > b.date ? a : b);

/**
 * How a claim in writing suspends a time (CMR, article 32(2)): from the day it came until it was declined in writing and
 * its documents were returned, by as many days. Of a return that no entry tells the day is not known: the end is then
 * the earliest possible one. A return of documents that no entry says came with the claim is not counted.
 */
export function suspensionOf(
  { suspended }: Pick<DeadlineRule, 'suspended'>,
  claim: ClaimEntries,
  due: DeadlineTime,
): Suspension {
  const from = claim.received.received;
  if (suspended === undefined || !isWritten(claim) || from.date > dayOf(due).date) return { remarks: [] };
  const came = claim.received.evidence.length > 0;
  const returns = entriesOf(claim, 'papers-returned').filter(({ on }) => on.date >= from.date);
  const never = came ? [] : returns.map(remarkOf('papers-returned-never-came'));
  const admitted = entriesOf(claim, 'admitted').map((entry) => ({
    ...remarkOf('part-admitted')(entry),
    amount: entry.part,
  }));
  const declined = disallowances(claim).find(({ on }) => on.date >= from.date);
  if (suspended.until.includes('declined-in-writing') && declined === undefined)
    return { stopped: { from }, remarks: [...never, ...admitted] };
  const returned = came
    ? returns.map(({ on }) => on).sort((a, b) => a.date.localeCompare(b.date))[0]
    : undefined;
  const needsReturn = suspended.until.includes('papers-returned');
  const ends = [declined?.on, needsReturn ? returned : undefined].filter((one) => one !== undefined);
  if (ends.length === 0) return { stopped: { from }, remarks: [...never, ...admitted] };
  const until = ends.reduce(later);
  const notBefore = needsReturn && returned === undefined;
  const day = dayOf(due);
  return {
    due: onDay({ ...day, date: addDays(day.date, daysBetween(from.date, until.date)) }, []),
    stopped: { from, until, ...(notBefore ? { notBefore } : {}) },
    remarks: [
      ...never,
      ...(notBefore && declined !== undefined ? [remarkOf('papers-not-returned')(declined)] : []),
      ...admitted,
      ...(declined?.part === undefined
        ? []
        : [{ ...remarkOf('part-declined')(declined), amount: declined.part }]),
    ],
  };
}

const remarkOf =
  (is: DeadlineRemark['is']) =>
  ({ evidence, seq }: Pick<DeadlineRemark, 'evidence' | 'seq'>): DeadlineRemark => ({
    is,
    evidence,
    ...(seq === undefined ? {} : { seq }),
  });
