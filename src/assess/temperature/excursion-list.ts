import type { Excursion, ExcursionCause, ExcursionSums, ExcursionTotals } from '../../model/results.js';
import { Heaviest, type Outside } from './heaviest.js';

/**
 * Takes excursions as they begin, in order of time, and lets go of all but the heaviest: a log that leaves the band
 * every hour for years must not fill the memory. A name goes by an excursion's place among all.
 */
export class ExcursionList {
  readonly #name: (index: number) => string;
  readonly #causeOf: (one: Outside) => ExcursionCause;
  readonly #totals: ExcursionTotals = { count: 0 };
  /** In order of their start; an earlier one may end later, or go on after it has ended. */
  readonly #begun: { one: Outside; over: boolean }[] = [];
  readonly #heaviest = new Heaviest();

  constructor(name: (index: number) => string, causeOf: (one: Outside) => ExcursionCause) {
    this.#name = name;
    this.#causeOf = causeOf;
  }

  begin(one: Outside): void {
    this.#begun.push({ one, over: false });
  }

  /** It will not change any more. */
  over(one: Outside): void {
    for (const begun of this.#begun) if (begun.one === one) begun.over = true;
    while (this.#begun[0]?.over === true) {
      const first = this.#begun.shift();
      if (first !== undefined) this.#take(first.one);
    }
  }

  #take(one: Outside): void {
    const cause = this.#causeOf(one);
    const totals = this.#totals;
    this.#heaviest.add(totals.count, one, cause);
    totals.count += 1;
    if (cause.is === 'unexplained') totals.unexplained = added(totals.unexplained ?? NONE, one);
    else {
      const before = totals.explained ?? { ...NONE, logged: 0, inferred: 0, causes: [] };
      totals.explained = {
        ...added(before, one),
        logged: before.logged + (cause.how === 'logged' ? 1 : 0),
        inferred: before.inferred + (cause.how === 'inferred' ? 1 : 0),
        causes: before.causes.includes(cause.is) ? before.causes : [...before.causes, cause.is],
      };
    }
  }

  finish(): { excursions: Excursion[]; excursionTotals: ExcursionTotals } {
    return { excursions: this.#heaviest.list(this.#name), excursionTotals: this.#totals };
  }
}

const NONE: ExcursionSums = { count: 0, seconds: 0, longestSeconds: 0, degreeHours: 0, firstAt: Number.NaN };

function added(sums: ExcursionSums, { side, from, seconds, peak, degreeHours }: Outside): ExcursionSums {
  const { count, highest, lowest, firstAt } = sums;
  return {
    count: count + 1,
    seconds: sums.seconds + seconds,
    longestSeconds: Math.max(sums.longestSeconds, seconds),
    ...(side === 'above'
      ? { highest: Math.max(highest ?? peak, peak), ...(lowest === undefined ? {} : { lowest }) }
      : { lowest: Math.min(lowest ?? peak, peak), ...(highest === undefined ? {} : { highest }) }),
    degreeHours: sums.degreeHours + degreeHours,
    firstAt: count === 0 ? from : firstAt,
  };
}
