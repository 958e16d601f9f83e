import { Command } from 'commander';
import { DossierError } from '../../core/model/error.js';
import type { ClaimDuties } from '../../jobs/answer.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';
import { addLetterOptions, type LetterOptions, prepareLetter, requireNoLetterOptions } from '../letter.js';
import { askEach, nameWidth } from '../several.js';

interface Options extends LetterOptions {
  delivery?: string;
  at?: string;
  why?: boolean;
}

export function answerCommand(context: CliContext): Command {
  const { output, exit, now } = context;
  const command = new Command('answer')
    .description(
      'What is due when for a claim, what is late, and what the claimant still owes; letters that answer it.',
    )
    .argument('[folders...]', 'delivery folders (default: the one you are in)')
    .option('-d, --delivery <folder>', 'the same, for one')
    .option('--claim <id>', 'only this claim, such as c1')
    .option('--at <time>', 'as it would be at this moment, such as 2026-07-14T12:00Z')
    .option('--templates <folder>', 'a folder with letters, words or a claim-deadlines.yaml of your own')
    .option('--why', 'also what each asks, from what and how it was counted, and what the rule rests on')
    .option('--json', 'the answer as JSON');
  return addLetterOptions(command)
    .addHelpText(
      'after',
      `
Examples:
  dossier answer
  dossier answer deliveries/4711 --claim c1
  dossier answer deliveries/*                   a line for each as it is known
  dossier answer deliveries/* | sort            the same, what is due first at the top
  dossier answer --letter acknowledgement --out answers/ack
  dossier answer --letter denial --reason "Warm when loaded" --certificate --out answers/c1
  dossier answer --letter offer --amount "3000.00 USD" --language es --out answers/offer

The clocks are those of templates/claim-deadlines.yaml. Which of them count depends on
what governs the carriage, and that is never assumed: dossier record claim terms
Local law and the contract of carriage decide. This is not legal advice.

A letter is written as PDF and as text, says only what the record shows and leaves
a blank for what it does not; the dossier goes with it, in the copy for its reader.
Nothing is sent: read it, fill in the blanks, sign it, send it, and record that.
Exits with 1 while something of the carrier’s is overdue, with 2 when a delivery
could not be read.`,
    )
    .action(async (folders: string[], options: Options) => {
      const given = [...folders, ...(options.delivery === undefined ? [] : [options.delivery])];
      if (options.letter !== undefined) {
        if (given.length > 1)
          throw new DossierError('bad-usage', 'a letter is about one delivery', {
            fix: 'Name one folder.',
          });
        return prepareLetter(context, deliveryFolder(given[0]), options.letter, options);
      }
      requireNoLetterOptions(options);
      const [{ answer, answerWords, claimDuties }, { readAt }, { printAnswer, answerRows, answerJson }] =
        await Promise.all([
          import('../../jobs/answer.js'),
          import('../../jobs/typed/read-at.js'),
          import('../lists/answer-list.js'),
        ]);
      const at = readAt(options.at, now);
      const { claim, templates } = options;
      const asked = (folder: string | undefined) => ({
        ...{ folder: deliveryFolder(folder), by: resolveEnteredBy(undefined) },
        ...{ at, now, claim, templates },
      });
      const noted = <T extends ClaimDuties>(duties: T): T => {
        if (duties.overdue.length > 0) exit(EXIT.no);
        return duties;
      };
      const ask = async (folder: string | undefined) => noted(await answer(asked(folder)));
      if (given.length < 2) {
        const report = await ask(given[0]);
        if (options.json === true) return output.json(answerJson(given[0] ?? '.', report));
        const words = await answerWords(report.state.delivery.show.language);
        return printAnswer(output, report, words, options.why === true);
      }
      if (options.json === true) {
        const list = output.jsonList();
        await askEach(context, given, ask, {
          answered: (folder, report) => list.item(answerJson(folder, report)),
          refused: (folder, problem) => list.item({ folder, problem }),
        });
        return list.end();
      }
      const rows = answerRows(output, await answerWords('en'), nameWidth(given));
      await askEach(context, given, async (folder) => noted(await claimDuties(asked(folder))), {
        answered: (_, duties) => rows.row(duties),
      });
      rows.end();
    });
}
