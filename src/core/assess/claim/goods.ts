import type { DeadlineRule } from '../../model/claim-deadlines.js';
import type { Line } from '../../model/delivery.js';
import { celsius } from '../../model/temperature.js';

/** Words of a bill for produce in frozen form (7 CFR 46.2(v)), in the languages of the trade's papers. */
const FROZEN = /\b(frozen|iqf|congelad[oa]s?|surgel[ée]e?s?)\b/i;
/**
 * Goods instructed at or below this, °C, count as frozen too where no word of the bill says so. Convention of this
 * project: 46.2(v) asks for frozen form.
 */
const FROZEN_AT_MOST = -10;

const isFrozen = ({ goods, name, instruction }: Line): boolean =>
  FROZEN.test(`${goods.replaceAll('-', ' ')} ${name ?? ''}`) ||
  (instruction !== undefined && celsius(instruction.setPoint) <= FROZEN_AT_MOST);

/** Whether a rule is for any of these goods. */
export function suits(goods: DeadlineRule['goods'], lines: readonly Line[]): boolean {
  return goods === undefined || lines.some((line) => isFrozen(line) === (goods === 'frozen'));
}
