import type { ClaimDeadline, ClaimResult } from '../core/model/results.js';
import type { Labels } from '../core/words/labels.js';
import { numbersFor } from '../core/words/numbers.js';
import type { AnswerReport } from '../jobs/answer.js';
import {
  allNotes,
  type DeadlineWording,
  essentialNotes,
  formatCandidates,
  formatDeadlineDay,
  formatDeadlineState,
  formatDeadlineTime,
  formatDeadlineTitle,
} from './deadline-words.js';
import { escapeControls, type Output } from './output.js';
import { printWrapped } from './print.js';
import { tableLines } from './table.js';

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
  printWrapped(output, `${labels('answer.governs')}: ${labels(`governs.${governs}`)}${by}`);
  printWrapped(output, labels(`governing.${governs}`), { mark: '  ' });
  const how = { ...wording, why, candidates: governs === 'unknown' };
  const isOwn = ({ binds }: ClaimDeadline) => binds === 'carrier';
  printDeadlines(output, labels('answer.carrier'), claim.clocks.filter(isOwn), how);
  const others = claim.clocks.filter((deadline) => !isOwn(deadline));
  printDeadlines(output, labels('answer.others'), others, how);
  printTable(
    output,
    `${labels('answer.contents')} (${claim.contents[0]?.source ?? ''})`,
    claim.contents.map(({ id, state }) => [labels(`said.${state}`), labels(`contents.${id}`)]),
  );
  printTable(
    output,
    labels('answer.papers'),
    claim.papers.map(({ id, asked, have }) => [
      have.length > 0 ? have.join(', ') : labels(asked === 'by-rule' ? 'papers.owed' : 'papers.missing'),
      `${labels(`papers.${id}`)} (${labels(`papers.${asked}`)})`,
    ]),
  );
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
      deadline.due === undefined ? '-' : formatDeadlineTime(deadline.due, how),
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

/** One row for each carrier deadline that is open or overdue, over several deliveries, earliest due first. */
export function printAnswerTable(output: Output, reports: readonly AnswerReport[], labels: Labels): void {
  const wording: DeadlineWording = { labels, language: 'en' };
  const rows = reports
    .flatMap(({ state, claims }) =>
      claims.flatMap(({ claim, clocks }) =>
        clocks
          .filter(({ binds, state: how }) => binds === 'carrier' && (how === 'overdue' || how === 'running'))
          .map((deadline) => ({ delivery: state.delivery.delivery, claim, clock: deadline })),
      ),
    )
    .sort((a, b) => sortKey(a.clock).localeCompare(sortKey(b.clock)));
  const head = ['due', 'state', 'delivery', 'claim', 'what'].map((name) => labels(`head.${name}`));
  const cells = rows.map(({ delivery, claim, clock }) => [
    clock.due === undefined ? '-' : formatDeadlineTime(clock.due, wording),
    formatDeadlineState(clock, wording),
    delivery,
    claim,
    `${formatDeadlineTitle(clock, wording)}, ${clock.source}`,
  ]);
  for (const line of tableLines([head, ...cells], output.width)) output.line(line);
  output.line();
  printWrapped(output, labels('answer.caution'));
}

/** Days and times in one order; deadlines without a due time come last. */
function sortKey({ due }: ClaimDeadline): string {
  if (due === undefined) return '~';
  return due.is === 'day' ? `${due.day.date}T24` : new Date(due.at).toISOString();
}
