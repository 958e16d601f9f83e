import type { Delivery, Stop } from './delivery.js';
import type { Flag } from './evidence.js';
import { plannedTime } from './planned-time.js';
import { toInstant } from './time.js';
import type { StatedNumbers } from './unit-log.js';

/** Hours around the planned time in which evidence of a stop is expected: produce docks run late. */
export const STOP_WINDOW_HOURS = 24;
const HOUR = 3_600_000;

/** Cache: the planned time is needed once per photo, and parsing a local time is slow. */
const plannedTimes = new WeakMap<Stop, number | undefined>();

/** Planned time of a stop, milliseconds UTC. */
export function plannedAt(stop: Stop): number | undefined {
  if (!plannedTimes.has(stop)) plannedTimes.set(stop, plannedTime(stop));
  return plannedTimes.get(stop);
}

/** What of a log is held against the delivery: its first and last time (ms UTC) and the numbers in its own lines. */
export interface LogFacts {
  from: number;
  to: number;
  stated?: StatedNumbers;
}

/** Flags of a log of another trailer, or of another time, than the delivery as it is known now. */
export function logDeliveryFlags(log: LogFacts, delivery: Delivery): Flag[] {
  return [...otherTrailer(log, delivery), ...otherTime(log, delivery)];
}

/** What either leaves out is not held against the other. */
function otherTrailer({ stated }: LogFacts, { equipment }: Delivery): Flag[] {
  const trailer = equipment.trailer.number;
  const unit = equipment.unit?.number;
  const flags: Flag[] = [];
  if (stated?.trailer !== undefined && !sameNumber(stated.trailer, trailer))
    flags.push({
      is: 'other-trailer',
      detail: `the log is of trailer ${stated.trailer}, the delivery of ${trailer}`,
    });
  // People number the unit as its trailer too.
  if (
    stated?.unit !== undefined &&
    unit !== undefined &&
    !sameNumber(stated.unit, unit) &&
    !sameNumber(stated.unit, trailer)
  )
    flags.push({ is: 'other-trailer', detail: `the log is of unit ${stated.unit}, the delivery of ${unit}` });
  return flags;
}

/** Trucks run late: a day on either side of the planned times belongs to the delivery. */
function otherTime({ from, to }: LogFacts, { stops }: Delivery): Flag[] {
  const planned = stops.flatMap((stop) => plannedAt(stop) ?? []);
  if (planned.length === 0) return [];
  const room = STOP_WINDOW_HOURS * HOUR;
  if (to >= Math.min(...planned) - room && from <= Math.max(...planned) + room) return [];
  return [
    {
      is: 'outside-delivery-time',
      detail: `the log runs from ${toInstant(from).slice(0, 16)}Z to ${toInstant(to).slice(0, 16)}Z, more than ${STOP_WINDOW_HOURS} hours away from every planned stop`,
    },
  ];
}

/** The flag of evidence whose time (ms UTC) is far from the planned time of its stop. */
export function stopWindowFlags(stop: Stop, at: number | undefined): Flag[] {
  const planned = plannedAt(stop);
  if (at === undefined || planned === undefined) return [];
  const hours = (at - planned) / HOUR;
  if (Math.abs(hours) <= STOP_WINDOW_HOURS) return [];
  return [
    {
      is: 'outside-stop-window',
      detail: `${Math.abs(hours).toFixed(0)} hours ${hours < 0 ? 'before' : 'after'} the planned time of ${stop.id}`,
    },
  ];
}

/** Whether two written numbers can be of one thing: case, blanks, dashes, leading zeros and a leading word aside. */
export function sameNumber(a: string, b: string): boolean {
  const plain = (text: string): string => text.toUpperCase().replaceAll(/[^\p{L}\p{N}]/gu, '');
  const digits = (text: string): string => (/\d+$/.exec(plain(text))?.[0] ?? '').replace(/^0+/, '');
  const [one, other] = [plain(a), plain(b)];
  if (one === other) return true;
  const letters = (text: string): string => text.replace(/\d+$/, '');
  const ends = digits(a) === digits(b) && digits(a) !== '';
  return ends && (letters(one) === letters(other) || letters(one) === '' || letters(other) === '');
}
