import type { JoinedLogs, LogOverlap, RowDisagreement } from '../../core/assess/logs/join.js';
import type { Zone } from '../../core/model/time.js';
import type { Format } from '../../core/words/format.js';

/** Disagreements that are listed; the JSON holds up to a thousand. */
const LISTED_ROWS = 5;

/** Which files are one log, which are parallel, and the rows in which downloads of one unit disagree. */
export function overlapLines(
  { overlaps, disagreements, disagreementCount }: Omit<JoinedLogs, 'joined'>,
  format: Format,
  zone: Zone,
): string[] {
  const more = disagreementCount - Math.min(LISTED_ROWS, disagreements.length);
  return [
    ...overlaps.map((one) => overlapLine(one, format, zone)),
    ...disagreements.slice(0, LISTED_ROWS).map((one) => disagreementLine(one, format, zone)),
    ...(more > 0 ? [`and ${more} more rows that disagree: dossier temps --json`] : []),
  ];
}

function overlapLine(
  { logs: [a, b], span, sharedRows, agreeingRows, joined }: LogOverlap,
  format: Format,
  zone: Zone,
): string {
  const time = `${format.time(span.from, zone)} to ${format.time(span.to, zone)}`;
  const rows = `${sharedRows} rows of the same moment, ${agreeingRows} with the same temperatures`;
  return joined
    ? `${a} and ${b} are downloads of one instrument and are computed as one log; both cover ${time}: ${rows}`
    : `${a} and ${b} both cover ${time} and are kept as two instruments: ${rows}`;
}

function disagreementLine(
  { at, counts, other, differences }: RowDisagreement,
  format: Format,
  zone: Zone,
): string {
  const what = differences.map((one) =>
    one.is === 'channel'
      ? `${one.channel} ${format.short(one.first)} and ${format.short(one.second)}`
      : `${one.state} "${one.first}" and "${one.second}"`,
  );
  return `${format.time(at, zone)}: ${counts.log} row ${counts.row} and ${other.log} row ${other.row} disagree: ${what.join(', ')}; the first counts`;
}
