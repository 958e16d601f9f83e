import type { LogMapping } from '../../../core/model/evidence.js';
import {
  HIGHEST_CELSIUS,
  LOWEST_CELSIUS,
  type TemperatureUnit,
  toCelsius,
} from '../../../core/model/temperature.js';
import type { RowProblem } from '../../../core/model/unit-log.js';
import { isFaultMark } from './fault-marks.js';
import { readNumber, readWithUnit } from './numbers.js';

export const isPossible = (celsius: number): boolean =>
  celsius >= LOWEST_CELSIUS && celsius <= HIGHEST_CELSIUS;

export interface CellForm {
  unit: TemperatureUnit;
  decimal: LogMapping['decimal'];
}

/**
 * What a cell that is not a plain possible temperature gives: °C or NaN. An empty cell is no note; a fault mark,
 * a text, a formula and an impossible number are.
 */
export function oddValue(
  text: string,
  { unit, decimal }: CellForm,
  note: (is: RowProblem['is'], detail: string) => void,
): number {
  const shown = unwrapped(text.trim());
  if (shown === '') return Number.NaN;
  const bare = readNumber(shown, decimal);
  const stated = Number.isNaN(bare) ? readWithUnit(shown, decimal) : { value: bare, unit };
  const celsius = stated === undefined ? Number.NaN : toCelsius(stated.value, stated.unit);
  if (shown.length <= 40 && isFaultMark(shown, isPossible(celsius))) {
    note('sensor-fault', `marked ${shown}`);
    return Number.NaN;
  }
  if (isPossible(celsius)) return celsius;
  const start = shown.slice(0, 40);
  if (/[\0\ufffd]/.test(shown)) note('not-text', 'bytes that are not text');
  else if (stated !== undefined)
    note('impossible-value', `${start} is not a temperature that air or produce can have`);
  else if (start.startsWith('=')) note('impossible-value', `"${start}" is a formula, not a number`);
  else note('impossible-value', `"${start}" is not a number`);
  return Number.NaN;
}

/** `="36.0"` is how some programs keep a spreadsheet from rewriting a text. */
export function unwrapped(text: string): string {
  return text.startsWith('="') && text.endsWith('"') && text.length > 3 ? text.slice(2, -1).trim() : text;
}
