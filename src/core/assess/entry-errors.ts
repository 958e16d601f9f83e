import type { SetPointDifference } from '../model/results.js';
import { fromCelsius, type TemperatureUnit } from '../model/temperature.js';

/** Distance to a whole degree that counts as whole, because displays round. */
const WHOLE = 0.06;
const UNITS: readonly TemperatureUnit[] = ['°F', '°C'];

/**
 * The typing error that can turn one set point into the other: right number in the wrong unit, two digits swapped
 * (36, 63), or one digit wrong (48 for 38). A single wrong digit counts only in the tens, because a different last
 * digit is as likely to be meant. Undefined when no error fits. Arguments in °C.
 */
export function guessEntryError(a: number, b: number): SetPointDifference['slip'] | undefined {
  const [aF, bF] = [fromCelsius(a, '°F'), fromCelsius(b, '°F')];
  if (near(aF, b) || near(a, bF)) return 'unit-mixed-up';
  for (const unit of UNITS) {
    const first = digits(fromCelsius(a, unit));
    const second = digits(fromCelsius(b, unit));
    if (first === undefined || second === undefined || first === second) continue;
    if (first === [...second].reverse().join('')) return 'swapped-digits';
    if (first[0] !== second[0] && first[1] === second[1]) return 'one-digit';
  }
  return undefined;
}

const near = (x: number, y: number) => Math.abs(x - y) <= WHOLE;

/** The two digits of a whole number from 10 to 99. */
function digits(value: number): string | undefined {
  const whole = Math.round(value);
  return near(value, whole) && whole >= 10 && whole <= 99 ? String(whole) : undefined;
}
