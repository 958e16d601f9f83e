import { DateTime } from 'luxon';
import type { Day } from '../model/claim.js';
import type { Language } from '../model/delivery.js';
import { type CalendarDay, type KnownTime, type LocalTime, milliseconds, type Zone } from '../model/time.js';
import { zoneRules } from '../model/zone-rules.js';
import { zoneShown } from '../model/zoned-time.js';
import { LOCALES } from './locales.js';

/** How a language writes days and the time of day, as luxon's tokens. */
const PATTERNS: Readonly<Record<Language, { day: string; clock: string; hour: string }>> = {
  en: { day: 'ccc LLL d, yyyy', clock: 'h:mm a', hour: '' },
  es: { day: 'ccc d LLL yyyy', clock: 'H:mm', hour: " 'h'" },
};
const WITHOUT_YEAR: Readonly<Record<Language, string>> = { en: 'ccc LLL d', es: 'ccc d LLL' };

/** Uncertainty in seconds from which an hour would say more than is known. */
const ONLY_THE_DAY = 4 * 3600;

/** Writes days and times in a language: every time in its own place's zone, with the zone shown. */
export function timesFor(language: Language) {
  const locale = LOCALES[language];
  const { day, clock, hour } = PATTERNS[language];
  const at = (ms: number, zone: Zone) => DateTime.fromMillis(ms, { zone: zoneRules(zone), locale });
  const onPaper = (text: string) => DateTime.fromISO(text, { zone: 'utc', locale });
  const inFull = (local: DateTime) => `${local.toFormat(`${day}, ${clock}${hour}`)} ${zoneShown(local)}`;
  // Many places speak of one moment.
  const known = new Map<string, string>();

  return {
    /** `Tue Jul 14, 2026, 5:42 AM MST` */
    time: (ms: number, zone: Zone): string => {
      const key = `${ms} ${zone}`;
      const written = known.get(key) ?? inFull(at(ms, zone));
      known.set(key, written);
      return written;
    },
    /** A time as well as it is known: of some only the day is. */
    known: ({ instant, zone, uncertaintySeconds }: KnownTime): string =>
      uncertaintySeconds >= ONLY_THE_DAY
        ? at(milliseconds(instant), zone).toFormat(day)
        : inFull(at(milliseconds(instant), zone)),
    /** A wall-clock time without zone. */
    localTime: (local: LocalTime): string => onPaper(local).toFormat(`${day}, ${clock}${hour}`),
    /** `Tue Jul 14` */
    dayOf: (ms: number, zone: Zone): string => at(ms, zone).toFormat(WITHOUT_YEAR[language]),
    /** `5:42 AM` */
    clock: (ms: number, zone: Zone): string => at(ms, zone).toFormat(clock),
    /** `MST` */
    zoneName: (ms: number, zone: Zone): string => zoneShown(at(ms, zone)),
    /** A day of the calendar, `2026-07-14`, as `Tue Jul 14, 2026`. */
    day: (date: CalendarDay): string => onPaper(date).toFormat(day),
    /** `August 3, 2026`, as letters have it: a day of the calendar, the same in every zone. */
    letterDay: ({ date }: Day): string => onPaper(date).toLocaleString(DateTime.DATE_FULL),
  };
}
