import { changesBetween, fieldsOf } from '../../core/assess/trail/fields.js';
import type { Entry } from '../../core/model/entry.js';
import type { TrailField } from '../../core/model/results.js';
import type { EvidenceItem } from '../../core/model/state.js';
import { type Instant, milliseconds } from '../../core/model/time.js';
import type { Block } from '../../core/words/blocks.js';
import type { View } from './context.js';
import { tableOf, tableOrNone } from './tables.js';

const NOT_A_VALUE = new Set([
  'evidence',
  'kind',
  'file',
  'within',
  'source',
  'flags',
  'mapping',
  'statedTimes',
  'sceneHash',
  'time',
]);

/** One thing that was put right or does not count, with what it said, why, and who said so when. */
interface PutRight {
  entry: number;
  said: string;
  now: string;
  why: string;
  by: string;
  at: Instant;
}

/** What was corrected, what was struck, and what seemed to belong elsewhere; nothing where the record has none. */
export function putRightTables(view: View): Block[] {
  const { corrections, strikes, notCounted } = view.input.state;
  return [
    ...listed(
      view,
      'corrected',
      corrections.flatMap((one) => correctedRows(view, one)),
    ),
    ...listed(
      view,
      'struck',
      strikes.map(({ entry, strike }) => ({
        entry: entry.seq,
        said: summary(view, entry),
        now: view.labels('put-right.struck'),
        why: strike.body.why,
        by: strike.by,
        at: strike.at,
      })),
    ),
    ...listed(
      view,
      'not-counted',
      notCounted.map((item) => ({
        entry: item.seq,
        said: 'file' in item ? `${item.evidence}, ${item.file.name}` : item.evidence,
        now: view.labels('put-right.not-counted'),
        why: flagsOf(view, item),
        by: item.enteredBy,
        at: item.enteredAt,
      })),
    ),
  ];
}

function listed(
  view: View,
  name: 'corrected' | 'struck' | 'not-counted',
  rows: readonly PutRight[],
): Block[] {
  if (rows.length === 0) return [];
  const { labels, format, startZone } = view;
  const table = tableOf(view, rows, [
    ['entry', 0.7, ({ entry }) => String(entry), 'right'],
    ['first-said', 2.6, ({ said }) => said],
    ['counts-now', 2.6, ({ now }) => now],
    ['why', 2, ({ why }) => why],
    ['by', 1.4, ({ by, at }) => `${by}, ${format.time(milliseconds(at), startZone)}`],
  ]);
  return tableOrNone(view, 'empty', table.columns, table.rows, labels(`sub.${name}`));
}

function correctedRows(
  view: View,
  { entry, corrections }: View['input']['state']['corrections'][number],
): PutRight[] {
  let was = saidFields(view, entry.body);
  return corrections.map(({ body, by, at }) => {
    const now = saidFields(view, body.becomes.body);
    const changes = changesBetween(was, now);
    was = now;
    return {
      entry: entry.seq,
      said: changes.map(({ field, before }) => `${field}: ${before ?? '–'}`).join('; '),
      now: changes.map(({ field, after }) => `${field}: ${after ?? '–'}`).join('; '),
      why: body.why,
      by,
      at,
    };
  });
}

function summary(view: View, entry: Entry): string {
  const id =
    'evidence' in entry.body && typeof entry.body.evidence === 'string' ? `${entry.body.evidence}: ` : '';
  const file = entry.type === 'evidence-received' ? `${entry.body.file.name}; ` : '';
  const fields = saidFields(view, entry.body);
  return `${id}${file}${fields
    .slice(0, 7)
    .map(({ field, value }) => `${field}: ${value}`)
    .join('; ')}`;
}

/** What an entry says, with its time as the pages write times. */
function saidFields({ format }: View, body: Entry['body']): TrailField[] {
  const time = 'time' in body && body.time?.is === 'known' ? format.eventTime(body.time) : undefined;
  const fields = fieldsOf(body, NOT_A_VALUE);
  return time === undefined ? fields : [{ field: 'time', value: time }, ...fields];
}

function flagsOf({ labels }: View, item: EvidenceItem): string {
  return 'flags' in item ? item.flags.map(({ is }) => labels(`flag.${is}`)).join('; ') : '';
}
