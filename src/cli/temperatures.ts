import type { ChannelSummary, TemperatureResult } from '../core/model/results.js';
import { fromKelvin, type TemperatureUnit } from '../core/model/temperature.js';
import type { Zone } from '../core/model/time.js';
import type { UnitLog } from '../core/model/unit-log.js';
import { chartLines } from './chart.js';
import {
  formatDegreeHours,
  formatDifference,
  formatDuration,
  formatInUnit,
  formatTemperature,
  idInWords,
  otherUnit,
} from './degrees.js';
import { formatLocalTime } from './local-time.js';
import type { Output } from './output.js';
import { printWrapped, tableLines } from './table.js';

export interface TemperatureView {
  unit: TemperatureUnit;
  /** Zones of the first and of the last stop: each end is shown in its own. */
  startZone: Zone;
  endZone: Zone;
  ascii: boolean;
}

/**
 * The temperatures of one log: custody, range, chart, channels, excursions and data gaps; the reader's unit first,
 * the other beside it.
 */
export function printTemperatures(
  output: Output,
  result: TemperatureResult,
  log: UnitLog | undefined,
  view: TemperatureView,
): void {
  const { unit, startZone, endZone } = view;
  const { custody, band } = result;
  output.line(output.style('bold', `Log ${result.log}`));
  output.line(`Custody  ${formatLocalTime(custody.from.at, startZone)} (${idInWords(custody.from.basis)})`);
  output.line(`     to  ${formatLocalTime(custody.to.at, endZone)} (${idInWords(custody.to.basis)})`);
  output.line(
    band === undefined
      ? `Band     ${(result.bands?.length ?? 0) > 1 ? 'none that suits every line' : 'none: no line has a temperature instruction'}`
      : `Band     ${formatTemperature(band.low, unit)} to ${formatTemperature(band.high, unit)}, tolerance from the ${idInWords(band.toleranceFrom)}`,
  );
  output.line();
  if (log !== undefined) {
    const lines = chartLines(result, log, { unit, width: output.width, ascii: view.ascii });
    for (const line of lines) output.line(line);
    if (lines.length > 0) output.line();
  }
  const rows = result.channels.flatMap((one) => channelRows(one, unit));
  const headings = ['channel', 'mean', 'lowest', 'highest', 'kinetic mean', 'known', 'longest silence'];
  for (const line of tableLines([headings, ...rows], output.width)) output.line(line);
  output.line();
  printBand(output, result, unit);
  printSwings(output, result, unit);
  printExcursions(output, result, view);
}

/** The other unit is on a second line, so that all fits 80 columns. */
function channelRows(one: ChannelSummary, unit: TemperatureUnit): string[][] {
  const values = [one.mean, one.min?.value, one.max?.value, one.meanKinetic];
  const inUnit = (shown: TemperatureUnit) =>
    values.map((value) => (value === undefined ? '-' : formatInUnit(value, shown)));
  const silence = one.longestSilenceSeconds === undefined ? '-' : formatDuration(one.longestSilenceSeconds);
  return [
    [idInWords(one.channel), ...inUnit(unit), `${(one.coverage * 100).toFixed(1)} %`, silence],
    ['', ...inUnit(otherUnit(unit))],
  ];
}

function printBand(output: Output, result: TemperatureResult, unit: TemperatureUnit): void {
  const judged = result.channels.find((channel) => channel.channel === result.judged);
  if (judged === undefined || result.band === undefined) return;
  printWrapped(
    output,
    `${idInWords(judged.channel)}: in band ${formatDuration(judged.inBandSeconds)}, above ${formatDuration(judged.aboveSeconds)} (${formatDegreeHours(judged.degreeHoursAbove, unit)}), below ${formatDuration(judged.belowSeconds)} (${formatDegreeHours(judged.degreeHoursBelow, unit)})`,
  );
}

function printSwings(output: Output, result: TemperatureResult, unit: TemperatureUnit): void {
  const { returnMinusSupply: apart, cycling = [], run, jumpCount = 0 } = result;
  if (apart !== undefined)
    printWrapped(
      output,
      `return minus supply air: mean ${formatDifference(apart.mean, unit)}, from ${formatDifference(apart.min.kelvin, unit)} to ${formatDifference(apart.max.kelvin, unit)}`,
    );
  for (const one of cycling)
    printWrapped(
      output,
      `${idInWords(one.channel)} around the ${one.setPointFrom === 'log' ? 'logged' : 'bill’s'} set point: within ${formatDifference(one.toleranceKelvin, unit)} for ${formatDuration(one.withinSeconds)} of ${formatDuration(one.knownSeconds)}, mean offset ${formatDifference(one.meanOffset, unit)}, ${one.cycles === 0 || one.periodSeconds === undefined || one.swingKelvin === undefined ? 'no full cycle' : `${one.cycles} cycles of ${(one.periodSeconds / 60).toFixed(0)} min and ${formatDifference(one.swingKelvin, unit)} (medians)`}`,
    );
  if (run?.usualSwingKelvin !== undefined)
    printWrapped(
      output,
      `run mode: ${run.asked ?? 'not stated'} on the bill, ${run.logged ?? 'not stated'} in the log; usual swing up to ${fromKelvin(run.usualSwingKelvin, unit).toFixed(1)} ${unit} to either side (common practice, no source)`,
    );
  if (jumpCount > 0)
    output.line(`${jumpCount} impossible jump${jumpCount === 1 ? '' : 's'} left out of every sum`);
  output.line();
}

function printExcursions(output: Output, result: TemperatureResult, view: TemperatureView): void {
  const { unit, startZone, endZone } = view;
  const middle = (result.custody.from.at + result.custody.to.at) / 2;
  // In transit no place has the right clock: the first half is shown in the first stop's time.
  const at = (ms: number) => formatLocalTime(ms, ms <= middle ? startZone : endZone);
  if (result.excursions.length === 0) output.line('No excursions.');
  for (const one of result.excursions)
    printWrapped(
      output,
      `${one.id}  ${one.side} from ${at(one.from)} to ${at(one.to)}, ${formatDuration(one.seconds)}, farthest ${formatTemperature(one.peak, unit)}, ${formatDegreeHours(one.degreeHours, unit)}; ${cause(one.cause)}`,
    );
  const more = result.excursionTotals.count - result.excursions.length;
  if (more > 0) output.line(`and ${more} more of fewer degree-hours`);
  for (const gap of result.gaps)
    printWrapped(output, `No values from ${at(gap.from)} to ${at(gap.to)}, ${formatDuration(gap.seconds)}`);
}

function cause(said: TemperatureResult['excursions'][number]['cause']): string {
  if (said.is === 'unexplained') return 'no cause in the log';
  const from = said.evidence === undefined ? '' : ` in ${said.evidence.join(', ')}`;
  return `${idInWords(said.is)} (${said.how}${from})`;
}
