import type { Custody, CustodyBound, TimeRange } from '../model/results.js';
import { firstLoading, lastUnloading, type Milestones } from './milestones.js';

/**
 * The carrier's custody: from the last closing of the doors at the first loading stop to the first opening at the
 * last unloading stop. Where an event is missing the next best bounds it, and the bound says so: departure, then
 * the log's first row; arrival, then the log's last row. Undefined when neither events nor a log bound it, or when
 * they conflict.
 */
export function custodyOf(milestones: Milestones, log?: TimeRange): Custody | undefined {
  const first = firstLoading(milestones.stops)?.id;
  const last = lastUnloading(milestones.stops)?.id;
  return first === undefined || last === undefined ? undefined : custodyBetween(milestones, first, last, log);
}

/**
 * Custody between any two stops: from the doors closed at the first to the doors opened at the second. An end
 * missing from `log` bounds nothing.
 */
export function custodyBetween(
  milestones: Milestones,
  first: string,
  last: string,
  log: Partial<TimeRange> = {},
): Custody | undefined {
  const from =
    startOf(milestones, first) ??
    (log.from === undefined ? undefined : { at: log.from, basis: 'log-start' as const });
  if (from === undefined) return undefined;
  const to =
    endOf(milestones, last, from.at) ??
    (log.to === undefined ? undefined : { at: log.to, basis: 'log-end' as const });
  if (to === undefined || to.at <= from.at) return undefined;
  return { from, to };
}

function startOf(milestones: Milestones, stop: string): CustodyBound | undefined {
  const here = milestones.events.filter((one) => one.stop === stop);
  const left = here.find((one) => one.event === 'departed');
  const closed = here.findLast(
    (one) => one.event === 'doors-closed' && (left === undefined || one.at <= left.at),
  );
  if (closed !== undefined) return { at: closed.at, basis: 'doors-closed', evidence: closed.evidence };
  return left === undefined ? undefined : { at: left.at, basis: 'departed', evidence: left.evidence };
}

function endOf(milestones: Milestones, stop: string, after: number): CustodyBound | undefined {
  const here = milestones.events.filter((one) => one.stop === stop && one.at > after);
  for (const basis of ['doors-opened', 'arrived'] as const) {
    const found = here.find((one) => one.event === basis);
    if (found !== undefined) return { at: found.at, basis, evidence: found.evidence };
  }
  return undefined;
}
