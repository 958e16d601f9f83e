import { MANIFEST_NAME } from '../../core/model/manifest.js';
import { type Block, plain, type Section } from '../../core/words/blocks.js';
import type { View } from './context.js';
import { putRightTables } from './put-right.js';
import { clockTable, entryTable, mergeTable, publishedTable, stampTable } from './record-tables.js';
import { listOrNone } from './tables.js';

/** The record: who entered what and when, what is withheld, and which fingerprints were disclosed. */
export function custodySection(view: View): Section {
  const { labels, words, input } = view;
  const { state } = input;
  const withheld = state.evidence.filter((item) => item.withheld !== undefined);
  const blocks: Block[] = [
    ...words.blocks('sections/custody', {
      entries: input.fingerprint.size,
      evidence: state.evidence.length,
      withheld: withheld.length,
      corrected: input.copy?.putRight.corrected ?? state.corrections.length,
      struck: input.copy?.putRight.struck ?? state.strikes.length,
      copy: input.copy !== undefined,
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
    ...putRightTables(view),
    ...mergeTable(view),
    ...entryTable(view),
    ...publishedTable(view),
    ...stampTable(view),
    ...clockTable(view),
    ...attached(view),
  ];
  return { id: 'custody', title: labels('section.custody'), blocks };
}

/** What was reduced to keep the file to its size, and what a copy redacts. */
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

/** Attachments, so that a reader knows what to extract; originals are named by their exhibits. */
function attached(view: View): Block[] {
  const { labels, format } = view;
  return listOrNone(
    view,
    'attachments',
    view.input.attachments.filter(({ relationship }) => relationship !== 'source'),
    [
      ['file', 3, (one) => [{ is: 'code', text: one.name }]],
      ['size-of-file', 1, (one) => format.bytes(one.bytes.length), 'right'],
      ['type', 2, (one) => one.type],
      ['what', 4, (one) => one.description],
    ],
    labels('sub.attachments'),
    MANIFEST_NAME,
  ).concat(originalsNote(view));
}

function originalsNote({ labels, format, input }: View): Block[] {
  const originals = input.attachments.filter(({ relationship }) => relationship === 'source');
  if (originals.length === 0) return [];
  const bytes = originals.reduce((sum, one) => sum + one.bytes.length, 0);
  const words = labels('attachment.originals')
    .replace('N', format.number(originals.length))
    .replace('SIZE', format.bytes(bytes));
  return [{ is: 'paragraph', of: plain(words) }];
}
