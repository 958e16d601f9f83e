import type { Delivery } from '../../core/model/delivery.js';
import type { EventTime } from '../../core/model/time.js';
import { onlyZone } from '../place.js';
import { TO_THE_MINUTE, TO_THE_SECOND, timeInZone, timeWithOffset } from '../time/event-time.js';
import { type DateOrder, readWall, toLocalTime } from '../time/wall-time.js';
import { type RowNote, UnreadableRow } from './columns.js';

/**
 * A row's time: with its own offset, else in the zone of its stop, else in the only zone of the delivery, else
 * local of unknown zone. A row without time is recorded without one.
 */
export function readRowTime(
  text: string | undefined,
  delivery: Delivery,
  stopId: string | undefined,
  order: DateOrder | undefined,
): { time: EventTime; notes: RowNote[] } {
  if (text === undefined) return { time: { is: 'none', why: 'the table states no time' }, notes: [] };
  const fix =
    'write it like 2026-07-14 04:10, with an offset such as -07:00 where the stop does not say the zone';
  const wall = readWall(text, order ?? 'iso');
  if (wall === undefined && order === undefined && readWall(text, 'month-day-year') !== undefined)
    throw new UnreadableRow(`${text} can be read month first or day first`, 'time', fix);
  if (wall === undefined)
    throw new UnreadableRow(`"${text.slice(0, 60)}" is not a date and time`, 'time', fix);
  const uncertainty = wall.wall % 60_000 === 0 ? TO_THE_MINUTE : TO_THE_SECOND;
  const zone = delivery.stops.find((s) => s.id === stopId)?.zone ?? onlyZone(delivery);
  if (wall.offset !== undefined)
    return {
      time: timeWithOffset({ wall: wall.wall, offset: wall.offset }, zone, uncertainty, text, 'typed'),
      notes: [],
    };
  if (zone === undefined) {
    const why = 'no stop is named and the stops lie in different zones';
    return {
      time: { is: 'local', local: toLocalTime(wall.wall), why },
      notes: [{ message: `the zone of ${text} is not known: ${why}`, column: 'stop', fix: 'name the stop' }],
    };
  }
  const placed = timeInZone(wall.wall, zone, 'typed', uncertainty, text);
  return {
    time: placed.time,
    notes: placed.flags.map((flag) => ({
      message: flag.detail,
      column: 'time',
      fix: 'write the time with its offset, such as -06:00',
    })),
  };
}
