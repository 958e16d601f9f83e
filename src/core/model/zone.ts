import { z } from 'zod';
import { ZONE_NAMES } from './zone-names.js';

/** An IANA time zone name, such as America/Phoenix. */
export type Zone = string & z.$brand<'Zone'>;

const ZONES: ReadonlySet<string> = new Set(ZONE_NAMES.map((name) => name.toLowerCase()));

/**
 * A name of the IANA list, whatever its capitals are; whether the engine knows the zone's rules is seen when they are
 * needed. Abbreviations are refused: CST is Chicago, Havana or Shanghai, and EST in the IANA list never changes to
 * summer time.
 */
export const zone = z
  .string()
  .refine((name) => ZONES.has(name.toLowerCase()), {
    error: (issue) =>
      `"${String(issue.input)}" is not a time zone; use a name of the IANA list, such as America/Phoenix`,
  })
  .transform((name) => name as Zone);
