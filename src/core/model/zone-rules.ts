import { IANAZone } from 'luxon';
import { DossierError } from './error.js';
import type { Zone } from './zone.js';
import { TZDB_RELEASE } from './zone-names.js';

/**
 * A zone with its rules, which the engine brings. Records name zones that an older engine has not heard of: they are
 * read everywhere, and refused where a time of such a place has to be computed. Throws DossierError `zone-rules`.
 */
export function zoneRules(zone: Zone): IANAZone {
  const rules = IANAZone.create(zone);
  if (rules.isValid) return rules;
  throw new DossierError('zone-rules', `there are no rules here for the time zone ${zone}`, {
    fix: `Update Node.js or the browser to one that knows release ${TZDB_RELEASE} of the time zone database.`,
  });
}
