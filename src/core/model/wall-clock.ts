import type { IANAZone } from 'luxon';
import type { Zone } from './zone.js';
import { zoneRules } from './zone-rules.js';

const DAY = 86_400_000;
/** Dates as hostile files write them can be of any year. */
const MOST_DAYS = 10_000;

export type WallReading =
  | { is: 'one'; at: number }
  | { is: 'twice'; earlier: number; later: number }
  | { is: 'never'; shifted: number };

/**
 * Converts wall-clock times of one zone to UTC, with ambiguous and nonexistent times named. Looking up an offset is
 * slow and the times of one trip span few days, so whole days are cached. Wall times are milliseconds as if the
 * wall clock were UTC.
 */
export class WallClock {
  readonly #zone: IANAZone;
  /** Offset in milliseconds of a day without a change nearby; NaN for other days. */
  readonly #steady = new Map<number, number>();

  constructor(zone: Zone) {
    this.#zone = zoneRules(zone);
  }

  /** UTC milliseconds when the wall time happened exactly once on a day far from any change, else undefined. */
  steady(wall: number): number | undefined {
    const day = Math.floor(wall / DAY);
    let offset = this.#steady.get(day);
    if (offset === undefined) {
      const around = [-1, 0, 1, 2].map((d) => this.#offset((day + d) * DAY));
      const [first = 0] = around;
      offset = around.every((o) => o === first) ? first : Number.NaN;
      if (this.#steady.size >= MOST_DAYS) this.#steady.clear();
      this.#steady.set(day, offset);
    }
    return Number.isNaN(offset) ? undefined : wall - offset;
  }

  read(wall: number): WallReading {
    const steady = this.steady(wall);
    if (steady !== undefined) return { is: 'one', at: steady };
    const before = this.#offset(wall - DAY);
    // Any offset in force within a day of the wall time is a candidate; a candidate holds when it maps back.
    const offsets = new Set([before, this.#offset(wall), this.#offset(wall + DAY)]);
    const fits = [...offsets]
      .map((offset) => wall - offset)
      .filter((at) => at + this.#offset(at) === wall)
      .sort((a, b) => a - b);
    const [earlier, later] = fits;
    if (earlier === undefined) return { is: 'never', shifted: wall - before };
    return later === undefined ? { is: 'one', at: earlier } : { is: 'twice', earlier, later };
  }

  #offset(at: number): number {
    return this.#zone.offset(at) * 60_000;
  }
}
