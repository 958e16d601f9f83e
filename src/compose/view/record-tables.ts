import { daysLate } from '../../core/assess/trail/late-entry.js';
import type { RecordState } from '../../core/model/state.js';
import { type Instant, milliseconds } from '../../core/model/time.js';
import { type Block, type Inline, text } from '../../core/words/blocks.js';
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
  about: Inline[];
}

/** Entries as far as the folded state has them; the attached ledger has every one in full. */
function entryLines(view: View, state: RecordState): EntryLine[] {
  const { labels } = view;
  const lines: EntryLine[] = [];
  for (const item of state.evidence) {
    const about: Inline[] = [
      text(`${labels(`kind.${item.kind}`)} `),
      ...exhibitLinks(view, [item.evidence]),
      ...(item.describedBy.length === 0
        ? []
        : [
            text(
              `; ${labels('entry.evidence-described')}: ${labels('column.entry').toLowerCase()} ${item.describedBy.join(', ')}`,
            ),
          ]),
    ];
    lines.push({
      seq: item.seq,
      at: item.enteredAt,
      late: 'file' in item ? undefined : daysLate(item.enteredAt, item.time),
      taken: item.origin?.entry,
      type: labels('file' in item ? 'entry.evidence-received' : 'entry.reading-recorded'),
      by: item.enteredBy,
      about,
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
      about: [],
    });
  return lines.sort((a, b) => a.seq - b.seq);
}

/** Who entered what, and when. */
export function entryTable(view: View): Block[] {
  const { labels, format, startZone } = view;
  return listOrNone(
    view,
    'exhibits',
    entryLines(view, view.input.state),
    [
      ['entry', 0.7, (line) => String(line.seq), 'right'],
      [
        'entered',
        2.8,
        (line) =>
          [
            format.time(milliseconds(line.at), startZone),
            ...(line.late === undefined ? [] : [labels('entry.late').replace('N', String(line.late))]),
            ...(line.taken === undefined ? [] : [labels('entry.taken').replace('N', String(line.taken))]),
          ].join('; '),
      ],
      ['by', 1.6, (line) => line.by],
      ['type', 2, (line) => line.type],
      ['about', 3.4, (line) => line.about],
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
