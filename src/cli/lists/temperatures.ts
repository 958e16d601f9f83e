import type {
  ChannelSummary,
  ExcursionClass,
  ExcursionHeat,
  TemperatureResult,
} from '../../core/model/results.js';
import type { TemperatureUnit } from '../../core/model/temperature.js';
import type { Zone } from '../../core/model/time.js';
import type { UnitLog } from '../../core/model/unit-log.js';
import type { Format } from '../../core/words/format.js';
import type { Output } from '../output.js';
import { counted, idInWords, printWrapped } from '../print.js';
import { tableLines } from '../table.js';
import { chartLines } from './chart.js';

export interface TemperatureView {
  format: Format;
  /** Zones of the first and of the last stop: each end is shown in its own. */
  startZone: Zone;
  endZone: Zone;
  ascii: boolean;
}

/**
 * The temperatures of one log: transit window, range, chart, channels, excursions and data gaps; the reader's unit
 * first, the other beside it.
 */
export function printTemperatures(
  output: Output,
  result: TemperatureResult,
  log: UnitLog | undefined,
  view: TemperatureView,
): void {
  const { format, startZone, endZone } = view;
  const { custody, band } = result;
  const { compartment } = result;
  const of = compartment === undefined ? '' : `, compartment ${compartment}`;
  output.line(output.style('bold', `Log ${result.log}${of}`));
  output.line(`Transit  ${format.time(custody.from.at, startZone)} (${idInWords(custody.from.basis)})`);
  output.line(`     to  ${format.time(custody.to.at, endZone)} (${idInWords(custody.to.basis)})`);
  output.line(
    band === undefined
      ? `Band     ${(result.bands?.length ?? 0) > 1 ? 'none that suits every line' : 'none: no line has a temperature instruction'}`
      : `Band     ${format.temperature(band.low)} to ${format.temperature(band.high)}, tolerance from the ${idInWords(band.toleranceFrom)}`,
  );
  output.line();
  if (log !== undefined) {
    const lines = chartLines(result, log, { format, width: output.width, ascii: view.ascii });
    for (const line of lines) output.line(line);
    if (lines.length > 0) output.line();
  }
  const rows = result.channels.flatMap((one) => channelRows(one, format));
  const headings = ['channel', 'mean', 'lowest', 'highest', 'kinetic mean', 'known', 'longest silence'];
  for (const line of tableLines([headings, ...rows], output.width)) output.line(line);
  output.line();
  printBand(output, result, format);
  printSwings(output, result, format);
  printExcursions(output, result, view);
}

/** The other unit is on a second line, so that all fits 80 columns. */
function channelRows(one: ChannelSummary, format: Format): string[][] {
  const values = [one.mean, one.min?.value, one.max?.value, one.meanKinetic];
  const inUnit = (unit: TemperatureUnit) =>
    values.map((value) => (value === undefined ? '-' : format.short(value, unit)));
  const silence = one.longestSilenceSeconds === undefined ? '-' : format.duration(one.longestSilenceSeconds);
  return [
    [idInWords(one.channel), ...inUnit(format.unit), format.share(one.coverage), silence],
    ['', ...inUnit(format.other)],
  ];
}

function printBand(output: Output, result: TemperatureResult, format: Format): void {
  const judged = result.channels.find((channel) => channel.channel === result.judged);
  if (judged === undefined || result.band === undefined) return;
  printWrapped(
    output,
    `${idInWords(judged.channel)}: in band ${format.duration(judged.inBandSeconds)}, above ${format.duration(judged.aboveSeconds)} (${format.degreeHours(judged.degreeHoursAbove)}), below ${format.duration(judged.belowSeconds)} (${format.degreeHours(judged.degreeHoursBelow)})`,
  );
}

function printSwings(output: Output, result: TemperatureResult, format: Format): void {
  const { returnMinusSupply: apart, cycling = [], run, jumpCount = 0 } = result;
  if (apart !== undefined)
    printWrapped(
      output,
      `return minus supply air: mean ${format.difference(apart.mean)}, from ${format.difference(apart.min.kelvin)} to ${format.difference(apart.max.kelvin)}`,
    );
  for (const one of cycling)
    printWrapped(
      output,
      `${idInWords(one.channel)} around the ${one.setPointFrom === 'log' ? 'logged' : 'bill’s'} set point: within ${format.difference(one.toleranceKelvin)} for ${format.duration(one.withinSeconds)} of ${format.duration(one.knownSeconds)}, mean offset ${format.difference(one.meanOffset)}, ${one.cycles === 0 || one.periodSeconds === undefined || one.swingKelvin === undefined ? 'no full cycle' : `${counted(one.cycles, 'cycle')} of ${format.duration(one.periodSeconds)} and ${format.difference(one.swingKelvin)} (medians)`}`,
    );
  if (run?.usualSwingKelvin !== undefined)
    printWrapped(
      output,
      `run mode: ${run.asked ?? 'not stated'} on the bill, ${run.logged ?? 'not stated'} in the log; usual swing up to ${format.difference(run.usualSwingKelvin)} to either side (common practice, no source)`,
    );
  if (run?.otherSeconds !== undefined && run.otherSeconds > 0)
    output.line(`not in the mode instructed for ${format.duration(run.otherSeconds)}`);
  if (jumpCount > 0) output.line(`${counted(jumpCount, 'impossible jump')} left out of every sum`);
  output.line();
}

function printExcursions(output: Output, result: TemperatureResult, view: TemperatureView): void {
  const { format, startZone, endZone } = view;
  const middle = (result.custody.from.at + result.custody.to.at) / 2;
  // In transit no place has the right clock: the first half is shown in the first stop's time.
  const at = (ms: number) => format.time(ms, ms <= middle ? startZone : endZone);
  if (result.excursions.length === 0) output.line('No excursions.');
  for (const one of result.excursions)
    printWrapped(
      output,
      `${one.id}  ${one.side} from ${at(one.from)} to ${at(one.to)}, ${format.duration(one.seconds)}, farthest ${format.temperature(one.peak)}, ${format.degreeHours(one.degreeHours)}; ${cause(one.cause)}${heat(result, one, format)}`,
    );
  const more = result.excursionTotals.count - result.excursions.length;
  if (more > 0) output.line(`and ${more} more of fewer degree-hours`);
  printClasses(output, result, format);
  for (const gap of result.gaps)
    printWrapped(output, `No values from ${at(gap.from)} to ${at(gap.to)}, ${format.duration(gap.seconds)}`);
}

const CLASS_WORDS: Readonly<Record<ExcursionClass, string>> = {
  'normal-operation': 'normal operation',
  handling: 'doors open',
  equipment: 'refrigeration unit',
  instruction: 'setting not as instructed',
  'not-explained': 'not explained',
};
const HEAT_WORDS: Readonly<Record<NonNullable<ExcursionHeat['shows']>, string>> = {
  'heat-came-in': 'heat came in',
  'capacity-fell': 'the unit cooled less',
  'as-usual': 'as usual',
};

/** The excursions by class, and the share in range that is left outside normal operation. */
function printClasses(output: Output, result: TemperatureResult, format: Format): void {
  const { classes, inRangeOutsideNormal } = result.excursionTotals;
  const known = result.channels.find(({ channel }) => channel === result.judged)?.knownSeconds ?? 0;
  if (result.band === undefined || classes.length === 0) return;
  output.line();
  const rows = classes.map((one) => [
    CLASS_WORDS[one.class],
    String(one.count),
    format.duration(one.seconds),
    known === 0 ? '-' : format.share(one.seconds / known),
    format.degreeHours(one.degreeHours),
    one.causes.map(({ is, count }) => `${idInWords(is)} ${count}`).join(', '),
  ]);
  const headings = ['class', 'excursions', 'time', 'of known', 'degree-hours', 'causes'];
  for (const line of tableLines([headings, ...rows], output.width)) output.line(line);
  if (inRangeOutsideNormal !== undefined)
    output.line(`In range outside normal operation: ${format.share(inRangeOutsideNormal)} of that time`);
  output.line();
}

/** Return minus supply air of an excursion outside normal operation, against the usual of the trip. */
function heat(
  { usualReturnMinusSupply: usual }: TemperatureResult,
  one: TemperatureResult['excursions'][number],
  format: Format,
): string {
  if (one.heat === undefined || one.class === 'normal-operation') return '';
  const compared = usual === undefined ? '' : `, usual ${format.difference(usual.median)}`;
  const shows = one.heat.shows === undefined ? '' : `: ${HEAT_WORDS[one.heat.shows]}`;
  return `; return minus supply ${format.difference(one.heat.kelvin)}${compared}${shows}`;
}

function cause(said: TemperatureResult['excursions'][number]['cause']): string {
  if (said.is === 'unexplained') return 'no cause in the log';
  const from = said.evidence === undefined ? '' : ` in ${said.evidence.join(', ')}`;
  const rows = said.oneRow === true ? ' in one row' : '';
  return `${idInWords(said.is)} (${said.how}${rows}${from})`;
}
