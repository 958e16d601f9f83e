import type { ChannelSummary, TemperatureResult } from '../model/results.js';
import { fromCelsius, fromKelvin, type TemperatureUnit } from '../model/temperature.js';
import type { Zone } from '../model/time.js';
import type { Output } from './output.js';
import { tableLines } from './table.js';
import { when } from './when.js';

/** What one log shows: custody, band, channels, excursions and gaps; the unit first, the other beside it. */
export function printTemperatures(
  output: Output,
  result: TemperatureResult,
  unit: TemperatureUnit,
  zone: Zone,
): void {
  const at = (milliseconds: number) => when(milliseconds, zone);
  const degrees = (c: number) => both(fromCelsius(c, '°F'), fromCelsius(c, '°C'), unit, '');
  const hours = (seconds: number) => `${(seconds / 3600).toFixed(1)} h`;
  output.line(output.style('bold', `Log ${result.log}`));
  output.line(`Custody  ${at(result.custody.from.at)} (${words(result.custody.from.basis)})`);
  output.line(`     to  ${at(result.custody.to.at)} (${words(result.custody.to.basis)})`);
  if (result.band !== undefined)
    output.line(
      `Band     ${degrees(result.band.low)} to ${degrees(result.band.high)}, tolerance from the ${words(result.band.toleranceFrom)}`,
    );
  else output.line('Band     none: no line has a temperature instruction');
  output.line();
  const row = (channel: ChannelSummary) => [
    words(channel.channel),
    channel.mean === undefined ? '-' : degrees(channel.mean),
    channel.min === undefined ? '-' : degrees(channel.min.value),
    channel.max === undefined ? '-' : degrees(channel.max.value),
    `${(channel.coverage * 100).toFixed(1)} %`,
  ];
  for (const line of tableLines(
    [['channel', 'mean', 'lowest', 'highest', 'known'], ...result.channels.map(row)],
    output.width,
  ))
    output.line(line);
  const judged = result.channels.find((channel) => channel.channel === result.judged);
  if (judged !== undefined && result.band !== undefined) {
    output.line();
    output.line(
      `${words(judged.channel)}: in band ${hours(judged.inBandSeconds)}, above ${hours(judged.aboveSeconds)}, below ${hours(judged.belowSeconds)}`,
    );
  }
  output.line();
  if (result.excursions.length === 0) output.line('No excursions.');
  for (const excursion of result.excursions) {
    const size = both(fromKelvin(excursion.degreeHours, '°F'), excursion.degreeHours, unit, '·h');
    output.line(
      `${excursion.id}  ${excursion.side} from ${at(excursion.from)} to ${at(excursion.to)}, ${hours(excursion.seconds)}, farthest ${degrees(excursion.peak)}, ${size}; ${cause(excursion.cause)}`,
    );
  }
  for (const gap of result.gaps)
    output.line(`No values from ${at(gap.from)} to ${at(gap.to)}, ${hours(gap.seconds)}`);
}

function cause(said: TemperatureResult['excursions'][number]['cause']): string {
  return said.is === 'unexplained' ? 'no cause in the log' : `${words(said.is)} (${said.how})`;
}

function both(fahrenheit: number, celsius: number, first: TemperatureUnit, suffix: string): string {
  const f = `${fahrenheit.toFixed(1)} °F${suffix}`;
  const c = `${celsius.toFixed(1)} °C${suffix}`;
  return first === '°F' ? `${f} (${c})` : `${c} (${f})`;
}

const words = (id: string) => id.replaceAll('-', ' ');
