import type { ClaimClocks, ClockRule } from '../../model/claim-deadlines.js';
import type { Line, Stop } from '../../model/delivery.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { ClaimClock, ClockMoment } from '../../model/results.js';
import { celsius } from '../../model/temperature.js';
import { lastAt, type Moments, stopsOf } from '../milestones.js';
import { firstOf } from './claim-actions.js';
import { atTime, beginningOf, inTime } from './deadline-milestones.js';
import { saidBy, stateOf } from './deadlines.js';
import { dueOf } from './due.js';
import { atDisposal } from './starts.js';

export interface RefusalContext {
  rules: ClaimClocks;
  moments: Moments;
  lines: readonly Line[];
  /** Milliseconds since 1970 UTC. */
  now: number;
}

/** Goods that the bill asks to keep this cold are frozen, for the clocks that tell fresh and frozen apart; our line. */
const FROZEN_AT_MOST = -10;

const isFrozen = ({ instruction }: Line): boolean =>
  instruction !== undefined && celsius(instruction.setPoint) <= FROZEN_AT_MOST;

/** Whether the receiver refused in time, at each stop of unloading where the truck is known to have been. */
export function refusalClocksOf(context: RefusalContext): ClaimClock[] {
  return stopsOf(context.moments, 'unload').flatMap((stop) => {
    const start = atDisposal(context.moments, stop.id);
    if (start === undefined) return [];
    const lines = context.lines.filter(({ to }) => to === stop.id);
    return context.rules.clocks
      .filter(({ of, goods }) => of === 'refusal' && suits(goods, lines))
      .map((rule) => refusalClock(rule, stop, start, context));
  });
}

function suits(goods: ClockRule['goods'], lines: readonly Line[]): boolean {
  return goods === undefined || lines.some((line) => isFrozen(line) === (goods === 'frozen'));
}

function refusalClock(
  rule: ClockRule,
  stop: Stop,
  from: ClockMoment,
  { rules, moments, now }: RefusalContext,
): ClaimClock {
  const counted = dueOf(rule, rule.span, from, rules);
  const moved = extended(rule, stop, counted.due, moments, rules);
  const due = moved === undefined ? counted.due : moved.due;
  const counting = {
    leftOut: counted.counting?.leftOut ?? [],
    ...counted.counting,
    ...omitUndefined({ inspection: moved === undefined ? undefined : { evidence: moved.evidence } }),
  };
  return {
    ...saidBy(rule),
    stop: stop.id,
    from,
    ...omitUndefined({
      due,
      counting: counted.counting === undefined && moved === undefined ? undefined : counting,
    }),
    ...stateOf(
      due,
      now,
      firstOf(rule.done, undefined, moments, stop.id),
      firstOf(rule.ends, undefined, moments, stop.id),
    ),
  };
}

/**
 * An inspection asked for in time moves the end to its result and the time the rule adds, if that is later; until
 * there is a result there is no end.
 */
function extended(
  rule: ClockRule,
  stop: Stop,
  due: ClockMoment,
  moments: Moments,
  rules: ClaimClocks,
):
  | {
      due?: ClockMoment;
      evidence: NonNullable<NonNullable<ClaimClock['counting']>['inspection']>['evidence'];
    }
  | undefined {
  if (rule.inspectionExtendsBy === undefined) return undefined;
  const asked = moments.events.find(
    ({ event, stop: at }) => event === 'inspection-requested' && at === stop.id,
  );
  if (asked === undefined || !inTime(atTime(asked.at, stop.zone, []), due)) return undefined;
  const result = lastAt(moments, stop.id, 'inspected');
  if (result === undefined || result.at < asked.at) return { evidence: [asked.evidence] };
  const after = dueOf(rule, rule.inspectionExtendsBy, atTime(result.at, stop.zone, []), rules).due;
  const evidence = [asked.evidence, result.evidence];
  return { due: beginningOf(after) > beginningOf(due) ? after : due, evidence };
}
