import type { Line } from '../../model/delivery.js';
import type { Channel } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { ChannelSummary, LineMargin, TemperatureResult, TimeRange } from '../../model/results.js';
import { celsius } from '../../model/temperature.js';
import type { UnitLog } from '../../model/unit-log.js';
import { findGoods, type Goods } from '../../reference/goods.js';
import {
  chillingBands,
  chillingFloors,
  freezingPoints,
  recommendedTemperatures,
  type SourcedRange,
} from '../../reference/limits.js';
import { respirationOf } from '../../reference/respiration.js';
import { isAround, type LogName } from '../logs/compartments.js';
import type { Milestones } from '../milestones.js';
import { publishedLimit } from '../published-limits.js';
import { transitWindowBetween } from '../transit-window.js';
import { judgedChannel, loadAirChannels } from './channels.js';
import { lifeUsed } from './life.js';
import { gapLimit } from './sampling-interval.js';
import { summarise } from './summary.js';

/**
 * For each line whose goods the reference library has, and each log: how far the air stayed from freezing, chilling
 * and the recommended temperatures while the line was aboard, source by source. Air is not product: air below a point for a short time need not have cooled the
 * product to it.
 */
export function lineMargins(
  lines: readonly Line[],
  logs: readonly UnitLog[],
  milestones: Milestones,
  /** Results of the same logs: where their window is that of a line, their sums are reused. */
  temperatures: readonly TemperatureResult[] = [],
): LineMargin[] {
  const plain = new Map(temperatures.flatMap(plainSums));
  return lines.flatMap((line) => {
    const goods = findGoods(line.goods);
    if (goods === undefined) return [];
    return logs.flatMap((log) => {
      if (!isAround(log, line)) return [];
      const custody = transitWindowBetween(milestones, line.from, line.to);
      const judged = judgedChannel(log);
      if (custody === undefined || judged === undefined) return [];
      return [marginOf(line, goods, log, { from: custody.from.at, to: custody.to.at }, judged, plain)];
    });
  });
}

const keyOf = ({ log, compartment = '' }: LogName, channel: Channel, { from, to }: TimeRange) =>
  `${log} ${compartment} ${channel} ${from} ${to}`;

/** Channel sums of a result without limits, where all known time is inside. */
function plainSums({ log, compartment, custody, channels }: TemperatureResult): [string, ChannelSummary][] {
  const window = { from: custody.from.at, to: custody.to.at };
  return channels.map((sums) => [
    keyOf({ log, ...omitUndefined({ compartment }) }, sums.channel, window),
    {
      ...sums,
      inBandSeconds: sums.knownSeconds,
      aboveSeconds: 0,
      belowSeconds: 0,
      degreeHoursAbove: 0,
      degreeHoursBelow: 0,
    },
  ]);
}

function marginOf(
  line: Line,
  goods: Goods,
  log: UnitLog,
  window: TimeRange,
  channel: Channel,
  plain: Map<string, ChannelSummary>,
): LineMargin {
  const { gapLimitSeconds } = gapLimit(log.times);
  const sum = (which: Channel, limits?: { low: number; high: number }): ChannelSummary =>
    summarise(which, log.times, log.channels[which] ?? new Float64Array(), window, gapLimitSeconds, limits);
  const against: Against = (which, low, high) => {
    const key = keyOf(
      { log: log.evidence, ...omitUndefined({ compartment: log.compartment }) },
      which,
      window,
    );
    const whole = plain.get(key) ?? sum(which);
    plain.set(key, whole);
    const { min, max } = whole;
    // Air within the limits has nothing outside them: the sums without limits apply.
    if (min === undefined || max === undefined || (min.value >= low && max.value <= high)) return whole;
    return sum(which, { low, high });
  };
  const { key, name } = goods;
  const ranges = recommendedTemperatures(key);
  const freezing = freezingOf(key, log, against);
  const chilling = chillingOf(key, channel, ranges, against);
  const range = rangeOf(channel, ranges, against);
  const life = lifeOf(line, key, log, window, channel, gapLimitSeconds);
  return {
    line: line.id,
    log: log.evidence,
    ...omitUndefined({ compartment: log.compartment }),
    produce: { key, name },
    window,
    ...omitUndefined({ freezing, chilling, range, life }),
  };
}

type Against = (channel: Channel, low: number, high: number) => ChannelSummary;

const ENDLESS = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };

function rangeOf(channel: Channel, ranges: readonly SourcedRange[], against: Against): LineMargin['range'] {
  if (ranges.length === 0) return undefined;
  return {
    channel,
    bySource: ranges.map((range) => {
      const { low, high } = { ...ENDLESS, ...range };
      const { aboveSeconds, belowSeconds, degreeHoursAbove } = against(channel, low, high);
      return { ...publishedLimit(range), aboveSeconds, belowSeconds, kelvinHoursAbove: degreeHoursAbove };
    }),
  };
}

function freezingOf(key: string, log: UnitLog, against: Against): LineMargin['freezing'] {
  const points = freezingPoints(key);
  const [highest, lowest] = [points[0]?.high, points.at(-1)?.high];
  if (highest === undefined || lowest === undefined) return undefined;
  return {
    celsius: highest,
    lowest,
    points: points.map((point) => ({ ...publishedLimit(point), low: point.high })),
    channels: loadAirChannels(log).flatMap((channel) => {
      const sums = against(channel, highest, Number.POSITIVE_INFINITY);
      if (sums.min === undefined) return [];
      return [
        {
          channel,
          lowest: sums.min,
          margin: sums.min.value - highest,
          belowSeconds: sums.belowSeconds,
          kelvinHoursBelow: sums.degreeHoursBelow,
          belowAllSeconds: against(channel, lowest, Number.POSITIVE_INFINITY).belowSeconds,
        },
      ];
    }),
  };
}

/**
 * Time in the cold that harms by some source. What a source recommends is no harm on that ground alone: time against all
 * is below every floor, or inside every band, and below every recommended range.
 */
function chillingOf(
  key: string,
  channel: Channel,
  ranges: readonly SourcedRange[],
  against: Against,
): LineMargin['chilling'] {
  const bands = chillingBands(key);
  const limits = bands.length > 0 ? bands : chillingFloors(key);
  const isFloor = bands.length === 0;
  const ends = limits.flatMap(({ low, high }) => [
    ...(low === undefined ? [] : [low]),
    ...(high === undefined ? [] : [high]),
  ]);
  if (ends.length === 0) return undefined;
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const under = (limit: number) => against(channel, limit, Number.POSITIVE_INFINITY);
  const within = (from: number, to: number) => (from < to ? against(channel, from, to).inBandSeconds : 0);
  const belowHigh = under(high);
  const coldest = Math.min(...ranges.map((range) => range.low ?? Number.NEGATIVE_INFINITY));
  const warmest = Math.max(...ranges.map((range) => range.high ?? Number.POSITIVE_INFINITY));
  const common = {
    from: Math.max(...limits.map((one) => one.low ?? low)),
    to: Math.min(...limits.map((one) => one.high ?? high)),
  };
  return {
    is: isFloor ? 'floor' : 'band',
    low,
    high,
    limits: limits.map(publishedLimit),
    channel,
    belowLowSeconds: isFloor ? under(low).belowSeconds : 0,
    belowHighSeconds: isFloor ? belowHigh.belowSeconds : 0,
    kelvinHoursBelowHigh: isFloor ? belowHigh.degreeHoursBelow : 0,
    insideSeconds: isFloor ? 0 : within(low, high),
    againstAllSeconds: isFloor
      ? under(Math.min(low, coldest)).belowSeconds
      : within(Math.max(common.from, warmest), common.to),
  };
}

/**
 * Computed only where a respiration rate is published, the bill instructs a temperature, and the air stayed clear
 * of chilling.
 */
function lifeOf(
  line: Line,
  key: string,
  log: UnitLog,
  window: TimeRange,
  channel: Channel,
  gapLimitSeconds: number,
): LineMargin['life'] {
  const respiration = respirationOf(key);
  const values = log.channels[channel];
  if (respiration === undefined || line.instruction === undefined || values === undefined) return undefined;
  if (chillingFloors(key).length + chillingBands(key).length > 0) return undefined;
  const reference = celsius(line.instruction.setPoint);
  const used = lifeUsed(log.times, values, window, gapLimitSeconds, respiration, reference);
  if (used.knownSeconds === 0) return undefined;
  return {
    channel,
    source: respiration.source.name,
    secondary: respiration.source.status === 'secondary',
    reference,
    ...used,
  };
}
