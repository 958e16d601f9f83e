import { Command } from 'commander';
import type { Zone } from '../../model/time.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';
import type { CliContext } from '../program.js';
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
        return output.json({
          delivery: state.delivery.delivery,
          temperatures: assessment.temperatures,
          pulps: assessment.pulps,
        });
      if (options.csv === true) {
        const { excursionsCsv } = await import('../../jobs/computed-data.js');
        return output.line(excursionsCsv(assessment).trimEnd());
      }
      if (assessment.temperatures.length === 0) return output.line('No unit log has been taken in.');
      const zone = state.delivery.stops[0]?.zone ?? ('UTC' as Zone);
      const { printTemperatures } = await import('../temperatures.js');
      for (const result of assessment.temperatures)
        printTemperatures(output, result, state.delivery.show.temperature, zone);
    });
}
