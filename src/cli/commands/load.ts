import { Command } from 'commander';
import { JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';

interface Options {
  delivery?: string;
  json?: boolean;
}

export function loadCommand({ output, exit, now }: CliContext): Command {
  return new Command('load')
    .description('How the load stood and was handled: rows, compartments, weights, doors, shocks, pallets.')
    .argument('[folder]', 'delivery folder (default: the one you are in)')
    .option('-d, --delivery <folder>', 'the same')
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  dossier load
  dossier load deliveries/4711 --json

Axle weights are an estimate by statics from what delivery.yaml states of axles, empty weights and
limits; a scale ticket (dossier record scale) counts in its place. A certified scale and local
law decide. Exits with 1 when an axle weight is above a limit, or nothing is recorded.`,
    )
    .action(async (folder: string | undefined, options: Options) => {
      const { load } = await import('../../jobs/load.js');
      const { state, assessment } = await load({
        folder: deliveryFolder(options.delivery ?? folder),
        by: resolveEnteredBy(undefined),
        now,
      });
      const { loading, weights, doors, shocks } = assessment;
      const pallets = state.evidence.filter(({ kind }) => kind === 'pallets');
      const over = assessment.findings.some(({ id }) => id === 'axle-over-limit');
      const nothing =
        [loading, weights, doors, shocks].every((one) => one === undefined) && pallets.length === 0;
      if (over || nothing) exit(EXIT.no);
      if (options.json === true)
        return output.json({ delivery: state.delivery.delivery, loading, weights, doors, shocks, pallets });
      const { printLoad } = await import('../lists/load-list.js');
      printLoad(output, state, assessment);
    });
}
