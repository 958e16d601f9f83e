import { Command } from 'commander';
import { DossierError } from '../../core/model/error.js';
import { JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { EXIT } from '../exit.js';
import { deliveryFolder } from '../folder.js';
import { escapeControls } from '../output.js';

interface Options {
  delivery?: string;
  json?: boolean;
  csv?: boolean;
  svg?: boolean;
  log?: string;
  from?: string;
  to?: string;
  leg?: string;
}

export function tempsCommand({ output, exit, now }: CliContext): Command {
  return new Command('temps')
    .description('What the unit log shows over the transit window: band, excursions, coverage, pulps.')
    .argument('[folder]', 'delivery folder (default: the one you are in)')
    .option('-d, --delivery <folder>', 'the same')
    .option('--from <time>', 'from this moment instead of the doors closing, such as 2026-07-14T05:00')
    .option('--to <time>', 'to this moment instead of the doors opening')
    .option('--leg <leg>', 'one leg only: its number, or its stops as load-1..drop-1')
    .option('--log <id>', 'one log only, such as e5, or e5-front for one compartment of it')
    .addOption(JSON_ANSWER)
    .option('--csv', 'the excursions as CSV')
    .option('--svg', 'the dossier’s chart as SVG')
    .addHelpText(
      'after',
      `
Examples:
  dossier temps
  dossier temps deliveries/4711 --json
  dossier temps --from 2026-07-15T00:00 --to 2026-07-15T12:00
  dossier temps --leg 2
  dossier temps --csv > excursions.csv
  dossier temps --svg > chart.svg

Temperatures between samples lie on straight lines; over gaps nothing is assumed. Times without an offset are
those of the first stop (--from) and of the last (--to). How each number is computed: docs/method.md.
Exits with 1 when there is no usable unit log.`,
    )
    .action(async (folder: string | undefined, options: Options) => {
      const chosen = (['json', 'csv', 'svg'] as const).filter((name) => options[name] === true);
      if (chosen.length > 1 || (options.leg !== undefined && (options.from ?? options.to) !== undefined))
        throw new DossierError('bad-usage', 'these options do not go together', {
          where: { field: chosen.length > 1 ? `--${chosen.join(' --')}` : '--leg --from --to' },
          fix: 'Use one of --json, --csv and --svg; and either --leg or --from and --to.',
        });
      const [{ readAt }, { temperatures, temperatureSvg }] = await Promise.all([
        import('../../jobs/typed/read-at.js'),
        import('../../jobs/temperatures.js'),
      ]);
      const report = await temperatures({
        folder: deliveryFolder(options.delivery ?? folder),
        at: readAt(undefined, now),
        by: resolveEnteredBy(undefined),
        now,
        from: options.from,
        to: options.to,
        leg: options.leg,
      });
      const { state, assessment, startZone, endZone } = report;
      const named = ({ log, compartment }: { log: string; compartment?: string }) =>
        compartment === undefined ? log : `${log}-${compartment}`;
      const results = report.results.filter(
        (one) => options.log === undefined || one.log === options.log || named(one) === options.log,
      );
      if (options.log !== undefined && results.length === 0)
        throw new DossierError('bad-usage', `there is no usable unit log "${options.log}"`, {
          where: { field: '--log' },
          fix: `The logs are: ${report.results.map(named).join(', ') || 'none'}.`,
        });
      if (results.length === 0) exit(EXIT.no);
      if (options.json === true)
        return output.json({
          delivery: state.delivery.delivery,
          temperatures: results,
          pulps: assessment.pulps,
          pulpComparisons: assessment.pulpComparisons,
          margins: assessment.margins,
          product: assessment.product,
          sensorDifferences: assessment.sensorDifferences,
          recorders: assessment.recorders,
          longestWithoutRound: assessment.longestWithoutRound,
          logs: report.overlaps,
        });
      if (options.csv === true) {
        const { excursionsCsv } = await import('../../jobs/computed-data.js');
        for (const { log, excursions, excursionTotals } of results)
          if (excursionTotals.count > excursions.length)
            output.note(
              `${log}: ${excursionTotals.count - excursions.length} more of fewer degree-hours are not listed`,
            );
        return output.document(excursionsCsv({ ...assessment, temperatures: results }));
      }
      const [first, ...others] = results;
      if (first === undefined)
        return output.line(
          report.logs.length === 0
            ? 'No unit log counts: none was taken in, or none of this trailer and time.'
            : 'Nothing in the record says when the goods were aboard, so\nnothing is computed of the log. When were the doors closed at loading, and\nopened at unloading? dossier record event doors-closed --stop … --at …',
        );
      if (options.svg === true) {
        if (others.length > 0)
          throw new DossierError('bad-usage', 'there are several unit logs', {
            where: { field: '--svg' },
            fix: `Name one with --log: ${results.map(named).join(', ')}.`,
          });
        return output.document(await temperatureSvg(report, first));
      }
      const [{ printTemperatures }, { printGoods }, { terminalFormat }, { logNamed }] = await Promise.all([
        import('../lists/temperatures.js'),
        import('../lists/goods.js'),
        import('../quantities.js'),
        import('../../core/assess/logs/compartments.js'),
      ]);
      const format = terminalFormat(state.delivery.show.temperature);
      const view = { format, startZone, endZone, ascii: process.env.TERM === 'dumb' };
      for (const result of results) {
        printTemperatures(output, result, logNamed(report.logs, result), view);
        output.line();
      }
      const { printRecorders } = await import('../lists/recorders.js');
      printRecorders(output, assessment, format, startZone);
      printGoods(output, assessment, format);
      const { overlapLines } = await import('../lists/log-overlaps.js');
      for (const line of overlapLines(report.overlaps, format, startZone)) output.note(escapeControls(line));
    });
}
