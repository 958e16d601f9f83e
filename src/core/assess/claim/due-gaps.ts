import type { ClaimResult, GapResult } from '../../model/results.js';
import { endOf } from './deadline-milestones.js';

/**
 * Gaps with the day by which they are due, for each claim whose deadline is open or overdue. An overdue duty is
 * still to be done: passing its deadline closes nothing.
 */
export function withDueDates(gaps: readonly GapResult[], claims: readonly ClaimResult[]): GapResult[] {
  return gaps.map((gap) => {
    const due = gap.clock === undefined ? [] : openDeadlines(gap.clock, claims);
    return due.length === 0 ? gap : { ...gap, due };
  });
}

function openDeadlines(id: string, claims: readonly ClaimResult[]): NonNullable<GapResult['due']> {
  return claims
    .flatMap(({ claim, clocks }) =>
      clocks.flatMap(({ id: own, due: at, state, source }) =>
        own === id && at !== undefined && (state === 'running' || state === 'overdue')
          ? [{ claim, at, state, source }]
          : [],
      ),
    )
    .sort((a, b) => endOf(a.at) - endOf(b.at));
}
