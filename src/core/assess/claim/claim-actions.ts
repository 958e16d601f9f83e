import type { DeadlineAction } from '../../model/claim-deadlines.js';
import { assertNever } from '../../model/error.js';
import { minorUnits } from '../../model/money.js';
import type { DeadlineTime } from '../../model/results.js';
import type { ClaimEntry, ClaimEntryOf } from '../../model/state.js';
import { lastUnloading, type Milestones } from '../milestones.js';
import { byBeginning, eventTime, onDay } from './deadline-milestones.js';
import { type ClaimEntries, entriesOf } from './terms.js';

type DatedEntry = Extract<ClaimEntry, { on: unknown }>;

const timeOfEntry = ({ on, evidence, seq }: DatedEntry): DeadlineTime => onDay(on, evidence, seq);

/** Whether the claim was made in writing: unless an entry says that it was made by word of mouth. */
export const isWritten = ({ received }: ClaimEntries): boolean => received.contents.form !== 'spoken';

/**
 * Whether a declination tells the claimant in writing that the claim, or part of it, is disallowed. One of the
 * carrier's insurer must give a reason too, and say that it acts on behalf of the carrier (49 U.S.C. 14706(e)(2)(B)).
 */
export function disallows({ inWriting, by, onBehalf, reasons, items }: ClaimEntryOf<'declined'>): boolean {
  if (!inWriting) return false;
  return by !== 'insurer' || (onBehalf === true && reasons.length + (items?.length ?? 0) > 0);
}

/** Written disallowances of a claim, earliest first. */
export const disallowances = (claim: Pick<ClaimEntries, 'entries'>): ClaimEntryOf<'declined'>[] =>
  entriesOf(claim, 'declined')
    .filter(disallows)
    .sort((a, b) => a.on.date.localeCompare(b.on.date) || a.seq - b.seq);

/**
 * When the carrier had paid, declined in writing or made a firm offer, as 49 CFR 370.9 requires, or the claim was
 * closed. Partial payments and partial declinations add up and must reach the claimed amount. Where no amount was
 * claimed any payment counts; money of another currency is not added. Without `offers` only payment and declination
 * count, as in 370.5(a).
 */
export function resolution(claim: ClaimEntries, offers = true): DeadlineTime | undefined {
  const { amount } = claim.received;
  let met = 0;
  const add = (part: typeof amount): boolean => {
    if (part === undefined || amount === undefined) return amount === undefined;
    if (part.currency === amount.currency) met += minorUnits(part);
    return met >= minorUnits(amount);
  };
  const resolves = (entry: ClaimEntry): boolean => {
    switch (entry.is) {
      case 'closed':
        return true;
      case 'offer':
        return offers && entry.by !== 'claimant' && entry.firm;
      case 'payment':
        return (entry.by === 'carrier' || entry.by === 'insurer') && add(entry.amount);
      case 'declined':
        return disallows(entry) && (entry.part === undefined || (amount !== undefined && add(entry.part)));
      default:
        return false;
    }
  };
  const found = claim.entries
    .filter((entry): entry is DatedEntry => 'on' in entry)
    .sort((a, b) => a.on.date.localeCompare(b.on.date) || a.seq - b.seq)
    .find(resolves);
  return found === undefined ? undefined : timeOfEntry(found);
}

/** Every action of one kind in the record, in the order of time. Events are those at the stop. */
export function claimActionsOf(
  doing: DeadlineAction,
  claim: ClaimEntries | undefined,
  milestones: Milestones,
  stop = lastUnloading(milestones.stops)?.id,
): DeadlineTime[] {
  const closed = (how: (how: string) => boolean) =>
    claim === undefined
      ? []
      : entriesOf(claim, 'closed')
          .filter((entry) => how(entry.how))
          .map(timeOfEntry);
  if (typeof doing !== 'string') {
    if (claim === undefined) return [];
    return entriesOf(claim, 'letter')
      .filter(({ letter, way }) => letter === doing.letter && way === doing.way)
      .map((entry) => timeOfEntry(doing.counts === 'sent' ? { ...entry, on: entry.sent ?? entry.on } : entry))
      .sort(byBeginning);
  }
  switch (doing) {
    case 'resolved':
    case 'paid-or-declined': {
      const found = claim === undefined ? undefined : resolution(claim, doing === 'resolved');
      return found === undefined ? [] : [found];
    }
    case 'settled':
      return closed((how) => how !== 'declined' && how !== 'suit');
    case 'suit':
      return closed((how) => how === 'suit');
    case 'claimed':
    case 'claimed-in-writing': {
      if (claim === undefined || (doing === 'claimed-in-writing' && !isWritten(claim))) return [];
      const { received, sent, evidence, seq } = claim.received;
      return [onDay(doing === 'claimed-in-writing' ? (sent ?? received) : received, evidence, seq)];
    }
    // Outcomes and notices answer these: see refusal.ts and deadlines.ts.
    case 'rejection-noticed':
    case 'exception-noted':
      return [];
    case 'refused':
    case 'diverted':
    case 'unloaded': {
      const zone = milestones.stops.find(({ id }) => id === stop)?.zone;
      if (zone === undefined) return [];
      return milestones.events
        .filter(
          ({ event, stop: at }) =>
            at === stop && (event === doing || (doing === 'unloaded' && event === 'accepted')),
        )
        .map((event) => eventTime(event, zone));
    }
    default:
      return assertNever(doing);
  }
}

/** The first action of several kinds. */
export function firstActionOf(
  doings: readonly DeadlineAction[],
  claim: ClaimEntries | undefined,
  milestones: Milestones,
  stop?: string,
): DeadlineTime | undefined {
  return doings
    .flatMap((doing) => claimActionsOf(doing, claim, milestones, stop))
    .sort(byBeginning)
    .at(0);
}
