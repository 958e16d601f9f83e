import { daysLate } from '../../core/assess/trail/late-entry.js';
import type { RecordState } from '../../core/model/state.js';
import { type Instant, milliseconds } from '../../core/model/time.js';
import { type Block, text } from '../../core/words/blocks.js';
import { exhibitLinks, type View } from './context.js';
import { listOrNone } from './tables.js';

interface EntryLine {
  seq: number;
  at: Instant;
  /** Whole days after the time that it tells of. */
  late: number | undefined;
  /** Its number in the record that it was taken over from. */
  taken: number | undefined;
  type: string;
  by: string;
}

/** Entries as far as the folded state has them; the attached ledger has every one in full. */
function entryLines(view: View, state: RecordState): EntryLine[] {
  const { labels } = view;
  const lines: EntryLine[] = [];
  for (const item of state.evidence) {
    lines.push({
      seq: item.seq,
      at: item.enteredAt,
      late: 'file' in item ? undefined : daysLate(item.enteredAt, item.time),
      taken: item.origin?.entry,
      type: labels('file' in item ? 'entry.evidence-received' : 'entry.reading-recorded'),
      by: item.enteredBy,
    });
  }
  for (const entry of [...state.published, ...state.timeStamps, ...state.dossiers, ...state.merges])
    lines.push({
      seq: entry.seq,
      at: entry.at,
      late: undefined,
      taken: undefined,
      type: labels(`entry.${entry.type}`),
      by: entry.by,
    });
  return lines.sort((a, b) => a.seq - b.seq);
}

/** Entries of one kind by one person: how many, and from when to when. */
interface EntrySum {
  type: string;
  by: string;
  count: number;
  /** Entered more than a day after what they tell of. */
  late: number;
  taken: number;
  numbers: readonly [first: number, last: number];
  from: Instant;
  to: Instant;
}

function sumsOf(lines: readonly EntryLine[]): EntrySum[] {
  const sums = new Map<string, EntrySum>();
  for (const { seq, at, late, taken, type, by } of lines) {
    const known = sums.get(JSON.stringify([type, by]));
    sums.set(JSON.stringify([type, by]), {
      type,
      by,
      count: (known?.count ?? 0) + 1,
      late: (known?.late ?? 0) + (late === undefined ? 0 : 1),
      taken: (known?.taken ?? 0) + (taken === undefined ? 0 : 1),
      numbers: [known?.numbers[0] ?? seq, seq],
      from: known?.from ?? at,
      to: at,
    });
  }
  return [...sums.values()];
}

/** Who entered how much of what, and when; the attached ledger has every entry. */
export function entryTable(view: View): Block[] {
  const { labels, format, startZone } = view;
  const time = (at: Instant) => format.time(milliseconds(at), startZone);
  return listOrNone(
    view,
    'exhibits',
    sumsOf(entryLines(view, view.input.state)),
    [
      ['type', 2.4, ({ type }) => type],
      ['by', 2, ({ by }) => by],
      ['entries', 1, ({ count }) => format.number(count), 'right'],
      ['entry', 1.4, ({ numbers: [first, last] }) => (first === last ? String(first) : `${first}–${last}`)],
      ['entered', 4, ({ from, to }) => (from === to ? time(from) : `${time(from)} – ${time(to)}`)],
      [
        'remark',
        2.2,
        ({ late, taken }) =>
          [
            ...(late === 0 ? [] : [labels('entry.late-count').replace('N', format.number(late))]),
            ...(taken === 0 ? [] : [labels('entry.taken-count').replace('N', format.number(taken))]),
          ].join('; '),
      ],
    ],
    labels('sub.entries'),
    'ledger.jsonl',
  );
}

/** Other records of this delivery that were merged in; nothing where there is none. */
export function mergeTable(view: View): Block[] {
  const { labels, format, startZone } = view;
  const { merges } = view.input.state;
  if (merges.length === 0) return [];
  return listOrNone(
    view,
    'published',
    merges,
    [
      ['entry', 0.7, ({ seq }) => String(seq), 'right'],
      ['time', 2.4, ({ at }) => format.time(milliseconds(at), startZone)],
      ['by', 1.6, ({ by }) => by],
      [
        'what',
        5,
        ({ body }) => [{ is: 'code', text: `${body.other.delivery} ${body.other.size} ${body.other.root}` }],
      ],
    ],
    labels('sub.merged'),
    'ledger.jsonl',
  );
}

/** Fingerprints disclosed before. */
export function publishedTable(view: View): Block[] {
  const { labels, format, startZone } = view;
  return listOrNone(
    view,
    'published',
    view.input.state.published,
    [
      ['time', 2.4, ({ at }) => format.time(milliseconds(at), startZone)],
      ['entry', 0.8, ({ body }) => String(body.size), 'right'],
      ['with', 2, ({ body }) => body.to],
      ['how', 1.4, ({ body }) => view.remark('published', body.how)],
      ['what', 3.6, ({ body }) => [{ is: 'code', text: body.root }]],
    ],
    labels('sub.published'),
    'ledger.jsonl',
  );
}

/** Time stamps over earlier states. */
export function stampTable(view: View): Block[] {
  const { labels, format, startZone } = view;
  return listOrNone(
    view,
    'stamps',
    view.input.state.timeStamps,
    [
      ['time', 2.6, ({ at }) => format.time(milliseconds(at), startZone)],
      ['entry', 0.8, ({ body }) => String(body.size), 'right'],
      ['from', 2.4, ({ body }) => body.from],
      ['what', 3.6, ({ body }) => [{ is: 'code', text: body.root }]],
    ],
    labels('sub.stamps'),
    'ledger.jsonl',
  );
}

/** Compared clocks, and the effect of each comparison. */
export function clockTable(view: View): Block[] {
  const { labels, format, startZone } = view;
  return listOrNone(
    view,
    'clocks',
    view.input.state.clocks,
    [
      ['entry', 0.8, ({ seq }) => String(seq), 'right'],
      [
        'what',
        2.4,
        ({ clock }) =>
          clock.is === 'camera'
            ? `${labels('plate.camera')} ${clock.camera}`
            : [text(`${labels('kind.unit-log')} `), ...exhibitLinks(view, [clock.evidence])],
      ],
      ['at', 2.6, ({ at }) => format.time(milliseconds(at), startZone)],
      [
        'size',
        2,
        ({ addSeconds, uncertaintySeconds }) =>
          `${addSeconds < 0 ? '−' : '+'}${format.duration(addSeconds)}, ${labels('time.plus-minus')} ${format.duration(uncertaintySeconds)}`,
      ],
      [
        'basis',
        3,
        ({ how, from, replaces = [] }) =>
          [
            ...(how === undefined ? [] : [labels(`clock-how.${how}`)]),
            view.remark('clock', from),
            ...(replaces.length === 0 ? [] : [`${labels('clock-how.replaces')} ${replaces.join(', ')}`]),
          ].join('; '),
      ],
      ['exhibit', 0.9, ({ photo }) => exhibitLinks(view, [photo])],
    ],
    labels('sub.clocks'),
    'ledger.jsonl',
  );
}
