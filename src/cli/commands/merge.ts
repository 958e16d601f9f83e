import { Command } from 'commander';
import type { MergeReport } from '../../jobs/merge.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';
import { escapeControls, type Output } from '../output.js';
import { counted, idInWords } from '../print.js';
import { printProblem } from '../problems.js';
import { tableLines } from '../table.js';

interface Options {
  delivery?: string;
  enteredBy?: string;
  dryRun?: boolean;
  json?: boolean;
}

export function mergeCommand({ output, now }: CliContext): Command {
  return new Command('merge')
    .description('Take over from another copy of this delivery what this one lacks.')
    .argument('<other>', 'folder of the other copy; it stays as it is')
    .option('-d, --delivery <folder>', 'the delivery (default: the folder you are in)')
    .option('--dry-run', 'say what would be taken over, write nothing')
    .option('--entered-by <name>', 'who merges (default: DOSSIER_BY or your account)')
    .option('--json', 'the answer as JSON')
    .addHelpText(
      'after',
      `
Examples:
  dossier merge "/shared/4711 (copy)" -d deliveries/4711 --dry-run
  dossier merge ~/phone/4711 -d deliveries/4711

For two people who each kept a record of one delivery, or a shared drive that kept both.
Files, readings, descriptions, claim notes, corrections and strikes come over as entries that
name where they were, when and by whom they were entered first. What both hold is not doubled;
where they say different things, the word here stays and both are named. Fingerprints of either
record stay provable: dossier verify. Merging the same copy again adds nothing.`,
    )
    .action(async (other: string, options: Options) => {
      const { merge } = await import('../../jobs/merge.js');
      const dryRun = options.dryRun === true;
      const report = await merge({
        folder: deliveryFolder(options.delivery),
        other,
        by: resolveEnteredBy(options.enteredBy),
        now,
        dryRun,
      });
      if (options.json === true) return output.json(report);
      printMerge(output, report, dryRun);
    });
}

function printMerge(output: Output, report: MergeReport, dryRun: boolean): void {
  for (const notice of report.notices) output.note(escapeControls(notice));
  const rows = report.taken.map(({ entry, entryThere, type, evidence, file, by }) => [
    evidence ?? `#${entry}`,
    [idInWords(type), file].filter((part) => part !== undefined).join(', '),
    `entry ${entryThere} there, by ${by}`,
  ]);
  for (const line of tableLines(rows, output.width)) output.line(line);
  if (rows.length > 0) output.line();
  for (const line of summaryLines(report, dryRun)) output.line(line);
  if (report.problems.length > 0)
    output.note(`${counted(report.problems.length, 'thing')} for a person to decide:`);
  for (const problem of report.problems) printProblem(output, problem);
}

function summaryLines(
  { merge, other, shared, taken, held, statesThere }: MergeReport,
  dryRun: boolean,
): string[] {
  const both = `${counted(shared, 'entry', 'entries')} begin both; ${held} of the others are here already`;
  if (merge === undefined) return [`Nothing is lacking here: ${both}; nothing was written.`];
  const states =
    statesThere === 0
      ? []
      : [
          `${counted(statesThere, 'fingerprint, time stamp or dossier', 'fingerprints, time stamps or dossiers')} of the other record stay in its ledger, which is kept.`,
        ];
  const what = counted(taken.length, 'entry', 'entries');
  return [
    dryRun
      ? `${what} would be taken over; ${both}; nothing was written.`
      : `${what} taken over (entry ${merge} tells of the merge); ${both}.`,
    ...states,
    `Fingerprint of the other record: ${escapeControls(other.delivery)} ${other.size} ${other.root}`,
  ];
}
