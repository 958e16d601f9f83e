import type {
  GoodDelivery,
  GoodDeliveryAnswer,
  InspectionResult,
  PercentRange,
} from '../../core/model/results.js';
import { type Block, type Cell, plain, type Section, text } from '../../core/words/blocks.js';
import { exhibitLinks, type View } from './context.js';
import { percentText } from './inspection-words.js';
import { lotText } from './inspections.js';
import { tableOf } from './tables.js';

/**
 * Lots held against what a good delivery may contain, and texts on what usually causes their defects: weighing, not fact.
 * Absent where there is no inspection.
 */
export function goodDeliverySection(view: View): Section[] {
  const { labels, words } = view;
  const results = view.input.assessment.inspections ?? [];
  if (results.length === 0) return [];
  const refused = results.filter(({ goodDelivery }) => goodDelivery.is === 'not-compared');
  return [
    {
      id: 'good-delivery',
      title: labels('section.good-delivery'),
      blocks: [
        ...words.blocks('sections/good-delivery'),
        ...comparisonTable(view, results),
        ...(refused.length === 0 ? [] : [notCompared(view, refused)]),
        ...remarkList(view, results),
        ...causeTable(view, results),
      ],
    },
  ];
}

interface Row {
  of: InspectionResult;
  delivery: Extract<GoodDelivery, { is: 'compared' }>;
  answer: GoodDeliveryAnswer;
  /** The others of a lot leave its cells empty. */
  isFirst: boolean;
}

function comparisonTable(view: View, results: readonly InspectionResult[]): Block[] {
  const { labels } = view;
  const rows = results.flatMap((of): Row[] => {
    const { goodDelivery: delivery } = of;
    return delivery.is === 'compared'
      ? delivery.answers.map((answer, i) => ({ of, delivery, answer, isFirst: i === 0 }))
      : [];
  });
  if (rows.length === 0) return [];
  return [
    tableOf(view, rows, [
      ['lot', 1.8, ({ of, isFirst }) => (isFirst ? lotText(view, of).join(', ') : undefined)],
      ['basis', 2.4, ({ delivery, isFirst }) => (isFirst ? ruleText(view, delivery) : undefined)],
      ['of', 1.6, ({ answer, delivery }) => partText(view, answer, delivery.defect)],
      ['found', 1.2, ({ answer }) => rangeText(view, answer.found)],
      ['allowed', 1.2, ({ answer }) => rangeText(view, answer.limit)],
      ['answer', 1.4, ({ answer }) => answerCell(view, answer.answer)],
      ['in-transit', 1.4, ({ of, isFirst }) => (isFirst ? courseText(view, of) : undefined)],
      ['exhibit', 0.9, ({ of, isFirst }) => (isFirst ? exhibitLinks(view, of.evidence) : undefined)],
    ]),
    ...(rows.some(({ delivery }) => delivery.ifFob)
      ? [{ is: 'paragraph' as const, of: plain(labels('good-delivery.if-fob')) }]
      : []),
  ];
}

const ruleText = ({ labels }: View, { rule, paragraph }: Row['delivery']): string =>
  rule === 'agreed'
    ? labels('good-delivery.rule-agreed')
    : `7 CFR ${paragraph}: ${labels(`good-delivery.rule-${rule}`)}`;

function partText({ labels }: View, { of }: GoodDeliveryAnswer, defect: string | undefined): string {
  const part = labels(`good-delivery.of-${of}`);
  return defect === undefined || of === 'decay' ? part : `${part}: ${defect}`;
}

const rangeText = ({ format }: View, { low, high }: PercentRange): string =>
  low === high ? percentText(format, low) : `${percentText(format, low)} – ${percentText(format, high)}`;

function answerCell({ labels }: View, answer: GoodDeliveryAnswer['answer']): Cell {
  const said = plain(labels(`good-delivery.${answer}`));
  return answer === 'exceeds' ? { is: 'alert', of: said } : said;
}

/** Days on the way, and how late it came; early arrivals are not told. */
function courseText({ labels, format }: View, one: InspectionResult): string {
  const { transitSeconds, lateSeconds = 0 } = one;
  return [
    ...(transitSeconds === undefined
      ? []
      : [`${format.number(transitSeconds / 86_400, 1)} ${labels('good-delivery.days')}`]),
    ...(lateSeconds > 0 ? [`${format.duration(lateSeconds)} ${labels('good-delivery.late')}`] : []),
  ].join('; ');
}

function notCompared(view: View, results: readonly InspectionResult[]): Block {
  const { labels } = view;
  return {
    is: 'list',
    ordered: false,
    items: results.flatMap((one): Block[][] => {
      const { goodDelivery } = one;
      if (goodDelivery.is === 'compared') return [];
      const said = `${lotText(view, one).join(', ')}: ${labels(`good-delivery.why-${goodDelivery.why}`)}`;
      return [[{ is: 'paragraph', of: plain(said) }]];
    }),
  };
}

function remarkList(view: View, results: readonly InspectionResult[]): Block[] {
  const { labels, format } = view;
  const items = results.flatMap((one) =>
    one.remarks.map(({ is, evidence, percent }): Block[] => [
      {
        is: 'paragraph',
        of: [
          text(
            `${one.lot}: ${labels(`good-delivery.remark-${is}`).replace('PERCENT', percent === undefined ? '' : percentText(format, percent))} (`,
          ),
          ...exhibitLinks(view, evidence),
          text(')'),
        ],
      },
    ]),
  );
  return items.length === 0 ? [] : [{ is: 'list', ordered: false, items }];
}

/** Each defect once, with the texts that say what usually causes it, in their own words. */
function causeTable(view: View, results: readonly InspectionResult[]): Block[] {
  const { labels, words } = view;
  const seen = new Set<string>();
  const rows = results.flatMap(({ defects, line }) =>
    defects.flatMap(({ name: defect, causes }) =>
      causes.flatMap(({ cause, name: source, address, quote }) => {
        const key = JSON.stringify([defect.toLowerCase(), line, quote]);
        if (seen.has(key)) return [];
        seen.add(key);
        return [{ defect, cause, source, address, quote }];
      }),
    ),
  );
  if (rows.length === 0) return [];
  return [
    { is: 'heading', level: 2, text: labels('sub.defect-causes') },
    ...words.blocks('sections/defect-causes'),
    tableOf(view, rows, [
      ['defect', 1.4, ({ defect }) => defect],
      ['cause', 1.4, ({ cause }) => labels(`defect-cause.${cause}`)],
      ['says', 4, ({ quote }) => `“${quote}”`],
      ['source', 3, ({ source, address }) => `${source}; ${address}`],
    ]),
  ];
}
