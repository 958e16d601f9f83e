import type { ClaimDeadlines, DeadlineRule } from '../../model/claim-deadlines.js';
import type { Delivery, Stop } from '../../model/delivery.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { ClaimDeadline, DeadlineRemark, DeadlineTime } from '../../model/results.js';
import { type MilestoneEvent, type Milestones, stopsOf } from '../milestones.js';
import { atTime, beginningOf, eventTime } from './deadline-milestones.js';
import { deadlineState, ruleFields } from './deadlines.js';
import { dueOf } from './due.js';
import { suits } from './goods.js';
import { extensionOf } from './inspection-extension.js';
import { type ConsignorNotice, firstNotice } from './notices.js';
import { timeAtDisposal } from './starts.js';

export interface RefusalContext {
  rules: ClaimDeadlines;
  milestones: Milestones;
  notices: readonly ConsignorNotice[];
  delivery: Pick<Delivery, 'lines' | 'sale'>;
  /** Milliseconds since 1970 UTC. */
  now: number;
}

/** Whether the receiver rejected in time, at each unloading stop where the truck, or a refusal, is recorded. */
export function refusalDeadlinesOf(context: RefusalContext): ClaimDeadline[] {
  const { milestones, rules, delivery } = context;
  return stopsOf(milestones, 'unload').flatMap((stop) => {
    const start = timeAtDisposal(milestones, stop.id);
    const refused = milestones.events.filter((one) => one.event === 'refused' && one.stop === stop.id);
    if (start === undefined && refused.length === 0) return [];
    const lines = delivery.lines.filter(({ to }) => to === stop.id);
    return rules.clocks
      .filter(({ of, goods, zones }) => of === 'refusal' && suits(goods, lines) && isIn(zones, stop))
      .map((rule) =>
        start === undefined
          ? withoutArrival(rule, stop, refused)
          : refusalDeadline(rule, stop, start, refused, context),
      );
  });
}

const isIn = (zones: readonly string[], { zone }: Stop): boolean =>
  zones.length === 0 || zones.some((one) => zone.startsWith(one));

/** A refusal where the truck is not recorded: nothing started, so that nothing is counted. */
function withoutArrival(rule: DeadlineRule, stop: Stop, refused: readonly MilestoneEvent[]): ClaimDeadline {
  const evidence = refused.map((one) => one.evidence);
  return {
    ...ruleFields(rule),
    stop: stop.id,
    state: 'not-started',
    remarks: [{ is: 'refused-without-arrival', evidence }],
  };
}

function refusalDeadline(
  rule: DeadlineRule,
  stop: Stop,
  from: DeadlineTime,
  refusals: readonly MilestoneEvent[],
  { rules, milestones, notices, delivery, now }: RefusalContext,
): ClaimDeadline {
  const counted = dueOf(rule, rule.span, from, rules);
  const moved = extensionOf(rule, stop, counted.due, { milestones, notices });
  const due = moved === undefined || !('due' in moved) ? counted.due : moved.due;
  const start = beginningOf(from);
  const told = firstNotice(notices, 'rejection', stop.id, { from: start });
  const early = refusals.filter(({ at }) => at < start);
  const dock = refusals.find(({ at }) => at >= start);
  const refused = dock && eventTime(dock, stop.zone);
  const noticed = told && atTime(told.at, stop.zone, [told.evidence]);
  const ended = endOfRight(rule, stop, dock, milestones);
  const judged = deadlineState(due, now, noticed ?? refused, ended);
  const unshown = judged.state === 'done' && noticed === undefined;
  const remarks: DeadlineRemark[] = [
    ...remarkOn('refused-before-arrival', early),
    ...(unshown ? remarkOn('consignor-not-told', dock === undefined ? [] : [dock]) : []),
    ...(moved?.remarks ?? []),
    ...actsOfAcceptance(milestones, stop, refused),
    ...(delivery.sale === 'fob-acceptance' || delivery.sale === 'fob-acceptance-final'
      ? [{ is: 'no-right-of-rejection' as const, evidence: [] }]
      : []),
  ];
  return {
    ...ruleFields(rule),
    stop: stop.id,
    from,
    ...omitUndefined({ due, counting: counted.counting }),
    ...judged,
    ...(unshown ? { state: 'not-shown' as const } : {}),
    ...omitUndefined({ remarks: remarks.length === 0 ? undefined : remarks }),
  };
}

/**
 * The first act of acceptance at a stop. One of another line than the one that was refused is no acceptance of it:
 * goods are accepted and refused line by line.
 */
function endOfRight(
  { ends }: DeadlineRule,
  stop: Stop,
  refused: MilestoneEvent | undefined,
  { events }: Milestones,
): DeadlineTime | undefined {
  const names: readonly unknown[] = ends.includes('unloaded') ? [...ends, 'accepted'] : ends;
  const found = events.find(
    (one) =>
      one.stop === stop.id &&
      names.includes(one.event) &&
      (one.line === undefined || refused?.line === undefined || one.line === refused.line),
  );
  return found && eventTime(found, stop.zone);
}

const remarkOn = (is: DeadlineRemark['is'], events: readonly MilestoneEvent[]): DeadlineRemark[] =>
  events.length === 0 ? [] : [{ is, evidence: events.map(({ evidence }) => evidence) }];

/**
 * Acts that signify acceptance (7 CFR 46.2(dd)(1)): a diversion, and unloading, which has begun before a refusal. A
 * part unloaded so that the goods can be inspected does not lose the right.
 */
function actsOfAcceptance(
  { events }: Milestones,
  stop: Stop,
  refused: DeadlineTime | undefined,
): DeadlineRemark[] {
  const before = refused === undefined ? Number.POSITIVE_INFINITY : beginningOf(refused);
  const found = (name: MilestoneEvent['event']) =>
    events.filter((one) => one.event === name && one.stop === stop.id && one.at <= before);
  return [
    ...remarkOn('diverted', found('diverted')),
    ...(found('unloaded').length > 0 ? [] : remarkOn('unloading-began', found('unloading-began'))),
  ];
}
