import { Command } from 'commander';
import { DossierError } from '../../core/model/error.js';
import { JSON_ANSWER } from '../common-options.js';
import type { CliContext } from '../context.js';
import { resolveEnteredBy } from '../entered-by.js';
import { deliveryFolder } from '../folder.js';

interface Options {
  delivery?: string;
  json?: boolean;
  csv?: boolean;
  svg?: boolean;
}

export function timelineCommand({ output, now }: CliContext): Command {
  return new Command('timeline')
    .description('Everything with a known time, each in the local time of its place, and the intervals.')
    .argument('[folder]', 'delivery folder (default: the one you are in)')
    .option('-d, --delivery <folder>', 'the same')
    .addOption(JSON_ANSWER)
    .option('--csv', 'the items as CSV')
    .option('--svg', 'the dossier’s picture as SVG')
    .addHelpText(
      'after',
      `
Examples:
  dossier timeline
  dossier timeline deliveries/4711 --csv > timeline.csv
  dossier timeline --svg > timeline.svg

What has no known time is listed apart and never placed.`,
    )
    .action(async (folder: string | undefined, options: Options) => {
      const chosen = (['json', 'csv', 'svg'] as const).filter((name) => options[name] === true);
      if (chosen.length > 1)
        throw new DossierError('bad-usage', 'these options do not go together', {
          where: { field: `--${chosen.join(' --')}` },
          fix: 'Use one of --json, --csv and --svg.',
        });
      const { timeline, timelineCsv, timelineSvg, lineOfItem } = await import('../../jobs/timeline.js');
      const report = await timeline({
        folder: deliveryFolder(options.delivery ?? folder),
        by: resolveEnteredBy(undefined),
        now,
      });
      const found = report.assessment.timeline;
      if (options.json === true) return output.json({ delivery: report.state.delivery.delivery, ...found });
      if (options.csv === true) return output.document(timelineCsv(report));
      if (options.svg === true) return output.document(await timelineSvg(report));
      const { printTimeline } = await import('../lists/timeline-list.js');
      printTimeline(output, report, (item) => lineOfItem(report, item));
    });
}
