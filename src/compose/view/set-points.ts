import { celsius } from '../../core/model/temperature.js';
import { type Block, type Cell, plain, type Section, text } from '../../core/words/blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import { sourceText } from './margins.js';
import { formatRange } from './range.js';
import { column, tableOrNone } from './tables.js';

export function setPointSection(view: View): Section {
  const { labels, format, names } = view;
  const { words, differences, verdict } = view.input.assessment.setPoints;
  const blocks: Block[] = [...view.words.blocks('sections/set-points')];
  if (words.length > 0)
    blocks.push({
      is: 'paragraph',
      of: [{ is: 'strong', of: plain(labels(`agreement.${verdict}`)) }],
    });
  blocks.push(
    ...tableOrNone(
      view,
      'set-points',
      [
        column(view, 'source', 2),
        column(view, 'set-point', 1.8, 'right'),
        column(view, 'run', 1.3),
        column(view, 'lines', 2.6),
        column(view, 'time', 2.6),
        column(view, 'exhibit', 1),
      ],
      words.map((word): Cell[] => {
        const item = word.evidence === undefined ? undefined : view.item(word.evidence);
        return [
          cell(labels(`set-point-source.${word.source}`)),
          cell(format.temperature(word.celsius)),
          cell(word.run === undefined ? '' : (labels.find(`run.${word.run}`) ?? word.run)),
          cell((word.lines ?? []).map(names.line).join(', ')),
          cell(
            word.at === undefined
              ? ''
              : format.time(word.at, item?.time.is === 'known' ? item.time.zone : view.startZone),
          ),
          exhibitLinks(view, [word.evidence]),
        ];
      }),
    ),
  );
  if (differences.length > 0)
    blocks.push(
      ...tableOrNone(
        view,
        'set-points',
        [
          column(view, 'between', 4),
          column(view, 'size', 2, 'right'),
          column(view, 'remark', 3),
          column(view, 'exhibits', 1.2),
        ],
        differences.map(({ between: [a, b], kelvin, slip, since, seconds, told }): Cell[] => [
          cell(
            [a, b]
              .map(
                (word) => `${labels(`set-point-source.${word.source}`)} ${format.temperature(word.celsius)}`,
              )
              .join(' / '),
          ),
          { is: 'alert', of: plain(format.difference(kelvin)) },
          [
            text(
              [
                ...(slip === undefined ? [] : [labels(`slip.${slip}`)]),
                ...(since === undefined
                  ? []
                  : [`${labels('set-point.since')} ${format.time(since, view.startZone)}`]),
                ...(seconds === undefined
                  ? []
                  : [`${labels('set-point.shown-for')} ${format.duration(seconds)}`]),
                ...(told === undefined
                  ? []
                  : told.length === 0
                    ? [labels('set-point.nobody-told')]
                    : [
                        `${labels('set-point.told')} ${told.map((one) => (labels.find(`contact-with.${one.with}`) ?? one.with).toLowerCase()).join(', ')}`,
                      ]),
              ].join('; '),
            ),
          ],
          exhibitLinks(view, [a.evidence, b.evidence, ...(told ?? []).map((one) => one.evidence)], 4),
        ]),
        labels('sub.differences'),
      ),
    );
  blocks.push(...legBlocks(view), ...publishedBlocks(view));
  return { id: 'set-points', title: labels('section.set-points'), blocks };
}

/** Statements of the set point on each leg, where there are several. */
function legBlocks(view: View): Block[] {
  const { labels, format, names } = view;
  const legs = view.input.assessment.setPoints.legs ?? [];
  if (legs.length < 2) return [];
  return [
    { is: 'heading', level: 2, text: labels('sub.legs') },
    {
      is: 'table',
      columns: [
        column(view, 'between', 2.6),
        column(view, 'lines', 2.6),
        column(view, 'source', 4.6),
        column(view, 'size', 2, 'right'),
      ],
      rows: legs.map((leg): Cell[] => {
        const most = leg.differences.reduce((size, one) => Math.max(size, one.kelvin), 0);
        return [
          cell(`${names.stop(leg.from)} – ${names.stop(leg.to)}`),
          cell(leg.lines.length === 0 ? labels('none.empty') : leg.lines.map(names.line).join('; ')),
          cell(
            leg.words
              .map(
                (word) => `${labels(`set-point-source.${word.source}`)} ${format.temperature(word.celsius)}`,
              )
              .join('; '),
          ),
          most === 0 ? cell('–') : { is: 'alert', of: plain(format.difference(most)) },
        ];
      }),
    },
  ];
}

/** Published ranges beside the instruction of each line. */
function publishedBlocks(view: View): Block[] {
  const { labels, format, names } = view;
  const margins = new Map((view.input.assessment.margins ?? []).map((one) => [one.line, one.range]));
  if (margins.size === 0) return [];
  return [
    { is: 'heading', level: 2, text: labels('sub.published-ranges') },
    {
      is: 'table',
      columns: [
        column(view, 'line', 2.2),
        column(view, 'bill', 1.8, 'right'),
        column(view, 'published', 2.4, 'right'),
        column(view, 'source', 4.4),
      ],
      rows: view.input.state.delivery.lines.flatMap((line): Cell[][] => {
        const range = margins.get(line.id);
        if (range === undefined) return [];
        return [
          [
            cell(names.line(line.id)),
            cell(
              line.instruction === undefined
                ? labels('none.not-given')
                : format.temperature(celsius(line.instruction.setPoint)),
            ),
            cell(formatRange(view, range)),
            cell(sourceText(view, range)),
          ],
        ];
      }),
    },
  ];
}
