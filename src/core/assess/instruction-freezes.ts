import type { Line } from '../model/delivery.js';
import { celsius } from '../model/temperature.js';
import { findGoods } from '../reference/goods.js';
import { freezingPoints } from '../reference/limits.js';

/** Tolerance for rounding between °F and °C where a temperature is compared with a published one, K. */
const ROUNDED = 0.06;

/** Whether the bill instructs a temperature below every published freezing point of the goods. */
export function instructionFreezes(line: Line | undefined): boolean {
  const lowest = line === undefined ? undefined : freezingPoints(findGoods(line.goods)?.key ?? '').at(-1);
  if (line?.instruction === undefined || lowest === undefined) return false;
  return celsius(line.instruction.setPoint) < (lowest.low ?? lowest.high) - ROUNDED;
}
