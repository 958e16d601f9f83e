import type { Excursion, ExcursionCause, ExcursionSums, ExcursionTotals } from '../../model/results.js';
import { Heaviest, type Outside } from './top-excursions.js';

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

  finish(): { excursions: Excursion[]; excursionTotals: ExcursionTotals } {
    return { excursions: this.#heaviest.list(this.#name), excursionTotals: this.#totals };
  }
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
