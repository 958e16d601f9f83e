import type { Line } from '../../model/delivery.js';
import type { Channel } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { ChannelSummary, LineMargin, TemperatureResult, TimeRange } from '../../model/results.js';
import { celsius } from '../../model/temperature.js';
import type { UnitLog } from '../../model/unit-log.js';
import {
  cite,
  findProduce,
  highestFreezingPoint,
  type Produce,
  type Published,
} from '../../reference/produce.js';
import { sources } from '../../reference/sources.js';
import type { Milestones } from '../milestones.js';
import { transitWindowBetween } from '../transit-window.js';
import { judgedChannel, loadAirChannels } from './channels.js';
import { lifeUsed } from './life.js';
import { gapLimit } from './sampling-interval.js';
import { summarise } from './summary.js';

/**
 * For each line whose goods the reference table has, and each log: how far the air stayed from freezing, chilling
 * and the end of the published range while the line was aboard. Where sources differ the one worse for the carrier
 * counts, and all are listed. Air is not product: air below a point for a short time need not have cooled the
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
    const produce = findProduce(line.goods);
    if (produce === undefined) return [];
    return logs.flatMap((log) => {
      const custody = transitWindowBetween(milestones, line.from, line.to);
      const judged = judgedChannel(log);
      if (custody === undefined || judged === undefined) return [];
      return [marginOf(line, produce, log, { from: custody.from.at, to: custody.to.at }, judged, plain)];
    });
  });
}

const keyOf = (log: string, channel: Channel, { from, to }: TimeRange) => `${log} ${channel} ${from} ${to}`;

/** Channel sums of a result without limits, where all known time is inside. */
function plainSums({ log, custody, channels }: TemperatureResult): [string, ChannelSummary][] {
  const window = { from: custody.from.at, to: custody.to.at };
  return channels.map((sums) => [
    keyOf(log, sums.channel, window),
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

const fromMemory = (value: Published<unknown>) => value.basis === 'from memory';

function marginOf(
  line: Line,
  produce: Produce,
  log: UnitLog,
  window: TimeRange,
  channel: Channel,
  plain: Map<string, ChannelSummary>,
): LineMargin {
  const { gapLimitSeconds } = gapLimit(log.times);
  const sum = (which: Channel, limits?: { low: number; high: number }): ChannelSummary =>
    summarise(which, log.times, log.channels[which] ?? new Float64Array(), window, gapLimitSeconds, limits);
  const against: Against = (which, low, high) => {
    const key = keyOf(log.evidence, which, window);
    const whole = plain.get(key) ?? sum(which);
    plain.set(key, whole);
    const { min, max } = whole;
    // Air within the limits has nothing outside them: the sums without limits apply.
    if (min === undefined || max === undefined || (min.value >= low && max.value <= high)) return whole;
    return sum(which, { low, high });
  };
  const freezing = freezingOf(produce, log, against);
  const chilling = chillingOf(produce, channel, against);
  const life = lifeOf(line, produce, log, window, channel, gapLimitSeconds);
  const { range } = produce;
  const held = against(channel, range.value.low, range.value.high);
  return {
    line: line.id,
    log: log.evidence,
    produce: { key: produce.key, name: produce.name },
    window,
    ...omitUndefined({ freezing, chilling }),
    range: {
      low: range.value.low,
      high: range.value.high,
      source: cite(range, 'range'),
      fromMemory: fromMemory(range),
      channel,
      aboveSeconds: held.aboveSeconds,
      belowSeconds: held.belowSeconds,
      kelvinHoursAbove: held.degreeHoursAbove,
    },
    ...omitUndefined({ life }),
  };
}

type Against = (channel: Channel, low: number, high: number) => ChannelSummary;

function freezingOf(produce: Produce, log: UnitLog, against: Against): LineMargin['freezing'] {
  const worst = highestFreezingPoint(produce);
  const { freezing } = produce;
  if (worst === undefined || freezing === undefined) return undefined;
  const others = produce.alternatives.filter((one) => one.field === 'freezing');
  return {
    celsius: worst,
    points: [
      {
        celsius: freezing.value,
        source: cite(freezing, 'freezing'),
        fromMemory: fromMemory(freezing),
      },
      ...others.map((one) => ({
        celsius: one.value,
        source: one.note === '' ? sources[one.source] : `${sources[one.source]} (${one.note})`,
        fromMemory: one.source === 'M',
      })),
    ],
    channels: loadAirChannels(log).flatMap((channel) => {
      const sums = against(channel, worst, Number.POSITIVE_INFINITY);
      if (sums.min === undefined) return [];
      return [
        {
          channel,
          lowest: sums.min,
          margin: sums.min.value - worst,
          belowSeconds: sums.belowSeconds,
          kelvinHoursBelow: sums.degreeHoursBelow,
        },
      ];
    }),
  };
}

function chillingOf(produce: Produce, channel: Channel, against: Against): LineMargin['chilling'] {
  const { chilling } = produce;
  if (chilling === undefined) return undefined;
  const floors = produce.alternatives
    .filter((one) => one.field === 'chilling')
    .map((one): number => one.value);
  const low = Math.min(chilling.value.low, ...floors);
  const high = Math.max(chilling.value.high, ...floors);
  const isFloor = chilling.is === 'floor';
  const under = (limit: number) => against(channel, limit, Number.POSITIVE_INFINITY);
  const belowHigh = under(high);
  return {
    is: chilling.is,
    low,
    high,
    source: [
      cite(chilling, 'chilling'),
      ...produce.alternatives.filter((one) => one.field === 'chilling').map((one) => sources[one.source]),
    ].join('; '),
    fromMemory: fromMemory(chilling),
    channel,
    belowLowSeconds: isFloor ? under(low).belowSeconds : 0,
    belowHighSeconds: isFloor ? belowHigh.belowSeconds : 0,
    kelvinHoursBelowHigh: isFloor ? belowHigh.degreeHoursBelow : 0,
    insideSeconds: isFloor ? 0 : against(channel, low, high).inBandSeconds,
  };
}

/**
 * Computed only where a respiration rate is published, the bill instructs a temperature, and the air stayed clear
 * of chilling.
 */
function lifeOf(
  line: Line,
  produce: Produce,
  log: UnitLog,
  window: TimeRange,
  channel: Channel,
  gapLimitSeconds: number,
): LineMargin['life'] {
  const { respiration } = produce;
  const values = log.channels[channel];
  if (respiration === undefined || line.instruction === undefined || values === undefined) return undefined;
  if (produce.chilling !== undefined) return undefined;
  const reference = celsius(line.instruction.setPoint);
  const used = lifeUsed(log.times, values, window, gapLimitSeconds, respiration, reference);
  if (used.knownSeconds === 0) return undefined;
  return {
    channel,
    source: sources[respiration.source],
    fromMemory: respiration.basis === 'from memory',
    reference,
    ...used,
  };
}
