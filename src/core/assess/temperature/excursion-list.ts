import type {
  Excursion,
  ExcursionCause,
  ExcursionClass,
  ExcursionClassSums,
  ExcursionHeat,
  ExcursionSums,
  ExcursionTotals,
} from '../../model/results.js';
import { CLASSES, classOf } from './classes.js';

/** Excursions listed, the heaviest by degree-hours: more than any reader reviews. The sums include all. */
export const MOST_LISTED = 5_000;

/** An excursion before its id and cause are known. */
export type Outside = Omit<Excursion, 'id' | 'cause' | 'class' | 'heat'>;

/** What an excursion rests on. */
export interface Explained {
  cause: ExcursionCause;
  heat?: ExcursionHeat;
}

/**
 * The sums over all excursions, and the heaviest of them in the order given. `name` gives an id by the position
 * among all.
 */
export function listExcursions(
  all: readonly Outside[],
  name: (index: number) => string,
  explain: (one: Outside) => Explained,
): { excursions: Excursion[]; excursionTotals: ExcursionTotals } {
  const excursions = all.map((one, index) => {
    const found = explain(one);
    return { id: name(index), ...one, ...found, class: classOf(found.cause) };
  });
  return { excursions: heaviest(excursions), excursionTotals: totalsOf(excursions) };
}

/** The heaviest excursions; of equals the earlier. */
function heaviest(all: Excursion[]): Excursion[] {
  if (all.length <= MOST_LISTED) return all;
  const listed = new Set([...all].sort((a, b) => b.degreeHours - a.degreeHours).slice(0, MOST_LISTED));
  return all.filter((one) => listed.has(one));
}

function totalsOf(all: readonly Excursion[]): ExcursionTotals {
  const sums = new Map<ExcursionClass, ExcursionClassSums>();
  for (const one of all) {
    const of = sums.get(one.class) ?? noneYet(one);
    sums.set(one.class, of);
    add(of, one);
    if (one.cause.is !== 'unexplained') of[one.cause.how] += 1;
    const cause = of.causes.find(({ is }) => is === one.cause.is);
    if (cause === undefined) of.causes.push({ is: one.cause.is, count: 1 });
    else cause.count += 1;
  }
  return { count: all.length, classes: CLASSES.flatMap((is) => sums.get(is) ?? []) };
}

const noneYet = (first: Excursion): ExcursionClassSums => ({
  class: first.class,
  count: 0,
  seconds: 0,
  longestSeconds: 0,
  degreeHours: 0,
  firstAt: first.from,
  logged: 0,
  inferred: 0,
  causes: [],
});

function add(sums: ExcursionSums, { side, seconds, peak, degreeHours }: Outside): void {
  sums.count += 1;
  sums.seconds += seconds;
  sums.longestSeconds = Math.max(sums.longestSeconds, seconds);
  sums.degreeHours += degreeHours;
  if (side === 'above') sums.highest = Math.max(sums.highest ?? peak, peak);
  else sums.lowest = Math.min(sums.lowest ?? peak, peak);
}
