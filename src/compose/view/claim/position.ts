import { hasNoExceptedCause } from '../../../core/assess/claim/burden-of-proof.js';
import { lineOfFinding } from '../../../core/assess/claim/finding-relevance.js';
import type { ClaimResult, PositionPoint, PositionRow } from '../../../core/model/results.js';
import { type Block, type Cell, type Inline, plain, text } from '../../../core/words/blocks.js';
import { cell, exhibitLinks, type View } from '../context.js';
import { findingLine } from '../findings.js';
import { column, tableOf } from '../tables.js';
import { bracketed, claimEntriesOf, formatMoneyIn } from './entries.js';

const SIDES = ['forCarrier', 'againstCarrier', 'weak'] as const;
type Side = (typeof SIDES)[number];
const LABEL = { forCarrier: 'cover.helps', againstCarrier: 'cover.hurts', weak: 'cover.open' } as const;
/** Further points of one side are counted, not listed: all findings have a section of their own. */
const MOST = 4;

/** Burden of proof, position, and supporting and adverse evidence with exhibits. */
export function positionBlocks(view: View, claim: ClaimResult): Block[] {
  const { labels, words } = view;
  const { position } = claim;
  if (position.length === 0) return [];
  const freedom = position.find((row) => row.element === 'freedom-from-negligence');
  return [
    { is: 'heading', level: 3, text: labels('sub.claim-position') },
    ...words.blocks('sections/claim-position', { cmr: claim.governs === 'cmr' }),
    tableOf(view, position, [
      ['must-show', 2.4, (row) => [{ is: 'strong', of: plain(elementWords(view, row)) }]],
      ['by-whom', 1.1, ({ by }) => labels(`binds.${by}`)],
      ['for-carrier', 1.7, ({ forCarrier }) => countCell(view, forCarrier)],
      ['against-carrier', 1.7, ({ againstCarrier }) => countCell(view, againstCarrier)],
      ['undecided', 1.7, ({ weak }) => countCell(view, weak)],
      ['stands', 1.4, (row) => positionCell(view, row)],
    ]),
    ...(hasNoExceptedCause(position)
      ? words.blocks('sections/claim-without-cause', {
          care: freedom?.stands === 'for-carrier',
          cmr: claim.governs === 'cmr',
        })
      : []),
    ...pointBlocks(view, claim),
  ];
}

function elementWords({ labels }: View, row: PositionRow): string {
  const by = row.under === undefined ? '' : '-cmr';
  const words = (key: string) => labels.find(key.replace('.', `${by}.`)) ?? labels(key);
  return row.cause === undefined
    ? words(`position-of.${row.element}`)
    : `${words('position-of.excepted-cause')}: ${words(`excepted-cause.${row.cause}`)}`;
}

function positionCell({ labels }: View, { stands }: PositionRow): Cell {
  const words = plain(labels(`stands.${stands}`));
  return stands === 'against-carrier' ? { is: 'alert', of: words } : words;
}

/** The number of points, and the exhibits of all. */
function countCell(view: View, points: readonly PositionPoint[]): Cell {
  if (points.length === 0) return cell('–');
  const evidence = [...new Set(points.flatMap((point) => point.evidence))];
  const links = exhibitLinks(view, evidence, 5);
  return [text(String(points.length)), ...bracketed(links)];
}

/** Each point in the words of the finding, the requirement or the entry. */
function pointBlocks(view: View, claim: ClaimResult): Block[] {
  const rows = claim.position.flatMap((row): Cell[][] => {
    const sides = SIDES.flatMap((side): Cell[][] => {
      const said = sideWords(view, claim, row[side]);
      return said.length === 0 ? [] : said.map((words, i): Cell[] => [sideCell(view, side, i), words]);
    });
    return sides.map((cells, i): Cell[] => [cell(i === 0 ? elementWords(view, row) : ''), ...cells]);
  });
  if (rows.length === 0) return [];
  return [
    { is: 'heading', level: 3, text: view.labels('sub.claim-points') },
    {
      is: 'table',
      columns: [column(view, 'must-show', 2), column(view, 'weight', 0.9), column(view, 'says', 7)],
      rows,
    },
  ];
}

function sideCell({ labels }: View, side: Side, index: number): Cell {
  if (index > 0) return [];
  const words = plain(labels(LABEL[side]));
  return side === 'againstCarrier' ? { is: 'alert', of: words } : words;
}

/** The weightiest findings and entries one by one, the others counted; requirements by their titles in one line. */
function sideWords(view: View, claim: ClaimResult, points: readonly PositionPoint[]): Inline[][] {
  const { labels } = view;
  const said = points.flatMap((point, i) => {
    const same = (one: PositionPoint) => JSON.stringify(one) === JSON.stringify(point);
    return pointWords(view, claim, point, points.slice(0, i).filter(same).length);
  });
  const more = said.length - MOST;
  const lacking = points.flatMap(({ from }) => {
    const gap =
      from.is === 'gap' ? view.input.assessment.gaps.find((one) => one.rule === from.id) : undefined;
    return gap === undefined ? [] : [gap.title];
  });
  const rest = lacking.length - MOST;
  return [
    ...said.slice(0, MOST),
    ...(more > 0 ? [plain(labels('claim.more-points').replace('N', String(more)))] : []),
    ...(lacking.length === 0
      ? []
      : [
          plain(
            [
              `${labels('claim.not-met')}: ${lacking.slice(0, MOST).join('; ')}`,
              ...(rest > 0 ? [labels('claim.more-lacking').replace('N', String(rest))] : []),
            ].join('; '),
          ),
        ]),
  ];
}

/** `nth` distinguishes findings with equal id, line and evidence. */
function pointWords(
  view: View,
  claim: ClaimResult,
  { from, evidence }: PositionPoint,
  nth: number,
): Inline[][] {
  switch (from.is) {
    case 'finding': {
      const alike = view.input.assessment.findings.filter(
        (one) =>
          one.id === from.id && lineOfFinding(one) === from.line && one.evidence.join() === evidence.join(),
      );
      const found = alike[nth] ?? alike[0];
      return found === undefined ? [] : [findingLine(view, found)];
    }
    case 'claim-entry': {
      const words = entryWords(view, claim, from.seq);
      return words === undefined ? [] : [[text(words), ...bracketed(exhibitLinks(view, evidence, 4))]];
    }
    case 'gap':
      return [];
  }
}

/** An entry of the claim in one line. */
function entryWords(view: View, claim: ClaimResult, seq: number): string | undefined {
  const { labels, names } = view;
  const entry = claimEntriesOf(view, claim).find((one) => one.seq === seq);
  if (entry?.is === 'received')
    return entry.amount && `${labels('claim.amount')}: ${formatMoneyIn(view, entry.amount)}`;
  if (entry?.is === 'quantity')
    return `${names.line(entry.line)}: ${entry.quantity} ${labels(`quantity-unit.${entry.unit}`)}, ${labels(`quantity-state.${entry.state}`)} (${labels(`sayer.${entry.saidBy}`)})`;
  if (entry?.is === 'cause')
    return [labels(`excepted-cause.${entry.cause}`), entry.note]
      .filter((part) => part !== undefined)
      .join(': ');
  if (entry?.is !== 'amount') return undefined;
  const money = entry.total ?? entry.each;
  return [
    labels(`amount-item.${entry.item}`),
    ...(entry.line === undefined ? [] : [names.line(entry.line)]),
    ...(money === undefined
      ? []
      : [`${formatMoneyIn(view, money)}${entry.total === undefined ? ` ${labels('claim.each')}` : ''}`]),
    labels(`sayer.${entry.saidBy}`),
  ].join(', ');
}
