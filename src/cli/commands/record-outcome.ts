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
    kind: 'outcome',
    outcome: 'refused',
    summary: 'what a receiver refused',
    rest: true,
    example:
      'dossier record refusal 8 pallets --line strawberries --rest accepted --why decay --words "soft, mold on top layer" --said-by "D. Haas, receiving" --told driver --at 10:40',
  },
  {
    name: 'acceptance',
    kind: 'outcome',
    outcome: 'accepted',
    summary: 'what a receiver accepted',
    rest: true,
    example: 'dossier record acceptance --stop drop-2 --said-by "K. Lund, receiving" --on e31',
  },
  {
    name: 'exception',
    kind: 'exception',
    outcome: undefined,
    summary:
      "an exception written on a paper: at loading the carrier's on the bill of lading, at delivery the receiver's on the receipt",
    rest: false,
    example:
      'dossier record exception --stop load-1 --line romaine --why temperature --words "romaine pulped 41 F, shipper advised" --on e74 --written-by "driver R. Vela" --signed-by "shipper J. Ortiz"',
  },
] as const;

export const OUTCOME_EXAMPLES: readonly string[] = FORMS.map(({ example }) => example);

/** `record refusal`, `record acceptance` and `record exception`: what became of the goods at a stop. */
export const outcomeCommands = (context: CliContext): Command[] =>
  FORMS.map((form) => outcomeCommand(form, context));

function outcomeCommand(
  { name, kind, outcome, summary, rest, example }: (typeof FORMS)[number],
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
    .option(
      '--stop <stop>',
      rest
        ? 'at which stop (default: where the line is delivered)'
        : 'at which stop: it decides whose exception it is',
    )
    .option('--why <reason...>', 'temperature, decay, damage, shortage, overage, frost, late or other')
    .option('--words <text>', rest ? 'their own words' : 'the words on the paper')
    .option('--said-by <name>', 'who said so')
    .option(
      '--told <whom>',
      'to whom: driver, carrier, dispatcher, shipper, consignor, consignee, broker, insurer, other',
    )
    .option('--told-name <name>', 'the name of the one who was told')
    .option('--how <way>', 'in-person, call, message, e-mail, letter or on-document')
    .option('--on <document>', 'on which document: its evidence (e31), or what it is')
    .option('--written-by <who>', 'who wrote it there, the part first: "driver R. Vela"')
    .option('--signed-by <who...>', 'who signed it there: "shipper J. Ortiz"')
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

${
  rest
    ? 'A word to the driver is no notice to the consignor: --told says whom it reached.'
    : 'A word that the shipper signed is worth more than one that the driver wrote alone: --signed-by.'
}`,
    )
    .action(async (howMuch: string[], options: Options) => {
      const { recordReading } = await import('../../jobs/record-reading.js');
      const { delivery, enteredBy, json, sure, why, ...rest } = options;
      const fields = {
        ...rest,
        ...(outcome === undefined ? {} : { outcome }),
        ...(why === undefined ? {} : { reason: why }),
      };
      const by = resolveEnteredBy(enteredBy ?? options.by);
      const word = howMuch.length === 0 ? undefined : howMuch.join(' ');
      const added = await settleDoubts(output, { word, fields }, sure === true, (typed, settled) =>
        recordReading({
          folder: deliveryFolder(delivery),
          kind,
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
