import type { ClaimDeadlines, DeadlineRule } from '../../model/claim-deadlines.js';
import type { Line, Stop } from '../../model/delivery.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { ClaimDeadline, DeadlineTime } from '../../model/results.js';
import { celsius } from '../../model/temperature.js';
import { lastTimeOf, type Milestones, stopsOf } from '../milestones.js';
import { firstActionOf } from './claim-actions.js';
import { atTime, beginningOf, isInTime } from './deadline-milestones.js';
import { deadlineState, ruleFields } from './deadlines.js';
import { dueOf } from './due.js';
import { timeAtDisposal } from './starts.js';

export interface RefusalContext {
  rules: ClaimDeadlines;
  milestones: Milestones;
  lines: readonly Line[];
  /** Milliseconds since 1970 UTC. */
  now: number;
}

/**
 * Goods instructed at or below this, °C, count as frozen in deadlines that tell fresh from frozen. Convention of
 * this project.
 */
const FROZEN_AT_MOST = -10;

const isFrozen = ({ instruction }: Line): boolean =>
  instruction !== undefined && celsius(instruction.setPoint) <= FROZEN_AT_MOST;

/** Whether the receiver rejected in time, at each unloading stop where the truck is recorded. */
export function refusalDeadlinesOf(context: RefusalContext): ClaimDeadline[] {
  return stopsOf(context.milestones, 'unload').flatMap((stop) => {
    const start = timeAtDisposal(context.milestones, stop.id);
    if (start === undefined) return [];
    const lines = context.lines.filter(({ to }) => to === stop.id);
    return context.rules.clocks
      .filter(({ of, goods }) => of === 'refusal' && suits(goods, lines))
      .map((rule) => refusalDeadline(rule, stop, start, context));
  });
}

function suits(goods: DeadlineRule['goods'], lines: readonly Line[]): boolean {
  return goods === undefined || lines.some((line) => isFrozen(line) === (goods === 'frozen'));
}

function refusalDeadline(
  rule: DeadlineRule,
  stop: Stop,
  from: DeadlineTime,
  { rules, milestones, now }: RefusalContext,
): ClaimDeadline {
  const counted = dueOf(rule, rule.span, from, rules);
  const moved = extended(rule, stop, counted.due, milestones, rules);
  const due = moved === undefined ? counted.due : moved.due;
  const counting = {
    leftOut: counted.counting?.leftOut ?? [],
    ...counted.counting,
    ...omitUndefined({ inspection: moved === undefined ? undefined : { evidence: moved.evidence } }),
  };
  return {
    ...ruleFields(rule),
    stop: stop.id,
    from,
    ...omitUndefined({
      due,
      counting: counted.counting === undefined && moved === undefined ? undefined : counting,
    }),
    ...deadlineState(
      due,
      now,
      firstActionOf(rule.done, undefined, milestones, stop.id),
      firstActionOf(rule.ends, undefined, milestones, stop.id),
    ),
  };
}

/**
 * An inspection requested in time moves the deadline to its result plus the time the rule adds, if that is later;
 * until there is a result there is no due time.
 */
function extended(
  rule: DeadlineRule,
  stop: Stop,
  due: DeadlineTime,
  milestones: Milestones,
  rules: ClaimDeadlines,
):
  | {
      due?: DeadlineTime;
      evidence: NonNullable<NonNullable<ClaimDeadline['counting']>['inspection']>['evidence'];
    }
  | undefined {
  if (rule.inspectionExtendsBy === undefined) return undefined;
  const asked = milestones.events.find(
    ({ event, stop: at }) => event === 'inspection-requested' && at === stop.id,
  );
  if (asked === undefined || !isInTime(atTime(asked.at, stop.zone, []), due)) return undefined;
  const result = lastTimeOf(milestones, stop.id, 'inspected');
  if (result === undefined || result.at < asked.at) return { evidence: [asked.evidence] };
  const after = dueOf(rule, rule.inspectionExtendsBy, atTime(result.at, stop.zone, []), rules).due;
  const evidence = [asked.evidence, result.evidence];
  return { due: beginningOf(after) > beginningOf(due) ? after : due, evidence };
}
