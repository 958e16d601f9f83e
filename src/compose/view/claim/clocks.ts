import type { ClaimClock, ClockMoment } from '../../../model/results.js';
import { type Block, type Cell, type Inline, plain, text } from '../../blocks.js';
import { cell, exhibitLinks, type View } from '../context.js';
import { column } from '../tables.js';
import { dayIn, inBrackets } from './entries.js';

/** What is due when, whose duty it is and what it rests on; nothing when no clock counts. */
export function clockBlocks(
  view: View,
  clocks: readonly ClaimClock[],
  title: 'claim-clocks' | 'refusal-clocks',
): Block[] {
  if (clocks.length === 0) return [];
  return [
    { is: 'heading', level: 3, text: view.labels(`sub.${title}`) },
    {
      is: 'table',
      columns: [
        column(view, 'duty', 3.6),
        column(view, 'whose', 1.2),
        column(view, 'starts', 2.4),
        column(view, 'due', 2),
        column(view, 'state', 1.6),
        column(view, 'source', 2.2),
      ],
      rows: clocks.map((clock) => rowOf(view, clock)),
    },
  ];
}

function rowOf(view: View, clock: ClaimClock): Cell[] {
  const { labels } = view;
  const language = view.input.state.delivery.show.language;
  const turn = clock.turn === undefined ? '' : ` (${labels('clock.turn').replace('N', String(clock.turn))})`;
  return [
    [
      { is: 'strong', of: plain(`${clock.title[language]}${turn}`) },
      text(`. ${clock.duty[language]}.${underWhat(view, clock)}`),
      ...setByWords(view, clock),
    ],
    cell(labels(`binds.${clock.binds}`)),
    [
      ...(clock.from === undefined ? plain(labels('clock.not-recorded')) : momentWords(view, clock.from)),
      text(`: ${clock.starts[language]}`),
    ],
    clock.due === undefined ? cell('–') : [...momentWords(view, clock.due), ...leastWords(view, clock)],
    stateOf(view, clock),
    cell(`${clock.source} (${labels(`text-basis.${clock.basis}`)})`),
  ];
}

/** Where a clock counts only if certain terms govern. */
function underWhat({ labels }: View, { governs }: ClaimClock): string {
  if (governs.length === 0) return '';
  const list = governs.map((one) => labels(`governs-short.${one}`)).join(', ');
  return ` ${labels('clock.only-if').replace('TERMS', () => list)}`;
}

function setByWords(view: View, { setBy }: ClaimClock): Inline[] {
  if (setBy === undefined) return [];
  const note = setBy.note === undefined ? '' : `: ${setBy.note}`;
  return [
    text(` ${view.labels('clock.set-by')}${note}`),
    ...inBrackets(exhibitLinks(view, setBy.evidence, 3)),
  ];
}

/** A least time is no deadline by itself. */
const leastWords = ({ labels }: View, { nature }: ClaimClock): Inline[] =>
  nature === 'least-time' ? [text(` (${labels('clock.least-time')})`)] : [];

function momentWords(view: View, moment: ClockMoment): Inline[] {
  const when = moment.is === 'day' ? dayIn(view, moment.day) : view.format.time(moment.at, moment.zone);
  return [text(when), ...inBrackets(exhibitLinks(view, moment.evidence, 2))];
}

function stateOf(view: View, { state, done }: ClaimClock): Cell {
  const words: Inline[] = [
    text(view.labels(`clock-state.${state}`)),
    ...(done === undefined ? [] : [text(', '), ...momentWords(view, done)]),
  ];
  return state === 'overdue' || state === 'done-late' ? { is: 'alert', of: words } : words;
}
