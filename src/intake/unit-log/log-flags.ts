import type { Delivery } from '../../core/model/delivery.js';
import { logDeliveryFlags } from '../../core/model/delivery-flags.js';
import type { Flag } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { ReadLog } from './read.js';

/** What a reader should know about a log: another trailer's, another time's, the hour that happened twice. */
export function logFlags(log: ReadLog, delivery: Delivery): Flag[] {
  const [from, to] = [log.times.at(0), log.times.at(-1)];
  const { stated } = log;
  const elsewhere =
    from === undefined || to === undefined
      ? []
      : logDeliveryFlags({ from, to, ...omitUndefined({ stated }) }, delivery);
  return [...elsewhere, ...foldedRows(log)];
}

function foldedRows({ counts, zone }: ReadLog): Flag[] {
  const rows = counts['time-in-fold'] ?? 0;
  if (rows === 0) return [];
  return [
    {
      is: 'time-happened-twice',
      detail: `the clock was put back in ${zone} during the log; ${rows} ${rows === 1 ? 'row is' : 'rows are'} told apart by the order of the rows`,
    },
  ];
}
