import { omitUndefined } from '../../model/omit-undefined.js';
import type { Finding } from '../../model/results.js';
import type { ItemOf } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';
import { type Alarm, alarmsOf } from '../alarms.js';
import { latestTimeOf } from '../milestones.js';
import { appliedSeals, foundSeals, sealKey, sealsBefore } from '../seals.js';
import { type FindingContext, finding, time, zoneOf } from './make.js';
import { unitWatchFindings } from './unit-watch.js';

/** Findings on care in transit: unit checks, alarms, seal, evidence that can no longer be obtained. */
export function careFindings(context: FindingContext): Finding[] {
  return [...unitWatchFindings(context), ...alarms(context), ...seals(context), ...lost(context)];
}

const unitChecksOf = (context: FindingContext) =>
  context.state.evidence.filter((item): item is ItemOf<'round'> => item.kind === 'round');

/** Alarms in custody from the logs' alarm columns and from unit checks. */
function alarms(context: FindingContext): Finding[] {
  const inCustody = ({ evidence, seen, from, to }: Alarm) =>
    seen === 'at-a-look' ||
    context.temperatures.some(
      ({ log, custody }) => log === evidence && to >= custody.from.at && from <= custody.to.at,
    );
  const all = alarmsOf(context.logs, unitChecksOf(context)).filter(inCustody);
  const untimed = unitChecksOf(context).filter(
    (item) => knownMilliseconds(item.time) === undefined && item.alarms.length > 0,
  );
  const [first] = all;
  if (first === undefined && untimed.length === 0) return [];
  return [
    finding(
      'alarms-seen',
      'alarm columns of the logs, alarms noted at looks at the unit',
      [...all, ...untimed].map((one) => one.evidence),
      {
        count: all.length + untimed.reduce((sum, item) => sum + item.alarms.length, 0),
        alarms: [
          ...new Set([...all.map((alarm) => alarm.text), ...untimed.flatMap((item) => item.alarms)]),
        ].join('; '),
        ...omitUndefined({ firstAt: first && time(first.from, zoneOf(context.state)) }),
      },
    ),
  ];
}

function seals(context: FindingContext): Finding[] {
  const by = 'seal numbers at both ends';
  const applied = appliedSeals(context.state);
  const [first] = applied;
  if (first === undefined) return [];
  const seen = foundSeals(context.state);
  if (seen.length === 0) {
    const opened = context.state.delivery.stops
      .filter((stop) => stop.does === 'unload')
      .some((stop) => latestTimeOf(context.milestones, stop.id, 'doors-opened') !== undefined);
    return opened ? [finding('seal-not-checked', by, [first.evidence], { number: first.number })] : [];
  }
  return seen.flatMap((item) => {
    const before = sealsBefore(applied, item);
    const same = before.find((one) => sealKey(one.number) === sealKey(item.number));
    const ids = [(same ?? before[0] ?? first).evidence, item.evidence];
    if (same === undefined)
      return [finding('seal-differs', by, ids, { applied: (before[0] ?? first).number, found: item.number })];
    if (item.state !== 'broken') return [finding('seal-same', by, ids, { number: item.number })];
    const at = knownMilliseconds(item.time);
    const when = at === undefined ? {} : { at: time(at, zoneOf(context.state, item.place?.stop)) };
    return [finding('seal-broken', by, ids, { number: item.number, ...when })];
  });
}

function lost(context: FindingContext): Finding[] {
  const rules = context.gaps.filter(
    (gap) => (gap.outcome === 'missing' || gap.outcome === 'short') && gap.closable.is === 'lost',
  );
  return rules.length === 0 ? [] : [finding('evidence-lost', 'rules', [], { count: rules.length })];
}
