import { Command, Option } from 'commander';
import type { Language, Paper } from '../../core/model/delivery.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';
import { escapeControls } from '../output.js';

/** Listed here because the model loads its schemas, and help should not wait for them. */
const LANGUAGES = Object.keys({ en: true, es: true } satisfies Record<Language, true>);
const PAPERS = Object.keys({ Letter: true, A4: true } satisfies Record<Paper, true>);

interface Options {
  delivery?: string;
  output?: string;
  language?: Language;
  paper?: Paper;
  inspection?: boolean;
  templates?: string;
  json?: boolean;
}

export function checklistCommand({ output, now }: CliContext): Command {
  return new Command('checklist')
    .description('A form to print and write on, made from the rules and lines of this delivery.')
    .argument('[folder]', 'delivery folder (default: the one you are in)')
    .option('-d, --delivery <folder>', 'the same')
    .option('-o, --output <file>', 'where to write the PDF (default: checklist-LANGUAGE.pdf in the delivery)')
    .addOption(
      new Option('--language <language>', 'language of the form (default: as in delivery.yaml)').choices(
        LANGUAGES,
      ),
    )
    .addOption(new Option('--paper <paper>', 'paper (default: as in delivery.yaml)').choices(PAPERS))
    .option('--inspection', 'also a page for an inspection certificate')
    .option('--templates <folder>', 'your own templates folder')
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  dossier checklist
  dossier checklist deliveries/4711 --language es --paper A4 -o lista.pdf
  dossier record --checklist        type in what was written, box by box

Every box has a number. They stay the same as long as delivery.yaml and the rule set do.`,
    )
    .action(async (folder: string | undefined, options: Options) => {
      const { writeChecklist } = await import('../../jobs/checklist/make.js');
      const { output: to, language: inLanguage, paper: on, inspection, templates } = options;
      const made = await writeChecklist({
        folder: deliveryFolder(options.delivery ?? folder),
        by: resolveEnteredBy(undefined),
        now,
        ...omitUndefined({ to, language: inLanguage, paper: on, inspection, templates }),
      });
      if (options.json === true) return output.json(made);
      output.line(`${escapeControls(made.file)}  ${made.pages} ${made.pages === 1 ? 'page' : 'pages'}`);
    });
}
