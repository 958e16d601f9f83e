import { omitUndefined } from '../../model/omit-undefined.js';
import type { ChannelSummary, Finding, TemperatureResult } from '../../model/results.js';
import { latestTimeOf } from '../milestones.js';
import { eventsOf } from '../temperature/states.js';
import { clockFindings } from './clocks.js';
import { excursionFindings } from './excursions.js';
import {
  degreeHours,
  duration,
  type FindingContext,
  finding,
  inCompartment,
  share,
  temperature,
} from './make.js';
import { recorderFindings } from './recorders.js';
import { runModeFindings } from './run-mode.js';

/**
 * Share of the known time in range for "in range"; below the second share it is "out of range". Conventions of this
 * project.
 */
const IN_BAND = 0.95;
const OUT_OF_BAND = 0.8;
/** Shares that are printed the same are told once. */
const LEAST_TOLD = 0.005;
/** A log that covers this share of custody covers it. */
const COVERED = 0.95;

/** Findings on the logged air in the carrier's custody. */
export function airFindings(context: FindingContext): Finding[] {
  const judgedOnes = context.temperatures.filter((result) => result.judged !== undefined);
  // A recorder that somebody put into the load is no log of the unit.
  const usable = judgedOnes.filter(({ instrument }) => instrument === 'unit');
  const clocks = judgedOnes
    .filter(({ log }, i) => judgedOnes.findIndex((one) => one.log === log) === i)
    .flatMap((result) => clockFindings(context, result));
  const others = [...recorderFindings(context), ...clocks];
  if (usable.every((result) => result.channels.every((one) => one.knownSeconds === 0)))
    return [...noLog(context), ...others];
  const ofResults = usable.flatMap((result) => {
    const judged = result.channels.find((one) => one.channel === result.judged);
    if (judged === undefined) return [];
    return [
      ...[
        ...bandFinding(result, judged),
        ...excursionFindings(context, result),
        ...coverageFinding(result, judged),
        ...unitOff(result),
        ...runModeFindings(context, result),
      ].map((one) => inCompartment(result.compartment, one)),
    ];
  });
  return [...ofResults, ...others, ...notLogged(context, judgedOnes)];
}

/** Compartments whose air no log has, while it has that of others or of the trailer as a whole. */
function notLogged({ state }: FindingContext, usable: readonly TemperatureResult[]): Finding[] {
  const { compartments = [] } = state.delivery.equipment.trailer;
  return compartments
    .filter(({ id }) => !usable.some((result) => result.compartment === id))
    .map(({ id }) =>
      inCompartment(
        id,
        finding(
          'compartment-not-logged',
          'columns of the unit logs by compartment',
          usable.map(({ log }) => log),
          {},
        ),
      ),
    );
}

function noLog(context: FindingContext): Finding[] {
  const over = context.state.delivery.stops
    .filter((stop) => stop.does === 'unload')
    .some((stop) => latestTimeOf(context.milestones, stop.id, 'delivery-over') !== undefined);
  return over ? [finding('no-unit-log', 'unit logs in the record', [], {})] : [];
}

const custodySeconds = (result: TemperatureResult) => (result.custody.to.at - result.custody.from.at) / 1000;

function bandFinding(result: TemperatureResult, judged: ChannelSummary): Finding[] {
  const { band } = result;
  const { mean, min, max } = judged;
  if (band === undefined || mean === undefined || min === undefined || max === undefined) return [];
  const inBand = judged.inBandSeconds / judged.knownSeconds;
  // A defrost takes the air out of range and is no want of care.
  const besides = result.excursionTotals.inRangeOutsideNormal ?? inBand;
  const id =
    besides >= IN_BAND ? 'air-in-band' : besides >= OUT_OF_BAND ? 'air-mostly-in-band' : 'air-out-of-band';
  return [
    finding(id, 'air against the band', [result.log], {
      channel: judged.channel,
      share: share(inBand),
      ...omitUndefined({ besidesNormal: besides - inBand < LEAST_TOLD ? undefined : share(besides) }),
      coverage: share(judged.coverage),
      custody: duration(custodySeconds(result)),
      mean: temperature(mean),
      min: temperature(min.value),
      max: temperature(max.value),
      low: temperature(band.low),
      high: temperature(band.high),
      above: duration(judged.aboveSeconds),
      below: duration(judged.belowSeconds),
      degreeHoursAbove: degreeHours(judged.degreeHoursAbove),
      degreeHoursBelow: degreeHours(judged.degreeHoursBelow),
    }),
  ];
}

function coverageFinding(result: TemperatureResult, judged: ChannelSummary): Finding[] {
  const longest = result.gaps.reduce<number | undefined>(
    (most, gap) => Math.max(most ?? 0, gap.seconds),
    undefined,
  );
  const id = judged.coverage >= COVERED ? 'log-covers-custody' : 'log-has-gaps';
  return [
    finding(id, 'coverage of custody by the log', [result.log], {
      coverage: share(judged.coverage),
      custody: duration(custodySeconds(result)),
      gaps: result.gaps.length,
      ...omitUndefined({ longestGap: longest === undefined ? undefined : duration(longest) }),
    }),
  ];
}

/** Times off that several rows of the log show, and that began in the window or went on for long in it. */
function unitOff(result: TemperatureResult): Finding[] {
  const off = eventsOf(result.logged).filter((one) => one.is === 'unit-off');
  if (off.length === 0) return [];
  const lengths = off.map((one) => (one.to - one.from) / 1000);
  return [
    finding('unit-off-logged', 'power, mode and operation in the log', [result.log], {
      count: off.length,
      total: duration(lengths.reduce((a, b) => a + b, 0)),
      longest: duration(lengths.reduce((a, b) => Math.max(a, b), 0)),
      ...omitUndefined({ before: off.some((one) => one.beganBefore === true) ? true : undefined }),
    }),
  ];
}
