import type { Acceleration } from '../model/acceleration.js';
import type { DisplaySettings } from '../model/delivery.js';
import { fromCelsius, fromKelvin, type TemperatureUnit } from '../model/temperature.js';
import type { EventTime } from '../model/time.js';
import { numbersFor } from './numbers.js';
import { NBSP } from './spaces.js';
import { timesFor } from './times.js';

/** Words for times that are not known; they come from the language's labels. */
export interface TimeWords {
  zoneUnknown: string;
  notKnown: string;
}

export type Format = ReturnType<typeof formatFor>;

/**
 * Writes quantities as one reader expects them, on pages, in letters and on a terminal: the chosen unit of temperature
 * first, the other beside it; every time in its own place's zone, with the zone shown.
 */
export function formatFor(
  show: Pick<DisplaySettings, 'temperature' | 'language'>,
  words: TimeWords = { zoneUnknown: 'zone unknown', notKnown: '' },
) {
  const numbers = numbersFor(show.language);
  const times = timesFor(show.language);
  const { number, signedNumber } = numbers;
  const unit = show.temperature;
  const other: TemperatureUnit = unit === '°F' ? '°C' : '°F';
  const both = (of: (one: TemperatureUnit) => number, suffix = '', write = number): string =>
    `${write(of(unit), 1)}${NBSP}${unit}${suffix} (${write(of(other), 1)}${NBSP}${other}${suffix})`;

  return {
    ...numbers,
    ...times,
    unit,
    other,
    /** °C in, both units out. */
    temperature: (celsius: number) => both((one) => fromCelsius(celsius, one)),
    /** One unit alone, for tight places; the reader's first if none is given. */
    short: (celsius: number, one = unit) => `${number(fromCelsius(celsius, one), 1)}${NBSP}${one}`,
    /** Kelvin in, both units out. */
    difference: (kelvin: number) => both((one) => fromKelvin(kelvin, one)),
    /** Kelvin in, both units out, with its sign. */
    signed: (kelvin: number) => both((one) => fromKelvin(kelvin, one), '', signedNumber),
    /** Kelvin in, one unit out, with its sign. */
    signedShort: (kelvin: number) => `${signedNumber(fromKelvin(kelvin, unit), 1)}${NBSP}${unit}`,
    degreeHours: (kelvinHours: number) => both((one) => fromKelvin(kelvinHours, one), '·h'),
    /** Metres in; inches or feet first for readers of °F, the other system beside it. */
    length: (metres: number) => lengths(metres, unit === '°F', number),
    /** Kilograms in; pounds first for readers of °F, the other beside it. */
    weight: (kilograms: number) => {
      const pounds = `${number(kilograms / 0.453_592_37)}${NBSP}lb`;
      const metric = `${number(kilograms)}${NBSP}kg`;
      return unit === '°F' ? `${pounds} (${metric})` : `${metric} (${pounds})`;
    },
    /** As it was stated. */
    acceleration: ({ value, unit: stated }: Acceleration) =>
      `${number(value, decimalsOf(value))}${NBSP}${stated}`,
    /** Metres along the ground in: `0.2 mi (350 m)`; without decimals from a mile or ten kilometres on. */
    distance: (metres: number) => {
      const miles = `${number(metres / 1609.344, metres < 16_093 ? 1 : 0)}${NBSP}mi`;
      const metric =
        metres < 1000
          ? `${number(metres)}${NBSP}m`
          : `${number(metres / 1000, metres < 10_000 ? 1 : 0)}${NBSP}km`;
      return unit === '°F' ? `${miles} (${metric})` : `${metric} (${miles})`;
    },
    /** Time of evidence, in words where it is unknown. */
    eventTime: (time: EventTime): string => {
      switch (time.is) {
        case 'known':
          return times.known(time);
        case 'local':
          return `${times.localTime(time.local)} (${words.zoneUnknown})`;
        case 'none':
          return words.notKnown;
      }
    },
  };
}

/** Decimals that a stated figure has, two at most. */
const decimalsOf = (value: number): number => Math.min(2, (String(value).split('.')[1] ?? '').length);

/** `18.5 in (47 cm)`; from three metres on `52.0 ft (15.85 m)`. */
function lengths(
  metres: number,
  inchesFirst: boolean,
  number: (value: number, decimals?: number) => string,
): string {
  const long = Math.abs(metres) >= 3;
  const imperial = long ? `${number(metres / 0.3048, 1)}${NBSP}ft` : `${number(metres / 0.0254, 1)}${NBSP}in`;
  const metric = long ? `${number(metres, 2)}${NBSP}m` : `${number(metres * 100)}${NBSP}cm`;
  return inchesFirst ? `${imperial} (${metric})` : `${metric} (${imperial})`;
}
