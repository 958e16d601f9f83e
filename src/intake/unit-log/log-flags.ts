import type { Delivery } from '../../core/model/delivery.js';
import type { Flag } from '../../core/model/evidence.js';
import { toInstant } from '../../core/model/time.js';
import { plannedAt, STOP_WINDOW_HOURS } from '../place.js';
import type { ReadLog } from './read.js';
import { sameNumber } from './stated.js';

/** What a reader should know about a log: another trailer's, another time's, the hour that happened twice. */
export function logFlags(log: ReadLog, delivery: Delivery): Flag[] {
  return [...otherTrailer(log, delivery), ...otherTime(log, delivery), ...foldedRows(log)];
}

/** The log's own lines against delivery.yaml. What either leaves out is not held against the other. */
function otherTrailer({ stated }: ReadLog, { equipment }: Delivery): Flag[] {
  const trailer = equipment.trailer.number;
  const unit = equipment.unit?.number;
  const flags: Flag[] = [];
  if (stated?.trailer !== undefined && !sameNumber(stated.trailer, trailer))
    flags.push({
      is: 'other-trailer',
      detail: `the log is of trailer ${stated.trailer}, the delivery of ${trailer}`,
    });
  // People number the unit as its trailer too.
  if (
    stated?.unit !== undefined &&
    unit !== undefined &&
    !sameNumber(stated.unit, unit) &&
    !sameNumber(stated.unit, trailer)
  )
    flags.push({ is: 'other-trailer', detail: `the log is of unit ${stated.unit}, the delivery of ${unit}` });
  return flags;
}

/** Trucks run late: a day on either side of the planned times belongs to the delivery. */
function otherTime({ times }: ReadLog, { stops }: Delivery): Flag[] {
  const [from, to] = [times.at(0), times.at(-1)];
  const planned = stops.flatMap((stop) => plannedAt(stop) ?? []);
  if (from === undefined || to === undefined || planned.length === 0) return [];
  const room = STOP_WINDOW_HOURS * 3_600_000;
  if (to >= Math.min(...planned) - room && from <= Math.max(...planned) + room) return [];
  return [
    {
      is: 'outside-delivery-time',
      detail: `the log runs from ${toInstant(from).slice(0, 16)}Z to ${toInstant(to).slice(0, 16)}Z, more than ${STOP_WINDOW_HOURS} hours away from every planned stop`,
    },
  ];
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
