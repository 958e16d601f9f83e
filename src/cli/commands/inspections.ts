import { Command } from 'commander';
import { JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';

interface Options {
  delivery?: string;
  causes?: boolean;
  json?: boolean;
}

export function inspectionsCommand({ output, now }: CliContext): Command {
  return new Command('inspections')
    .description('Inspected lots, held against what a good delivery may contain.')
    .argument('[folder]', 'delivery folder (default: the one you are in)')
    .option('-d, --delivery <folder>', 'the same')
    .option('--causes', 'texts on what usually causes such defects, word for word')
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  dossier inspections
  dossier inspections deliveries/4711 --causes

Percentages that the contract agrees for the destination come first: lines[].sold in
delivery.yaml. Without them lettuce sold f.o.b. is held against 7 CFR 46.44(a), as of
2015; compare with the current text. It is a matter between seller and buyer, presumes
normal transportation, and says nothing of who caused a defect. No legal advice.
Certificates are written down with: dossier record inspection.`,
    )
    .action(async (folder: string | undefined, options: Options) => {
      const { inspections } = await import('../../jobs/inspections.js');
      const { assessment, state } = await inspections({
        folder: deliveryFolder(options.delivery ?? folder),
        by: resolveEnteredBy(undefined),
        now,
      });
      const found = assessment.inspections ?? [];
      if (options.json === true)
        return output.json({ delivery: state.delivery.delivery, inspections: found });
      const { printInspections } = await import('../lists/inspections-list.js');
      await printInspections(output, found, state.delivery.show, options.causes === true);
    });
}
