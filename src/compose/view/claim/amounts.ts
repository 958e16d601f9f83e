import { multiply } from '../../../core/assess/claim/stated-amounts.js';
import { unitsPerOne } from '../../../core/model/money.js';
import { thousandths } from '../../../core/model/quantity.js';
import type { AmountStep, AmountWorksheet, ClaimResult, MoneyRange } from '../../../core/model/results.js';
import type { ClaimEntryOf } from '../../../core/model/state.js';
import { type Block, type Cell, type Fact, plain, text } from '../../../core/words/blocks.js';
import { cell, type View } from '../context.js';
import { column } from '../tables.js';
import { bracketed, claimEntriesOf, formatMoneyIn, supportLinks } from './entries.js';

/** Documented amounts and their sum, step by step, with what is not in the sum. */
export function amountBlocks(view: View, claim: ClaimResult): Block[] {
  const { amounts } = claim;
  if (amounts === undefined) return [];
  return [
    { is: 'heading', level: 3, text: view.labels('sub.claim-amounts') },
    ...view.words.blocks('sections/claim-amounts', {
      currency: amounts.currency,
      cmr: claim.governs === 'cmr',
    }),
    { is: 'facts', facts: outcome(view, claim, amounts) },
    ...statedAmountsTable(view, claim),
    ...stepTable(view, amounts),
    ...noteList(view, amounts),
  ];
}

const range = ({ format }: View, { low, high }: MoneyRange, code: string): string =>
  format.moneyRange(low, high, code);

function outcome(view: View, { contradicts }: ClaimResult, sheet: AmountWorksheet): Fact[] {
  const { claimed, computed, currency, measure, measureBy, invoiceStandsIn, weightLimit } = sheet;
  const { labels, format } = view;
  const fact = (name: string, value: string): Fact => ({
    label: labels(`claim.${name}`),
    value: plain(value),
  });
  const by = [
    ...(measureBy === 'contract' ? [`, ${labels('amount-measure.contract')}`] : []),
    ...(invoiceStandsIn === undefined ? [] : [`; ${labels(`amount-measure.stands-in-${invoiceStandsIn}`)}`]),
  ].join('');
  return [
    ...(claimed === undefined ? [] : [fact('claimed', format.money(claimed, currency))]),
    ...(contradicts === undefined ? [fact('measure', `${labels(`amount-measure.${measure}`)}${by}`)] : []),
    fact(
      'by-papers',
      computed === undefined
        ? labels(contradicts === undefined ? 'claim.not-computed' : 'claim.not-summed')
        : range(view, computed, currency),
    ),
    ...(weightLimit === undefined ? [] : [fact('weight-limit', weightLimitWords(view, weightLimit))]),
  ];
}

function weightLimitWords(
  { labels, format }: View,
  { sdr, kilograms }: NonNullable<AmountWorksheet['weightLimit']>,
): string {
  const between = (low: string, high: string) => (low === high ? low : `${low} – ${high}`);
  return labels('claim.weight-limit-of')
    .replace('KG', () => between(kilograms.low, kilograms.high))
    .replace('LIMIT', () => between(format.number(sdr.low / 100, 2), format.number(sdr.high / 100, 2)));
}

function statedAmountsTable(view: View, claim: ClaimResult): Block[] {
  const { labels, names } = view;
  const said = claimEntriesOf(view, claim).filter(
    (one): one is ClaimEntryOf<'amount'> => one.is === 'amount',
  );
  if (said.length === 0) return [];
  return [
    {
      is: 'table',
      columns: [
        column(view, 'amount-said', 3),
        column(view, 'line', 2),
        column(view, 'said-by', 1.5),
        column(view, 'reckoned', 2.4),
        column(view, 'amount', 1.8, 'right'),
        column(view, 'exhibits', 1.3),
      ],
      rows: said.map((one): Cell[] => [
        cell([labels(`amount-item.${one.item}`), ...(one.note === undefined ? [] : [one.note])].join('; ')),
        cell(one.line === undefined ? labels('claim.whole') : names.line(one.line)),
        cell(labels(`sayer.${one.saidBy}`)),
        cell(reckoned(view, one)),
        cell(amountOf(view, one)),
        supportLinks(view, [one.seq]),
      ]),
    },
  ];
}

/** The amount of an entry by itself; empty where its quantity is in other entries. */
function amountOf(view: View, { total, each, quantity }: ClaimEntryOf<'amount'>): string {
  if (total !== undefined) return formatMoneyIn(view, total);
  const product = each && quantity && multiply(each, thousandths(quantity));
  return each === undefined || !product ? '' : view.format.money(product.value, each.currency);
}

function reckoned(view: View, { each, quantity, unit }: ClaimEntryOf<'amount'>): string {
  const count = [
    ...(quantity === undefined ? [] : [quantity]),
    ...(unit === undefined ? [] : [view.labels(`quantity-unit.${unit}`)]),
  ].join(' ');
  return [...(each === undefined ? [] : [formatMoneyIn(view, each)]), ...(count === '' ? [] : [count])].join(
    ' × ',
  );
}

/** What rounding did, which is less than the least that is paid. */
const rounding = ({ format }: View, minor: number, code: string): string =>
  `${format.number(minor / unitsPerOne(code), 5)}\u00a0${code}`;

/** Steps that are results of earlier ones. */
const RESULTS: ReadonlySet<AmountStep['id']> = new Set(['loss', 'claimable']);

function stepTable(view: View, { steps, currency }: AmountWorksheet): Block[] {
  const { labels, names } = view;
  if (steps.length === 0) return [];
  const ofLines = steps.some(({ line }) => line !== undefined);
  return [
    {
      is: 'table',
      columns: [
        column(view, 'step', 4),
        ...(ofLines ? [column(view, 'line', 2.4)] : []),
        column(view, 'amount', 3, 'right'),
        column(view, 'rests-on', 2.4),
      ],
      rows: steps.map(({ id, line, range: amount, seqs, rounded }): Cell[] => {
        const words = labels(`amount-step.${id}`);
        return [
          RESULTS.has(id) ? [{ is: 'strong', of: plain(words) }] : cell(words),
          ...(ofLines ? [cell(line === undefined ? '' : names.line(line))] : []),
          RESULTS.has(id)
            ? [{ is: 'strong', of: plain(range(view, amount, currency)) }]
            : cell(range(view, amount, currency)),
          [
            ...(RESULTS.has(id) ? [] : supportLinks(view, seqs)),
            ...(rounded === undefined
              ? []
              : [text(` ${labels('claim.rounded').replace('SIZE', rounding(view, rounded, currency))}`)]),
          ],
        ];
      }),
    },
  ];
}

/** Each item that is not in the sum, and why, once; a note on an item names it. */
function noteList(view: View, { notes }: AmountWorksheet): Block[] {
  const { labels } = view;
  if (notes.length === 0) return [];
  const said = new Map<string, number[]>();
  for (const { is, detail, seqs } of notes) {
    const sentence =
      labels.find(`amount-note.${detail}`) ??
      labels(`amount-note.${is}`).replace('ITEM', () => labels.find(`amount-item.${detail}`) ?? detail);
    said.set(sentence, [...(said.get(sentence) ?? []), ...seqs]);
  }
  return [
    {
      is: 'list',
      ordered: false,
      items: [...said].map(([sentence, seqs]): Block[] => [
        { is: 'paragraph', of: [text(sentence), ...bracketed(supportLinks(view, seqs))] },
      ]),
    },
  ];
}
