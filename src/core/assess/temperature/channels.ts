import type { Channel } from '../../model/evidence.js';
import type { Band, ChannelSummary, TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { summarise } from './summary.js';

/** Sensors besides the unit's own, among the load or at its rear. */
export const PROBES = ['probe', 'probe-2', 'probe-3', 'probe-4'] as const satisfies readonly Channel[];
/** The band is held against the first of these that the log has: return air stands for the load as a whole. */
const JUDGED: readonly Channel[] = ['return-air', 'supply-air', ...PROBES];
const ALL: readonly Channel[] = [...JUDGED, 'ambient', 'set-point'];

/** The channel of a log that the band is held against. */
export function judgedChannel(log: UnitLog): Channel | undefined {
  return loadAirChannels(log)[0];
}

/** The channels of a log that the load itself can have felt. */
export function loadAirChannels(log: UnitLog): Channel[] {
  return JUDGED.filter((channel) => log.channels[channel]?.some(Number.isFinite));
}

/** First and last row of a log; undefined when it has none. */
export function logSpan(log: UnitLog): TimeRange | undefined {
  const from = log.times.at(0);
  const to = log.times.at(-1);
  return from === undefined || to === undefined ? undefined : { from, to };
}

/** Every channel of a log over a window; those that the load felt are held against the band. */
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
