import { readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { Delivery } from '../core/model/delivery.js';
import { type EventTime, milliseconds, toInstant } from '../core/model/time.js';
import { type ChatMessage, parseChat } from './chat/messages.js';
import type { Hint } from './draft.js';
import type { FoundFile } from './file-scan.js';
import { headOf } from './table/bytes.js';
import { decode } from './table/encoding.js';
import { usualOrder } from './time/country-order.js';
import { DateOrderEvidence } from './time/date-order.js';
import { TO_THE_MINUTE, TO_THE_SECOND, timeInZone } from './time/event-time.js';
import { type DateOrder, readWall } from './time/wall-time.js';

/** Chats of years have this many bytes; a longer text is none. */
const MOST_BYTES = 20 * 1024 * 1024;

/** What the chats among files say of the files beside them, by `keyOf` of the described file. */
export async function readChats(
  files: readonly FoundFile[],
  delivery: Delivery,
  keyOf: (file: FoundFile) => string,
): Promise<ReadonlyMap<string, Hint>> {
  const hints = new Map<string, Hint>();
  for (const file of files) {
    if (file.path === '' || file.bytes > MOST_BYTES || !/\.txt$/i.test(file.name)) continue;
    const head = await headOf(file.path, 4096).catch(() => undefined);
    if (head === undefined || parseChat(decode(head)).length === 0) continue;
    const messages = parseChat(decode(await readFile(file.path)));
    const order = orderOf(messages, delivery);
    for (const { attached, stamp, sender } of messages) {
      if (attached === undefined) continue;
      const key = join(dirname(keyOf(file)), basename(attached));
      if (hints.has(key)) continue;
      const time = order === undefined ? undefined : sentTime(stamp, order, delivery);
      hints.set(key, {
        caption: `Sent in a chat by ${sender}, ${stamp} by the clock of the phone that exported it (${basename(file.name)})`,
        ...(time === undefined ? {} : { time }),
      });
    }
  }
  return hints;
}

/** Day and month by all messages, which run one way; else by the planned times, else by the country of all stops. */
function orderOf(messages: readonly ChatMessage[], delivery: Delivery): DateOrder | undefined {
  const evidence = new DateOrderEvidence();
  for (const { stamp } of messages) evidence.add(stamp);
  const near = delivery.stops.flatMap(({ planned }) =>
    planned === undefined ? [] : [Date.parse(`${planned}Z`)],
  );
  const verdict = evidence.verdict(near);
  switch (verdict.is) {
    case 'order':
      return verdict.order;
    case 'no-dates':
      return undefined;
    case 'ambiguous': {
      const [usual, other] = new Set(delivery.stops.map(({ zone }) => usualOrder(zone)));
      return other === undefined ? usual : undefined;
    }
  }
}

/**
 * When a message was sent. The export does not say the zone of the phone: any of the delivery's is possible, which the
 * uncertainty covers.
 */
function sentTime(stamp: string, order: DateOrder, { stops }: Delivery): EventTime | undefined {
  const wall = readWall(stamp, order)?.wall;
  const [first] = stops;
  if (wall === undefined || first === undefined) return undefined;
  const own = /:\d{2}:\d{2}/.test(stamp) ? TO_THE_SECOND : TO_THE_MINUTE;
  const times = [...new Set(stops.map(({ zone }) => zone))].flatMap((zone) => {
    const { time } = timeInZone(wall, zone, 'chat', own, stamp);
    return time.is === 'known' ? [time] : [];
  });
  const moments = times.map(({ instant }) => milliseconds(instant));
  const [least, most] = [Math.min(...moments), Math.max(...moments)];
  const [time] = times;
  if (time === undefined) return undefined;
  const spread = Math.ceil((most - least) / 2000);
  return {
    ...time,
    instant: toInstant(Math.floor((least + most) / 2)),
    uncertaintySeconds: Math.max(...times.map(({ uncertaintySeconds }) => uncertaintySeconds)) + spread,
  };
}
