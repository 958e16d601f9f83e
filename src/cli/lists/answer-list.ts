import type { ClaimDeadline, ClaimResult } from '../../core/model/results.js';
import { toInstant } from '../../core/model/time.js';
import { inZone } from '../../core/model/zoned-time.js';
import { dumpingWords } from '../../core/words/dumping.js';
import type { Labels } from '../../core/words/labels.js';
import { numbersFor } from '../../core/words/numbers.js';
import type { AnswerReport, ClaimDuties } from '../../jobs/answer.js';
import { escapeControls, type Output } from '../output.js';
import { printWrapped } from '../print.js';
import { rowPrinter, tableLines } from '../table.js';
import {
  allNotes,
  type DeadlineWording,
  essentialNotes,
  formatCandidates,
  formatDeadlineDay,
  formatDeadlineState,
  formatDeadlineTitle,
  formatDue,
} from './deadline-words.js';

/** The report as JSON. */
export function answerJson(folder: string, report: AnswerReport): object {
  const { state, assessment, claims, refusalClocks, overdue, unknownTerms } = report;
  return {
    folder,
    delivery: state.delivery.delivery,
    at: assessment.at,
    overdue: overdue.length,
    claims,
    refusalClocks,
    unknownTerms,
  };
}

/** Deadlines, overdue actions and missing evidence, claim by claim; with `why`, how each deadline was counted. */
export function printAnswer(output: Output, report: AnswerReport, labels: Labels, why: boolean): void {
  const { delivery } = report.state;
  const speech = { labels, language: delivery.show.language };
  if (report.claims.length === 0) printWrapped(output, labels('answer.no-claim'));
  for (const claim of report.claims) printClaim(output, claim, speech, why);
  printDeadlines(output, labels('answer.refusal'), report.refusalClocks, { ...speech, why });
  output.line();
  for (const { seq, clock } of report.unknownTerms)
    printWrapped(output, `${labels('answer.unknown-term')} ${seq}, ${clock}`);
  const late = report.overdue.length;
  if (report.claims.length > 0)
    output.line(
      late === 0 ? labels('answer.nothing-late') : output.style('red', `${labels('answer.late')}: ${late}`),
    );
  if (!why && report.claims.length > 0) printWrapped(output, labels('answer.why'));
  printWrapped(output, labels('answer.caution'));
}

function printClaim(output: Output, claim: ClaimResult, wording: DeadlineWording, why: boolean): void {
  const { labels, language } = wording;
  const { received, terms, governs } = claim;
  const { claimant, amount, theirNumber } = received;
  const said = [
    `${labels('answer.claim')} ${claim.claim}: ${claimant.name} (${labels(`role.${claimant.role}`)})`,
    `${labels('answer.received')} ${formatDeadlineDay(received.received, language)}`,
    `${labels('answer.our-number')} ${received.ourNumber}`,
    ...(theirNumber === undefined ? [] : [`${labels('answer.their-number')} ${theirNumber}`]),
    ...(amount === undefined ? [] : [numbersFor(language).statedMoney(amount)]),
  ];
  printWrapped(output, said.join(', '), { style: (line) => output.style('bold', line) });
  const by = terms === undefined ? '' : ` (${[`#${terms.seq}`, ...terms.evidence].join(', ')})`;
  const all = [governs, ...(claim.beside ?? [])].map((one) => labels(`governs.${one}`));
  printWrapped(output, `${labels('answer.governs')}: ${all.join('; ')}${by}`);
  if (claim.contradicts === undefined) printWrapped(output, labels(`governing.${governs}`), { mark: '  ' });
  else {
    const entries = claim.contradicts.map((seq) => `#${seq}`).join(', ');
    printWrapped(output, `${labels('answer.contradicts')} ${entries}.`, { mark: '  ' });
  }
  if (claim.similar !== undefined) {
    const { claims, carriers } = claim.similar;
    printWrapped(output, `${labels('answer.similar')} ${[...claims, ...carriers].join(', ')}.`, {
      mark: '  ',
    });
  }
  const how = { ...wording, why, candidates: governs === 'unknown' };
  const isOwn = ({ binds }: ClaimDeadline) => binds === 'carrier';
  printDeadlines(output, labels('answer.carrier'), claim.clocks.filter(isOwn), how);
  const others = claim.clocks.filter((deadline) => !isOwn(deadline));
  printDeadlines(output, labels('answer.others'), others, how);
  printTable(
    output,
    `${labels('answer.contents')} (${claim.contents[0]?.source ?? ''})`,
    // The rule is one of the United States.
    (governs === 'cmr' ? [] : claim.contents).map(({ id, state }) => [
      labels(`said.${state}`),
      labels(`contents.${id}`),
    ]),
  );
  printTable(
    output,
    labels('answer.papers'),
    claim.papers.map(({ id, asked, have, dumping }) => [
      have.length > 0
        ? have.join(', ')
        : labels(asked === 'to-judge-the-amount' ? 'papers.missing' : 'papers.owed'),
      [
        `${labels(`papers.${id}`)} (${labels(`papers.${asked}`)})`,
        ...(dumping === undefined
          ? []
          : dumpingWords(
              labels,
              dumping,
              (value) => `${value} %`,
              (line) => line,
            )),
      ].join('; '),
    ]),
  );
  printAmounts(output, claim, wording);
}

/** What was claimed and what documents support, by which measure; the worksheet itself is in the dossier. */
function printAmounts(
  output: Output,
  { amounts, contradicts }: ClaimResult,
  { labels, language }: DeadlineWording,
): void {
  if (amounts === undefined) return;
  const { claimed, computed, currency, measure, measureBy, invoiceStandsIn, weightLimit } = amounts;
  const { moneyRange, number } = numbersFor(language);
  const by = [
    ...(measureBy === 'contract' ? [`, ${labels('amount-measure.contract')}`] : []),
    ...(invoiceStandsIn === undefined ? [] : [`; ${labels(`amount-measure.stands-in-${invoiceStandsIn}`)}`]),
  ].join('');
  const rows = [
    ...(claimed === undefined ? [] : [[labels('claim.claimed'), moneyRange(claimed, claimed, currency)]]),
    [
      labels('claim.by-papers'),
      computed === undefined
        ? labels(contradicts === undefined ? 'claim.not-computed' : 'claim.not-summed')
        : moneyRange(computed.low, computed.high, currency),
    ],
    ...(contradicts === undefined
      ? [[labels('claim.measure'), `${labels(`amount-measure.${measure}`)}${by}`]]
      : []),
    ...(weightLimit === undefined
      ? []
      : [
          [
            labels('claim.weight-limit'),
            labels('answer.sdr').replace('N', () =>
              [...new Set([weightLimit.sdr.low, weightLimit.sdr.high])]
                .map((one) => number(one / 100, 2))
                .join('–'),
            ),
          ],
        ]),
    ...(computed === undefined ? [] : [['', labels('answer.no-interest')]]),
  ];
  printTable(output, labels('sub.claim-amounts'), rows);
}

interface DeadlinesShown extends DeadlineWording {
  why: boolean;
  /** Whether to name the governing candidate of each deadline. */
  candidates?: boolean;
}

function printDeadlines(
  output: Output,
  title: string,
  clocks: readonly ClaimDeadline[],
  how: DeadlinesShown,
): void {
  const rows = clocks.map((deadline) => {
    const candidates = how.candidates === true ? formatCandidates(deadline, how) : [];
    const what = [formatDeadlineTitle(deadline, how), deadline.source, ...candidates].join(', ');
    const notes = how.why ? allNotes(deadline, how) : essentialNotes(deadline, how);
    return [
      formatDue(deadline, how),
      formatDeadlineState(deadline, how),
      notes.length === 0 ? what : `${what}. ${notes.join(' ')}`,
    ];
  });
  printTable(output, title, rows);
}

function printTable(output: Output, title: string, rows: readonly string[][]): void {
  if (rows.length === 0) return;
  output.line();
  output.line(output.style('bold', escapeControls(title)));
  for (const line of tableLines(rows, output.width - 2)) output.line(`  ${line}`.trimEnd());
}

const DUE = 16;
const STATE = 12;
const CLAIM = 5;

/**
 * Several deliveries, a line for each as it comes: of the carrier's duties that are open or late the one that is due
 * first, and how many there are besides. Its day comes first and is written so that it can be sorted by.
 */
export function answerRows(output: Output, labels: Labels, nameWidth: number) {
  const wording: DeadlineWording = { labels, language: 'en' };
  const head = ['due', 'state', 'delivery', 'claim', 'what'].map((name) => labels(`head.${name}`));
  const print = rowPrinter(output, [DUE, STATE, nameWidth, CLAIM], head);
  return {
    row({ state, claims }: ClaimDuties): void {
      const name = state.delivery.delivery;
      const [first, ...more] = claims
        .flatMap(({ claim, clocks }) => clocks.filter(isOpenDuty).map((clock) => ({ claim, clock })))
        .sort((a, b) => sortKey(a.clock).localeCompare(sortKey(b.clock)));
      if (first === undefined) {
        print(['-', labels(claims.length === 0 ? 'state.no-claim' : 'state.nothing-open'), name]);
        return;
      }
      const { claim, clock } = first;
      const besides = more.length === 0 ? '' : ` (+${more.length})`;
      const what = `${formatDeadlineTitle(clock, wording)}, ${clock.source}${besides}`;
      print([dueInFigures(clock), formatDeadlineState(clock, wording), name, claim, what]);
    },
    end(): void {
      output.line();
      printWrapped(output, labels('answer.caution'));
    },
  };
}

const isOpenDuty = ({ binds, state }: ClaimDeadline) =>
  binds === 'carrier' && (state === 'overdue' || state === 'running');

/** Days and times in one order; what has no end comes last. */
function sortKey({ due }: ClaimDeadline): string {
  if (due === undefined) return '~';
  return due.is === 'day' ? `${due.day.date}T24` : new Date(due.at).toISOString();
}

/** `2026-08-31`, or `2026-08-31 17:00` at the place; what has no end has none. */
function dueInFigures({ due }: ClaimDeadline): string {
  if (due === undefined) return '-';
  return due.is === 'day' ? due.day.date : inZone(toInstant(due.at), due.zone).toFormat('yyyy-MM-dd HH:mm');
}
