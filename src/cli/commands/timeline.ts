import { Command } from 'commander';
import type { TimelineReport } from '../../jobs/timeline.js';
import { DossierError } from '../../model/error.js';
import type { TimelineInterval, TimelineItem } from '../../model/results.js';
import { deliveryFolder } from '../folder.js';
import type { CliContext } from '../program.js';
import { tableLines } from '../table.js';
import { when } from '../when.js';
import { whoEnters } from '../who.js';

interface Options {
  json?: boolean;
  csv?: boolean;
  svg?: boolean;
}

export function timelineCommand({ output, now }: CliContext): Command {
  return new Command('timeline')
    .description('Everything with a known time, each in the local time of its place, and the intervals.')
    .argument('[folder]', 'delivery folder (default: the one you are in)')
    .option('--json', 'the answer as JSON')
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
      const { timeline, timelineCsv, timelineSvg, lineOf } = await import('../../jobs/timeline.js');
      const report = await timeline({ folder: deliveryFolder(folder), by: whoEnters(undefined), now });
      const found = report.assessment.timeline;
      if (options.json === true) return output.json({ delivery: report.state.delivery.delivery, ...found });
      if (options.csv === true) return output.line(timelineCsv(report).trimEnd());
      if (options.svg === true) return output.line(await timelineSvg(report));
      const rows = found.items.map((item) => row(item, lineOf(report, item)));
      for (const line of tableLines(rows, output.width)) output.line(line);
      if (rows.length === 0) output.line('Nothing with a known time is in the record.');
      if (found.intervals.length > 0) {
        output.line();
        for (const line of tableLines(
          found.intervals.map((one) => interval(one, report)),
          output.width,
        ))
          output.line(line);
      }
      if (found.untimed.length > 0) {
        output.line();
        output.line(`Without a known time: ${found.untimed.join(', ')}`);
      }
    });
}

function row(item: TimelineItem, line: string | undefined): string[] {
  const said = item.event === undefined ? `${item.is}: ${item.label}` : eventWords(item);
  return [
    when(item.at, item.zone),
    item.uncertaintySeconds >= 60 ? `±${Math.round(item.uncertaintySeconds / 60)} min` : '',
    item.stop ?? '',
    item.evidence ?? '',
    line === undefined ? said : `${said} (${line})`,
  ];
}

/** An event by its name, and its note where it has one. */
function eventWords({ event, label }: TimelineItem): string {
  const name = (event ?? '').replaceAll('-', ' ');
  return label === name ? name : `${name}: ${label}`;
}

function interval(one: TimelineInterval, { startZone, endZone, state }: TimelineReport): string[] {
  const zone = state.delivery.stops.find(({ id }) => id === one.stop)?.zone;
  const minutes = Math.round(one.seconds / 60);
  return [
    one.id.replaceAll('-', ' '),
    one.stop ?? '',
    `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`,
    `${when(one.from, zone ?? startZone)} to ${when(one.to, zone ?? endZone)}`,
  ];
}
