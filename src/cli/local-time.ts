import { toInstant, type Zone } from '../core/model/time.js';
import { inZone, zoneShown } from '../core/model/zoned-time.js';

/** `Tue 14 Jul 2026 05:42 MST`: local time with its zone shown. */
export function formatLocalTime(at: number, zone: Zone): string {
  const local = inZone(toInstant(at), zone).setLocale('en-US');
  return `${local.toFormat('ccc d LLL yyyy HH:mm')} ${zoneShown(local)}`;
}
