import { z } from 'zod';
import { WallClock } from './wall-clock.js';
import { type Zone, zone } from './zone.js';

export { type Zone, zone };

/** An instant in UTC, always written `2026-07-14T12:42:08.370Z` so that text order is time order. */
export type Instant = string & z.$brand<'Instant'>;
/** A wall-clock time without zone: `2026-07-14T05:42:08` or with a fraction. */
export type LocalTime = string & z.$brand<'LocalTime'>;
/** A day of the calendar, `2026-07-14`; text order is day order. */
export type CalendarDay = string & z.$brand<'CalendarDay'>;

const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/;
const LOCAL = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,6})?)?$/;

export const instant = z
  .string()
  .regex(INSTANT)
  .refine((text) => !Number.isNaN(Date.parse(text)), { error: 'no such date' })
  .transform((text) => text as Instant);

/** Whether a text of the form `LOCAL` names a day and a time of it; 24:00 is the end of a day (ISO 8601). */
function isOnTheCalendar(text: string): boolean {
  const endOfDay = /T24:00(?::00(?:\.0+)?)?$/.test(text);
  const written = endOfDay ? `${text.slice(0, 10)}T00:00` : text;
  const read = new Date(`${written}Z`);
  // Date takes February 30 for a day of March.
  return !Number.isNaN(read.getTime()) && read.toISOString().startsWith(written.slice(0, 16));
}

export const localTime = z
  .string()
  .regex(LOCAL, { error: 'not a local time; write it like 2026-07-14T04:00' })
  .refine(isOnTheCalendar, { error: 'no such date or time' })
  .transform((text) => text as LocalTime);

export const calendarDay = z.iso
  .date({ error: 'not a day of the calendar; write it like 2026-07-14' })
  .transform((text) => text as CalendarDay);

/** One comparison of a clock with true time. */
export interface ClockPoint {
  /** True time, milliseconds UTC. */
  at: number;
  /** Seconds to add to the clock's reading. */
  addSeconds: number;
  uncertaintySeconds: number;
  /** Ledger entry. */
  seq: number;
}

/** The basis of a known instant, best first. */
export const timeBasis = z.enum([
  'gps',
  'offset',
  'place-zone',
  'log-zone',
  'typed',
  /** A message of a chat that was exported: when it was sent, by the clock of a phone. */
  'chat',
  /** What a device wrote into a film or recording. */
  'container',
  /** A day in a file's name, proposed until a person says so. */
  'file-name',
]);
export type TimeBasis = z.infer<typeof timeBasis>;

/** A clock error that was corrected: shown wherever the time is shown. */
const clockCorrection = z.strictObject({
  /** Seconds that were added to what the clock said. */
  addedSeconds: z.number(),
  /** Ledger entry of the comparison that measured it. */
  comparedAt: z.int().nonnegative(),
});

export const eventTime = z.discriminatedUnion('is', [
  z.strictObject({
    is: z.literal('known'),
    instant,
    zone,
    basis: timeBasis,
    uncertaintySeconds: z.number().nonnegative(),
    /** The wall-clock time stated by the source, before any correction. */
    stated: z.string().optional(),
    correction: clockCorrection.optional(),
  }),
  z.strictObject({ is: z.literal('local'), local: localTime, why: z.string() }),
  z.strictObject({ is: z.literal('none'), why: z.string() }),
]);
/**
 * When something happened, and how certain that is. Local time of unknown zone is a case of its own: it is never
 * silently taken for UTC.
 */
export type EventTime = z.infer<typeof eventTime>;
export type KnownTime = Extract<EventTime, { is: 'known' }>;

/** Milliseconds since 1970 to the one written form of an instant. */
export function toInstant(milliseconds: number): Instant {
  return new Date(milliseconds).toISOString() as Instant;
}

export function milliseconds(at: Instant): number {
  return Date.parse(at);
}

/** Milliseconds of a time that is known; undefined for the other cases. */
export function knownMilliseconds(time: EventTime): number | undefined {
  return time.is === 'known' ? milliseconds(time.instant) : undefined;
}

export type LocalReading =
  | { is: 'one'; instant: Instant }
  /** The clock was put back: this wall time is ambiguous. */
  | { is: 'twice'; earlier: Instant; later: Instant }
  /**
   * The clock was put forward: this wall time does not exist; `shifted` is its meaning on a clock not yet put
   * forward.
   */
  | { is: 'never'; shifted: Instant };

/** The instants that a wall-clock time can mean, the earlier first. */
export function meaningsOf(reading: LocalReading): [Instant, ...Instant[]] {
  switch (reading.is) {
    case 'one':
      return [reading.instant];
    case 'twice':
      return [reading.earlier, reading.later];
    case 'never':
      return [reading.shifted];
  }
}

const clocks = new Map<Zone, WallClock>();

/** The meaning of a wall-clock time in a zone, with ambiguous and nonexistent times named. */
export function readLocal(local: LocalTime, inZone: Zone): LocalReading {
  const clock = clocks.get(inZone) ?? new WallClock(inZone);
  clocks.set(inZone, clock);
  const reading = clock.read(Date.parse(`${local}Z`));
  switch (reading.is) {
    case 'one':
      return { is: 'one', instant: toInstant(reading.at) };
    case 'twice':
      return { is: 'twice', earlier: toInstant(reading.earlier), later: toInstant(reading.later) };
    case 'never':
      return { is: 'never', shifted: toInstant(reading.shifted) };
  }
}
