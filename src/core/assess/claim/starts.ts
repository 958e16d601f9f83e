import type { DeadlineStart } from '../../model/claim-deadlines.js';
import { assertNever } from '../../model/error.js';
import type { MilestoneName } from '../../model/milestone.js';
import type { DeadlineTime } from '../../model/results.js';
import type { Milestones, StopSide } from '../milestones.js';
import { dayAt } from './calendar.js';
import { disallowances } from './claim-actions.js';
import { atTime, onDay } from './deadline-milestones.js';
import type { ClaimEntries } from './terms.js';

/** Events that show the truck at the stop, so that the load could be inspected. */
const THERE: readonly MilestoneName[] = ['arrived', 'doors-opened', 'unloading-began', 'inspected'];

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

/** Goods that were taken are off the truck. */
const TAKEN: readonly MilestoneName[] = ['unloaded', 'accepted'];

/** The last such event on one side. */
function lastOf(
  milestones: Milestones,
  names: readonly MilestoneName[],
  on: StopSide = 'unload',
): Extract<DeadlineTime, { is: 'time' }> | undefined {
  const found = milestones.events.findLast(({ event, side }) => side === on && names.includes(event));
  const place = milestones.stops.find(({ id }) => id === found?.stop);
  return found === undefined || place === undefined
    ? undefined
    : { is: 'time', at: found.at, zone: place.zone, evidence: [found.evidence] };
}

const dayOfTime = (time: ReturnType<typeof lastOf>): DeadlineTime | undefined =>
  time && onDay(dayAt(time.at, time.zone), time.evidence);

const lastDayOf = (milestones: Milestones, names: readonly MilestoneName[]): DeadlineTime | undefined =>
  dayOfTime(lastOf(milestones, names));

/** The day of the last departure from a place of loading, or of doors closed there. */
const shipped = (milestones: Milestones): DeadlineTime | undefined =>
  dayOfTime(lastOf(milestones, ['departed'], 'load') ?? lastOf(milestones, ['doors-closed'], 'load'));

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
      const [first] = disallowances(claim);
      return first === undefined ? undefined : onDay(first.on, first.evidence, first.seq);
    }
    case 'delivery':
      return lastDayOf(milestones, TAKEN) ?? lastDayOf(milestones, ['refused']);
    case 'delivery-time':
      return lastOf(milestones, TAKEN) ?? lastOf(milestones, ['refused']);
    case 'joint-check':
      return lastDayOf(milestones, ['jointly-checked']);
    case 'shipped':
      return shipped(milestones);
    case 'taken-over':
      return lastOf(milestones, TAKEN) === undefined ? shipped(milestones) : undefined;
    case 'unloaded':
      return lastDayOf(milestones, TAKEN);
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
