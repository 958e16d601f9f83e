import type { Excursion, ExcursionCause, ExcursionSums, ExcursionTotals } from '../../model/results.js';

/** Excursions listed, the heaviest by degree-hours: more than any reader reviews. The sums include all. */
export const MOST_LISTED = 5_000;

/** An excursion before its id and cause are known. */
export type Outside = Omit<Excursion, 'id' | 'cause'>;

/**
 * The sums over all excursions, and the heaviest of them in the order given. `name` gives an id by the position
 * among all.
 */
export function listExcursions(
  all: readonly Outside[],
  name: (index: number) => string,
  causeOf: (one: Outside) => ExcursionCause,
): { excursions: Excursion[]; excursionTotals: ExcursionTotals } {
  const excursions = all.map((one, index) => ({ id: name(index), ...one, cause: causeOf(one) }));
  return { excursions: heaviest(excursions), excursionTotals: totalsOf(excursions) };
}

/** The heaviest excursions; of equals the earlier. */
function heaviest(all: Excursion[]): Excursion[] {
  if (all.length <= MOST_LISTED) return all;
  const listed = new Set([...all].sort((a, b) => b.degreeHours - a.degreeHours).slice(0, MOST_LISTED));
  return all.filter((one) => listed.has(one));
}

function totalsOf(all: readonly Excursion[]): ExcursionTotals {
  const totals: ExcursionTotals = { count: all.length };
  for (const one of all) {
    const { cause } = one;
    if (cause.is === 'unexplained') {
      totals.unexplained ??= noneYet(one.from);
      add(totals.unexplained, one);
    } else {
      totals.explained ??= { ...noneYet(one.from), logged: 0, inferred: 0, causes: [] };
      const { explained } = totals;
      add(explained, one);
      explained[cause.how] += 1;
      if (!explained.causes.includes(cause.is)) explained.causes.push(cause.is);
    }
  }
  return totals;
}

const noneYet = (firstAt: number): ExcursionSums => ({
  count: 0,
  seconds: 0,
  longestSeconds: 0,
  degreeHours: 0,
  firstAt,
});

function add(sums: ExcursionSums, { side, seconds, peak, degreeHours }: Outside): void {
  sums.count += 1;
  sums.seconds += seconds;
  sums.longestSeconds = Math.max(sums.longestSeconds, seconds);
  sums.degreeHours += degreeHours;
  if (side === 'above') sums.highest = Math.max(sums.highest ?? peak, peak);
  else sums.lowest = Math.min(sums.lowest ?? peak, peak);
}
