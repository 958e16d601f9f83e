import type { Exhibit } from '../../core/model/manifest.js';
import type { EvidenceItem } from '../../core/model/state.js';
import {
  type Block,
  type ExhibitImageBlock,
  type Inline,
  plain,
  type Section,
  text,
} from '../../core/words/blocks.js';
import type { PreparedImages } from '../exhibit-images.js';
import { timeBasisText } from './basis.js';
import { cell, placeText, type View } from './context.js';
import { MOST_ROWS, noteOf } from './long-tables.js';
import { exhibitImageBlock } from './photographs.js';
import { evidenceSummary, flagLines, titleOf } from './summary.js';
import { column } from './tables.js';

/** All exhibits: pictures as images, the others listed with their content and hash. */
export function exhibitSection(
  view: View,
  prepared: PreparedImages,
  seenIn: (number: number) => ExhibitImageBlock['seenIn'],
): Section {
  const { labels, words, input } = view;
  const blocks: Block[] = [...words.blocks('sections/exhibits')];
  const plates: ExhibitImageBlock[] = [];
  const others: Other[] = [];
  for (const exhibit of input.exhibits) {
    const item = view.item(exhibit.evidence);
    if (item === undefined) continue;
    const plate = exhibitImageBlock(view, exhibit, item, prepared, seenIn);
    if (plate !== undefined) plates.push(plate);
    else others.push({ exhibit, item });
  }
  if (input.exhibits.length === 0) blocks.push({ is: 'none', of: plain(labels('none.exhibits')) });
  else {
    const shown = others.filter(
      ({ exhibit, item }) =>
        'file' in item || item.withheld !== undefined || seenIn(exhibit.exhibit).length === 0,
    );
    if (shown.length > 0)
      blocks.push(
        { is: 'heading', level: 2, text: labels('sub.others') },
        ...noteOf(view, 'exhibits', Math.min(shown.length, MOST_ROWS), shown.length, 'exhibits.csv'),
        otherTable(view, shown.slice(0, MOST_ROWS)),
      );
    for (const size of ['large', 'small', 'paper'] as const) {
      const here = plates.filter((plate) => plate.size === size);
      if (here.length > 0)
        blocks.push(
          { is: 'heading', level: 2, text: labels(`plates.${size}`) },
          { is: 'plates', size, plates: here },
        );
    }
  }
  return { id: 'exhibits', title: labels('section.exhibits'), blocks };
}

interface Other {
  exhibit: Exhibit;
  item: EvidenceItem;
}

function otherTable(view: View, others: readonly Other[]): Block {
  return {
    is: 'table',
    columns: [
      column(view, 'number', 0.5, 'right'),
      column(view, 'what', 1.8),
      column(view, 'time', 2.7),
      column(view, 'remark', 3.4),
      column(view, 'source', 3.2),
    ],
    anchors: others.map(({ exhibit }) => exhibit.exhibit),
    rows: others.map(({ exhibit, item }) => [
      cell(String(exhibit.exhibit)),
      cell(titleOf(view, item)),
      [text(view.format.eventTime(item.time)), text(` (${timeBasisText(view, item)})`)],
      item.withheld === undefined
        ? cell(
            [evidenceSummary(view, item), placeText(view, item), item.by, ...flagLines(view, item)]
              .filter((part) => part !== undefined && part !== '')
              .join('; '),
          )
        : cell(`${view.labels('plate.withheld')} ${item.withheld}`),
      sourceCell(view, exhibit, item),
    ]),
  };
}

function sourceCell(view: View, exhibit: Exhibit, item: EvidenceItem): Inline[] {
  const { labels } = view;
  const entry = `${labels('column.entry').toLowerCase()} ${item.seq}`;
  if (!('file' in item)) {
    if (item.source.is === 'typed') return [text(`${labels('source.typed')}, ${entry}`)];
    const number = view.number(item.source.evidence);
    return [
      text(`${labels('source.row')} ${item.source.row}`),
      ...(number === undefined ? [] : [text(` ${labels('source.of')} `), { is: 'exhibit', number } as const]),
      text(`, ${entry}`),
    ];
  }
  const where =
    exhibit.attachedAs ?? (item.file.bytes === 0 ? labels('plate.empty') : labels('plate.not-attached'));
  return [text(`${where}; ${entry}; SHA-256 `), { is: 'code', text: item.file.sha256 }];
}

/** Numbers of the exhibits that a link can lead to. */
export function shownExhibits({ blocks }: Section): number[] {
  return blocks.flatMap((block) => {
    switch (block.is) {
      case 'plates':
        return block.plates.map(({ number }) => number);
      case 'table':
        return block.anchors ?? [];
      default:
        return [];
    }
  });
}
