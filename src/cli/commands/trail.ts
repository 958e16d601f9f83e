import { Command } from 'commander';
import { DossierError } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';
import { escapeControls } from '../output.js';

interface Options {
  delivery?: string;
  of?: string;
  zone?: string;
  json?: boolean;
  csv?: boolean;
  pdf?: string;
}

export function trailCommand({ output, now }: CliContext): Command {
  return new Command('trail')
    .description('The audit trail: every entry, who, when, what, from which file, and what it changed.')
    .argument('[folder]', 'delivery folder (default: the one you are in)')
    .option('-d, --delivery <folder>', 'the same')
    .option('--of <id>', 'only the life of one piece of evidence, such as e7')
    .option('--zone <zone>', 'zone of the times of entering (default: that of the first place of loading)')
    .addOption(JSON_ANSWER)
    .option('--csv', 'as CSV, for a spreadsheet')
    .option('--pdf <file>', 'as PDF')
    .addHelpText(
      'after',
      `
Examples:
  dossier trail
  dossier trail --of e7                         the life of one photo
  dossier trail deliveries/4711 --csv > trail.csv
  dossier trail --pdf trail.pdf

The record is checked before anything is shown. Times of entering are by the clock of the machine
that entered them; a fingerprint sent to others, or a time stamp, bounds them from outside.`,
    )
    .action(async (folder: string | undefined, options: Options) => {
      const chosen = (['json', 'csv', 'pdf'] as const).filter((name) => options[name] !== undefined);
      if (chosen.length > 1)
        throw new DossierError('bad-usage', 'these options do not go together', {
          where: { field: `--${chosen.join(' --')}` },
          fix: 'Use one of --json, --csv and --pdf.',
        });
      const { trail, trailCsv, writeTrailPdf } = await import('../../jobs/trail.js');
      const report = await trail({
        folder: deliveryFolder(options.delivery ?? folder),
        by: resolveEnteredBy(undefined),
        now,
        ...omitUndefined({ of: options.of, zone: options.zone }),
      });
      const { rows, state, zone, of } = report;
      if (options.json === true)
        return output.json({
          delivery: state.delivery.delivery,
          size: state.size,
          root: state.root,
          zone,
          ...omitUndefined({ of }),
          entries: rows,
        });
      if (options.csv === true) return output.document(trailCsv(report));
      if (options.pdf !== undefined) {
        const written = await writeTrailPdf(report, options.pdf, now);
        return output.line(
          `${escapeControls(written.file)}: ${rows.length} entries on ${written.pages} pages`,
        );
      }
      const { printTrail } = await import('../lists/trail-list.js');
      printTrail(output, report);
    });
}
