import type { ClaimDeadline, GapResult } from '../../core/model/results.js';
import { milliseconds, type Zone } from '../../core/model/time.js';
import { type Cell, plain, type Section, text } from '../../core/words/blocks.js';
import { formatDayIn } from './claim/entries.js';
import type { View } from './context.js';
import { closingMilestone } from './gap-words.js';
import { isOpen } from './missing.js';
import { listOrNone } from './tables.js';

/** One thing to do, and by when. */
interface Step {
  /** For the order, in milliseconds; absent where no time is known. */
  by?: number;
  due: string;
  what: Cell;
  /** Why: the text that sets a deadline, or how much a requirement weighs. */
  source: string;
}

/** What to do next, soonest due first; what has no date comes last. */
export function nextSection(view: View): Section {
  const { labels } = view;
  const steps = [...deadlineSteps(view), ...gapSteps(view)].sort(
    (a, b) => (a.by ?? Number.POSITIVE_INFINITY) - (b.by ?? Number.POSITIVE_INFINITY),
  );
  return {
    id: 'next',
    title: labels('section.next'),
    blocks: listOrNone(
      view,
      'next',
      steps,
      [
        ['due', 2.4, ({ due }) => due],
        ['what', 5.4, ({ what }) => what],
        ['basis', 2.2, ({ source }) => source],
      ],
      undefined,
      'gaps.csv',
    ),
  };
}

/** Deadlines of claims and refusals that run, or are over without what they ask for. */
function deadlineSteps(view: View): Step[] {
  const { assessment, state } = view.input;
  const { language } = state.delivery.show;
  const open = ({ state: is, binds }: ClaimDeadline) =>
    binds === 'carrier' && (is === 'running' || is === 'overdue');
  const claims = (assessment.claims ?? []).flatMap(({ clocks, received }) =>
    clocks.filter(open).map((deadline) => ({ deadline, claim: received.ourNumber })),
  );
  const refusals = (assessment.refusalClocks ?? [])
    .filter(open)
    .map((deadline) => ({ deadline, claim: undefined }));
  return [...claims, ...refusals].flatMap(({ deadline, claim }): Step[] => {
    const { due, title, duty, source } = deadline;
    if (due === undefined) return [];
    const by = due.is === 'day' ? Date.parse(`${due.day.date}T23:59:59Z`) : due.at;
    const when = due.is === 'day' ? formatDayIn(view, due.day) : view.format.time(due.at, due.zone);
    const late = deadline.state === 'overdue' ? ` (${view.labels('clock-state.overdue')})` : '';
    const of = claim === undefined ? '' : ` (${claim})`;
    return [
      {
        by,
        due: `${when}${late}`,
        what: [{ is: 'strong', of: plain(title[language]) }, text(`${of}: ${duty[language]}.`)],
        source,
      },
    ];
  });
}

/** Evidence that is missing and can still be obtained. */
function gapSteps(view: View): Step[] {
  const open = view.input.assessment.gaps.filter((gap) => isOpen(gap) && gap.closable.is !== 'lost');
  return open.map((gap): Step => {
    const at = closesAt(view, gap);
    return {
      ...(at === undefined ? {} : { by: at.ms }),
      due: at === undefined ? untilWords(view, gap) : view.format.time(at.ms, at.zone),
      what: [{ is: 'strong', of: plain(gap.title) }, text(`: ${gap.how}`)],
      source: view.labels(`rule-weight.${gap.weight}`),
    };
  });
}

function closesAt(view: View, { closable }: GapResult): { ms: number; zone: Zone } | undefined {
  if (closable.is !== 'until' || closable.at === undefined) return undefined;
  return { ms: milliseconds(closable.at), zone: view.zoneOf(closable.stop) };
}

function untilWords(view: View, { closable }: GapResult): string {
  if (closable.is !== 'until') return view.labels('assessment.any-time');
  return `${view.labels('closable.until')} ${closingMilestone(view, closable) ?? ''}`;
}
