import { claimedLines } from '../../../core/assess/claim/claimed-lines.js';
import { assertNever } from '../../../core/model/error.js';
import { omitUndefined } from '../../../core/model/omit-undefined.js';
import type { ClaimResult } from '../../../core/model/results.js';
import type { ClaimEntry } from '../../../core/model/state.js';
import { type Block, type Cell, type Fact, type Inline, plain, text } from '../../../core/words/blocks.js';
import { dumpingWords } from '../../../core/words/dumping.js';
import { cell, exhibitLinks, type View } from '../context.js';
import { percentText } from '../inspection-words.js';
import { column } from '../tables.js';
import { bracketed, claimEntriesOf, formatDayIn, formatMoneyIn } from './entries.js';

/** Facts of the claim as it was received: claimant, numbers, date, amount, grounds, what its letter says. */
export function claimFacts(view: View, claim: ClaimResult): Block {
  const { labels } = view;
  const { received } = claim;
  const { claimant } = received;
  const lines = claimedLines(claimEntriesOf(view, claim), view.input.assessment.outcomes);
  const fact = (name: string, ...value: Inline[]): Fact => ({ label: labels(`claim.${name}`), value });
  return {
    is: 'facts',
    facts: [
      fact(
        'claimant',
        text(
          [`${claimant.name} (${labels(`claimant-role.${claimant.role}`)})`, claimant.address]
            .filter(Boolean)
            .join(', '),
        ),
      ),
      fact('our-number', text(received.ourNumber)),
      ...(received.theirNumber === undefined ? [] : [fact('their-number', text(received.theirNumber))]),
      fact(
        'received',
        text(
          [
            formatDayIn(view, received.received),
            ...(received.form === undefined ? [] : [labels(`letter-form.${received.form}`)]),
          ].join(', '),
        ),
        ...bracketed(exhibitLinks(view, received.evidence, 4)),
      ),
      fact(
        'amount',
        text(received.amount === undefined ? labels('none.not-given') : formatMoneyIn(view, received.amount)),
      ),
      ...(received.grounds.length === 0 ? [] : [fact('grounds', text(received.grounds.join('; ')))]),
      ...(lines === undefined ? [] : [fact('lines', text([...lines].map(view.names.line).join('; ')))]),
      fact('contents', ...plain(contentsWords(view, claim))),
    ],
  };
}

/** What governs the claim, on whose word, and which papers of it are on file. */
export function claimPapers(view: View, claim: ClaimResult): Block {
  const { labels } = view;
  const { terms } = claim;
  const fact = (name: string, ...value: Inline[]): Fact => ({ label: labels(`claim.${name}`), value });
  const lines = claimedLines(claimEntriesOf(view, claim), view.input.assessment.outcomes);
  return {
    is: 'facts',
    facts: [
      fact(
        'governs',
        text(
          [
            ...(claim.contradicts === undefined
              ? [claim.governs, ...(claim.beside ?? [])].map((one) => labels(`governs.${one}`))
              : [labels('claim.contradicts')]),
            ...(terms === undefined && claim.contradicts === undefined ? [labels('claim.nobody-said')] : []),
            ...(terms?.note === undefined ? [] : [terms.note]),
          ].join('; '),
        ),
        ...bracketed(exhibitLinks(view, terms?.evidence ?? [], 4)),
      ),
      ...(claim.similar === undefined ? [] : [fact('similar', text(similarWords(view, claim.similar)))]),
      fact('papers', ...documentText(view, claim)),
      ...(lines === undefined
        ? []
        : [
            fact(
              'lines',
              text(`${[...lines].map(view.names.line).join('; ')}. ${labels('claim.other-lines')}`),
            ),
          ]),
    ],
  };
}

/** The other claims by number and claimant, and the carriers with a similar one. */
function similarWords(view: View, { claims, carriers }: NonNullable<ClaimResult['similar']>): string {
  const others = (view.input.assessment.claims ?? []).filter(({ claim }) => claims.includes(claim));
  return [
    ...others.map(({ received }) => `${received.claimant.name}, ${received.ourNumber}`),
    ...carriers,
  ].join('; ');
}

const contentsWords = ({ labels }: View, { contents }: ClaimResult): string =>
  contents.map(({ id, state }) => `${labels(`claim-says.${id}`)}: ${labels(`said.${state}`)}`).join('; ');

function documentText(view: View, { papers }: ClaimResult): Inline[] {
  return papers.flatMap(({ id, have, dumping }, i): Inline[] => {
    const links = exhibitLinks(view, have, 3);
    const shown = links.length === 0 ? [text(` (${view.labels('claim.not-there')})`)] : bracketed(links);
    const lacks =
      dumping === undefined
        ? []
        : dumpingWords(view.labels, dumping, (value) => percentText(view.format, value), view.names.line);
    return [
      text(`${i === 0 ? '' : '; '}${view.labels(`claim-paper.${id}`)}`),
      ...shown,
      ...lacks.map((words) => text(`; ${words}`)),
    ];
  });
}

/** Entries on settling a claim: an offer of compromise is no evidence of its validity, and no part of a dossier. */
const SETTLEMENT: ReadonlySet<ClaimEntry['is']> = new Set(['offer', 'payment', 'admitted', 'closed']);

/** Letters and declinations of a claim, or what was offered, admitted and paid, in the order of the record. */
export function claimHistoryBlocks(view: View, claim: ClaimResult, which: 'letters' | 'settlement'): Block[] {
  const all = claimEntriesOf(view, claim);
  const told = all.filter((entry) => SETTLEMENT.has(entry.is) === (which === 'settlement'));
  const rows = told.flatMap((entry): Cell[][] => {
    const said = doneWords(view, entry);
    if (said === undefined) return [];
    return [
      [
        cell(said.on),
        cell(said.what),
        cell(said.by),
        cell(said.amount),
        exhibitLinks(view, entry.evidence, 4),
      ],
    ];
  });
  if (rows.length === 0) return [];
  return [
    { is: 'heading', level: 3, text: view.labels(`sub.claim-${which}`) },
    {
      is: 'table',
      columns: [
        column(view, 'time', 2.4),
        column(view, 'what', 3.6),
        column(view, 'who', 2),
        column(view, 'amount', 1.4, 'right'),
        column(view, 'exhibits', 1),
      ],
      rows,
    },
  ];
}

/** Who told whom of a decision, and how. */
function toldWords(
  { labels }: View,
  { by = 'carrier', to, form }: Pick<Extract<ClaimEntry, { is: 'declined' }>, 'by' | 'to' | 'form'>,
): string {
  const how = form === undefined ? '' : `, ${labels(`letter-form.${form}`)}`;
  return `${labels(`sayer.${by}`)}${to === undefined ? '' : ` → ${to}`}${how}`;
}

interface Done {
  on?: string;
  what: string;
  by?: string;
  amount?: string;
}

function doneWords(view: View, entry: ClaimEntry): Done | undefined {
  const { labels } = view;
  switch (entry.is) {
    case 'letter':
      return {
        on: formatDayIn(view, entry.on),
        what: `${labels(`claim-letter.${entry.letter}`)} (${labels(`letter-way.${entry.way}`)})`,
        by: entry.with,
      };
    case 'offer':
      return {
        on: formatDayIn(view, entry.on),
        what: labels(entry.firm ? 'claim.firm-offer' : 'claim.offer'),
        by: labels(`sayer.${entry.by}`),
        amount: formatMoneyIn(view, entry.amount),
      };
    case 'payment':
      return {
        on: formatDayIn(view, entry.on),
        what: labels('claim.payment'),
        by: labels(`sayer.${entry.by}`),
        amount: formatMoneyIn(view, entry.amount),
      };
    case 'declined':
      return {
        on: formatDayIn(view, entry.on),
        what: [
          labels(entry.inWriting ? 'claim.declined' : 'claim.declined-not-in-writing'),
          ...entry.reasons,
          ...(entry.items ?? []).map(({ item, reason }) => `${item}: ${reason}`),
        ].join('; '),
        by: toldWords(view, entry),
        ...omitUndefined({ amount: entry.part && formatMoneyIn(view, entry.part) }),
      };
    case 'admitted':
      return {
        on: formatDayIn(view, entry.on),
        what: labels('claim.admitted'),
        by: toldWords(view, entry),
        amount: formatMoneyIn(view, entry.part),
      };
    case 'papers-returned':
      return {
        on: formatDayIn(view, entry.on),
        what: labels('claim.papers-returned'),
        by: toldWords(view, entry),
      };
    case 'closed':
      return {
        on: formatDayIn(view, entry.on),
        what: `${labels('claim.closed')}: ${labels(`claim-closed.${entry.how}`)}`,
      };
    case 'received':
    case 'terms':
    case 'clock-set':
    case 'amount':
    case 'quantity':
    case 'cause':
    // A prepared package may never have been sent; the trail lists it.
    case 'answered':
      return undefined;
    default:
      return assertNever(entry);
  }
}
