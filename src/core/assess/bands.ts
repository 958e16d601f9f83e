import type { Line } from '../model/delivery.js';
import type { Band } from '../model/results.js';
import type { RuleSet } from '../model/rule-set.js';
import { celsius, kelvin, type TemperatureDifference } from '../model/temperature.js';

/** Tolerance when neither bill nor rule set states one: 2 °F, common practice, no source. */
const USUAL_TOLERANCE: TemperatureDifference = { difference: 2, unit: '°F' };

/** Tolerance for rounding between °F and °C, kelvin: a reading on the limit is in range. */
export const ROUNDING = 1e-11;

/** What the bill allows for one line: its instruction ± its tolerance, else the rule set's. Undefined without instruction. */
export function bandOf(line: Line, ruleSet: RuleSet): Band | undefined {
  if (line.instruction === undefined) return undefined;
  const { setPoint, tolerance } = line.instruction;
  const middle = celsius(setPoint);
  const width = kelvin(tolerance ?? ruleSet.tolerance ?? USUAL_TOLERANCE);
  return {
    low: middle - width,
    high: middle + width,
    setPoint: middle,
    tolerance: width,
    lines: [line.id],
    toleranceFrom: tolerance === undefined ? 'rule-set' : 'bill',
  };
}

/** The bands of all lines; lines with the same limits share one. */
export function bandsOf(lines: readonly Line[], ruleSet: RuleSet): Band[] {
  const bands: Band[] = [];
  for (const line of lines) {
    const band = bandOf(line, ruleSet);
    if (band === undefined) continue;
    const same = bands.find(
      (one) =>
        Math.abs(one.low - band.low) < ROUNDING &&
        Math.abs(one.high - band.high) < ROUNDING &&
        one.toleranceFrom === band.toleranceFrom,
    );
    if (same === undefined) bands.push(band);
    else same.lines.push(line.id);
  }
  return bands;
}

/**
 * The range that the trailer's air is compared with: what suits every line at once. With one instruction it is the
 * instruction's own range. With several it is their overlap, with its middle as the set point; undefined when they
 * do not overlap, because no air temperature suits all lines.
 */
export function commonBand(bands: readonly Band[]): Band | undefined {
  const [first, ...rest] = bands;
  if (first === undefined) return undefined;
  if (rest.length === 0) return first;
  const low = Math.max(...bands.map((band) => band.low));
  const high = Math.min(...bands.map((band) => band.high));
  if (high < low) return undefined;
  return {
    low,
    high,
    setPoint: (low + high) / 2,
    tolerance: (high - low) / 2,
    lines: bands.flatMap((band) => band.lines),
    toleranceFrom: bands.some((band) => band.toleranceFrom === 'rule-set') ? 'rule-set' : 'bill',
  };
}
