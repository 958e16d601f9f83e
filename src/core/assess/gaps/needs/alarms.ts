import type { EvidenceId } from '../../../model/evidence.js';
import type { Shortfall } from '../../../model/results.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import type { EvidenceItem } from '../../../model/state.js';
import { knownMilliseconds } from '../../../model/time.js';
import { type Alarm, alarmsOf, logsWithAlarms } from '../../alarms.js';
import { firstIndexFrom } from '../../temperature/segments.js';
import { zoneAt } from '../../zones.js';
import type { RuleContext } from '../context.js';
import { shortfall } from '../shortfalls.js';
import { mayConcern } from '../statements.js';
import { emptyVerdict, type NeedVerdict } from '../verdict.js';
import { windowEnds } from '../window.js';

type AlarmsNeed = Extract<SimpleNeed, { alarms: unknown }>;
/** Time within which an alarm must be answered when the rule states none. Common practice, no source. */
const SOON_SECONDS = 2 * 3600;

/**
 * Alarms in the window, from alarm columns and unit checks: none, or each answered soon after it began by a later
 * unit check, a call or a statement. With neither an alarm column nor a unit check the verdict is unknown.
 */
export function alarmsVerdict(context: RuleContext, need: AlarmsNeed): NeedVerdict {
  const ends = windowEnds(context, need, undefined, context.scope.line);
  const from = ends.after?.at ?? Number.NEGATIVE_INFINITY;
  const to = Math.min(context.now, ends.before?.at ?? context.now);
  const inside = (at: number | undefined) => at !== undefined && at >= from && at <= to;
  const logs = logsWithAlarms(context.logs).filter((log) =>
    inside(log.times.at(firstIndexFrom(log.times, from))),
  );
  const rounds = context.evidence
    .of('round')
    .filter((item) => item.withheld === undefined && inside(knownMilliseconds(item.time)));
  const known: EvidenceId[] = [...logs.map((log) => log.evidence), ...rounds.map((item) => item.evidence)];
  if (known.length === 0) return { ...emptyVerdict(), lacking: [shortfall('alarms-not-known', {})] };
  const alarms = alarmsOf(logs, rounds).filter((alarm) => alarm.to >= from && alarm.from <= to);
  if (need.alarms === 'none') return noneVerdict(context, known, alarms, ends.notes);
  const answers = answersOf(context);
  const soon = (need.soon ?? SOON_SECONDS) * 1000;
  const open = alarms.filter(
    (alarm) =>
      alarm.from + soon <= context.now &&
      !answers.some((one) => one.at > alarm.from && one.at <= alarm.from + soon),
  );
  return {
    ...emptyVerdict(),
    outcome: open.length === 0 ? 'met' : 'short',
    counted: known,
    lacking: firstOfEach(open).map((alarm) => said(context, 'alarm-unanswered', alarm)),
    notes: ends.notes,
  };
}

function noneVerdict(
  context: RuleContext,
  counted: EvidenceId[],
  alarms: readonly Alarm[],
  notes: Shortfall[],
): NeedVerdict {
  return {
    ...emptyVerdict(),
    outcome: alarms.length === 0 ? 'met' : 'contradicted',
    counted,
    against: [...new Set(alarms.map((alarm) => alarm.evidence))],
    lacking: firstOfEach(alarms).map((alarm) => said(context, 'alarm-seen', alarm)),
    notes,
  };
}

const said = (context: RuleContext, is: 'alarm-seen' | 'alarm-unanswered', alarm: Alarm): Shortfall =>
  shortfall(is, {
    alarm: alarm.text,
    at: { is: 'time', at: alarm.from, zone: zoneAt(context.state.delivery.stops) },
  });

/** Answers to alarms: unit checks, calls and statements. */
function answersOf(context: RuleContext): { at: number }[] {
  const items: EvidenceItem[] = [
    ...context.evidence.of('round'),
    ...context.evidence.of('contact'),
    ...context.evidence.of('statement').filter((item) => mayConcern(item, ['alarm', 'unit'])),
  ];
  return items.flatMap((item) => {
    const at = knownMilliseconds(item.time);
    return at === undefined || item.withheld !== undefined ? [] : [{ at }];
  });
}

/** One alarm often shows in many spells; the first of each text is enough to find it. */
function firstOfEach(alarms: readonly Alarm[]): Alarm[] {
  return [...new Map([...alarms].reverse().map((alarm) => [alarm.text, alarm])).values()].sort(
    (a, b) => a.from - b.from,
  );
}
