import type { Channel } from '../../model/evidence.js';
import type { Band, ChannelSummary, TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { summarise } from './summary.js';

/** Sensors other than the unit's own, in the load or at its rear. */
export const PROBES = ['probe', 'probe-2', 'probe-3', 'probe-4'] as const satisfies readonly Channel[];
/** Channels in the order of preference for the comparison with the range: return air represents the load as a whole. */
const JUDGED: readonly Channel[] = ['return-air', 'supply-air', ...PROBES];
const ALL: readonly Channel[] = [...JUDGED, 'ambient', 'set-point'];

/** The channel of a log that is compared with the range. */
export function judgedChannel(log: UnitLog): Channel | undefined {
  return loadAirChannels(log)[0];
}

/** Channels of the air around the load. */
export function loadAirChannels(log: UnitLog): Channel[] {
  return JUDGED.filter((channel) => log.channels[channel]?.some(Number.isFinite));
}

/** Summaries of every channel over a window; those of the air around the load are compared with the range. */
export function channelSummaries(
  log: UnitLog,
  window: TimeRange,
  gapLimitSeconds: number,
  band: Band | undefined,
): ChannelSummary[] {
  return ALL.flatMap((channel) => {
    const column = log.channels[channel];
    if (column === undefined) return [];
    const felt = JUDGED.includes(channel);
    return [summarise(channel, log.times, column, window, gapLimitSeconds, felt ? band : undefined, felt)];
  });
}
