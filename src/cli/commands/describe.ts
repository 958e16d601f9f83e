import { Command } from 'commander';
import { DossierError } from '../../core/model/error.js';
import type { DescribeReport } from '../../jobs/describe.js';
import { DELIVERY, ENTERED_BY, JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';
import { escapeControls } from '../output.js';
import { isInteractive } from '../prompts.js';

interface Options {
  subject?: string;
  line?: string;
  stop?: string;
  position?: string;
  compartment?: string;
  by?: string;
  caption?: string;
  time?: string;
  sure?: boolean;
  blackOut?: string[];
  why?: string;
  confirm?: boolean;
  confirmAll?: boolean;
  withhold?: boolean;
  delivery?: string;
  enteredBy?: string;
  json?: boolean;
}

/** Options that describe evidence; the other options say what to do with it. */
const SAID = [
  'subject',
  'line',
  'stop',
  'position',
  'compartment',
  'by',
  'caption',
  'time',
  'blackOut',
] as const;

export function describeCommand({ output, now }: CliContext): Command {
  return new Command('describe')
    .description('Say what evidence shows, confirm what is proposed, or correct it.')
    .argument('[evidence...]', 'one or more, such as e71 e72')
    .option('--subject <subject>', 'what it shows, such as damage, pulp-display or bill-of-lading')
    .option('--line <line>', 'which line of the bill')
    .option('--stop <stop>', 'at which stop')
    .option('--position <position>', 'nose, middle or tail')
    .option('--compartment <name>', 'compartment of the trailer, where it has several')
    .option('--by <name>', 'who took it or saw it')
    .option('--caption <text>', 'what is to be said beside it')
    .option(
      '--black-out <x,y,width,height...>',
      'part of a picture that is black in copies for outsiders, as fractions from left and top; none takes all back',
    )
    .option('--time <time>', 'when, local to the stop')
    .option('--sure', 'the time is right, although it lies far from the delivery')
    .option('--why <text>', 'why an earlier statement is corrected, or evidence withheld')
    .option('--confirm', 'confirm what is proposed of the evidence named')
    .option('--confirm-all', 'confirm all that is proposed')
    .option('--withhold', 'leave it out of copies for outsiders; its hash and the count stay')
    .addOption(DELIVERY)
    .addOption(ENTERED_BY)
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  dossier describe e71 --subject damage --line romaine --stop drop-1 --caption "Carton R-08, crushed"
  dossier describe e71 e72 --subject damage
  dossier describe --confirm e71 e72
  dossier describe --withhold e80 --why "a person's face"
  dossier describe                       asks about each that is only proposed; ? lists
                                         the subjects with what they mean, o opens the file

Each statement is a new entry in the record; a correction never changes what was said before.`,
    )
    .action(async (evidence: string[], options: Options) => {
      const jobs = await import('../../jobs/describe.js');
      const common = {
        folder: deliveryFolder(options.delivery),
        by: resolveEnteredBy(options.enteredBy),
        now,
      };
      const acts = [options.confirm, options.confirmAll, options.withhold].filter(
        (act) => act === true,
      ).length;
      const says = SAID.some((field) => options[field] !== undefined);
      if (acts > 1 || (acts === 1 && says)) throw oneThing();
      if (acts === 0 && !says) {
        if (!isInteractive() || options.json === true) throw nothingSaid(evidence);
        const { promptForEvidence } = await import('../describe-prompts.js');
        return promptForEvidence(output, common, evidence);
      }
      if (evidence.length === 0 && options.confirmAll !== true) throw nothingSaid(evidence);
      const report = await jobs.describe({
        ...common,
        evidence,
        ...(options.confirmAll === true
          ? { act: 'confirm-all' as const }
          : options.confirm === true
            ? { act: 'confirm' as const }
            : options.withhold === true
              ? { act: 'withhold' as const, why: options.why }
              : { act: 'say' as const, says: options }),
      });
      if (options.json === true) return output.json(report);
      for (const notice of report.notices) output.note(notice);
      for (const line of describedLines(report)) output.line(line);
    });
}

function describedLines({ described, unchanged }: DescribeReport): string[] {
  const lines = described.map(({ evidence, said }) => `${evidence.padEnd(5)} ${escapeControls(said)}`);
  if (unchanged.length > 0) lines.push(`${unchanged.join(' ')}: nothing new, nothing added.`);
  if (lines.length === 0) lines.push('Nothing is proposed; nothing added.');
  return lines;
}

function oneThing(): DossierError {
  return new DossierError('bad-usage', 'these options do not go together', {
    where: { field: '--confirm, --confirm-all, --withhold' },
    fix: 'Use one of them alone, or say what the evidence shows with the other options.',
  });
}

function nothingSaid(evidence: readonly string[]): DossierError {
  const [first = 'e1'] = evidence;
  return new DossierError(
    'bad-usage',
    evidence.length === 0 ? 'no evidence named' : 'nothing said about it',
    {
      fix: `Say it like: dossier describe ${first} --subject damage, or dossier describe --confirm ${first}. On a terminal, dossier describe alone asks.`,
    },
  );
}
