import { type DateOrder, dateParts, wallOf } from './wall-time.js';

export type OrderVerdict =
  | { is: 'order'; order: DateOrder }
  | { is: 'ambiguous'; example: string }
  | { is: 'no-dates' };

/** How far the readings of one order reach, and whether they run one way. */
interface Course {
  readonly order: DateOrder;
  first: number;
  last: number;
  low: number;
  high: number;
  impossible: number;
  up: number;
  down: number;
}

/**
 * Finds out from a whole column in which order day and month stand. In this sequence: a year in front; a
 * number above 12; a point between the numbers (day first, common practice); the order in which the rows
 * run one way while the other jumps about; the order that puts them near `near`. Otherwise it is ambiguous.
 */
export class DateOrderEvidence {
  readonly #courses: [Course, Course] = [course('month-day-year'), course('day-month-year')];
  #own = new Map<DateOrder, number>();
  #points = 0;
  #dates = 0;
  #example = '';

  /** Takes one cell of the column; texts that are no date are passed over. */
  add(text: string): void {
    const date = dateParts(text.trim());
    if (date === undefined) return;
    this.#dates += 1;
    if (date.order !== undefined) {
      this.#own.set(date.order, (this.#own.get(date.order) ?? 0) + 1);
      return;
    }
    this.#example ||= text.trim();
    if (date.separator === '.') this.#points += 1;
    for (const c of this.#courses) {
      const at = wallOf(date, c.order, undefined)?.wall;
      if (at === undefined) {
        c.impossible += 1;
        continue;
      }
      if (Number.isNaN(c.first)) c.first = at;
      else if (at > c.last) c.up += 1;
      else if (at < c.last) c.down += 1;
      c.last = at;
      c.low = Math.min(c.low, at);
      c.high = Math.max(c.high, at);
    }
  }

  /** True when what was seen so far leaves no doubt, so that the rest need not be read. */
  get settled(): boolean {
    const [a, b] = this.#courses;
    return this.#own.size > 0 || (a.impossible === 0) !== (b.impossible === 0);
  }

  /** `near`: moments (ms) that the log should lie near, such as planned times. */
  verdict(near: readonly number[] = []): OrderVerdict {
    const [own] = [...this.#own].sort((a, b) => b[1] - a[1]);
    if (own !== undefined) return { is: 'order', order: own[0] };
    if (this.#dates === 0) return { is: 'no-dates' };
    const [month, day] = this.#courses;
    if (month.impossible !== day.impossible)
      return { is: 'order', order: (month.impossible < day.impossible ? month : day).order };
    if (this.#points === this.#dates) return { is: 'order', order: 'day-month-year' };
    const steady = this.#courses.filter((c) => c.up === 0 || c.down === 0);
    const [only] = steady;
    if (steady.length === 1 && only !== undefined) return { is: 'order', order: only.order };
    const [shorter, longer] = [month, day].sort((a, b) => a.high - a.low - (b.high - b.low));
    // A trip of days reads as one of months in the wrong order.
    if (
      shorter !== undefined &&
      longer !== undefined &&
      longer.high - longer.low > 10 * (shorter.high - shorter.low)
    ) {
      if (shorter.high > shorter.low) return { is: 'order', order: shorter.order };
    }
    const close = this.#courses.filter((c) => near.some((at) => at > c.low - NEAR && at < c.high + NEAR));
    const [closest] = close;
    if (close.length === 1 && closest !== undefined) return { is: 'order', order: closest.order };
    return { is: 'ambiguous', example: this.#example };
  }
}

const NEAR = 10 * 86_400_000;

function course(order: DateOrder): Course {
  return {
    order,
    first: Number.NaN,
    last: Number.NaN,
    low: Number.POSITIVE_INFINITY,
    high: Number.NEGATIVE_INFINITY,
    impossible: 0,
    up: 0,
    down: 0,
  };
}
