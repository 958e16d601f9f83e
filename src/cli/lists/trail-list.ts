import type { TrailRow } from '../../core/model/results.js';
import { milliseconds, type Zone } from '../../core/model/time.js';
import type { Format } from '../../core/words/format.js';
import type { TrailReport } from '../../jobs/trail.js';
import { escapeControls, type Output } from '../output.js';
import { counted, idInWords, printWrapped } from '../print.js';
import { terminalFormat } from '../quantities.js';

/** Longer values are cut here, and whole with --json. */
const LONGEST = 160;
const MOST_ON_A_LINE = 12;

/** Each entry as a head line, followed by its fields, its source and its changes. */
export function printTrail(output: Output, { rows, zone, state, of }: TrailReport): void {
  const format = terminalFormat(state.delivery.show.temperature);
  for (const row of rows) {
    const what = [idInWords(row.type), ...row.evidence, row.claim ?? ''].filter((part) => part !== '');
    output.line(
      output.style(
        'bold',
        escapeControls(
          `${String(row.seq).padStart(4)}  ${format.time(milliseconds(row.at), zone)}  ${row.by}  ${what.join(' ')}`,
        ),
      ),
    );
    for (const line of detailLines(row, zone, format)) printWrapped(output, line, { mark: '      ' });
  }
  output.line();
  output.line(
    of === undefined
      ? `${counted(state.size, 'entry', 'entries')}; the record is whole. Fingerprint ${state.root}`
      : `${rows.length} of ${state.size} entries touch ${of}; the record is whole. Fingerprint ${state.root}`,
  );
}

function detailLines(row: TrailRow, zone: Zone, format: Format): string[] {
  const { time, file, from } = row;
  return [
    ...(file === undefined
      ? []
      : [`file ${file.name}, ${counted(file.bytes, 'byte')}, SHA-256 ${file.sha256}`]),
    ...(from === undefined
      ? []
      : [
          `from ${from.evidence}${from.row === undefined ? '' : `, row ${from.row}`}${from.entry === undefined ? '' : `: ${from.entry}`}`,
        ]),
    ...(row.origin === undefined
      ? []
      : [
          `taken over from the record merged in entry ${row.origin.merge}: entry ${row.origin.entry} there, entered ${format.time(milliseconds(row.origin.at), zone)} by ${row.origin.by}`,
        ]),
    ...(time === undefined ? [] : [`happened ${happened(time, zone, format)}`]),
    ...(row.daysLate === undefined
      ? []
      : [`entered ${counted(row.daysLate, 'day')} after the time it tells of`]),
    ...(row.corrects === undefined ? [] : [`corrects entry ${row.corrects}`]),
    ...(row.strikes === undefined ? [] : [`entry ${row.strikes} does not count`]),
    ...(row.covers === undefined ? [] : [`covers the entries before ${row.covers}`]),
    ...row.changes.map(
      ({ field, before, after }) => `${field}: ${short(before ?? 'nothing')} → ${short(after ?? 'nothing')}`,
    ),
    ...(row.type === 'claim-noted' && row.corrects !== undefined ? [] : fieldLines(row.fields)),
  ];
}

/** Fields on one line; many fields on a line for each item they belong to, such as `lines romaine`. */
function fieldLines(fields: TrailRow['fields']): string[] {
  if (fields.length <= MOST_ON_A_LINE)
    return fields.length === 0
      ? []
      : [fields.map(({ field, value }) => `${field}: ${short(value)}`).join('; ')];
  const groups = new Map<string, string[]>();
  for (const { field, value } of fields) {
    const words = field.split(' ');
    const owner = words.slice(0, Math.min(2, words.length - 1)).join(' ');
    const own = words.slice(Math.min(2, words.length - 1)).join(' ');
    groups.set(owner, [...(groups.get(owner) ?? []), `${own} ${short(value)}`]);
  }
  return [...groups].map(([owner, said]) => `${owner === '' ? '' : `${owner}: `}${said.join('; ')}`);
}

function happened(time: NonNullable<TrailRow['time']>, zone: Zone, format: Format): string {
  switch (time.is) {
    case 'known':
      return `${format.eventTime(time)} (${time.basis}, within ${format.exactDuration(time.uncertaintySeconds)})${time.zone === zone ? '' : ` ${time.zone}`}`;
    case 'local':
      return `${time.local}, zone unknown: ${time.why}`;
    case 'none':
      return `at no known time: ${time.why}`;
  }
}

const short = (value: string) => (value.length > LONGEST ? `${value.slice(0, LONGEST)} …` : value);
