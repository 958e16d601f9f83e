import type { TimelineInterval, TimelineItem } from '../../core/model/results.js';
import type { Format } from '../../core/words/format.js';
import type { TimelineReport } from '../../jobs/timeline.js';
import type { Output } from '../output.js';
import { idInWords } from '../print.js';
import { terminalFormat } from '../quantities.js';
import { tableLines } from '../table.js';

/** Items in the order of time, then the intervals, then evidence without a known time. */
export function printTimeline(
  output: Output,
  report: TimelineReport,
  lineOf: (item: TimelineItem) => string | undefined,
): void {
  const found = report.assessment.timeline;
  const format = terminalFormat(report.state.delivery.show.temperature);
  const rows = found.items.map((item) => row(item, lineOf(item), format));
  for (const line of tableLines(rows, output.width)) output.line(line);
  if (rows.length === 0) output.line('Nothing with a known time is in the record.');
  if (found.intervals.length > 0) {
    output.line();
    for (const line of tableLines(
      found.intervals.map((one) => interval(one, report, format)),
      output.width,
    ))
      output.line(line);
  }
  if (found.untimed.length > 0) {
    output.line();
    output.line(`Without a known time: ${found.untimed.join(', ')}`);
  }
}

function row(item: TimelineItem, line: string | undefined, format: Format): string[] {
  const said = item.event === undefined ? `${item.is}: ${item.label}` : eventWords(item);
  return [
    format.time(item.at, item.zone),
    item.uncertaintySeconds >= 60 ? `±${format.duration(item.uncertaintySeconds)}` : '',
    item.stop ?? '',
    item.evidence ?? '',
    line === undefined ? said : `${said} (${line})`,
  ];
}

/** An event by its name, and its note where it has one. */
function eventWords({ event, label }: TimelineItem): string {
  const name = idInWords(event ?? '');
  return label === name ? name : `${name}: ${label}`;
}

function interval(
  one: TimelineInterval,
  { startZone, endZone, state }: TimelineReport,
  format: Format,
): string[] {
  const zone = state.delivery.stops.find(({ id }) => id === one.stop)?.zone;
  return [
    idInWords(one.id),
    one.stop ?? '',
    format.duration(one.seconds),
    `${format.time(one.from, zone ?? startZone)} to ${format.time(one.to, zone ?? endZone)}`,
  ];
}
