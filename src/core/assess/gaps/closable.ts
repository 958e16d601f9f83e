import type { Line } from '../../model/delivery.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Closable } from '../../model/results.js';
import { type Milestone, type MilestoneOffset, milestone, type Rule } from '../../model/rule-set.js';
import { milliseconds, toInstant } from '../../model/time.js';
import { mayNotHappen } from '../may-not-happen.js';
import { type KnownMilestone, latestTimeOf, type StopSide, sideOfMilestone, stopsOf } from '../milestones.js';
import type { GapsContext, Scope } from './context.js';
import { stopOfLine } from './window.js';

/** The context of a rule, with the lines it applies to where those are known. */
type RuleOnLines = GapsContext & { lines?: readonly Line[] };

/**
 * Stops at which a milestone counts for a part of a rule: its own stop or its line's, else every stop of that side
 * where a line of the rule is handled. What does not happen everywhere counts only where it happened, if it did.
 */
function stopsFor(context: RuleOnLines, moment: Milestone, side: StopSide, scope: Scope) {
  const { lines, milestones } = context;
  const all = stopsOf(milestones, side);
  const handled = all.filter(({ id }) => lines?.some((line) => stopOfLine(line, side) === id) ?? true);
  const used = handled.length === 0 ? all : handled;
  const happened = mayNotHappen(moment)
    ? used.filter(({ id }) => latestTimeOf(milestones, id, moment) !== undefined)
    : [];
  const stops = happened.length === 0 ? used : happened;
  const own = [scope.stop?.id, stopOfLine(scope.line, side)].find((id) => all.some((stop) => stop.id === id));
  return own === undefined ? stops : all.filter((stop) => stop.id === own);
}

/** Whether a time is past, given when its milestone was past. */
const isOver = (known: KnownMilestone, point: MilestoneOffset, now: number) =>
  now >= known.at + point.seconds * 1000;

/**
 * Whether the evidence of an open rule can still be obtained: until its closing time has passed at every stop where
 * it counts. A time is given where the events themselves are recorded.
 */
export function closableOf(context: RuleOnLines, rule: Rule, scope: Scope): Closable {
  const { closes } = rule;
  if (closes === undefined) return { is: 'now' };
  const stops = stopsFor(
    context,
    closes.moment,
    sideOfMilestone(closes.moment, undefined, rule.stage),
    scope,
  );
  const known = stops.map((stop) => latestTimeOf(context.milestones, stop.id, closes.moment));
  const [only] = stops;
  const more = {
    ...omitUndefined({
      seconds: closes.seconds === 0 ? undefined : closes.seconds,
      stop: stops.length === 1 && only !== undefined ? only.id : undefined,
    }),
  };
  const over = known.every((one) => one !== undefined && isOver(one, closes, context.now));
  const recorded = known.flatMap((one) => (one === undefined || one.standIn !== undefined ? [] : [one.at]));
  const at =
    recorded.length === stops.length && stops.length > 0
      ? { at: toInstant(Math.max(...recorded) + closes.seconds * 1000) }
      : {};
  return over
    ? { is: 'lost', since: closes.moment, ...more, ...at }
    : { is: 'until', moment: closes.moment, ...more, ...at };
}

/** Whether the opening time of a rule has come at the first stop where it can come. */
export function isDue(context: RuleOnLines, rule: Rule, scope: Scope): boolean {
  const { opens } = rule;
  if (opens === undefined) return true;
  const stops = stopsFor(context, opens.moment, sideOfMilestone(opens.moment, undefined, rule.stage), scope);
  return stops.some((stop) => {
    const known = latestTimeOf(context.milestones, stop.id, opens.moment);
    return known !== undefined && isOver(known, opens, context.now);
  });
}

const RANK = { until: 0, now: 1, lost: 2 } as const;

/** Order of urgency: what closes soonest first, then what stays open, lost evidence last. */
export function moreUrgent(a: Closable, b: Closable): number {
  if (a.is !== 'until' || b.is !== 'until') return RANK[a.is] - RANK[b.is];
  if (a.at !== undefined && b.at !== undefined && a.at !== b.at)
    return milliseconds(a.at) - milliseconds(b.at);
  const place = (one: typeof a) => milestone.options.indexOf(one.moment) + Math.sign(one.seconds ?? 0) / 2;
  return place(a) - place(b);
}
