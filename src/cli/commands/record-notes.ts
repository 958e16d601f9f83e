import type { Command } from 'commander';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { NotesReport } from '../../jobs/record-notes.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';
import { escapeControls } from '../output.js';
import { printProblem } from '../problems.js';
import { tableLines } from '../table.js';

export const NOTES_EXAMPLE = 'dossier record --notes notes.txt --dry-run';

interface Options {
  notes?: string;
  checklist?: string | true;
  dryRun?: boolean;
  sure?: boolean;
  why?: string;
  date?: string;
  stop?: string;
  by?: string;
  enteredBy?: string;
  delivery?: string;
  json?: boolean;
}

/** `dossier record` without a kind reads a text file of one note a line. */
export function notesOptions(command: Command, context: CliContext): Command {
  const { output, exit, now } = context;
  return command
    .option(
      '--checklist [file]',
      'what was written on the printed form: from a file, or asked box by box, where q saves and stops',
    )
    .option('--notes <file>', 'a text file of one note a line, such as: 04:10 pulp 34.2F romaine nose load-1')
    .option('--dry-run', 'with --notes or --checklist: say how each line is understood, write nothing')
    .option('--sure', 'with --notes or --checklist: what is far from its kin is right as it is written')
    .option('--why <text>', 'with --checklist: why an answer is another one than an earlier form gave')
    .option('--date <day>', 'with --notes: the day of lines that name none, such as 2026-07-14')
    .option('--stop <stop>', 'with --notes: the stop of lines that name none')
    .option('--by <name>', 'with --notes: who noted the lines that name nobody')
    .option('--entered-by <name>', 'with --notes: who enters them (default: DOSSIER_BY or your account)')
    .option('-d, --delivery <folder>', 'with --notes: the delivery (default: the folder you are in)')
    .option('--json', 'with --notes: the answer as JSON')
    .action(async (options: Options) => {
      const [kind] = command.args;
      if (kind !== undefined) return unknownKind(command, kind);
      const { notes: file, date, stop, by } = options;
      if (options.checklist !== undefined) {
        const { recordChecklist } = await import('./record-checklist.js');
        const open = {
          folder: deliveryFolder(options.delivery),
          by: resolveEnteredBy(options.enteredBy ?? by),
          now,
        };
        return recordChecklist(context, open, {
          checklist: options.checklist,
          dryRun: options.dryRun === true,
          sure: options.sure === true,
          why: options.why,
          json: options.json === true,
        });
      }
      if (file === undefined) return command.help({ error: true });
      const { recordNotes } = await import('../../jobs/record-notes.js');
      const report = await recordNotes({
        folder: deliveryFolder(options.delivery),
        file,
        dryRun: options.dryRun === true,
        sure: options.sure === true,
        standing: {
          ...omitUndefined({ date, stop, by }),
        },
        by: resolveEnteredBy(options.enteredBy ?? by),
        now,
      });
      if (report.problems.length > 0) exit(EXIT.badInput);
      if (options.json === true) return output.json(report);
      for (const notice of report.notices) output.note(escapeControls(notice));
      for (const line of tableLines(rows(report), output.width)) output.line(line);
      output.line();
      output.line(summary(report, options.dryRun === true));
      for (const problem of report.problems) printProblem(output, problem);
    });
}

/** An unknown kind would otherwise be reported as too many arguments for --notes. */
async function unknownKind(command: Command, kind: string): Promise<never> {
  const { nearestWord } = await import('../../intake/settings/did-you-mean.js');
  const kinds = command.commands.map((one) => one.name());
  const close = nearestWord(kind, kinds);
  const choice = close === undefined ? `Use one of: ${kinds.join(', ')}.` : `Did you mean ${close}?`;
  return command.error(`error: unknown command '${kind}'\n(${choice})`);
}

const REMARK: Readonly<Record<NotesReport['lines'][number]['outcome'], string>> = {
  recorded: '',
  understood: '',
  'already-held': ' (recorded before)',
  doubted: ' (to be looked at again)',
};

function rows({ lines }: NotesReport): string[][] {
  return lines.map(({ row, said, outcome, evidence }) => [
    String(row),
    evidence ?? '',
    `${said}${REMARK[outcome]}`,
  ]);
}

function summary({ lines, counts, evidence }: NotesReport, dryRun: boolean): string {
  const refused = `${counts.refused} refused`;
  const understood = lines.filter(({ outcome }) => outcome !== 'doubted').length;
  if (dryRun) return `${understood} understood, ${refused}; nothing was written.`;
  const from = evidence === undefined ? '' : ` from ${evidence}`;
  return `${counts.recorded} recorded${from}; ${counts.held} recorded before, nothing added for those; ${refused}.`;
}
