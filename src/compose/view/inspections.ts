import type { InspectionResult } from '../../core/model/results.js';
import type { ItemOf } from '../../core/model/state.js';
import { formatAmount } from '../../core/words/amounts.js';
import type { Section } from '../../core/words/blocks.js';
import { exhibitLinks, type View } from './context.js';
import { defectWords, inspectionNotes, samplesText } from './inspection-words.js';
import { listOrNone } from './tables.js';

/** What inspection certificates state, lot by lot: facts, as entered. Absent where there is none. */
export function inspectionSection(view: View): Section[] {
  const { labels, words } = view;
  const results = view.input.assessment.inspections ?? [];
  if (results.length === 0) return [];
  return [
    {
      id: 'inspections',
      title: labels('section.inspections'),
      blocks: [
        ...words.blocks('sections/inspections'),
        ...listOrNone(view, 'arrival', results, [
          ['time', 1.9, (one) => timesOf(view, one)],
          ['lot', 2, (one) => lotText(view, one).join(', ')],
          ['place', 1.5, (one) => placeOf(view, one)],
          ['defects', 3, (one) => foundText(view, one)],
          ['by-whom', 2, (one) => partiesOf(view, one)],
          ['exhibit', 0.9, ({ evidence, documents }) => exhibitLinks(view, [...evidence, ...documents])],
        ]),
      ],
    },
  ];
}

function placeOf(view: View, one: InspectionResult): string {
  const where = itemsOf(view, one).flatMap((item) => item.where ?? []);
  return [...(one.stop === undefined ? [] : [view.names.stop(one.stop)]), ...new Set(where)].join('; ');
}

/** When it was made, and how long after the truck came. */
function timesOf(view: View, one: InspectionResult): string {
  const { labels, format } = view;
  const [first, ...more] = itemsOf(view, one);
  const ended = [first, ...more].find((item) => item?.ended !== undefined)?.ended;
  const after = one.afterArrivalSeconds ?? -1;
  return [
    ...(first === undefined ? [] : [format.eventTime(first.time)]),
    ...(ended === undefined ? [] : [`${labels('inspection.ended')} ${format.eventTime(ended)}`]),
    ...(after < 0 ? [] : [`${format.duration(after)} ${labels('inspection.after-arrival')}`]),
  ].join('; ');
}

/** The entries of one result. */
function itemsOf(view: View, { evidence }: Pick<InspectionResult, 'evidence'>): ItemOf<'inspection'>[] {
  return evidence.flatMap((id) => {
    const item = view.item(id);
    return item?.kind === 'inspection' ? [item] : [];
  });
}

/** `L-4471`, the line, how many, and how many were looked at. */
export function lotText(view: View, one: InspectionResult): string[] {
  const { labels, format, names } = view;
  const items = itemsOf(view, one);
  const count = items.find((item) => item.count !== undefined)?.count;
  const samples = items.find((item) => item.samples !== undefined)?.samples;
  return [
    one.lot,
    ...(one.line === undefined ? [] : [names.line(one.line)]),
    ...(count === undefined
      ? []
      : [formatAmount(labels, format, { value: Number(count.amount), unit: count.unit })]),
    ...(samples === undefined ? [] : [samplesText(view, samples)]),
    ...(one.certificate === undefined ? [] : [`${labels('inspection.certificate')} ${one.certificate}`]),
    ...(one.appeal === undefined ? [] : [labels('inspection.appeal')]),
  ];
}

/** Defects, the certificate's total, pulps and what a dumping certificate shows, in words. */
function foundText(view: View, one: InspectionResult): string {
  const { labels, format } = view;
  const items = itemsOf(view, one);
  const degrees = ({ value, unit }: { value: number; unit: string }) =>
    `${format.number(value, 1)}\u00a0${unit}`;
  return items
    .flatMap((item) => [
      ...item.defects.map((defect) => defectWords(view, defect)),
      ...(item.total === undefined ? [] : [`${labels('inspection.total')} ${defectWords(view, item.total)}`]),
      ...(item.pulps === undefined
        ? []
        : [`${labels('inspection.pulps')} ${degrees(item.pulps.low)} – ${degrees(item.pulps.high)}`]),
      ...inspectionNotes(view, item),
    ])
    .join('; ');
}

/** The inspector, and who asked for the inspection and when. */
function partiesOf(view: View, one: InspectionResult): string {
  const { labels, format } = view;
  const said = itemsOf(view, one).flatMap(({ by, requestedBy, requestedAt }) => {
    const asked = [
      ...(requestedBy === undefined ? [] : [`${labels('inspection.by')} ${requestedBy}`]),
      ...(requestedAt === undefined ? [] : [format.eventTime(requestedAt)]),
    ];
    return [
      ...(by === undefined ? [] : [by]),
      ...(asked.length === 0 ? [] : [`${labels('inspection.requested')} ${asked.join(', ')}`]),
    ];
  });
  return [...new Set(said)].join('; ');
}
