import type { EvidenceItem, ItemOf } from '../../core/model/state.js';
import { celsius } from '../../core/model/temperature.js';
import { knownMilliseconds } from '../../core/model/time.js';
import { type Block, plain, type Section } from '../../core/words/blocks.js';
import { byExhibitNumber, withSubject } from './by-subject.js';
import { exhibitLinks, placeText, tripPartOf, type View } from './context.js';
import { doorBlocks, shockBlocks } from './handling.js';
import { type ColumnOf, evidenceTable, listOrNone } from './tables.js';

export function transitSection(view: View): Section {
  const { labels, format, words } = view;
  const degrees = (t: { value: number; unit: '°F' | '°C' } | undefined) =>
    t === undefined ? '–' : format.temperature(celsius(t));
  const { compartments = [] } = view.input.state.delivery.equipment.trailer;
  const compartmentColumn: ColumnOf<ItemOf<'round'>>[] =
    compartments.length === 0 ? [] : [['place', 1.6, (item) => placeText(view, item)]];
  const rounds = listOrNone(
    view,
    'rounds',
    view.of('round'),
    [
      ['time', 2.9, (item) => format.eventTime(item.time)],
      ['box-air', 1.7, (item) => degrees(item.boxAir), 'right'],
      ['set-point', 1.7, (item) => degrees(item.setPoint), 'right'],
      ['fuel', 0.8, (item) => (item.fuel === undefined ? '–' : format.share(item.fuel)), 'right'],
      [
        'alarms',
        2.4,
        ({ alarms }) => (alarms.length === 0 ? '–' : { is: 'alert', of: plain(alarms.join('; ')) }),
      ],
      ...compartmentColumn,
      ['by', 1.2, (item) => item.by],
      ['exhibit', 0.9, (item) => exhibitLinks(view, [item.evidence])],
    ],
    labels('sub.rounds'),
  );
  const contacts = listOrNone(
    view,
    'contacts',
    view.of('contact'),
    [
      ['time', 2.8, (item) => format.eventTime(item.time)],
      [
        'with',
        1.2,
        (item) => [labels(`contact-with.${item.with}`), item.withName].filter(Boolean).join(', '),
      ],
      ['how', 1, (item) => labels(`contact-how.${item.how}`)],
      [
        'subject',
        1.6,
        (item) => (item.subjects ?? []).map((one) => labels(`contact-subject.${one}`)).join(', '),
      ],
      ['about', 4, (item) => item.about],
      ['by', 1.2, (item) => item.by],
      ['exhibit', 0.9, (item) => exhibitLinks(view, [item.evidence])],
    ],
    labels('sub.contacts'),
  );
  const onTheWay = byExhibitNumber(
    view,
    [...view.of('photo'), ...view.of('document')].filter((item) => tripPartOf(view, item) === 'way'),
  );
  const stops = view
    .of('event')
    .filter((item) => item.event === 'stopped' || item.event === 'resumed')
    .filter((item) => knownMilliseconds(item.time) === undefined);
  return {
    id: 'transit',
    title: labels('section.transit'),
    blocks: [
      ...words.blocks('sections/transit'),
      ...rounds,
      ...doorBlocks(view),
      ...shockBlocks(view),
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

/** Statements of people in their own words, each with its exhibit. */
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
