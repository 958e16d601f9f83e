import type { DeadlineTime } from '../../model/results.js';
import type { RecordState } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';
import { atTime, byBeginning } from './deadline-milestones.js';

/**
 * Exceptions that the consignee made at the dock, in the order of their times: goods accepted with exceptions, or
 * refused. Under CMR, article 30(1), a general indication of apparent loss or damage is enough, and it need not be in
 * writing.
 */
export function exceptionsNoted(
  { evidence, delivery: { lines, stops } }: Pick<RecordState, 'evidence' | 'delivery'>,
  now: number,
): DeadlineTime[] {
  const last = stops.findLast(({ does }) => does === 'unload');
  return evidence
    .flatMap((item): DeadlineTime[] => {
      const at = knownMilliseconds(item.time);
      if (item.kind !== 'outcome' || item.outcome === 'accepted' || at === undefined || at > now) return [];
      const named = item.place?.stop ?? lines.find(({ id }) => id === item.line)?.to;
      const stop = stops.find(({ id }) => id === named) ?? last;
      return stop === undefined ? [] : [atTime(at, stop.zone, [item.evidence])];
    })
    .sort(byBeginning);
}
