import { Command } from 'commander';
import { hanging } from '../../core/words/wrap.js';
import type { CollectedItem, CollectInput, CollectReport } from '../../jobs/collect.js';
import { DELIVERY, JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';
import { escapeControls, pathForShell } from '../output.js';
import { printWrapped } from '../print.js';
import { printProblem } from '../problems.js';
import { tableLines } from '../table.js';

interface Options {
  delivery?: string;
  by?: string;
  logZone?: string;
  logUnit?: string;
  logDates?: string;
  shockUnit?: string;
  map?: string;
  dryRun?: boolean;
  sure?: boolean;
  json?: boolean;
}

export function collectCommand({ output, exit, now, interruption }: CliContext): Command {
  return new Command('collect')
    .description('Take files or folders in as evidence; the originals stay as they are.')
    .argument('<paths...>', 'files or folders')
    .addOption(DELIVERY)
    .option('--by <name>', 'who takes it in (default: DOSSIER_BY or your account)')
    .option('--log-zone <zone>', "time zone of the unit log's clock, when the log does not say")
    .option('--log-unit <unit>', "°F or °C of the unit log, when the log's header does not say")
    .option(
      '--log-dates <order>',
      'month-day-year, day-month-year or year-month-day, when the dates do not show it',
    )
    .option('--shock-unit <unit>', 'g, m/s², ft/s², mph/s or km/h/s of a table of shocks that states none')
    .option('--map <yaml>', 'a file that says how the log’s columns are read')
    .option('--sure', 'rows of a readings table that lie far from the rest are right as they are written')
    .option('--dry-run', 'look only: what each file would be taken for, and the first rows of a log')
    .addOption(JSON_ANSWER)
    .addHelpText(
      'after',
      `
Examples:
  dossier collect ~/Pictures/load-4711
  dossier collect unit.csv --log-zone America/Phoenix
  dossier collect unit.csv --map unit-map.yaml --dry-run
  dossier collect paper/*.pdf photos -d deliveries/4711

A captions.csv beside the files (file, subject, stop, line, position, compartment, by, caption)
says what they show. Ctrl-C stops after the file whose turn it is; run it again for the
rest. Taking the same file in twice adds nothing; a log that was not
read before, or was read otherwise, is read as --log-zone, --log-unit, --log-dates or
--map says, and only this last reading counts. A map file has, as far as needed: columns (time, date, clock, set-point,
return-air, supply-air, ambient, probe, probe-2 …, mode, defrost, door, power, alarm,
fuel: a heading, or a number from 1), units, zone, dates, delimiter, decimal, header,
encoding, only, sheet; see docs/formats/unit-logs.md.`,
    )
    .action(async (paths: string[], options: Options) => {
      const input: CollectInput = {
        folder: deliveryFolder(options.delivery),
        paths,
        by: resolveEnteredBy(options.by),
        now,
        logZone: options.logZone,
        logUnit: options.logUnit,
        logDates: options.logDates,
        shockUnit: options.shockUnit,
        map: options.map,
        ...(options.sure === true ? { sure: true } : {}),
        progress: (at) => output.progress(at),
        signal: interruption(),
      };
      if (options.dryRun === true) return lookOnly(input, options.json === true, { output, exit });
      const { collect } = await import('../../jobs/collect.js');
      const report = await collect(input);
      if (report.problems.length > 0) exit(EXIT.badInput);
      if (options.json === true) return output.json(report);
      for (const notice of report.notices) output.note(escapeControls(notice));
      for (const line of itemLines(report.items, output.width)) output.line(line);
      const { taken, held, readings, refused } = report.counts;
      output.line();
      output.line(
        `${taken} taken in, ${readings} readings in them; ${held} already held, nothing added for those; ${refused} refused.`,
      );
      for (const problem of report.problems) printProblem(output, problem);
      for (const line of questionLines(report.questions, options.delivery)) output.line(line);
      if (taken > 0)
        output.note(
          `Next: dossier gaps${options.delivery === undefined ? '' : ` ${pathForShell(options.delivery)}`}`,
        );
    });
}

/** Shows how the files would be recorded, and the mapping and first rows of a unit log. */
async function lookOnly(
  input: CollectInput,
  json: boolean,
  { output, exit }: Pick<CliContext, 'output' | 'exit'>,
): Promise<void> {
  const { dryRun } = await import('../../jobs/collect/dry-run.js');
  const report = await dryRun(input);
  if (report.problems.length > 0) exit(EXIT.badInput);
  if (json) return output.json(report);
  const { printLogPreview } = await import('../lists/log-preview.js');
  for (const { file, heldAs, sameAs, takenFor, when, flags, log } of report.items) {
    const twin = heldAs ?? sameAs;
    const held = twin === undefined ? '' : `; the same bytes as ${twin}`;
    output.line(escapeControls(file));
    const told = [
      `${takenFor}${when === '' ? '' : `; ${when}`}${held}`,
      ...flags.map((f) => `(${f.is}: ${f.detail})`),
    ];
    printWrapped(output, told.join(' '), { mark: '        ' });
    if (log !== undefined) printLogPreview(output, log);
  }
  for (const notice of report.notices) output.note(escapeControls(notice));
  for (const problem of report.problems) printProblem(output, problem);
}

/** One line a file where the terminal is wide enough, two where it is not. */
function itemLines(items: readonly CollectedItem[], width: number): string[] {
  // Files that an archive brought before are counted, not listed.
  const told = items.filter((item) => item.outcome !== 'already-held' || item.within === undefined);
  const rows = told.map((item) => [
    item.evidence ?? '-',
    item.file,
    item.when,
    [item.takenFor, ...item.flags.map((flag) => `(${flag.is})`)].join(' '),
  ]);
  if (width >= 120) return tableLines(rows, width);
  return rows.flatMap(([id = '', file = '', when = '', taken = '']) => {
    const told = when === '' ? taken : `${taken}; ${when}`;
    return [
      `${id.padEnd(5)} ${escapeControls(file)}`,
      ...hanging(escapeControls(told), Math.max(40, width), '        '),
    ];
  });
}

/** The delivery as the next command names it, so that the command can be copied. */
const inDelivery = (folder: string | undefined) =>
  folder === undefined ? '' : ` -d ${pathForShell(folder)}`;

/** Open questions, how many of each, and the command that answers them. */
function questionLines(questions: CollectReport['questions'], delivery: string | undefined): string[] {
  if (questions.length === 0) return [];
  return [
    '',
    'Needs an answer:',
    ...questions.flatMap(({ what, evidence, command }) => [
      `  ${evidence.length} × ${what}`,
      `      ${escapeControls(command)}${inDelivery(delivery)}`,
    ]),
  ];
}
