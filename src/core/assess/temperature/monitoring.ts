import type { Assessment, ChannelDifference, TemperatureResult } from '../../model/results.js';
import type { RecordState } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';
import type { UnitLog } from '../../model/unit-log.js';
import { PROBES } from './channels.js';
import { differenceOf, type Sensor } from './difference.js';

/**
 * Two sensors farther apart than this disagree, K: two recorders of ±1 °C each (EN 12830 class 1, from memory) may
 * be 2 K apart.
 */
const SENSORS_DISAGREE = 2;

/** Comparison of sensors, and the longest interval without a unit check. */
export function monitoringOf(
  state: RecordState,
  temperatures: readonly TemperatureResult[],
  logs: readonly UnitLog[],
): Pick<Assessment, 'sensorDifferences' | 'longestWithoutRound'> {
  const [first] = temperatures;
  if (first === undefined) return {};
  const window = { from: first.custody.from.at, to: first.custody.to.at };
  return {
    sensorDifferences: sensorDifferences(logs, window),
    longestWithoutRound: longestWithoutUnitCheck(state, window),
  };
}

/**
 * Probes against the return air of their own log, and sensors of the same name in different logs. A recorder at the
 * rear and the return air at the nose differ with good reason: both are shown, neither corrects the other.
 */
function sensorDifferences(
  logs: readonly UnitLog[],
  window: { from: number; to: number },
): ChannelDifference[] {
  const pairs: [Sensor, Sensor][] = [];
  logs.forEach((log, index) => {
    for (const probe of PROBES)
      if (log.channels[probe] !== undefined && log.channels['return-air'] !== undefined)
        pairs.push([
          { log, channel: probe },
          { log, channel: 'return-air' },
        ]);
    for (const other of logs.slice(index + 1).filter((one) => one.compartment === log.compartment))
      for (const channel of ['return-air', 'supply-air', ...PROBES] as const)
        if (log.channels[channel] !== undefined && other.channels[channel] !== undefined)
          pairs.push([
            { log, channel },
            { log: other, channel },
          ]);
  });
  return pairs.flatMap(([a, b]) => differenceOf(a, b, window, SENSORS_DISAGREE) ?? []);
}

/** The longest interval without a unit check, from the window's start through every check to its end. */
function longestWithoutUnitCheck(
  state: RecordState,
  { from, to }: { from: number; to: number },
): NonNullable<Assessment['longestWithoutRound']> {
  const looks = state.evidence
    .filter((item) => item.kind === 'round')
    .flatMap((item) => knownMilliseconds(item.time) ?? [])
    .filter((at) => at > from && at < to)
    .sort((a, b) => a - b);
  let longest = { from, to: from };
  let last = from;
  for (const at of [...looks, to]) {
    if (at - last > longest.to - longest.from) longest = { from: last, to: at };
    last = at;
  }
  return { ...longest, seconds: (longest.to - longest.from) / 1000 };
}
