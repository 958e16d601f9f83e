import type { TimelineInterval, TimelineItem } from '../core/model/results.js';
import type { TimelineReport } from '../jobs/timeline.js';
import { formatLocalTime } from './local-time.js';
import type { Output } from './output.js';
import { tableLines } from './table.js';

/** Items in the order of time, then the intervals, then evidence without a known time. */
export function printTimeline(
  output: Output,
  report: TimelineReport,
  lineOf: (item: TimelineItem) => string | undefined,
): void {
  const found = report.assessment.timeline;
  const rows = found.items.map((item) => row(item, lineOf(item)));
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
}

function row(item: TimelineItem, line: string | undefined): string[] {
  const said = item.event === undefined ? `${item.is}: ${item.label}` : eventWords(item);
  return [
    formatLocalTime(item.at, item.zone),
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
    `${formatLocalTime(one.from, zone ?? startZone)} to ${formatLocalTime(one.to, zone ?? endZone)}`,
  ];
}
