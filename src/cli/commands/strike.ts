import { Command } from 'commander';
import { DELIVERY, ENTERED_BY, JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';

interface Options {
  delivery?: string;
  enteredBy?: string;
  why: string;
  withDependents?: boolean;
  json?: boolean;
}

export function strikeCommand({ output, now }: CliContext): Command {
  return new Command('strike')
    .description('Say that an entry does not count: a wrong log, a reading of another load.')
    .argument('<entries...>', 'evidence (e12), or entries by their number in the trail (#41)')
    .requiredOption('--why <text>', 'why it does not count')
    .option('--with-dependents', 'strike what rests on it as well, such as the rows of a table')
    .addOption(DELIVERY)
    .addOption(ENTERED_BY)
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  dossier strike e13 --why "log of another trailer"
  dossier strike #44 --why "the strike was a mistake"      so that it counts again

Nothing is deleted: the entry and its file stay in the record and in the trail, with your reason.
To keep evidence out of copies for outsiders only, withhold it: dossier describe --withhold.`,
    )
    .action(async (targets: string[], options: Options) => {
      const { strike } = await import('../../jobs/strike.js');
      const report = await strike({
        folder: deliveryFolder(options.delivery),
        targets,
        why: options.why,
        withDependents: options.withDependents,
        enteredBy: resolveEnteredBy(options.enteredBy),
        now,
      });
      if (options.json === true) return output.json(report);
      for (const { what, entry, strike: seq } of report.struck)
        output.line(`${what}  struck: entry ${seq} says that entry ${entry} does not count`);
    });
}

export function admitCommand({ output, now }: CliContext): Command {
  return new Command('admit')
    .description('Say that evidence counts although it seemed to be of another trailer or time.')
    .argument('<evidence>', 'the evidence (e12)')
    .requiredOption('--why <text>', 'why it belongs to this delivery')
    .addOption(DELIVERY)
    .addOption(ENTERED_BY)
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Example:
  dossier admit e13 --why "the trailer was renumbered on 1 July"`,
    )
    .action(async (target: string, options: Omit<Options, 'withDependents'>) => {
      const { admit } = await import('../../jobs/strike.js');
      const report = await admit({
        folder: deliveryFolder(options.delivery),
        target,
        why: options.why,
        enteredBy: resolveEnteredBy(options.enteredBy),
        now,
      });
      if (options.json === true) return output.json(report);
      output.line(`${report.evidence}  counts from now on (entry ${report.entry})`);
    });
}
