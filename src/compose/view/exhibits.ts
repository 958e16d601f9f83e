import type { Exhibit } from '../../model/manifest.js';
import type { EvidenceItem } from '../../model/state.js';
import { type Block, type Fact, type Inline, type Plate, plain, type Section, text } from '../blocks.js';
import type { PreparedPicture } from '../pictures.js';
import { cell, placeOf, type View } from './context.js';
import { saying, titleOf } from './summary.js';
import { column } from './tables.js';

export type Pictures = ReadonlyMap<string, PreparedPicture>;

/** Whether an item is shown as a plate: every photo, and papers that came as a picture. */
export function isPicture(item: EvidenceItem): item is Extract<EvidenceItem, { kind: 'photo' | 'document' }> {
  return item.kind === 'photo' || (item.kind === 'document' && item.file.type.startsWith('image/'));
}

export const plateAsset = (sha256: string): string => `plate-${sha256.slice(0, 32)}.jpg`;

/** All exhibits: pictures as plates, the rest listed with what they say and their hash. */
export function exhibitSection(
  view: View,
  pictures: Pictures,
  seenIn: (number: number) => Plate['seenIn'],
): Section {
  const { labels, words, input } = view;
  const blocks: Block[] = [...words.blocks('sections/exhibits')];
  const plates: Plate[] = [];
  const others: { exhibit: Exhibit; item: EvidenceItem }[] = [];
  for (const exhibit of input.exhibits) {
    const item = view.item(exhibit.evidence);
    if (item === undefined) continue;
    if (isPicture(item) && item.withheld === undefined)
      plates.push(plateOf(view, exhibit, item, pictures, seenIn));
    else others.push({ exhibit, item });
  }
  if (input.exhibits.length === 0) blocks.push({ is: 'none', of: plain(labels('none.exhibits')) });
  else {
    blocks.push({ is: 'heading', level: 2, text: labels('sub.plates') });
    blocks.push(
      ...(plates.length === 0 ? [{ is: 'none', of: plain(labels('none.plates')) } as const] : plates),
    );
    if (others.length > 0)
      blocks.push({ is: 'heading', level: 2, text: labels('sub.others') }, otherTable(view, others));
  }
  return { id: 'exhibits', title: labels('section.exhibits'), blocks };
}

function plateOf(
  view: View,
  exhibit: Exhibit,
  item: Extract<EvidenceItem, { kind: 'photo' | 'document' }>,
  pictures: Pictures,
  seenIn: (number: number) => Plate['seenIn'],
): Plate {
  const { labels } = view;
  const picture = pictures.get(item.file.sha256);
  const title = titleOf(view, item);
  const trouble =
    picture?.is === 'picture'
      ? picture.damaged
        ? labels('plate.damaged')
        : undefined
      : `${labels('plate.unreadable')} ${picture?.why ?? ''}`.trim();
  return {
    is: 'plate',
    number: exhibit.exhibit,
    ...(picture?.is === 'picture'
      ? { asset: plateAsset(item.file.sha256), width: picture.width, height: picture.height }
      : {}),
    alt: [
      `${labels('document.exhibit')} ${exhibit.exhibit}: ${title}`,
      item.caption,
      view.format.eventTime(item.time),
      placeOf(view, item),
    ]
      .filter((part) => part !== undefined && part !== '')
      .join('; '),
    ...(trouble === undefined ? {} : { trouble }),
    title,
    caption: item.caption === undefined ? [] : plain(item.caption),
    facts: plateFacts(view, exhibit, item),
    flags: item.flags.map(
      (flag) => `${labels(`flag.${flag.is}`)}${flag.detail === '' ? '' : `: ${flag.detail}`}`,
    ),
    sha256: item.file.sha256,
    seenIn: seenIn(exhibit.exhibit),
  };
}

function plateFacts(
  view: View,
  exhibit: Exhibit,
  item: Extract<EvidenceItem, { kind: 'photo' | 'document' }>,
): Fact[] {
  const { labels, format } = view;
  const camera =
    item.kind === 'photo'
      ? [item.camera?.make, item.camera?.model].filter((part) => part !== undefined).join(' ')
      : '';
  const gps = item.place?.gps;
  const place = [
    placeOf(view, item),
    ...(gps === undefined ? [] : [`${gps.latitude.toFixed(5)}, ${gps.longitude.toFixed(5)}`]),
  ].filter((part) => part !== '');
  const fact = (label: string, value: string | undefined): Fact[] =>
    value === undefined || value === '' ? [] : [{ label: labels(label), value: plain(value) }];
  return [
    { label: labels('plate.time'), value: plain(format.eventTime(item.time)) },
    ...fact('plate.basis', basisWords(view, item)),
    ...fact('plate.place', place.join('; ')),
    ...fact('plate.line', item.line === undefined ? undefined : view.names.line(item.line)),
    ...fact('plate.by', item.by),
    ...fact('plate.camera', camera),
    ...fact('plate.file', `${item.file.name}, ${format.bytes(item.file.bytes)}`),
    ...fact(
      'plate.inside',
      exhibit.attachedAs === undefined
        ? labels('plate.not-attached')
        : `${labels('plate.attached')} ${exhibit.attachedAs}`,
    ),
  ];
}

/** How a time is known, within what, and what was corrected. */
export function basisWords(view: View, { time }: EvidenceItem): string {
  const { labels, format } = view;
  if (time.is !== 'known') return time.why;
  return [
    labels(`basis.${time.basis}`),
    ...(time.uncertaintySeconds > 0
      ? [`${labels('time.plus-minus')} ${format.duration(time.uncertaintySeconds)}`]
      : []),
    ...(time.correction === undefined
      ? []
      : [
          `${labels('time.corrected')} ${time.correction.addedSeconds < 0 ? '−' : '+'}${format.duration(time.correction.addedSeconds)}` +
            ` (${labels('column.entry').toLowerCase()} ${time.correction.comparedAt}${time.stated === undefined ? '' : `; ${labels('time.stated')} ${time.stated}`})`,
        ]),
  ].join(', ');
}

function otherTable(view: View, others: readonly { exhibit: Exhibit; item: EvidenceItem }[]): Block {
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
      [text(view.format.eventTime(item.time)), text(` (${basisWords(view, item)})`)],
      item.withheld === undefined
        ? cell(
            [saying(view, item), placeOf(view, item), item.by]
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
