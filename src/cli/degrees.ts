import { fromCelsius, fromKelvin, type TemperatureUnit } from '../core/model/temperature.js';

/** Quantities in the reader's unit first and the other beside it. */
function both(show: (unit: TemperatureUnit) => number, first: TemperatureUnit, suffix = ''): string {
  const other = otherUnit(first);
  const written = (unit: TemperatureUnit) => `${fixed(show(unit))} ${unit}${suffix}`;
  return `${written(first)} (${written(other)})`;
}

export const otherUnit = (unit: TemperatureUnit): TemperatureUnit => (unit === '°F' ? '°C' : '°F');

function fixed(value: number): string {
  const text = value.toFixed(1);
  return text === '-0.0' ? '0.0' : text;
}

export const formatTemperature = (celsius: number, unit: TemperatureUnit) =>
  both((one) => fromCelsius(celsius, one), unit);
/** In one unit only. */
export const formatInUnit = (celsius: number, unit: TemperatureUnit) =>
  `${fixed(fromCelsius(celsius, unit))} ${unit}`;
export const formatDifference = (kelvin: number, unit: TemperatureUnit) =>
  both((one) => fromKelvin(kelvin, one), unit);
export const formatDegreeHours = (kelvinHours: number, unit: TemperatureUnit) =>
  both((one) => fromKelvin(kelvinHours, one), unit, '·h');
/** Minutes below an hour, otherwise hours and minutes. */
export const formatDuration = (seconds: number) =>
  seconds < 3600 ? `${(seconds / 60).toFixed(0)} min` : `${(seconds / 3600).toFixed(1)} h`;
export const idInWords = (id: string) => id.replaceAll('-', ' ');
