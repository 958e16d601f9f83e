import type { Channel } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { TemperatureResult, TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import type { LogName } from '../logs/compartments.js';
import { PROBES } from '../temperature/channels.js';
import { summarise } from '../temperature/summary.js';

/** Share of known air below which no verdict is given. Convention of this project. */
const KNOWN = 0.9;

/** The share of a window, 0 to 1, in which a channel of a log is known. */
export type CoverageOf = (
  log: UnitLog,
  channel: Channel,
  window: TimeRange,
  gapLimitSeconds: number,
) => number;

/** Computes each channel and window once, and takes what the results of the same logs already hold. */
export function coverages(temperatures: readonly TemperatureResult[]): CoverageOf {
  const key = ({ log, compartment = '' }: LogName, channel: Channel, { from, to }: TimeRange) =>
    `${log} ${compartment} ${channel} ${from} ${to}`;
  const known = new Map(
    temperatures.flatMap(({ custody, channels, ...result }) =>
      channels.map((one): [string, number] => [
        key(result, one.channel, { from: custody.from.at, to: custody.to.at }),
        one.coverage,
      ]),
    ),
  );
  return (log, channel, window, gapLimitSeconds) => {
    const values = log.channels[channel];
    if (values === undefined) return 0;
    const { evidence, compartment } = log;
    const name = key({ log: evidence, ...omitUndefined({ compartment }) }, channel, window);
    const share =
      known.get(name) ?? summarise(channel, log.times, values, window, gapLimitSeconds, undefined).coverage;
    known.set(name, share);
    return share;
  };
}

/** Return and supply air as far as they are known; a probe only where neither is. */
export function knownAir(
  coverage: CoverageOf,
  log: UnitLog,
  window: TimeRange,
  gapLimitSeconds: number,
): { channels: Channel[]; coverage: number } {
  const shares = (['return-air', 'supply-air', ...PROBES] as const).map((channel) => ({
    channel,
    share: coverage(log, channel, window, gapLimitSeconds),
  }));
  const known = shares.filter((one) => one.share >= KNOWN);
  const air = known.filter((one) => one.channel === 'return-air' || one.channel === 'supply-air');
  const used = air.length > 0 ? air : known;
  return {
    channels: used.map((one) => one.channel),
    coverage:
      used.length > 0
        ? Math.min(...used.map((one) => one.share))
        : Math.max(...shares.map((one) => one.share)),
  };
}
