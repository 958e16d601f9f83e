import type { RecordState } from '../../model/state.js';
import { type Instant, milliseconds } from '../../model/time.js';
import { type Block, type Cell, type Inline, plain, type Section, text } from '../blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import { column, tableOr } from './tables.js';

export function methodSection(view: View): Section {
  const { ruleSet, at } = view.input.assessment;
  return {
    id: 'method',
    title: view.labels('section.method'),
    blocks: view.words.blocks('sections/method', {
      title: ruleSet.title,
      name: ruleSet.name,
      version: ruleSet.version,
      sha256: ruleSet.sha256,
      at: { is: 'time', at: milliseconds(at), zone: view.startZone },
      tool: view.input.tool.name,
      version2: view.input.tool.version,
    }),
  };
}

export function verifySection(view: View): Section {
  return {
    id: 'verify',
    title: view.labels('section.verify'),
    blocks: view.words.blocks('sections/verify', {
      certificate: view.input.signer.certificateSha256,
      root: view.input.fingerprint.root,
    }),
  };
}

/** What the record is, who entered what and when, what is withheld, and what was sent out before. */
export function custodySection(view: View): Section {
  const { labels, words, input } = view;
  const { state } = input;
  const withheld = state.evidence.filter((item) => item.withheld !== undefined);
  const blocks: Block[] = [
    ...words.blocks('sections/custody', {
      entries: input.fingerprint.size,
      evidence: state.evidence.length,
      withheld: withheld.length,
    }),
    {
      is: 'facts',
      facts: [
        { label: labels('cover.fingerprint'), value: [{ is: 'code', text: input.fingerprint.root }] },
        {
          label: labels('cover.record'),
          value: plain(`${input.fingerprint.size} ${labels('cover.entries')}`),
        },
      ],
    },
    ...sizeBlocks(view),
    ...entryTable(view),
    ...published(view),
    ...stamps(view),
    ...clocks(view),
    ...attached(view),
  ];
  return { id: 'custody', title: labels('section.custody'), blocks };
}

/** What was chosen so that the file keeps to a size, and what a copy leaves out. */
function sizeBlocks({ words, format, input }: View): Block[] {
  const { sizing, copy } = input;
  return [
    ...(copy === undefined
      ? []
      : words.blocks('sections/copy', {
          title: copy.title,
          evidence: copy.evidenceLeftOut,
          entries: copy.entriesLeftOut,
          positions: copy.positions,
        })),
    ...(sizing === undefined
      ? []
      : words.blocks('sections/size', {
          most: format.bytes(sizing.mostBytes),
          longest: format.number(sizing.picture.longest),
          quality: sizing.picture.quality,
          inside: sizing.originalsInside,
          outside: sizing.originalsNotInside,
        })),
  ];
}

interface EntryLine {
  seq: number;
  at: Instant;
  type: string;
  by: string;
  about: Inline[];
}

/** Entries as far as the folded state knows them; the attached ledger has every one in full. */
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
      type: labels('file' in item ? 'entry.evidence-received' : 'entry.reading-recorded'),
      by: item.enteredBy,
      about,
    });
  }
  for (const entry of [...state.published, ...state.timeStamps, ...state.dossiers])
    lines.push({
      seq: entry.seq,
      at: entry.at,
      type: labels(`entry.${entry.type}`),
      by: entry.by,
      about: [],
    });
  return lines.sort((a, b) => a.seq - b.seq);
}

function entryTable(view: View): Block[] {
  const { labels, format, startZone } = view;
  return tableOr(
    view,
    'exhibits',
    [
      column(view, 'entry', 0.7, 'right'),
      column(view, 'entered', 2.8),
      column(view, 'by', 1.6),
      column(view, 'type', 2),
      column(view, 'about', 3.4),
    ],
    entryLines(view, view.input.state).map((line): Cell[] => [
      cell(String(line.seq)),
      cell(format.time(milliseconds(line.at), startZone)),
      cell(line.by),
      cell(line.type),
      line.about,
    ]),
    labels('sub.entries'),
  );
}

function published(view: View): Block[] {
  const { labels, format, startZone } = view;
  return tableOr(
    view,
    'published',
    [
      column(view, 'time', 2.4),
      column(view, 'entry', 0.8, 'right'),
      column(view, 'with', 2),
      column(view, 'how', 1.4),
      column(view, 'what', 3.6),
    ],
    view.input.state.published.map((entry): Cell[] => [
      cell(format.time(milliseconds(entry.at), startZone)),
      cell(String(entry.body.size)),
      cell(entry.body.to),
      cell(view.said('published', entry.body.how)),
      [{ is: 'code', text: entry.body.root }],
    ]),
    labels('sub.published'),
  );
}

function stamps(view: View): Block[] {
  const { labels, format, startZone } = view;
  return tableOr(
    view,
    'stamps',
    [
      column(view, 'time', 2.6),
      column(view, 'entry', 0.8, 'right'),
      column(view, 'from', 2.4),
      column(view, 'what', 3.6),
    ],
    view.input.state.timeStamps.map((entry): Cell[] => [
      cell(format.time(milliseconds(entry.at), startZone)),
      cell(String(entry.body.size)),
      cell(entry.body.from),
      [{ is: 'code', text: entry.body.root }],
    ]),
    labels('sub.stamps'),
  );
}

function clocks(view: View): Block[] {
  const { labels, format, startZone } = view;
  return tableOr(
    view,
    'clocks',
    [
      column(view, 'entry', 0.8, 'right'),
      column(view, 'what', 2.4),
      column(view, 'at', 2.6),
      column(view, 'size', 2),
      column(view, 'basis', 3),
      column(view, 'exhibit', 0.9),
    ],
    view.input.state.clocks.map((one): Cell[] => [
      cell(String(one.seq)),
      one.clock.is === 'camera'
        ? cell(`${labels('plate.camera')} ${one.clock.camera}`)
        : [text(`${labels('kind.unit-log')} `), ...exhibitLinks(view, [one.clock.evidence])],
      cell(format.time(milliseconds(one.at), startZone)),
      cell(
        `${one.addSeconds < 0 ? '−' : '+'}${format.duration(one.addSeconds)}, ${labels('time.plus-minus')} ${format.duration(one.uncertaintySeconds)}`,
      ),
      cell(
        [
          ...(one.how === undefined ? [] : [labels(`clock-how.${one.how}`)]),
          view.said('clock', one.from),
          ...(one.replaces === undefined || one.replaces.length === 0
            ? []
            : [`${labels('clock-how.replaces')} ${one.replaces.join(', ')}`]),
        ].join('; '),
      ),
      exhibitLinks(view, [one.photo]),
    ]),
    labels('sub.clocks'),
  );
}

/** What the file carries inside, so that a reader knows what to take out. */
function attached(view: View): Block[] {
  const { labels, format } = view;
  return tableOr(
    view,
    'attachments',
    [
      column(view, 'file', 3),
      column(view, 'size-of-file', 1, 'right'),
      column(view, 'type', 2),
      column(view, 'what', 4),
    ],
    view.input.attachments.map((one): Cell[] => [
      [{ is: 'code', text: one.name }],
      cell(format.bytes(one.bytes.length)),
      cell(one.type),
      cell(one.description),
    ]),
    labels('sub.attachments'),
  );
}
