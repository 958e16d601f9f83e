import type { EvidenceId } from '../../../model/evidence.js';
import type { Shortfall } from '../../../model/results.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import type { ItemOf } from '../../../model/state.js';
import { knownMilliseconds, meaningsOf, milliseconds, readLocal } from '../../../model/time.js';
import { earliestTimeOf, latestTimeOf, stopsOf } from '../../milestones.js';
import { zoneAt } from '../../zones.js';
import type { RuleContext } from '../context.js';
import { shortfall } from '../shortfalls.js';
import { mayConcern } from '../statements.js';
import { emptyVerdict, type NeedVerdict } from '../verdict.js';

type DelaysNeed = Extract<SimpleNeed, { delays: unknown }>;

/** A delay that needs an explanation. */
interface Delay {
  evidence: EvidenceId;
  from: number;
  to: number;
  /** The event's own note explains it. */
  noted: boolean;
  lack: Shortfall;
}

/**
 * Stops in transit longer than allowed, and arrivals later than planned: each explained by a note on its event, or
 * while it lasted by a call, a statement or a unit check with a remark.
 */
export function delaysVerdict(context: RuleContext, need: DelaysNeed): NeedVerdict {
  const first = stopsOf(context.milestones, 'load')[0];
  const left = first === undefined ? undefined : earliestTimeOf(context.milestones, first.id, 'departed');
  if (left === undefined) return { ...emptyVerdict(), lacking: [shortfall('way-not-known', {})] };
  const delays = [...longStops(context, need.over), ...lateArrivals(context, need.over)];
  const told = explanationsOf(context);
  const answers = (delay: Delay) =>
    told.filter((one) => one.at >= delay.from && one.at <= delay.to + need.over * 1000);
  const open = delays.filter((delay) => !delay.noted && answers(delay).length === 0);
  return {
    ...emptyVerdict(),
    outcome: open.length === 0 ? 'met' : 'short',
    counted: [
      ...new Set(delays.flatMap((delay) => [delay.evidence, ...answers(delay).map((one) => one.evidence)])),
    ],
    lacking: open.map((delay) => delay.lack),
  };
}

const saysWhy = (item: ItemOf<'event'>) =>
  item.reason !== undefined || (item.note ?? item.caption ?? '').trim() !== '';

function longStops(context: RuleContext, over: number): Delay[] {
  const { milestones, now } = context;
  const events = new Map(context.evidence.of('event').map((item) => [item.evidence, item]));
  const ends = new Set(['resumed', 'departed', 'arrived']);
  return milestones.events.flatMap((one, index) => {
    const item = events.get(one.evidence);
    if (one.event !== 'stopped' || item === undefined) return [];
    const to = milestones.events.slice(index + 1).find((next) => ends.has(next.event))?.at ?? now;
    const seconds = (to - one.at) / 1000;
    if (seconds <= over) return [];
    const zone = item.time.is === 'known' ? item.time.zone : zoneAt(context.state.delivery.stops, one.stop);
    return [
      {
        evidence: one.evidence,
        from: one.at,
        to,
        noted: saysWhy(item),
        lack: shortfall('stop-unexplained', {
          from: { is: 'time', at: one.at, zone },
          length: { is: 'duration', seconds },
        }),
      },
    ];
  });
}

function lateArrivals(context: RuleContext, over: number): Delay[] {
  const events = new Map(context.evidence.of('event').map((item) => [item.evidence, item]));
  return stopsOf(context.milestones, 'unload').flatMap((stop) => {
    const arrived = latestTimeOf(context.milestones, stop.id, 'arrived');
    if (stop.planned === undefined || arrived === undefined || arrived.standIn !== undefined) return [];
    const planned = Math.max(...meaningsOf(readLocal(stop.planned, stop.zone)).map(milliseconds));
    const seconds = (arrived.at - planned) / 1000;
    const item = events.get(arrived.evidence);
    if (seconds <= over) return [];
    return [
      {
        evidence: arrived.evidence,
        from: planned,
        to: arrived.at,
        noted: item !== undefined && saysWhy(item),
        lack: shortfall(
          'late-unexplained',
          { planned: { is: 'time', at: planned, zone: stop.zone }, length: { is: 'duration', seconds } },
          { stop },
        ),
      },
    ];
  });
}

function explanationsOf(context: RuleContext): { at: number; evidence: EvidenceId }[] {
  const items = [
    ...context.evidence.of('contact'),
    ...context.evidence.of('statement').filter((item) => mayConcern(item, 'delay')),
    ...context.evidence.of('round').filter((item) => (item.caption ?? '').trim() !== ''),
  ];
  return items.flatMap((item) => {
    const at = knownMilliseconds(item.time);
    return at === undefined || item.withheld !== undefined ? [] : [{ at, evidence: item.evidence }];
  });
}
