import type { EvidenceItem, ItemOf } from '../../core/model/state.js';
import { knownMilliseconds } from '../../core/model/time.js';
import type { Block, Section } from '../../core/words/blocks.js';
import { byExhibitNumber, withSubject } from './by-subject.js';
import { tripPartOf, type View } from './context.js';
import { palletBlocks } from './handling.js';
import { outcomeTable } from './outcome-table.js';
import { evidenceTable } from './tables.js';
import { weightBlocks } from './weights.js';

/** Events with a time are in the list of events. */
const isUntimed = (item: EvidenceItem): boolean => knownMilliseconds(item.time) === undefined;

/** Evidence that is not known to belong to transit or to the other end. */
const canBeOf = (view: View, end: 'load' | 'unload') => (item: EvidenceItem) => {
  const side = tripPartOf(view, item);
  return side === end || side === undefined;
};

/** Whether an item is later than the start of loading; false when a time is missing. */
function afterLoadingBegan(view: View, item: EvidenceItem): boolean {
  const began = view.input.assessment.timeline.items.find(
    (one) => one.event === 'loading-began' || one.event === 'doors-closed',
  );
  const at = knownMilliseconds(item.time);
  return began !== undefined && at !== undefined && at >= began.at;
}

/** Whether a particular is of the sale of the goods, not of their carriage. */
const isOfSale = ({ of }: ItemOf<'particular'>): boolean =>
  of === 'market-price' || of === 'payment' || of === 'title';

export function loadingSection(view: View, plan: readonly Block[] = []): Section {
  const { labels, words } = view;
  const events = view
    .of('event')
    .filter((item) => ['loading-began', 'loading-ended', 'doors-closed'].includes(item.event))
    .filter(isUntimed);
  const scenes = withSubject(view, [
    'pallets-on-dock',
    'load-pattern',
    'pallet-tag',
    'seal',
    'pulp-display',
    'bill-of-lading',
    'shipper-pulp-sheet',
  ]);
  const displays = withSubject(view, ['unit-display']).filter((item) => afterLoadingBegan(view, item));
  const items = [...events, ...scenes, ...displays].filter(canBeOf(view, 'load'));
  const exceptions = byExhibitNumber(view, view.of('exception'));
  const particulars = byExhibitNumber(
    view,
    view.of('particular').filter((item) => !isOfSale(item)),
  );
  const instruments = byExhibitNumber(view, view.of('instrument'));
  const seals = view.of('seal').filter((item) => item.state === 'applied');
  return {
    id: 'loading',
    title: labels('section.loading'),
    blocks: [
      ...words.blocks('sections/loading'),
      ...plan,
      ...weightBlocks(view),
      ...evidenceTable(
        view,
        byExhibitNumber(view, [
          ...items,
          ...seals,
          ...[...view.of('pattern'), ...view.of('scale')].filter(canBeOf(view, 'load')),
        ]),
        'loading',
      ),
      ...(exceptions.length === 0
        ? []
        : evidenceTable(view, exceptions, 'loading', labels('sub.exceptions'))),
      ...(particulars.length === 0
        ? []
        : evidenceTable(view, particulars, 'loading', labels('sub.particulars'))),
      ...(instruments.length === 0
        ? []
        : evidenceTable(view, instruments, 'loading', labels('sub.instruments'))),
      ...evidenceTable(
        view,
        byExhibitNumber(view, [...view.of('bracing'), ...withSubject(view, ['bracing'])]),
        'bracing',
        labels('sub.bracing'),
      ),
    ],
  };
}

export function beforeLoadingSection(view: View): Section {
  const displays = withSubject(view, ['unit-display', 'fuel-gauge']).filter(
    (item) => !afterLoadingBegan(view, item),
  );
  const scenes = withSubject(view, [
    'trailer-inside',
    'drains',
    'air-chute',
    'thermometer-in-ice',
    'washout-receipt',
    'pre-trip-report',
    'thermometer-check',
  ]);
  const items = [...scenes, ...displays].filter(canBeOf(view, 'load'));
  return {
    id: 'before-loading',
    title: view.labels('section.before-loading'),
    blocks: [
      ...view.words.blocks('sections/before-loading'),
      ...evidenceTable(view, byExhibitNumber(view, items), 'before-loading'),
    ],
  };
}

export function arrivalSection(view: View): Section {
  const { labels, words } = view;
  const events = view
    .of('event')
    .filter(isUntimed)
    .filter(
      (item) =>
        tripPartOf(view, item) === 'unload' ||
        ['refused', 'unloaded', 'notice-of-arrival', 'inspection-requested', 'inspected'].includes(
          item.event,
        ),
    );
  const outcomes = view.of('outcome');
  const ofSale = byExhibitNumber(view, view.of('particular').filter(isOfSale));
  const found = withSubject(view, ['load-at-opening', 'damage']).filter(canBeOf(view, 'unload'));
  const others = withSubject(view, ['seal', 'pulp-display', 'load-pattern']).filter(
    (item) => tripPartOf(view, item) === 'unload',
  );
  const papers = withSubject(view, [
    'proof-of-delivery',
    'inspection-certificate',
    'rejection-notice',
    'claim-letter',
    'invoice',
  ]);
  return {
    id: 'arrival',
    title: labels('section.arrival'),
    blocks: [
      ...words.blocks('sections/arrival'),
      ...outcomeTable(view),
      ...palletBlocks(view),
      ...evidenceTable(view, byExhibitNumber(view, [...events, ...outcomes, ...found, ...others]), 'arrival'),
      ...(view.of('seal').length === 0
        ? []
        : evidenceTable(view, view.of('seal'), 'arrival', labels('sub.seals'))),
      ...(ofSale.length === 0 ? [] : evidenceTable(view, ofSale, 'arrival', labels('sub.particulars'))),
      ...(papers.length === 0 ? [] : evidenceTable(view, papers, 'arrival', labels('sub.papers'))),
    ],
  };
}
