import type { Flag } from '../../core/model/evidence.js';
import {
  type EventTime,
  milliseconds,
  readLocal,
  type TimeBasis,
  toInstant,
  type Zone,
  zone as zoneSchema,
} from '../../core/model/time.js';
import { zoneRules } from '../../core/model/zone-rules.js';
import { toLocalTime, type WallTime } from './wall-time.js';

export interface TimedWithFlags {
  time: EventTime;
  flags: Flag[];
}

/** How well a time written to the minute, or to the second, is known. */
export const TO_THE_MINUTE = 60;
export const TO_THE_SECOND = 1;

/**
 * A wall-clock time in a zone. Where daylight saving makes it happen twice, the earlier is taken and the
 * uncertainty reaches the later; where it never happened, a clock not yet put forward is assumed and the
 * uncertainty covers the hour that was left out. Both are flagged.
 */
export function timeInZone(
  wall: number,
  zone: Zone,
  basis: TimeBasis,
  uncertaintySeconds: number,
  stated?: string,
): TimedWithFlags {
  const local = toLocalTime(wall);
  const reading = readLocal(local, zone);
  const known = (at: string, spread: number): EventTime => ({
    is: 'known',
    instant: toInstant(Date.parse(at)),
    zone,
    basis,
    uncertaintySeconds: uncertaintySeconds + spread,
    stated: stated ?? local,
  });
  switch (reading.is) {
    case 'one':
      return { time: known(reading.instant, 0), flags: [] };
    case 'twice': {
      const apart = (milliseconds(reading.later) - milliseconds(reading.earlier)) / 1000;
      return {
        time: known(reading.earlier, apart),
        flags: [
          {
            is: 'time-happened-twice',
            detail: `${local} happened twice in ${zone}: ${reading.earlier} and ${reading.later}; the earlier is taken`,
          },
        ],
      };
    }
    case 'never': {
      const at = milliseconds(reading.shifted);
      const skipped = (at + zoneRules(zone).offset(at) * 60_000 - wall) / 1000;
      return {
        time: known(reading.shifted, skipped),
        flags: [
          {
            is: 'time-never-happened',
            detail: `${local} did not happen in ${zone}: the clock was put forward; read as ${reading.shifted}`,
          },
        ],
      };
    }
  }
}

/** A time that states its own offset; shown in the place's zone when that is known. */
export function timeWithOffset(
  { wall, offset }: Required<WallTime>,
  zone: Zone | undefined,
  uncertaintySeconds: number,
  stated: string,
  basis: TimeBasis = 'offset',
): EventTime {
  return {
    is: 'known',
    instant: toInstant(wall - offset * 60_000),
    zone: zone ?? zoneOfOffset(offset),
    basis,
    uncertaintySeconds,
    stated,
  };
}

/** A named zone with this offset (IANA `Etc/GMT…`, whose sign is reversed), or UTC where none has it. */
export function zoneOfOffset(minutes: number): Zone {
  const hours = minutes / 60;
  const name =
    Number.isInteger(hours) && hours !== 0 ? `Etc/GMT${hours > 0 ? '-' : '+'}${Math.abs(hours)}` : 'UTC';
  return zoneSchema.parse(name);
}
