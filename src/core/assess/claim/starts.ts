import type { DeadlineStart } from '../../model/claim-deadlines.js';
import { assertNever } from '../../model/error.js';
import type { EventName } from '../../model/evidence.js';
import type { DeadlineTime } from '../../model/results.js';
import type { Milestones } from '../milestones.js';
import { dayAt } from './calendar.js';
import { atTime, onDay } from './deadline-milestones.js';
import { type ClaimEntries, entriesOf } from './terms.js';

/** Events that show the truck at the stop, so that the load could be inspected. */
const THERE: readonly EventName[] = ['arrived', 'doors-opened', 'unloading-began', 'inspected'];

/**
 * When the goods were at the receiver's disposal at a stop: notice given and truck present, whichever was later. A
 * truck without a recorded notice is its own notice; a notice without a truck starts nothing.
 */
export function timeAtDisposal(milestones: Milestones, stop: string): DeadlineTime | undefined {
  const place = milestones.stops.find(({ id }) => id === stop);
  const here = milestones.events.filter((event) => event.stop === stop);
  const there = here.find(({ event }) => THERE.includes(event));
  if (place === undefined || there === undefined) return undefined;
  const notice = here.find(({ event }) => event === 'notice-of-arrival');
  const later = notice !== undefined && notice.at > there.at ? notice : there;
  const evidence = notice === undefined ? [there.evidence] : [notice.evidence, there.evidence];
  return atTime(later.at, place.zone, evidence);
}

/** The day of the last such event at any unloading stop. */
function lastDayOf(milestones: Milestones, names: readonly EventName[]): DeadlineTime | undefined {
  const found = milestones.events.findLast(({ event, side }) => side === 'unload' && names.includes(event));
  const place = milestones.stops.find(({ id }) => id === found?.stop);
  if (found === undefined || place === undefined) return undefined;
  return onDay(dayAt(found.at, place.zone), [found.evidence]);
}

/**
 * When a deadline of a claim starts; undefined when that has not happened or is not recorded. With several
 * unloading stops the last counts. An offer never starts what a written disallowance starts (49 U.S.C.
 * 14706(e)(2)(A)).
 */
export function claimStart(
  start: DeadlineStart,
  claim: ClaimEntries,
  milestones: Milestones,
): DeadlineTime | undefined {
  switch (start) {
    case 'claim-received':
      return onDay(claim.received.received, claim.received.evidence, claim.received.seq);
    case 'written-disallowance': {
      const [first] = entriesOf(claim, 'declined')
        .filter(({ inWriting }) => inWriting)
        .sort((a, b) => a.on.date.localeCompare(b.on.date));
      return first === undefined ? undefined : onDay(first.on, first.evidence, first.seq);
    }
    case 'delivery':
      return lastDayOf(milestones, ['unloaded']) ?? lastDayOf(milestones, ['refused']);
    case 'unloaded':
      return lastDayOf(milestones, ['unloaded']);
    case 'at-disposal': {
      const stop = milestones.stops.findLast(({ does }) => does === 'unload');
      return stop === undefined ? undefined : timeAtDisposal(milestones, stop.id);
    }
    case 'not-recorded':
      return undefined;
    default:
      return assertNever(start);
  }
}
