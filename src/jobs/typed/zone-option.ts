import { DossierError, type ErrorCode } from '../../core/model/error.js';
import { type Zone, zone as zoneSchema } from '../../core/model/time.js';
import { zonesOfPlace } from '../../intake/time/zone-places.js';
import { zoneOfWord } from '../../intake/time/zone-words.js';

/** Letters of zones are read as in North America where nothing else is known. */
export const AMERICAN = zoneSchema.parse('America/Chicago');

/**
 * A zone as people name it: of the IANA list, by a state, province or country, by a city, or as `Pacific` or `PT`.
 * Throws DossierError with the choices where several are meant, and for what is none.
 * @param near a zone of the delivery: letters such as CT mean others elsewhere; American ones if not given
 */
export function parseZoneOption(
  typed: string,
  field: string,
  near: Zone = AMERICAN,
  code: ErrorCode = 'bad-value',
): Zone {
  const word = zoneOfWord(typed, near);
  const [zone, ...others] = word === undefined ? zonesOfPlace(typed) : [word.zone];
  if (zone !== undefined && word?.offset === undefined && others.length === 0) return zone;
  const refuse = (message: string, fix: string, choices?: readonly string[]) =>
    new DossierError(code, message, { where: { field }, fix, ...(choices === undefined ? {} : { choices }) });
  // PDT is not a zone but half a year of one; a clock that stays on MST all year is Arizona's.
  if (word?.offset !== undefined)
    throw refuse(
      `"${typed}" holds for a part of the year in ${word.zone}`,
      `Name the zone: ${word.zone}${typed.trim().toUpperCase() === 'MST' ? ' or America/Phoenix' : ''}.`,
      typed.trim().toUpperCase() === 'MST' ? [word.zone, 'America/Phoenix'] : [word.zone],
    );
  if (zone === undefined)
    throw refuse(
      `"${typed}" is not a time zone`,
      'Use a name of the IANA list, such as America/Phoenix, or a state or city, such as Arizona or Los Angeles.',
    );
  const zones = [zone, ...others];
  throw refuse(`"${typed}" lies in ${zones.join(' and ')}`, `Use one of: ${zones.join(', ')}.`, zones);
}
