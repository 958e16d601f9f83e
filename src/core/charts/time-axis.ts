import { DateTime } from 'luxon';
import type { Zone } from '../model/time.js';
import { zoneRules } from '../model/zone-rules.js';

export interface TimeTick {
  at: number;
  /** Midnight in the zone: a new day begins. */
  day: boolean;
}

const STEPS_HOURS = [1, 2, 3, 4, 6, 12, 24, 48];

/** Ticks on whole local hours, at most `most` of them, with midnights marked. Follows daylight-saving changes. */
export function timeTicks(from: number, to: number, zone: Zone, most: number): TimeTick[] {
  const hours = (to - from) / 3_600_000;
  const step = STEPS_HOURS.find((s) => hours / s <= most) ?? 24 * Math.ceil(hours / 24 / most);
  const ticks: TimeTick[] = [];
  let day = DateTime.fromMillis(from, { zone: zoneRules(zone) }).startOf('day');
  let dayCount = 0;
  while (day.toMillis() <= to && dayCount < 1000) {
    for (let hour = 0; hour < 24; hour += step) {
      const at = day.set({ hour }).toMillis();
      if (at >= from && at <= to) ticks.push({ at, day: hour === 0 });
    }
    const days = Math.max(1, Math.round(step / 24));
    day = day.plus({ days });
    dayCount += 1;
  }
  return ticks.filter((tick, i) => i === 0 || tick.at !== ticks[i - 1]?.at);
}
