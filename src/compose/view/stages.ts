import type { SubjectName } from '../../model/evidence.js';
import type { EvidenceItem } from '../../model/state.js';
import { celsius } from '../../model/temperature.js';
import { type Block, type Cell, plain, type Section } from '../blocks.js';
import { cell, exhibitLinks, sideOf, type View } from './context.js';
import { column, evidenceTable, tableOr } from './tables.js';

const subjectOf = (item: EvidenceItem): SubjectName | undefined =>
  item.kind === 'photo' || item.kind === 'document' ? item.subject?.is : undefined;
const withSubject = (view: View, subjects: readonly SubjectName[]) =>
  [...view.of('photo'), ...view.of('document')]
    .filter((item) => subjects.some((subject) => subject === subjectOf(item)))
    .sort((a, b) => (view.number(a.evidence) ?? 0) - (view.number(b.evidence) ?? 0));
const inOrder = (view: View, items: EvidenceItem[]) =>
  [...items].sort((a, b) => (view.number(a.evidence) ?? 0) - (view.number(b.evidence) ?? 0));

export function loadingSection(view: View): Section {
  const { labels, words } = view;
  const events = view
    .of('event')
    .filter(
      (item) =>
        ['loading-began', 'loading-ended', 'doors-closed'].includes(item.event) &&
        sideOf(view, item) !== 'unload',
    );
  const items = [
    ...events,
    ...withSubject(view, [
      'pallets-on-dock',
      'load-pattern',
      'pallet-tag',
      'seal',
      'pulp-display',
      'bill-of-lading',
      'shipper-pulp-sheet',
    ]).filter((item) => sideOf(view, item) !== 'unload'),
    ...view.of('seal').filter((item) => item.state === 'applied'),
  ];
  return {
    id: 'loading',
    title: labels('section.loading'),
    blocks: [
      ...words.blocks('sections/loading'),
      ...evidenceTable(view, inOrder(view, items), 'loading'),
      ...evidenceTable(
        view,
        inOrder(view, [...view.of('bracing'), ...withSubject(view, ['bracing'])]),
        'bracing',
        labels('sub.bracing'),
      ),
    ],
  };
}

export function beforeLoadingSection(view: View): Section {
  const items = withSubject(view, [
    'trailer-inside',
    'drains',
    'air-chute',
    'unit-display',
    'thermometer-in-ice',
    'washout-receipt',
    'pre-trip-report',
    'thermometer-check',
  ]).filter((item) => sideOf(view, item) !== 'unload');
  return {
    id: 'before-loading',
    title: view.labels('section.before-loading'),
    blocks: [
      ...view.words.blocks('sections/before-loading'),
      ...evidenceTable(view, items, 'before-loading'),
    ],
  };
}

export function transitSection(view: View): Section {
  const { labels, format, words } = view;
  const degrees = (t: { value: number; unit: '°F' | '°C' } | undefined) =>
    cell(t === undefined ? '–' : format.temperature(celsius(t)));
  const rounds = tableOr(
    view,
    'rounds',
    [
      column(view, 'time', 2.6),
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
  const stops = view.of('event').filter((item) => item.event === 'stopped' || item.event === 'resumed');
  return {
    id: 'transit',
    title: labels('section.transit'),
    blocks: [
      ...words.blocks('sections/transit'),
      ...rounds,
      ...contacts,
      ...(stops.length === 0 ? [] : evidenceTable(view, stops, 'transit', labels('sub.events'))),
      ...statements(view),
    ],
  };
}

/** Accounts of people in their own words, each with its exhibit. */
function statements(view: View): Block[] {
  const { labels, format } = view;
  const said = view.of('statement');
  const heading: Block = { is: 'heading', level: 2, text: labels('sub.statements') };
  if (said.length === 0) return [heading, { is: 'none', of: plain(labels('none.statements')) }];
  return [
    heading,
    ...said.flatMap((item): Block[] => [
      {
        is: 'paragraph',
        of: [
          { is: 'strong', of: plain(item.by ?? labels('none.not-given')) },
          ...plain(`, ${format.eventTime(item.time)} `),
          ...exhibitLinks(view, [item.evidence]),
        ],
      },
      {
        is: 'quote',
        of: item.text
          .split(/\n+/)
          .filter((part) => part.trim() !== '')
          .map((part): Block => ({ is: 'paragraph', of: plain(part) })),
      },
    ]),
  ];
}

export function arrivalSection(view: View): Section {
  const { labels, words } = view;
  const events = view
    .of('event')
    .filter(
      (item) =>
        sideOf(view, item) === 'unload' ||
        ['refused', 'unloaded', 'notice-of-arrival', 'inspection-requested', 'inspected'].includes(
          item.event,
        ),
    );
  const scenes = withSubject(view, [
    'load-at-opening',
    'damage',
    'seal',
    'pulp-display',
    'load-pattern',
  ]).filter((item) => sideOf(view, item) === 'unload');
  const papers = withSubject(view, [
    'proof-of-delivery',
    'inspection-certificate',
    'rejection-notice',
    'claim-letter',
    'invoice',
    'message',
  ]);
  return {
    id: 'arrival',
    title: labels('section.arrival'),
    blocks: [
      ...words.blocks('sections/arrival'),
      ...evidenceTable(view, inOrder(view, [...events, ...scenes]), 'arrival'),
      ...(view.of('seal').length === 0
        ? []
        : evidenceTable(view, view.of('seal'), 'arrival', labels('sub.seals'))),
      ...(papers.length === 0 ? [] : evidenceTable(view, papers, 'arrival', labels('sub.papers'))),
    ],
  };
}
