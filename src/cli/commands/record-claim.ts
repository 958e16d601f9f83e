import { Command } from 'commander';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { DELIVERY, ENTERED_BY, JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';
import { entryCommand } from '../form.js';
import { escapeControls } from '../output.js';
import { printProblem } from '../problems.js';
import { CLAIM_FORMS, type ClaimForm } from './record-claim-forms.js';

const AMOUNTS_EXAMPLE = 'dossier record claim amounts worksheet.csv --paper e32 --said-by claimant --dry-run';

interface Common {
  delivery?: string;
  enteredBy?: string;
  json?: boolean;
  templates?: string;
}

/** `dossier record claim …`: notes on a claim, one per entry. */
export function claimCommand(context: CliContext): Command {
  const command = new Command('claim').description('Write down a claim and what is said of it.').addHelpText(
    'after',
    `
Examples:
${[...CLAIM_FORMS.map(({ example }) => example), AMOUNTS_EXAMPLE].map((example) => `  ${example}`).join('\n')}

Papers are taken in first: dossier collect FILE says their numbers.
What governs is never assumed: local law and the contract of carriage decide. This is not legal advice.`,
  );
  for (const form of CLAIM_FORMS) command.addCommand(formCommand(form, context));
  return command.addCommand(amountsCommand(context));
}

interface AmountsOptions extends Common {
  claim?: string;
  paper?: string[];
  saidBy?: string;
  dryRun?: boolean;
}

function amountsCommand({ output, exit, now }: CliContext): Command {
  return new Command('amounts')
    .description('Write down many amounts and quantities from a CSV table.')
    .argument('<file>', 'with the columns what, line, total, each, quantity, said-by, paper, note')
    .addOption(DELIVERY)
    .option('--claim <claim>', 'which claim, when there are several: c1, c2 …')
    .option('--paper <id...>', 'evidence that rows rest on which name none')
    .option('--said-by <who>', 'who says so, for rows that do not say')
    .option('--dry-run', 'say how each row is understood, write nothing')
    .addOption(ENTERED_BY)
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Example:
  ${AMOUNTS_EXAMPLE}

A row is an amount, such as invoice-value with each and quantity, or a total; or a
quantity, such as rejected. What a row says that is recorded already adds nothing.`,
    )
    .action(async (file: string, options: AmountsOptions) => {
      const { recordAmounts } = await import('../../jobs/claim-amounts.js');
      const dryRun = options.dryRun === true;
      const report = await recordAmounts({
        folder: deliveryFolder(options.delivery),
        by: resolveEnteredBy(options.enteredBy),
        now,
        file,
        dryRun,
        standing: { claim: options.claim, saidBy: options.saidBy, paper: options.paper },
      });
      if (report.problems.length > 0) exit(EXIT.badInput);
      if (options.json === true) return output.json(report);
      for (const notice of report.notices) output.note(escapeControls(notice));
      for (const { row, entry, said, outcome } of report.rows) {
        const before = outcome === 'already-held' ? '  (recorded before)' : '';
        const where = entry === undefined ? '' : `entry ${entry}  `;
        output.line(`row ${row}  ${where}${escapeControls(said)}${before}`);
      }
      const { recorded, held, refused } = report.counts;
      output.line();
      output.line(
        dryRun
          ? `${report.rows.length - held} understood, ${held} recorded before, ${refused} not understood; nothing was written.`
          : `${recorded} recorded; ${held} recorded before, nothing added for those; ${refused} not understood.`,
      );
      for (const problem of report.problems) printProblem(output, problem);
    });
}

function formCommand(form: ClaimForm, { output, now }: CliContext): Command {
  return entryCommand(form)
    .option('--claim <claim>', 'which claim, when there are several: c1, c2 …')
    .option('--paper <id...>', 'evidence that it rests on')
    .option('--note <text>', 'a note beside it')
    .option('--correct <entry>', 'the earlier entry that this corrects; both stay')
    .addOption(ENTERED_BY)
    .addOption(JSON_ANSWER)
    .action(async (word: string | undefined, options: Common & Record<string, unknown>) => {
      const { recordClaim } = await import('../../jobs/claim.js');
      const { delivery, enteredBy, json, templates, ...fields } = options;
      const folder = deliveryFolder(delivery);
      const noted = await recordClaim({
        folder,
        by: resolveEnteredBy(enteredBy),
        now,
        is: form.is,
        word,
        fields,
        ...omitUndefined({ templates }),
      });
      if (json === true) return output.json(noted);
      for (const notice of noted.notices) output.note(escapeControls(notice));
      const before = noted.added ? '' : '  (recorded before)';
      output.line(`entry ${noted.entry}  ${escapeControls(noted.said)}${before}`);
    });
}
