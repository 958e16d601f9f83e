import { type Block, type Cell, plain, type Section } from '../blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import { column, tableOr } from './tables.js';

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
    ...tableOr(
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
      ...tableOr(
        view,
        'set-points',
        [
          column(view, 'between', 4),
          column(view, 'size', 2, 'right'),
          column(view, 'remark', 3),
          column(view, 'exhibits', 1.2),
        ],
        differences.map(({ between: [a, b], kelvin, slip }): Cell[] => [
          cell(
            [a, b]
              .map(
                (word) => `${labels(`set-point-source.${word.source}`)} ${format.temperature(word.celsius)}`,
              )
              .join(' / '),
          ),
          { is: 'alert', of: plain(format.difference(kelvin)) },
          cell(slip === undefined ? '' : labels(`slip.${slip}`)),
          exhibitLinks(view, [a.evidence, b.evidence]),
        ]),
        labels('sub.differences'),
      ),
    );
  return { id: 'set-points', title: labels('section.set-points'), blocks };
}
