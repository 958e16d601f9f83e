import type { JoinedLogs, LogOverlap, RowDisagreement } from '../core/assess/logs/join.js';
import type { TemperatureUnit } from '../core/model/temperature.js';
import { fromCelsius } from '../core/model/temperature.js';
import type { Zone } from '../core/model/time.js';
import { formatLocalTime } from './local-time.js';

/** Disagreements that are listed; the JSON holds up to a thousand. */
const LISTED_ROWS = 5;

/** Which files are one log, which are parallel, and the rows in which downloads of one unit disagree. */
export function overlapLines(
  { overlaps, disagreements, disagreementCount }: Omit<JoinedLogs, 'joined'>,
  unit: TemperatureUnit,
  zone: Zone,
): string[] {
  const more = disagreementCount - Math.min(LISTED_ROWS, disagreements.length);
  return [
    ...overlaps.map((one) => overlapLine(one, zone)),
    ...disagreements.slice(0, LISTED_ROWS).map((one) => disagreementLine(one, unit, zone)),
    ...(more > 0 ? [`and ${more} more rows that disagree: dossier temps --json`] : []),
  ];
}

function overlapLine(
  { logs: [a, b], span, sharedRows, agreeingRows, joined }: LogOverlap,
  zone: Zone,
): string {
  const time = `${formatLocalTime(span.from, zone)} to ${formatLocalTime(span.to, zone)}`;
  const rows = `${sharedRows} rows of the same moment, ${agreeingRows} with the same temperatures`;
  return joined
    ? `${a} and ${b} are downloads of one instrument and are computed as one log; both cover ${time}: ${rows}`
    : `${a} and ${b} both cover ${time} and are kept as two instruments: ${rows}`;
}

function disagreementLine(
  { at, counts, other, differences }: RowDisagreement,
  unit: TemperatureUnit,
  zone: Zone,
): string {
  const degrees = (celsius: number): string => `${fromCelsius(celsius, unit).toFixed(1)} ${unit}`;
  const what = differences.map((one) =>
    one.is === 'channel'
      ? `${one.channel} ${degrees(one.first)} and ${degrees(one.second)}`
      : `${one.state} "${one.first}" and "${one.second}"`,
  );
  return `${formatLocalTime(at, zone)}: ${counts.log} row ${counts.row} and ${other.log} row ${other.row} disagree: ${what.join(', ')}; the first counts`;
}
