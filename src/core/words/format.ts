import { DateTime } from 'luxon';
import type { DisplaySettings } from '../model/delivery.js';
import { shownDecimals, unitsPerOne } from '../model/money.js';
import { fromCelsius, fromKelvin, type TemperatureUnit } from '../model/temperature.js';
import { type EventTime, type LocalTime, milliseconds, type Zone } from '../model/time.js';
import { zoneRules } from '../model/zone-rules.js';

/** How one language writes numbers and times; the words around them are templates. */
interface Manner {
  locale: string;
  day: string;
  clock: string;
  /** Separates value and percent sign. */
  percent: string;
}
const MANNERS: Record<DisplaySettings['language'], Manner> = {
  en: { locale: 'en-US', day: 'ccc d LLL yyyy', clock: 'h:mm a', percent: '%' },
  es: { locale: 'es-US', day: 'ccc d LLL yyyy', clock: 'H:mm', percent: '\u00a0%' },
};

/** Words for times that are not known; they come from the language's labels. */
export interface TimeWords {
  zoneUnknown: string;
  notKnown: string;
}

export type Format = ReturnType<typeof formatFor>;

/**
 * Writes quantities as the reader of one dossier expects them: the chosen unit of temperature first,
 * the other beside it; every time in its own place's zone, with the zone shown.
 */
export function formatFor(show: Pick<DisplaySettings, 'temperature' | 'language'>, words: TimeWords) {
  const manner = MANNERS[show.language];
  const other: TemperatureUnit = show.temperature === '°F' ? '°C' : '°F';
  const at = (ms: number, zone: Zone) =>
    DateTime.fromMillis(ms, { zone: zoneRules(zone), locale: manner.locale });
  // Cached: formatting a time is slow, because the zone's name is looked up, and many places print the same
  // instant.
  const moments = new Map<string, string>();
  const moment = (ms: number, zone: Zone): string => {
    const key = `${ms} ${zone}`;
    const written = moments.get(key) ?? at(ms, zone).toFormat(`${manner.day}, ${manner.clock} ZZZZ`);
    moments.set(key, written);
    return written;
  };
  const numbers = new Map<number, Intl.NumberFormat>();
  const numbersOf = (decimals: number): Intl.NumberFormat => {
    const made =
      numbers.get(decimals) ??
      new Intl.NumberFormat(manner.locale, {
        minimumFractionDigits: decimals,
        maximumFractionDigits: decimals,
      });
    numbers.set(decimals, made);
    return made;
  };

  /** A number with a fixed count of decimals, with a true minus sign and never a negative zero. */
  const number = (value: number, decimals = 0): string => {
    const rounded = Number(value.toFixed(decimals));
    const text = numbersOf(decimals).format(Object.is(rounded, -0) ? 0 : rounded);
    return text.replace('-', '−');
  };
  const both = (first: number, second: number, suffix = '', write = number): string =>
    `${write(first, 1)}\u00a0${show.temperature}${suffix} (${write(second, 1)}\u00a0${other}${suffix})`;
  /** A plus sign before what is more than nothing in print. */
  const plus = (value: number, decimals = 0): string => {
    const text = number(value, decimals);
    return Number(value.toFixed(decimals)) > 0 ? `+${text}` : text;
  };

  /** Minor units of a currency in, `12,480.50` out. */
  const amount = (minor: number, code: string): string =>
    number(minor / unitsPerOne(code), shownDecimals(minor, code));

  /** A wall-clock time without zone. */
  const localTime = (local: LocalTime): string =>
    DateTime.fromISO(local, { zone: 'utc', locale: manner.locale }).toFormat(
      `${manner.day}, ${manner.clock}`,
    );

  return {
    localTime,
    unit: show.temperature,
    other,
    number,
    /** °C in, both units out. */
    temperature: (celsius: number) =>
      both(fromCelsius(celsius, show.temperature), fromCelsius(celsius, other)),
    /** Only the reader's first unit, for tight places whose heading names both. */
    short: (celsius: number) =>
      `${number(fromCelsius(celsius, show.temperature), 1)}\u00a0${show.temperature}`,
    /** Kelvin in, both units out. */
    difference: (kelvin: number) => both(fromKelvin(kelvin, show.temperature), fromKelvin(kelvin, other)),
    /** Kelvin in, both units out, with its sign. */
    signed: (kelvin: number) =>
      both(fromKelvin(kelvin, show.temperature), fromKelvin(kelvin, other), '', plus),
    degreeHours: (kelvinHours: number) =>
      both(fromKelvin(kelvinHours, show.temperature), fromKelvin(kelvinHours, other), '·h'),
    /** 0 to 1 in; a partial share is never rounded to 100 or 0. */
    share: (of: number) => {
      const tenths = Math.round(of * 1000);
      const shown = of <= 0 ? 0 : of >= 1 ? tenths : Math.min(Math.max(tenths, 1), 999);
      return `${number(shown / 10, shown % 10 === 0 ? 0 : 1)}${manner.percent}`;
    },
    /** Metres in; inches or feet first for readers of °F, the other system beside it. */
    length: (metres: number) => lengths(metres, show.temperature === '°F', number),
    /** Metres along the ground in: `0.2 mi (350 m)`; without decimals from a mile or ten kilometres on. */
    distance: (metres: number) => {
      const miles = `${number(metres / 1609.344, metres < 16_093 ? 1 : 0)}\u00a0mi`;
      const metric =
        metres < 1000
          ? `${number(metres)}\u00a0m`
          : `${number(metres / 1000, metres < 10_000 ? 1 : 0)}\u00a0km`;
      return show.temperature === '°F' ? `${miles} (${metric})` : `${metric} (${miles})`;
    },
    duration: (seconds: number) => duration(seconds, number),
    bytes: (count: number) =>
      count < 1000
        ? `${number(count)} B`
        : count < 1e6
          ? `${number(count / 1000, 1)} kB`
          : `${number(count / 1e6, 1)} MB`,
    /** `Tue 14 Jul 2026, 5:42 AM MST` */
    time: moment,
    /** `Tue 14 Jul` */
    dayOf: (ms: number, zone: Zone) => at(ms, zone).toFormat('ccc d LLL'),
    /** `5:42 AM` */
    clock: (ms: number, zone: Zone) => at(ms, zone).toFormat(manner.clock),
    /** `MST` */
    zoneName: (ms: number, zone: Zone) => at(ms, zone).toFormat('ZZZZ'),
    /** A day of the calendar, `2026-07-14`, as `Tue 14 Jul 2026`. */
    day: (date: string) =>
      DateTime.fromISO(date, { zone: 'utc', locale: manner.locale }).toFormat(manner.day),
    amount,
    /** Minor units of a currency in, `12,480.50 USD` out. */
    money: (minor: number, code: string) => `${amount(minor, code)}\u00a0${code}`,
    /** Time of evidence, in words where it is unknown. */
    eventTime: (time: EventTime): string => {
      switch (time.is) {
        case 'known':
          return moment(milliseconds(time.instant), time.zone);
        case 'local':
          return `${localTime(time.local)} (${words.zoneUnknown})`;
        case 'none':
          return words.notKnown;
      }
    },
  };
}

/** `53 h 20 min`, `14 min`, `40 s`; unsigned. */
function duration(seconds: number, number: (value: number) => string): string {
  const whole = Math.round(Math.abs(seconds));
  if (whole < 60) return `${whole}\u00a0s`;
  const minutes = Math.round(whole / 60);
  const hours = Math.floor(minutes / 60);
  if (hours === 0) return `${minutes}\u00a0min`;
  const rest = minutes % 60;
  return rest === 0
    ? `${number(hours)}\u00a0h`
    : `${number(hours)}\u00a0h\u00a0${String(rest).padStart(2, '0')}\u00a0min`;
}

/** `18.5 in (47 cm)`; from three metres on `52.0 ft (15.85 m)`. */
function lengths(
  metres: number,
  inchesFirst: boolean,
  number: (value: number, decimals?: number) => string,
): string {
  const long = Math.abs(metres) >= 3;
  const imperial = long ? `${number(metres / 0.3048, 1)}\u00a0ft` : `${number(metres / 0.0254, 1)}\u00a0in`;
  const metric = long ? `${number(metres, 2)}\u00a0m` : `${number(metres * 100)}\u00a0cm`;
  return inchesFirst ? `${imperial} (${metric})` : `${metric} (${imperial})`;
}
