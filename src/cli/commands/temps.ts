import { Command } from 'commander';
import type { ChannelSummary, TemperatureResult } from '../../model/results.js';
import { fromCelsius, fromKelvin, type TemperatureUnit } from '../../model/temperature.js';
import type { Zone } from '../../model/time.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';
import type { Output } from '../output.js';
import type { CliContext } from '../program.js';
import { tableLines } from '../table.js';
import { whoEnters } from '../who.js';

interface Options {
  json?: boolean;
  csv?: boolean;
}

export function tempsCommand({ output, exit, now }: CliContext): Command {
  return new Command('temps')
    .description('What the unit log shows over the carrier’s custody: band, excursions, coverage.')
    .argument('[folder]', 'delivery folder (default: the one you are in)')
    .option('--json', 'the answer as JSON')
    .option('--csv', 'the excursions as CSV')
    .addHelpText(
      'after',
      `
Examples:
  dossier temps
  dossier temps deliveries/4711 --json
  dossier temps --csv > excursions.csv

Temperatures between samples lie on straight lines; over gaps nothing is assumed.
Exits with 1 when there is no usable unit log.`,
    )
    .action(async (folder: string | undefined, options: Options) => {
      const { assessDelivery, readAt } = await import('../../jobs/assess.js');
      const { assessment, state } = await assessDelivery({
        folder: deliveryFolder(folder),
        at: readAt(undefined, now),
        by: whoEnters(undefined),
        now,
      });
      if (assessment.temperatures.length === 0) exit(EXIT.no);
      if (options.json === true)
        return output.json({ delivery: state.delivery.delivery, temperatures: assessment.temperatures, pulps: assessment.pulps });
      if (options.csv === true) {
        const { excursionsCsv } = await import('../../jobs/computed-data.js');
        return output.line(excursionsCsv(assessment).trimEnd());
      }
      if (assessment.temperatures.length === 0) return output.line('No unit log has been taken in.');
      const zone = state.delivery.stops[0]?.zone ?? ('UTC' as Zone);
      const { when } = await import('../when.js');
      for (const result of assessment.temperatures)
        printResult(output, result, state.delivery.show.temperature, (at) => when(at, zone));
    });
}

function printResult(
  output: Output,
  result: TemperatureResult,
  unit: TemperatureUnit,
  at: (milliseconds: number) => string,
): void {
  const degrees = (c: number) => both(fromCelsius(c, '°F'), fromCelsius(c, '°C'), unit, '');
  const hours = (seconds: number) => `${(seconds / 3600).toFixed(1)} h`;
  output.line(output.style('bold', `Log ${result.log}`));
  output.line(`Custody  ${at(result.custody.from.at)} (${words(result.custody.from.basis)})`);
  output.line(`     to  ${at(result.custody.to.at)} (${words(result.custody.to.basis)})`);
  if (result.band !== undefined)
    output.line(`Band     ${degrees(result.band.low)} to ${degrees(result.band.high)}, tolerance from the ${words(result.band.toleranceFrom)}`);
  else output.line('Band     none: no line has a temperature instruction');
  output.line();
  const row = (channel: ChannelSummary) => [
    words(channel.channel),
    channel.mean === undefined ? '-' : degrees(channel.mean),
    channel.min === undefined ? '-' : degrees(channel.min.value),
    channel.max === undefined ? '-' : degrees(channel.max.value),
    `${(channel.coverage * 100).toFixed(1)} %`,
  ];
  for (const line of tableLines([['channel', 'mean', 'lowest', 'highest', 'known'], ...result.channels.map(row)], output.width))
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
  for (const gap of result.gaps) output.line(`No values from ${at(gap.from)} to ${at(gap.to)}, ${hours(gap.seconds)}`);
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
