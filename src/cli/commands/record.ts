import { Command } from 'commander';
import type { OpenDelivery } from '../../jobs/delivery.js';
import { ENTERED_BY, JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';
import { entryCommand } from '../form.js';
import { escapeControls } from '../output.js';
import { readPassphrase } from '../passphrase.js';
import { isInteractive, prompt } from '../prompts.js';
import { settleDoubts } from '../settle-doubts.js';
import { claimCommand } from './record-claim.js';
import { CLAIM_EXAMPLE } from './record-claim-forms.js';
import { CLOCK_EXAMPLE, clockCommand } from './record-clock.js';
import { CLOCK_STEP_EXAMPLE, clockStepCommand } from './record-clock-step.js';
import { READING_FORMS, type ReadingForm } from './record-forms.js';
import { NOTES_EXAMPLE, notesOptions } from './record-notes.js';
import { OUTCOME_EXAMPLES, outcomeCommands } from './record-outcome.js';

interface Common {
  delivery?: string;
  enteredBy?: string;
  by?: string;
  at?: string;
  stop?: string;
  position?: string;
  compartment?: string;
  line?: string;
  caption?: string;
  sure?: boolean;
  json?: boolean;
}

/** Options of a signed statement. */
interface SignerOptions {
  sign?: boolean;
  identity?: string | undefined;
  passphraseFile?: string | undefined;
  passphraseFd?: string | undefined;
}

export function recordCommand(context: CliContext): Command {
  const command = notesOptions(new Command('record'), context)
    .description(
      'Write down a reading, unit check, event, refusal, acceptance, exception, inspection, instrument, particular, seal, pattern, bracing, scale ticket, shock, pallets, contact, statement or claim.',
    )
    .enablePositionalOptions()
    .addHelpText(
      'after',
      `
Examples:
${[...READING_FORMS.map((form) => form.example), ...OUTCOME_EXAMPLES, CLOCK_EXAMPLE, CLOCK_STEP_EXAMPLE, CLAIM_EXAMPLE, NOTES_EXAMPLE, 'dossier record --checklist'].map((example) => `  ${example}`).join('\n')}

Times are local to the stop's place: 14:05, 2:05pm, yesterday 14:05, 2026-07-14T04:10.
Left out, it is now, unless the delivery ended more than a day ago: then say when, or
--at now. What lies far from its kin is asked about, or refused where nobody is there
to be asked: a pulp 40 °F from the instruction, a day outside the delivery, an event
that is there already. --sure says that it is right as it stands. Nothing recorded is ever changed: dossier correct and
dossier strike put right what was mistyped, as entries of their own.
Take no reading where the site's rules or a running unit make it unsafe.`,
    );
  for (const form of READING_FORMS) command.addCommand(formCommand(form, context));
  for (const outcome of outcomeCommands(context)) command.addCommand(outcome);
  command.addCommand(clockCommand(context));
  command.addCommand(clockStepCommand(context));
  command.addCommand(claimCommand(context));
  return command;
}

function formCommand(form: ReadingForm, { output, now }: CliContext): Command {
  return entryCommand(form)
    .option('--at <time>', 'when, local to the stop; now, where the delivery is under way')
    .option('--stop <stop>', 'at which stop')
    .option('--line <line>', 'which line of the bill')
    .option('--position <position>', 'nose, middle or tail')
    .option('--compartment <name>', 'compartment of the trailer, where it has several')
    .option('--by <name>', 'who took it or saw it')
    .addOption(ENTERED_BY)
    .option('--caption <text>', 'a note beside it')
    .option('--sure', 'it is right, although it lies far from the rest of the delivery')
    .addOption(JSON_ANSWER)
    .action(async (word: string | undefined, options: Common & SignerOptions & Record<string, unknown>) => {
      const { recordReading } = await import('../../jobs/record-reading.js');
      const { delivery, enteredBy, json, sure, sign, identity, passphraseFile, passphraseFd, ...fields } =
        options;
      const folder = deliveryFolder(delivery);
      const by = resolveEnteredBy(enteredBy ?? options.by);
      if (options.stop === undefined && isInteractive() && json !== true) {
        const stop = await promptStop({ folder, by, now });
        if (stop !== undefined) fields.stop = stop;
      }
      const signer =
        sign === true ? { sign: await signerFrom({ identity, passphraseFile, passphraseFd }, now) } : {};
      const added = await settleDoubts(output, { word, fields }, sure === true, (typed, settled) =>
        recordReading({ folder, kind: form.kind, ...typed, enteredBy: by, now, ...signer, sure: settled }),
      );
      if (json === true) return output.json(added);
      for (const notice of added.notices) output.note(escapeControls(notice));
      output.line(`${added.evidence}  ${escapeControls(added.said)}`);
    });
}

async function signerFrom(options: SignerOptions, now: () => Date) {
  const { statementSigner } = await import('../../jobs/signing/sign-statement.js');
  const { identity: folder } = options;
  return statementSigner({
    identityFolder: folder,
    now,
    passphrase: (isNew) => readPassphrase(options, isNew),
  });
}

/** Suggests the stop where the truck seems to be; Enter accepts it, `-` means none. */
async function promptStop(open: OpenDelivery): Promise<string | undefined> {
  const { stopChoices } = await import('../../jobs/typed/stop-suggestion.js');
  const { stops, likely } = await stopChoices(open);
  if (likely === undefined) return undefined;
  const answer = await prompt(
    `At which stop? ${likely.because}; ${stops.join(', ')}, - for none`,
    likely.stop,
  );
  return answer === '-' ? undefined : answer;
}
