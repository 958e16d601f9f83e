import type { Day, Governing } from '../../core/model/claim.js';
import type { Language } from '../../core/model/delivery.js';
import { assertNever } from '../../core/model/error.js';
import type { ClaimDeadline, DeadlineRemark, DeadlineTime } from '../../core/model/results.js';
import type { Labels } from '../../core/words/labels.js';
import { numbersFor } from '../../core/words/numbers.js';
import { timesFor } from '../../core/words/times.js';

/** Labels and language for deadlines. */
export interface DeadlineWording {
  labels: Labels;
  language: Language;
}

/** `Wed Sep 2, 2026, America/Chicago`, or with the time of day and the zone's short name where hours count. */
export function formatDeadlineTime(
  moment: DeadlineTime,
  { language }: Pick<DeadlineWording, 'language'>,
): string {
  if (moment.is === 'day') return formatDeadlineDay(moment.day, language);
  return timesFor(language).time(moment.at, moment.zone);
}

/** The due time, `not before` where only the earliest possible one is known; a dash without one. */
export function formatDue({ due, stopped }: ClaimDeadline, wording: DeadlineWording): string {
  if (due === undefined) return '-';
  const earliest = stopped?.notBefore === true ? `${wording.labels('state.not-before')} ` : '';
  return `${earliest}${formatDeadlineTime(due, wording)}`;
}

export function formatDeadlineDay({ date, zone }: Day, language: Language): string {
  return `${timesFor(language).day(date)}, ${zone}`;
}

/**
 * The state of a deadline. A deadline of another party is past, not overdue; a minimum period that no contract
 * makes a deadline is never overdue.
 */
export function formatDeadlineState(
  { binds, state, nature, setBy }: ClaimDeadline,
  { labels }: DeadlineWording,
): string {
  if (nature === 'keep-until' && state === 'running') return labels('state.keep');
  if (nature === 'keep-until' && state === 'no-longer-needed') return labels('state.kept');
  if (state === 'overdue' && binds !== 'carrier') return labels('state.passed');
  if (state === 'done-late' && nature === 'least-time' && setBy === undefined)
    return labels('state.done-after');
  return labels(`state.${state}`);
}

/**
 * `Acknowledge the claim [us-acknowledge]`, with `(no. 2)` for the second turn of a recurring deadline, and the
 * stop.
 */
export function formatDeadlineTitle(
  { title, turn, stop, id }: ClaimDeadline,
  { language }: DeadlineWording,
): string {
  return [
    title[language],
    ...(turn === undefined ? [] : [language === 'es' ? `(n.º ${turn})` : `(no. ${turn})`]),
    ...(stop === undefined ? [] : [`(${stop})`]),
    `[${id}]`,
  ].join(' ');
}

/** The governing candidates under which a deadline applies; empty for one that always applies. */
export function formatCandidates({ governs }: ClaimDeadline, { labels }: DeadlineWording): string[] {
  return [...new Set(governs.map(candidateOf))].map((name) => labels(`note.${name}`));
}

function candidateOf(governs: Governing): 'if-us' | 'if-cmr' | 'if-state' | 'if-bill' | 'if-ca' {
  switch (governs) {
    case 'us-carriage-by-law':
    case 'us-carriage-by-contract':
    case 'us-carriage-by-bill':
      return 'if-us';
    case 'cmr':
      return 'if-cmr';
    case 'uniform-bill':
      return 'if-bill';
    case 'ca-uniform-conditions':
      return 'if-ca';
    case 'us-carriage-waived':
    case 'state-law':
    case 'unknown':
      return 'if-state';
    default:
      return assertNever(governs);
  }
}

/** Notes without which the due time can't be read: a contract term, assumed hours, an inspection, a suspension. */
export function essentialNotes(deadline: ClaimDeadline, wording: DeadlineWording): string[] {
  const { labels, language } = wording;
  const { counting, stopped, setBy, leastDue } = deadline;
  const notes: string[] = [];
  if (setBy !== undefined)
    notes.push(`${labels('note.set-by')} ${setBy.seq}${setBy.note === undefined ? '' : ` (${setBy.note})`}.`);
  if (leastDue !== undefined) notes.push(`${labels('note.least')} ${formatDeadlineTime(leastDue, wording)}.`);
  if (stopped !== undefined) {
    const [name, days] =
      stopped.until === undefined
        ? ['note.stopped', [stopped.from]]
        : [
            stopped.notBefore === true ? 'note.stopped-not-before' : 'note.stopped-until',
            [stopped.from, stopped.until],
          ];
    notes.push(`${labels(name)} ${days.map((day) => formatDeadlineDay(day, language)).join(', ')}.`);
  }
  if (counting?.hours !== undefined) notes.push(...hoursNotes(counting, deadline, wording));
  for (const remark of deadline.remarks ?? []) notes.push(remarkNote(remark, wording));
  if (counting?.holidays?.known === false) notes.push(labels('note.no-holidays'));
  return notes;
}

/** The hours that a count depends on, the opening from which it went on, and the end if every hour counted. */
function hoursNotes(
  { hours, ifEveryHourCounts }: NonNullable<ClaimDeadline['counting']>,
  { from, due, done }: ClaimDeadline,
  wording: DeadlineWording,
): string[] {
  if (hours === undefined) return [];
  const { labels } = wording;
  const zone = due?.is === 'time' ? due.zone : from?.is === 'time' ? from.zone : undefined;
  const opening =
    hours.opening === undefined || zone === undefined
      ? ''
      : ` ${timesFor(wording.language).time(hours.opening, zone)}.`;
  const dependsOnHours =
    due?.is === 'time' &&
    ifEveryHourCounts?.is === 'time' &&
    done?.is === 'time' &&
    done.at > ifEveryHourCounts.at &&
    done.at <= due.at;
  return [
    `${labels(hours.assumed ? 'note.hours-assumed' : 'note.hours-stated')} ${hours.from}–${hours.to}.`,
    `${labels(`note.counted-${hours.counted}`)}${opening}`,
    ...(ifEveryHourCounts === undefined
      ? []
      : [`${labels('note.every-hour')} ${formatDeadlineTime(ifEveryHourCounts, wording)}.`]),
    ...(dependsOnHours ? [labels('note.depends')] : []),
  ];
}

/** A remark with the evidence, the entry or the amount that it is about. */
function remarkNote(
  { is, evidence, seq, amount }: DeadlineRemark,
  { labels, language }: DeadlineWording,
): string {
  const about = [
    ...(amount === undefined ? [] : [numbersFor(language).statedMoney(amount)]),
    ...evidence,
    ...(seq === undefined ? [] : [`#${seq}`]),
  ];
  return `${labels(`clock-remark.${is}`)}${about.length === 0 ? '' : ` (${about.join(', ')})`}.`;
}

/** The duty, its source, and everything that a reader needs to repeat the count. */
export function allNotes(deadline: ClaimDeadline, wording: DeadlineWording): string[] {
  const { labels, language } = wording;
  const { from, done, counting, governs, edition } = deadline;
  const notes = [
    `${deadline.duty[language]}.`,
    `${deadline.source}: ${labels(`basis.${deadline.basis}`)}${edition === undefined ? '' : `; ${edition[language]}`}.`,
  ];
  if (deadline.nature !== 'deadline') notes.push(labels(`note.${deadline.nature}`));
  if (governs.length > 0)
    notes.push(`${labels('note.counts-if')} ${governs.map((one) => labels(`governs.${one}`)).join('; ')}.`);
  const since = from === undefined ? '' : `: ${formatDeadlineTime(from, wording)}${byWhat(from)}`;
  notes.push(`${labels('note.starts')} ${deadline.starts[language]}${since}.`);
  if (done !== undefined)
    notes.push(`${labels('note.done-on')} ${formatDeadlineTime(done, wording)}${byWhat(done)}.`);
  const out = counting?.leftOut ?? [];
  if (out.length > 0) {
    const days = out.map(({ date, why }) => `${date} (${labels(`why.${why}`)})`);
    notes.push(`${labels('note.left-out')} ${days.join(', ')}.`);
  }
  return [...notes, ...essentialNotes(deadline, wording)];
}

/** The evidence and the entry of a deadline time. */
function byWhat({ evidence, seq }: DeadlineTime): string {
  const said = [...evidence, ...(seq === undefined ? [] : [`#${seq}`])];
  return said.length === 0 ? '' : ` (${said.join(', ')})`;
}
