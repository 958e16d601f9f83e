import type { Excursion, ExcursionCause } from '../../model/results.js';

/** Excursions that are listed, the heaviest by degree-hours; all are counted and added up. */
export const MOST_LISTED = 5_000;

/** An excursion before it has its name and its cause. */
export type Outside = Omit<Excursion, 'id' | 'cause'>;

/** Of the list the lighter ones are let go of when it is this long, so that not every one is looked for its place. */
const ROOM = 2 * MOST_LISTED;
/** Numbers of one excursion. */
const EACH = 7;

/**
 * The heaviest excursions in the order in which they come; of two alike the earlier. They are numbers side by side and
 * objects only in the end: objects that live for a while are collected late, and most of these are dropped.
 */
export class Heaviest {
  /** Place among all, from, to, seconds, peak, peakAt, degreeHours. */
  #numbers = new Float64Array(64 * EACH);
  #count = 0;
  #others: Pick<Excursion, 'channel' | 'side' | 'cause' | 'cutBy'>[] = [];
  readonly #seen = new Map<string, Pick<Excursion, 'channel' | 'side' | 'cause' | 'cutBy'>>();

  add(place: number, one: Outside, cause: ExcursionCause): void {
    if (this.#count === ROOM) this.#prune();
    if ((this.#count + 1) * EACH > this.#numbers.length) {
      const more = new Float64Array(2 * this.#numbers.length);
      more.set(this.#numbers);
      this.#numbers = more;
    }
    const { from, to, seconds, peak, peakAt, degreeHours } = one;
    this.#numbers.set([place, from, to, seconds, peak, peakAt, degreeHours], this.#count * EACH);
    this.#others[this.#count] = this.#shared(one, cause);
    this.#count += 1;
  }

  /** What is no number is the same for many. */
  #shared({ channel, side, cutBy }: Outside, cause: ExcursionCause) {
    const name = JSON.stringify([channel, side, cutBy, cause]);
    const seen = this.#seen.get(name) ?? { channel, side, cutBy, cause };
    this.#seen.set(name, seen);
    return seen;
  }

  #prune(): void {
    const weight = (index: number) => this.#numbers[index * EACH + EACH - 1] as number;
    const kept = Array.from({ length: this.#count }, (_, index) => index)
      .sort((a, b) => weight(b) - weight(a) || a - b)
      .slice(0, MOST_LISTED)
      .sort((a, b) => a - b);
    kept.forEach((from, to) => {
      this.#numbers.copyWithin(to * EACH, from * EACH, (from + 1) * EACH);
      const other = this.#others[from];
      if (other !== undefined) this.#others[to] = other;
    });
    this.#count = kept.length;
  }

  list(name: (place: number) => string): Excursion[] {
    if (this.#count > MOST_LISTED) this.#prune();
    return this.#others.slice(0, this.#count).map(({ channel, side, cause, cutBy }, index) => {
      const [place = 0, from = 0, to = 0, seconds = 0, peak = 0, peakAt = 0, degreeHours = 0] =
        this.#numbers.subarray(index * EACH, (index + 1) * EACH);
      return {
        id: name(place),
        channel,
        side,
        from,
        to,
        seconds,
        peak,
        peakAt,
        degreeHours,
        cutBy: [...cutBy],
        cause: { ...cause },
      };
    });
  }
}
