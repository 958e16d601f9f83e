import type { ClaimDeadline, DeadlineTime } from '../../../core/model/results.js';
import { type Block, type Cell, type Inline, plain, text } from '../../../core/words/blocks.js';
import { exhibitLinks, type View } from '../context.js';
import { tableOf } from '../tables.js';
import { bracketed, formatDayIn, formatMoneyIn } from './entries.js';

/** Table of deadlines: action, party, source and due time; empty without deadlines. */
export function deadlineBlocks(
  view: View,
  clocks: readonly ClaimDeadline[],
  title: 'claim-clocks' | 'refusal-clocks',
): Block[] {
  if (clocks.length === 0) return [];
  const { labels } = view;
  return [
    { is: 'heading', level: 3, text: labels(`sub.${title}`) },
    tableOf(view, clocks, [
      ['duty', 3.6, (deadline) => dutyOf(view, deadline)],
      ['whose', 1.5, ({ binds }) => labels(`binds.${binds}`)],
      ['starts', 2.4, (deadline) => startOf(view, deadline)],
      ['due', 2, (deadline) => dueWords(view, deadline)],
      ['state', 1.6, (deadline) => stateOf(view, deadline)],
      ['source', 2.2, (deadline) => sourceWords(view, deadline)],
    ]),
  ];
}

const languageOf = (view: View) => view.input.state.delivery.show.language;

function dutyOf(view: View, deadline: ClaimDeadline): Cell {
  const { labels } = view;
  const language = languageOf(view);
  const turn =
    deadline.turn === undefined ? '' : ` (${labels('clock.turn').replace('N', String(deadline.turn))})`;
  const where = deadline.stop === undefined ? '' : ` ${view.names.stop(deadline.stop)}.`;
  return [
    { is: 'strong', of: plain(`${deadline.title[language]}${turn}`) },
    text(`. ${deadline.duty[language]}.${where}${underWhat(view, deadline)}`),
    ...setByWords(view, deadline),
  ];
}

const startOf = (view: View, { from, starts }: ClaimDeadline): Cell => [
  ...(from === undefined ? plain(view.labels('clock.not-recorded')) : deadlineTimeText(view, from)),
  text(`: ${starts[languageOf(view)]}`),
];

/** The governing terms under which a deadline applies. */
function underWhat({ labels }: View, { governs }: ClaimDeadline): string {
  if (governs.length === 0) return '';
  const list = governs.map((one) => labels(`governs-short.${one}`)).join(', ');
  return ` ${labels('clock.only-if').replace('TERMS', () => list)}`;
}

function setByWords(view: View, { setBy }: ClaimDeadline): Inline[] {
  if (setBy === undefined) return [];
  const note = setBy.note === undefined ? '' : `: ${setBy.note}`;
  return [
    text(` ${view.labels('clock.set-by')}${note}`),
    ...bracketed(exhibitLinks(view, setBy.evidence, 3)),
  ];
}

/** The due time, with what a reader needs to repeat the count. */
function dueWords(view: View, { due, leastDue, stopped, nature, counting }: ClaimDeadline): Cell {
  const { labels } = view;
  const named = (name: string, moment: DeadlineTime | undefined): Inline[] =>
    moment === undefined ? [] : [text(`; ${labels(`clock.${name}`)} `), ...deadlineTimeText(view, moment)];
  const hours = counting?.hours;
  const holidays = counting?.holidays;
  const remarks = [
    ...(nature === 'least-time' ? [labels('clock.least-time')] : []),
    ...(stopped === undefined || due !== undefined
      ? []
      : [`${labels('clock.stands-still')} ${formatDayIn(view, stopped.from)}`]),
    ...((counting?.leftOut.length ?? 0) === 0
      ? []
      : [labels('clock.left-out').replace('N', String(counting?.leftOut.length))]),
    ...(nature === 'keep-until' ? [labels('clock.keep-until')] : []),
    ...(hours === undefined
      ? []
      : [
          `${labels(hours.assumed ? 'clock.hours-assumed' : 'clock.hours')} ${hours.from}–${hours.to}, ${labels(`clock.counted-${hours.counted}`)}`,
        ]),
    ...(holidays === undefined || holidays.known ? [] : [labels('clock.holidays-not-known')]),
  ];
  return [
    ...(stopped?.notBefore === true ? [text(`${labels('clock.not-before')} `)] : []),
    ...(due === undefined ? [text('–')] : deadlineTimeText(view, due)),
    ...named('least-by-rule', leastDue),
    ...named('every-hour', counting?.ifEveryHourCounts),
    ...(remarks.length === 0 ? [] : [text(` (${remarks.join('; ')})`)]),
  ];
}

function deadlineTimeText(view: View, moment: DeadlineTime): Inline[] {
  const when = moment.is === 'day' ? formatDayIn(view, moment.day) : view.format.time(moment.at, moment.zone);
  return [text(when), ...bracketed(exhibitLinks(view, moment.evidence, 2))];
}

function sourceWords(view: View, { source, basis, edition }: ClaimDeadline): string {
  const read = [
    view.labels(`text-basis.${basis}`),
    ...(edition === undefined ? [] : [edition[languageOf(view)]]),
  ];
  return `${source} (${read.join('; ')})`;
}

/** Remarks with the exhibits that they are about. */
const remarkWords = (view: View, { remarks = [] }: ClaimDeadline): Inline[] =>
  remarks.flatMap(({ is, evidence, amount }): Inline[] => [
    text(`. ${view.labels(`clock-remark.${is}`)}`),
    ...(amount === undefined ? [] : [text(`, ${formatMoneyIn(view, amount)}`)]),
    ...bracketed(exhibitLinks(view, evidence, 3)),
  ]);

function stateOf(view: View, deadline: ClaimDeadline): Cell {
  const { state, done, nature, binds } = deadline;
  const passed = state === 'overdue' && (nature === 'least-time' || binds !== 'carrier');
  const words: Inline[] = [
    text(view.labels(`clock-state.${passed ? 'passed' : state}`)),
    ...(done === undefined ? [] : [text(', '), ...deadlineTimeText(view, done)]),
    ...remarkWords(view, deadline),
  ];
  const late = !passed && (state === 'overdue' || state === 'done-late');
  return late && binds === 'carrier' ? { is: 'alert', of: words } : words;
}
