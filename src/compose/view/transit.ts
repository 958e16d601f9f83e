import type { EvidenceItem } from '../../model/state.js';
import { celsius } from '../../model/temperature.js';
import { type Block, type Cell, plain, type Section } from '../blocks.js';
import { inOrder, withSubject } from './by-subject.js';
import { cell, exhibitLinks, sideOf, type View } from './context.js';
import { column, evidenceTable, tableOr } from './tables.js';

export function transitSection(view: View): Section {
  const { labels, format, words } = view;
  const degrees = (t: { value: number; unit: '°F' | '°C' } | undefined) =>
    cell(t === undefined ? '–' : format.temperature(celsius(t)));
  const rounds = tableOr(
    view,
    'rounds',
    [
      column(view, 'time', 2.9),
      column(view, 'box-air', 1.7, 'right'),
      column(view, 'set-point', 1.7, 'right'),
      column(view, 'fuel', 0.8, 'right'),
      column(view, 'alarms', 2.4),
      column(view, 'by', 1.2),
      column(view, 'exhibit', 0.9),
    ],
    view
      .of('round')
      .map((item): Cell[] => [
        cell(format.eventTime(item.time)),
        degrees(item.boxAir),
        degrees(item.setPoint),
        cell(item.fuel === undefined ? '–' : format.share(item.fuel)),
        item.alarms.length === 0 ? cell('–') : { is: 'alert', of: plain(item.alarms.join('; ')) },
        cell(item.by),
        exhibitLinks(view, [item.evidence]),
      ]),
    labels('sub.rounds'),
  );
  const contacts = tableOr(
    view,
    'contacts',
    [
      column(view, 'time', 2.8),
      column(view, 'with', 1.2),
      column(view, 'how', 1),
      column(view, 'about', 4.6),
      column(view, 'by', 1.2),
      column(view, 'exhibit', 0.9),
    ],
    view
      .of('contact')
      .map((item): Cell[] => [
        cell(format.eventTime(item.time)),
        cell(labels(`contact-with.${item.with}`)),
        cell(labels(`contact-how.${item.how}`)),
        cell(item.about),
        cell(item.by),
        exhibitLinks(view, [item.evidence]),
      ]),
    labels('sub.contacts'),
  );
  const onTheWay = inOrder(
    view,
    [...view.of('photo'), ...view.of('document')].filter((item) => sideOf(view, item) === 'way'),
  );
  const stops = view.of('event').filter((item) => item.event === 'stopped' || item.event === 'resumed');
  return {
    id: 'transit',
    title: labels('section.transit'),
    blocks: [
      ...words.blocks('sections/transit'),
      ...rounds,
      ...contacts,
      ...(stops.length === 0 ? [] : evidenceTable(view, stops, 'transit', labels('sub.events'))),
      ...listed(view, onTheWay, 'way'),
      ...listed(view, withSubject(view, ['message']), 'messages'),
      ...statements(view),
    ],
  };
}

const listed = (view: View, items: readonly EvidenceItem[], name: string): Block[] =>
  items.length === 0 ? [] : evidenceTable(view, items, 'transit', view.labels(`sub.${name}`));

/** Accounts of people in their own words, each with its exhibit. */
function statements(view: View): Block[] {
  const { labels, format } = view;
  const said = view.of('statement');
  const heading: Block = { is: 'heading', level: 2, text: labels('sub.statements') };
  if (said.length === 0) return [heading, { is: 'none', of: plain(labels('none.statements')) }];
  return [
    heading,
    ...said.map(
      (item): Block => ({
        is: 'quote',
        of: [
          {
            is: 'paragraph',
            of: [
              { is: 'strong', of: plain(item.by ?? labels('none.not-given')) },
              ...plain(
                `${item.about === undefined ? '' : `, ${labels(`statement-about.${item.about}`)}`}, ${format.eventTime(item.time)} `,
              ),
              ...exhibitLinks(view, [item.evidence]),
            ],
          },
          ...item.text
            .split(/\n+/)
            .filter((part) => part.trim() !== '')
            .map((part): Block => ({ is: 'paragraph', of: plain(part) })),
        ],
      }),
    ),
  ];
}
