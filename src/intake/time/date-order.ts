import { type DateOrder, dateParts, readTimeOfDay, wallOf } from './wall-time.js';

export type OrderVerdict =
  | { is: 'order'; order: DateOrder }
  /** The orders between which nothing decides. */
  | { is: 'ambiguous'; example: string; orders: DateOrder[] }
  | { is: 'no-dates' };

/** How the rows run when their dates are read in one order. */
interface Course {
  readonly order: DateOrder;
  last: number;
  low: number;
  high: number;
  impossible: number;
  up: number;
  down: number;
  /** Steps between rows of different dates, milliseconds. */
  steps: number[];
}

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** Planned times decide for what lies within this of them. */
const NEAR = 10 * DAY;
/** A row that runs against the others weighs as this many pauses. */
const BACKWARDS = 4;
/** Steps that are kept: the first of them show whether the rows run evenly. */
const MOST_STEPS = 2_000;

/**
 * Finds out from a whole column in which order day, month and year stand. In this sequence: a month's name or a year of
 * four digits in front; a number that is no month or day; the order in which rows follow each other evenly and one way
 * while the others jump by months; the order that puts them near `near`; a point between the numbers of a year of four
 * digits (day first, common practice). Otherwise it is ambiguous.
 */
export class DateOrderEvidence {
  readonly #courses: readonly Course[] = [course('month-day-year'), course('day-month-year'), course('iso')];
  readonly #own = new Map<DateOrder, number>();
  readonly #sameDay: number[] = [];
  #before: { date: string; ms: number } | undefined;
  #points = 0;
  #dates = 0;
  #example = '';

  /** Takes one cell of the column, and the time of day of a column of its own; texts that are no date are passed over. */
  add(text: string, timeOfDay?: string): void {
    const written = text.trim();
    const date = dateParts(written);
    if (date === undefined) return;
    this.#dates += 1;
    if (date.order !== undefined) {
      this.#own.set(date.order, (this.#own.get(date.order) ?? 0) + 1);
      return;
    }
    this.#example ||= written;
    const [first, , last] = date.parts;
    if (date.separator === '.' && last > 99) this.#points += 1;
    const ms = readTimeOfDay(timeOfDay ?? date.clock ?? '')?.ms ?? 0;
    const key = date.parts.join('.');
    const before = this.#before;
    this.#before = { date: key, ms };
    if (before?.date === key && before.ms !== ms && this.#sameDay.length < MOST_STEPS)
      this.#sameDay.push(Math.abs(ms - before.ms));
    for (const c of this.#courses) {
      // Two digits in front are a year only where those at the end may be a day.
      const possible = c.order !== 'iso' || (first < 100 && last <= 31);
      const day = possible ? wallOf(date, c.order, undefined)?.wall : undefined;
      if (day === undefined) {
        c.impossible += 1;
        continue;
      }
      const at = day + ms;
      if (!Number.isNaN(c.last)) {
        if (at > c.last) c.up += 1;
        else if (at < c.last) c.down += 1;
        if (before?.date !== key && c.steps.length < MOST_STEPS) c.steps.push(at - c.last);
      }
      c.last = at;
      c.low = Math.min(c.low, day);
      c.high = Math.max(c.high, day);
    }
  }

  /** True when what was seen so far leaves no doubt, so that the rest need not be read. */
  get settled(): boolean {
    if (this.#own.size > 0) return true;
    return this.#dates > 0 && this.#courses.filter((c) => c.impossible === 0).length === 1;
  }

  /** `near`: moments (ms) that the log should lie near, such as planned times. */
  verdict(near: readonly number[] = []): OrderVerdict {
    const [own] = [...this.#own].sort((a, b) => b[1] - a[1]);
    if (own !== undefined) return { is: 'order', order: own[0] };
    if (this.#dates === 0) return { is: 'no-dates' };
    const least = Math.min(...this.#courses.map((c) => c.impossible));
    if (least === this.#dates) return { is: 'no-dates' };
    const possible = this.#courses.filter((c) => c.impossible === least);
    const even = this.#evenest(possible);
    const close = even.filter((c) => near.some((at) => at > c.low - NEAR && at < c.high + NEAR));
    const left = close.length > 0 ? close : even;
    const [only] = left;
    if (left.length === 1 && only !== undefined) return { is: 'order', order: only.order };
    if (this.#points === this.#dates && left.some((c) => c.order === 'day-month-year'))
      return { is: 'order', order: 'day-month-year' };
    return { is: 'ambiguous', example: this.#example, orders: left.map((c) => c.order) };
  }

  /** The courses whose rows run evenly, where the others do so clearly worse; else all. */
  #evenest(courses: readonly Course[]): readonly Course[] {
    const within = [...this.#sameDay].sort((a, b) => a - b);
    // Logs of one row a day have no step within a day: the shortest that any order gives is their step.
    const usual = within[Math.floor(within.length / 2)] ?? Math.min(...courses.map(shortest));
    const jumps = courses.map((c) => {
      const against = c.down > c.up ? -1 : 1;
      return c.steps.reduce((sum, step) => {
        const odd = Math.abs(step) > Math.max(3 * usual, 2 * DAY);
        return sum + (step * against < 0 ? BACKWARDS : 0) + (odd ? 1 : 0);
      }, 0);
    });
    const fewest = Math.min(...jumps);
    // A log may pause too; it does not pause at every change of the day.
    const clear = courses.filter((_, i) => (jumps[i] ?? 0) <= fewest);
    const rest = jumps.filter((n) => n > fewest);
    return rest.every((n) => n >= 3 * fewest + 1) ? clear : courses;
  }
}

function shortest(c: Course): number {
  return Math.min(...c.steps.map(Math.abs).filter((s) => s > 0), Number.POSITIVE_INFINITY);
}

function course(order: DateOrder): Course {
  return {
    order,
    last: Number.NaN,
    low: Number.POSITIVE_INFINITY,
    high: Number.NEGATIVE_INFINITY,
    impossible: 0,
    up: 0,
    down: 0,
    steps: [],
  };
}
