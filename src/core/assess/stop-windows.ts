import { stopWindowFlags } from '../model/delivery-flags.js';
import type { RecordState } from '../model/state.js';
import { knownMilliseconds } from '../model/time.js';

/**
 * The record with the flag of photos that were taken far from the planned time of their stop, by the time, the stop and
 * the plan as they are known now; what was flagged at intake is not repeated.
 */
export function flagStopWindows(state: RecordState): RecordState {
  const evidence = state.evidence.map((item) => {
    if (item.kind !== 'photo') return item;
    const others = item.flags.filter(({ is }) => is !== 'outside-stop-window');
    const stop = state.delivery.stops.find(({ id }) => id === item.place?.stop);
    // A photo without a stop keeps what was said of the nearest one.
    if (stop === undefined) return item;
    return { ...item, flags: [...others, ...stopWindowFlags(stop, knownMilliseconds(item.time))] };
  });
  return { ...state, evidence };
}
