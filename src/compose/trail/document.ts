import type { TrailRow } from '../../core/model/results/trail.js';
import type { RecordState } from '../../core/model/state.js';
import { milliseconds, type Zone } from '../../core/model/time.js';
import { type DocumentHead, typstPaperName } from '../../core/words/document-head.js';
import type { Format } from '../../core/words/format.js';
import type { Labels } from '../../core/words/labels.js';

/** The JSON document of the trail: a table whose cells are lines of plain text. */
export interface TrailDocument extends DocumentHead {
  running: string;
  page: string;
  pageOf: string;
  lead: string;
  facts: { label: string; value: string }[];
  columns: string[];
  rows: string[][][];
}

export interface TrailWords {
  /** Words of the trail itself. */
  trail: Labels;
  /** Labels of the dossier: kinds of entries, evidence and of time. */
  labels: Labels;
  format: Format;
}

/** Longer values are cut here, and whole in the ledger and in `dossier trail --json`. */
const LONGEST = 400;

export interface TrailPrintInput {
  rows: readonly TrailRow[];
  state: Pick<RecordState, 'delivery' | 'size' | 'root'>;
  /** The item of evidence whose history it is; the whole record by default. */
  of?: string;
  zone: Zone;
  printedAt: number;
}

/** The trail as rows of text in the language of the delivery. */
export function trailDocument(
  { rows, state, of, zone, printedAt }: TrailPrintInput,
  words: TrailWords,
): TrailDocument {
  const { trail, format } = words;
  const { delivery, size, root } = state;
  const title =
    of === undefined
      ? trail('trail.title')
      : `${trail('trail.title')}: ${trail('trail.life').toLowerCase()}, ${of}`;
  return {
    language: delivery.show.language,
    region: 'US',
    paper: typstPaperName(delivery.show.paper),
    title,
    author: delivery.parties.carrier?.name ?? '',
    description: `${title}: ${delivery.delivery}`,
    running: `${delivery.delivery} · ${root}`,
    page: trail('trail.page'),
    pageOf: trail('trail.of'),
    lead: trail('trail.lead'),
    facts: [
      { label: trail('trail.delivery'), value: delivery.delivery },
      { label: trail('trail.entries'), value: of === undefined ? String(size) : `${rows.length} / ${size}` },
      { label: trail('trail.fingerprint'), value: root },
      { label: trail('trail.checked'), value: trail('trail.checked-words') },
      { label: trail('trail.printed'), value: format.time(printedAt, zone) },
    ],
    columns: ['entry', 'entered', 'by', 'what', 'when', 'changed'].map((name) => trail(`column.${name}`)),
    rows: rows.map((row) => cells(row, zone, words)),
  };
}

function cells(row: TrailRow, zone: Zone, { trail, labels, format }: TrailWords): string[][] {
  const kind = row.fields.find(({ field }) => field === 'kind')?.value;
  return [
    [String(row.seq)],
    [format.time(milliseconds(row.at), zone)],
    [row.by],
    [
      labels(`entry.${row.type}`),
      [
        kind === undefined ? '' : (labels.find(`kind.${kind}`) ?? kind),
        row.evidence.join(', '),
        row.claim ?? '',
      ]
        .filter((part) => part !== '')
        .join(' '),
      ...(row.from === undefined
        ? []
        : [
            `${trail('word.from')} ${row.from.evidence}${row.from.row === undefined ? '' : `, ${trail('word.row')} ${row.from.row}`}${row.from.entry === undefined ? '' : `: ${row.from.entry}`}`,
          ]),
    ].filter((line) => line !== ''),
    [
      ...(row.time === undefined ? [] : timeLines(row.time, { trail, labels, format })),
      ...(row.daysLate === undefined ? [] : [trail('word.late').replace('N', String(row.daysLate))]),
    ],
    [
      ...(row.origin === undefined
        ? []
        : [
            `${trail('word.taken').replace('N', String(row.origin.entry))} ${format.time(milliseconds(row.origin.at), zone)}, ${row.origin.by}`,
          ]),
      ...(row.file === undefined
        ? []
        : [
            `${trail('word.file')}: ${row.file.name}, ${format.bytes(row.file.bytes)}`,
            `SHA-256 ${row.file.sha256}`,
          ]),
      ...(row.corrects === undefined ? [] : [`${trail('word.corrects')} ${row.corrects}`]),
      ...(row.strikes === undefined ? [] : [`${trail('word.strikes')} ${row.strikes}`]),
      ...(row.covers === undefined ? [] : [`${trail('word.covers')} ${row.covers}`]),
      ...(row.changes.length > 0
        ? row.changes.map(
            ({ field, before, after }) =>
              `${field}: ${trail('word.before')} ${short(before ?? trail('word.nothing'))}; ${trail('word.now')} ${short(after ?? trail('word.nothing'))}`,
          )
        : []),
      ...(row.type === 'claim-noted' && row.corrects !== undefined ? [] : [wordsOfRow(row)]),
    ].filter((line) => line !== ''),
  ];
}

/** Fields in one line; the kind has a column of its own. */
function wordsOfRow(row: TrailRow): string {
  return row.fields
    .filter(({ field }) => field !== 'kind')
    .map(({ field, value }) => `${field}: ${short(value)}`)
    .join('; ');
}

function timeLines(time: NonNullable<TrailRow['time']>, { trail, labels, format }: TrailWords): string[] {
  if (time.is !== 'known') return [format.eventTime(time), time.why];
  return [
    format.eventTime(time),
    `${labels(`basis.${time.basis}`)}, ${trail('word.uncertain')} ${format.exactDuration(time.uncertaintySeconds)}`,
  ];
}

const short = (value: string) => (value.length > LONGEST ? `${value.slice(0, LONGEST)} …` : value);
