import { DateTime } from 'luxon';
import { type Instant, milliseconds, type Zone } from './time.js';
import { zoneRules } from './zone-rules.js';

/** An instant on the wall clock of a zone, to be formatted. Apart from `time.ts` so that public types name no library. */
export function inZone(at: Instant, zone: Zone): DateTime {
  return DateTime.fromMillis(milliseconds(at), { zone: zoneRules(zone) });
}

const shortNames = new Map<string, string>();

/** The short English name of a time's zone, such as MST, or its offset where it has none. */
export function zoneShown(local: DateTime): string {
  // Finding the name makes a formatter each time; within a year one offset of a zone has one name.
  const key = `${local.zoneName} ${local.offset} ${local.year}`;
  const name = shortNames.get(key) ?? local.setLocale('en-US').offsetNameShort ?? local.toFormat('ZZ');
  shortNames.set(key, name);
  return name;
}
