import type { SetPointDifference, SetPointStatement } from '../../core/model/results.js';
import { type Block, type Cell, plain, type Section } from '../../core/words/blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import { column, listOrNone } from './tables.js';

export function setPointSection(view: View): Section {
  const { labels, format } = view;
  const { words } = view.input.assessment.setPoints;
  const blocks: Block[] = [...view.words.blocks('sections/set-points')];
  blocks.push(
    ...listOrNone(view, 'set-points', words, [
      ['source', 2, ({ source }) => labels(`set-point-source.${source}`)],
      ['set-point', 1.8, ({ celsius }) => format.temperature(celsius), 'right'],
      ['run', 1.3, ({ run }) => (run === undefined ? '' : (labels.find(`run.${run}`) ?? run))],
      ['lines', 2.6, (word) => whatFor(view, word)],
      ['time', 2.6, (word) => timeOf(view, word)],
      ['exhibit', 1, ({ evidence }) => exhibitLinks(view, [evidence])],
    ]),
  );
  blocks.push(...legBlocks(view));
  return { id: 'set-points', title: labels('section.set-points'), blocks };
}

/** Sources on the set point that differ, since when, and who was told of it; nothing where none do. */
export function differenceSection(view: View): Section | undefined {
  const { labels, format } = view;
  const { differences, verdict } = view.input.assessment.setPoints;
  if (differences.length === 0) return undefined;
  return {
    id: 'differences',
    title: labels('section.differences'),
    blocks: [
      { is: 'paragraph', of: [{ is: 'strong', of: plain(labels(`agreement.${verdict}`)) }] },
      ...listOrNone(view, 'set-points', differences, [
        [
          'between',
          4,
          ({ between }) =>
            between
              .map(
                (word) => `${labels(`set-point-source.${word.source}`)} ${format.temperature(word.celsius)}`,
              )
              .join(' / ') + inCompartment(view, between[0]),
        ],
        ['size', 2, ({ kelvin }) => ({ is: 'alert', of: plain(format.difference(kelvin)) }), 'right'],
        ['remark', 3, (one) => differenceText(view, one)],
        [
          'exhibits',
          1.2,
          ({ between: [a, b], told = [] }) =>
            exhibitLinks(view, [a.evidence, b.evidence, ...told.map((one) => one.evidence)], 4),
        ],
      ]),
    ],
  };
}

/** The compartment and the lines that a set point is for. */
function whatFor(view: View, { lines = [], compartment }: SetPointStatement): string {
  const named = lines.map(view.names.line);
  return [...(compartment === undefined ? [] : [view.compartment(compartment)]), ...named].join(', ');
}

const inCompartment = (view: View, { compartment }: SetPointStatement): string =>
  compartment === undefined ? '' : ` (${view.compartment(compartment)})`;

function timeOf(view: View, { at, evidence, putRight }: SetPointStatement): string {
  if (at === undefined) return '';
  const item = evidence === undefined ? undefined : view.item(evidence);
  const said = view.format.time(at, item?.time.is === 'known' ? item.time.zone : view.startZone);
  return putRight === undefined ? said : `${said}; ${view.labels('set-point.put-right')}`;
}

/** A likely slip, since when it was known, how long the log shows it, and who was told. */
function differenceText({ labels, format, startZone }: View, one: SetPointDifference): string {
  const { slip, since, seconds, told } = one;
  const named = (who: string) => (labels.find(`contact-with.${who}`) ?? who).toLowerCase();
  return [
    ...(slip === undefined ? [] : [labels(`slip.${slip}`)]),
    ...(since === undefined ? [] : [`${labels('set-point.since')} ${format.time(since, startZone)}`]),
    ...(seconds === undefined ? [] : [`${labels('set-point.shown-for')} ${format.duration(seconds)}`]),
    ...(told === undefined
      ? []
      : told.length === 0
        ? [labels('set-point.nobody-told')]
        : [`${labels('set-point.told')} ${told.map((who) => named(who.with)).join(', ')}`]),
  ].join('; ');
}

/** The words on each way between stops, where there is more than one way. */
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
                (word) =>
                  `${labels(`set-point-source.${word.source}`)} ${format.temperature(word.celsius)}${inCompartment(view, word)}`,
              )
              .join('; '),
          ),
          most === 0 ? cell('–') : { is: 'alert', of: plain(format.difference(most)) },
        ];
      }),
    },
  ];
}
