import { Command } from 'commander';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';
import { escapeControls } from '../output.js';
import { settleDoubts } from '../settle-doubts.js';

interface Options extends Record<string, unknown> {
  delivery?: string;
  enteredBy?: string;
  by?: string;
  why?: string[];
  sure?: boolean;
  json?: boolean;
}

const FORMS = [
  {
    name: 'refusal',
    outcome: 'refused',
    summary: 'what a receiver refused',
    rest: true,
    example:
      'dossier record refusal 8 pallets --line strawberries --rest accepted --why decay --words "soft, mold on top layer" --said-by "D. Haas, receiving" --told driver --at 10:40',
  },
  {
    name: 'acceptance',
    outcome: 'accepted',
    summary: 'what a receiver accepted',
    rest: true,
    example: 'dossier record acceptance --stop drop-2 --said-by "K. Lund, receiving" --on e31',
  },
  {
    name: 'exception',
    outcome: 'accepted-with-exceptions',
    summary: 'an exception noted against goods that were accepted: short, over, damaged …',
    rest: false,
    example:
      'dossier record exception 24 cartons --line celery --why shortage --words "24 ctns short" --on "delivery receipt, line 2"',
  },
] as const;

export const OUTCOME_EXAMPLES: readonly string[] = FORMS.map(({ example }) => example);

/** `record refusal`, `record acceptance` and `record exception`: what became of the goods at a stop. */
export const outcomeCommands = (context: CliContext): Command[] =>
  FORMS.map((form) => outcomeCommand(form, context));

function outcomeCommand(
  { name, outcome, summary, rest, example }: (typeof FORMS)[number],
  { output, now }: CliContext,
): Command {
  const command = new Command(name)
    .description(`Write down ${summary}.`)
    .argument(
      '[how-much...]',
      '8 pallets, 24 cartons, 1200 lb … or all; left out: what nothing was said of yet',
    )
    .option('-d, --delivery <folder>', 'the delivery (default: the folder you are in)')
    .option('--line <line>', 'which line of the bill of lading (default: every line of the stop)')
    .option('--stop <stop>', 'at which stop (default: where the line is delivered)')
    .option('--why <reason...>', 'temperature, decay, damage, shortage, overage, frost, late or other')
    .option('--words <text>', 'their own words')
    .option('--said-by <name>', 'who said so')
    .option(
      '--told <whom>',
      'to whom: driver, carrier, dispatcher, shipper, consignor, consignee, broker, insurer, other',
    )
    .option('--told-name <name>', 'the name of the one who was told')
    .option('--how <way>', 'in-person, call, message, e-mail, letter or on-document')
    .option('--on <document>', 'on which document: its evidence (e31), or what it is')
    .option('--at <time>', 'when, local to the stop; now, where the delivery is under way')
    .option('--by <name>', 'who heard or saw it')
    .option('--caption <text>', 'a note beside it')
    .option('--entered-by <name>', 'who enters it (default: DOSSIER_BY or your account)')
    .option('--sure', 'it is right, although it lies far from the rest of the delivery')
    .option('--json', 'the answer as JSON');
  if (rest) command.option('--rest <outcome>', 'what became of the rest of the line: accepted or refused');
  return command
    .addHelpText(
      'after',
      `
Example:
  ${example}

A word to the driver is no notice to the consignor: --told says whom it reached.`,
    )
    .action(async (howMuch: string[], options: Options) => {
      const { recordReading } = await import('../../jobs/record-reading.js');
      const { delivery, enteredBy, json, sure, why, ...rest } = options;
      const fields = { ...rest, outcome, ...(why === undefined ? {} : { reason: why }) };
      const by = resolveEnteredBy(enteredBy ?? options.by);
      const word = howMuch.length === 0 ? undefined : howMuch.join(' ');
      const added = await settleDoubts(output, { word, fields }, sure === true, (typed, settled) =>
        recordReading({
          folder: deliveryFolder(delivery),
          kind: 'outcome',
          ...typed,
          enteredBy: by,
          now,
          sure: settled,
        }),
      );
      if (json === true) return output.json(added);
      for (const notice of added.notices) output.note(escapeControls(notice));
      output.line(`${added.evidence}  ${escapeControls(added.said)}`);
    });
}
