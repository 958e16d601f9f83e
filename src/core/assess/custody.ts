import type { Bound, Custody, Span } from '../model/results.js';
import { firstLoading, lastUnloading, type Moments } from './milestones.js';

/**
 * The carrier's custody of the goods: from the last closing of the doors at the first loading stop to the first
 * opening at the last unloading stop. Where an event is missing the next best stands in, and the bound says so:
 * departure, then the log's first row; arrival, then the log's last row. Undefined when neither events nor a log
 * bound it, or when they contradict each other.
 */
export function custodyOf(moments: Moments, log?: Span): Custody | undefined {
  const first = firstLoading(moments.stops)?.id;
  const last = lastUnloading(moments.stops)?.id;
  return first === undefined || last === undefined ? undefined : wayBetween(moments, first, last, log);
}

/**
 * The same between any two stops: from the doors closed at the one to the doors opened at the other. Of `log` an end
 * that is left out stands in for nothing.
 */
export function wayBetween(
  moments: Moments,
  first: string,
  last: string,
  log: Partial<Span> = {},
): Custody | undefined {
  const from =
    startOf(moments, first) ??
    (log.from === undefined ? undefined : { at: log.from, basis: 'log-start' as const });
  if (from === undefined) return undefined;
  const to =
    endOf(moments, last, from.at) ??
    (log.to === undefined ? undefined : { at: log.to, basis: 'log-end' as const });
  if (to === undefined || to.at <= from.at) return undefined;
  return { from, to };
}

function startOf(moments: Moments, stop: string): Bound | undefined {
  const here = moments.events.filter((one) => one.stop === stop);
  const left = here.find((one) => one.event === 'departed');
  const closed = here.findLast(
    (one) => one.event === 'doors-closed' && (left === undefined || one.at <= left.at),
  );
  if (closed !== undefined) return { at: closed.at, basis: 'doors-closed', evidence: closed.evidence };
  return left === undefined ? undefined : { at: left.at, basis: 'departed', evidence: left.evidence };
}

function endOf(moments: Moments, stop: string, after: number): Bound | undefined {
  const here = moments.events.filter((one) => one.stop === stop && one.at > after);
  for (const basis of ['doors-opened', 'arrived'] as const) {
    const found = here.find((one) => one.event === basis);
    if (found !== undefined) return { at: found.at, basis, evidence: found.evidence };
  }
  return undefined;
}
