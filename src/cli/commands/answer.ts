import { Command } from 'commander';
import { DossierError } from '../../core/model/error.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';
import { addLetterOptions, type LetterOptions, prepareLetter, requireNoLetterOptions } from '../letter.js';
import { printProblem } from '../problems.js';

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
  dossier answer deliveries/*                   a table, what is due first at the top
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
      const [{ answer, answerWords }, { readAt }, { printAnswer, printAnswerTable, answerJson }] =
        await Promise.all([
          import('../../jobs/answer.js'),
          import('../../jobs/assess.js'),
          import('../answer-list.js'),
        ]);
      const at = readAt(options.at, now);
      const { claim, templates } = options;
      const of = async (folder: string | undefined) => {
        const by = resolveEnteredBy(undefined);
        const report = await answer({ folder: deliveryFolder(folder), at, by, now, claim, templates });
        if (report.overdue.length > 0) exit(EXIT.no);
        return { folder: folder ?? '.', report };
      };
      if (given.length < 2) {
        const one = await of(given[0]);
        if (options.json === true) return output.json(answerJson(one.folder, one.report));
        const words = await answerWords(one.report.state.delivery.show.language);
        return printAnswer(output, one.report, words, options.why === true);
      }
      const answers = [];
      for (const folder of given)
        answers.push(
          await of(folder).catch((error: unknown) => {
            if (!(error instanceof DossierError)) throw error;
            exit(EXIT.badInput);
            return { folder, problem: error.toProblem() };
          }),
        );
      if (options.json === true)
        return output.json(
          answers.map((one) => ('problem' in one ? one : answerJson(one.folder, one.report))),
        );
      const reports = answers.flatMap((one) => ('report' in one ? [one.report] : []));
      printAnswerTable(output, reports, await answerWords('en'));
      for (const one of answers) {
        if (!('problem' in one)) continue;
        output.note(`${one.folder}:`);
        printProblem(output, one.problem);
      }
    });
}
