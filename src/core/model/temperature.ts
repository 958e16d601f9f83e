import { z } from 'zod';

/** An absolute temperature in degrees Celsius. */
export type Celsius = number & z.$brand<'Celsius'>;
/** A difference of temperatures in kelvin: 2 °F of tolerance is 1.11 K, never −16.7 °C. */
export type Kelvin = number & z.$brand<'Kelvin'>;

export const temperatureUnit = z.enum(['°F', '°C']);
/** Fahrenheit or Celsius. */
export type TemperatureUnit = z.infer<typeof temperatureUnit>;

/**
 * Range of a reading of air or produce; a mistyped number outside is rejected. Limits: the range of EN 12830:2018
 * for temperature recorders, −80 °C to +85 °C.
 */
export const LOWEST_CELSIUS = -80;
export const HIGHEST_CELSIUS = 85;

const plausible = (t: { value: number; unit: TemperatureUnit }) => {
  const c = toCelsius(t.value, t.unit);
  return c >= LOWEST_CELSIUS && c <= HIGHEST_CELSIUS;
};

/** A temperature as it was read: value and unit are kept, `celsius()` computes. */
export const temperature = z
  .strictObject({ value: z.number(), unit: temperatureUnit })
  .refine(plausible, {
    error: 'not a temperature that air or produce can have (−80 to 85 °C, −112 to 185 °F)',
  })
  .meta({ id: 'Temperature', description: 'An absolute temperature as read, with its unit.' });
/** An absolute temperature as read, with its unit. */
export type Temperature = z.infer<typeof temperature>;

/** A difference of temperatures as stated; its field has another name, so that the two can't be confused. */
const temperatureDifference = z
  .strictObject({ difference: z.number(), unit: temperatureUnit })
  .meta({ id: 'TemperatureDifference', description: 'A difference of two temperatures, with its unit.' });
/** A difference of two temperatures, with its unit. */
export type TemperatureDifference = z.infer<typeof temperatureDifference>;

/** °C = (°F − 32) × 5/9. */
export function toCelsius(value: number, unit: TemperatureUnit): Celsius {
  return (unit === '°C' ? value : ((value - 32) * 5) / 9) as Celsius;
}

/** The temperature in °C. */
export function celsius(t: Temperature): Celsius {
  return toCelsius(t.value, t.unit);
}

/** The difference in kelvin; 1 °F of difference is 5/9 K. */
export function kelvin(d: TemperatureDifference): Kelvin {
  return (d.unit === '°C' ? d.difference : (d.difference * 5) / 9) as Kelvin;
}

/** °F = °C × 9/5 + 32. */
export function fromCelsius(c: number, unit: TemperatureUnit): number {
  return unit === '°C' ? c : (c * 9) / 5 + 32;
}

/** A difference in kelvin, expressed in degrees of the unit. */
export function fromKelvin(k: number, unit: TemperatureUnit): number {
  return unit === '°C' ? k : (k * 9) / 5;
}

const WRITTEN = /^\s*([+\-−]?\d+(?:[.,]\d+)?)\s*(?:°|º|deg(?:rees)?)?\s*([CFcf])(?:ahrenheit|elsius)?\s*$/;

function readWritten(text: string): { value: number; unit: TemperatureUnit } | undefined {
  const match = WRITTEN.exec(text);
  if (match === null) return undefined;
  const [, digits = '', letter = ''] = match;
  const value = Number(digits.replace('−', '-').replace(',', '.'));
  return { value, unit: letter.toUpperCase() === 'F' ? '°F' : '°C' };
}

/** Reads `34.2F`, `1.2 °C`, `36 °F`; undefined when it is not a temperature with its unit. */
export function parseTemperature(text: string): Temperature | undefined {
  const read = readWritten(text);
  return read === undefined || !plausible(read) ? undefined : read;
}

/** Reads `2 °F` or `1.5C` as a difference. */
function parseTemperatureDifference(text: string): TemperatureDifference | undefined {
  const read = readWritten(text);
  return read === undefined ? undefined : { difference: read.value, unit: read.unit };
}

/** A bare number, as YAML reads `36`, lacks its unit: the message says so, not that it is no text. */
const withItsUnit = (what: string, like: string) =>
  z.string({
    error: ({ input }) =>
      typeof input === 'number' ? `${input} is not a ${what}; write it like ${like}` : undefined,
  });

/** A temperature written by a person in a settings file: `36 °F`. */
export const writtenTemperature = withItsUnit('temperature', '36 °F or 2.2 °C')
  .meta({ description: 'A temperature with its unit, such as "36 °F" or "2.2 °C".', examples: ['36 °F'] })
  .transform((text, ctx) => {
    const read = readWritten(text);
    if (read === undefined) {
      ctx.addIssue({
        code: 'custom',
        message: `"${text}" is not a temperature; write it like 36 °F or 2.2 °C`,
      });
      return z.NEVER;
    }
    if (!plausible(read)) {
      ctx.addIssue({
        code: 'custom',
        message: `${text} is not a temperature that air or produce can have (−80 to 85 °C, −112 to 185 °F)`,
      });
      return z.NEVER;
    }
    return read satisfies Temperature as Temperature;
  });

/** A tolerance written by a person in a settings file: `2 °F`. */
export const writtenTemperatureDifference = withItsUnit('tolerance', '2 °F or 1 °C')
  .meta({ description: 'A difference of temperatures with its unit, such as "2 °F".', examples: ['2 °F'] })
  .transform((text, ctx) => {
    const read = parseTemperatureDifference(text);
    if (read === undefined || read.difference < 0) {
      ctx.addIssue({ code: 'custom', message: `"${text}" is not a tolerance; write it like 2 °F or 1 °C` });
      return z.NEVER;
    }
    return read;
  });
