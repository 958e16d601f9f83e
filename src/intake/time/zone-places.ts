import { type Zone, zone as zoneSchema } from '../../core/model/time.js';
import { ZONE_NAMES } from '../../core/model/zone-names.js';
import { withoutAccents } from './months.js';
import { COUNTRIES, DIVIDED, STATES } from './zone-regions.js';

/**
 * Zones in which a named place can lie: an IANA name, a city that names a zone, or a state, province or country, alone
 * or behind a city (`Yuma, Arizona`, `Omaha NE`). Several where the region is divided and the city is not known; none
 * for other texts.
 */
export function zonesOfPlace(text: string): readonly Zone[] {
  const named = zoneSchema.safeParse(text.trim());
  if (named.success) return [named.data];
  const words = plain(text);
  if (words === '') return [];
  const regions: ReadonlyMap<string, string>[] = [STATES, COUNTRIES];
  for (const table of regions) {
    const whole = zonesIn(table.get(words));
    if (whole.length > 0) return whole;
  }
  for (const [region, zones] of [...STATES, ...COUNTRIES]) {
    if (!words.endsWith(` ${region}`)) continue;
    const city = words.slice(0, -region.length - 1);
    const known = cityIn(city, zonesIn(zones));
    return known === undefined ? zonesIn(zones) : [known];
  }
  return CITIES.get(words) ?? [];
}

/** The zone of a city in a divided region. */
function cityIn(city: string, zones: readonly Zone[]): Zone | undefined {
  const own = CITIES.get(city)?.find((zone) => zones.includes(zone));
  return own ?? zones.find((zone) => DIVIDED.get(zone)?.has(city) === true);
}

const zonesIn = (names = ''): readonly Zone[] =>
  names === '' ? [] : names.split(' ').map((name) => zoneSchema.parse(name));

/** Cities that zones are named by. A name that two zones share is none of them. */
const CITIES: ReadonlyMap<string, readonly Zone[]> = cities();

function cities(): Map<string, readonly Zone[]> {
  const found = new Map<string, Zone[]>();
  for (const name of ZONE_NAMES) {
    if (/^(?:Etc|US|Canada|Mexico|Brazil|Chile|UTC)(?:\/|$)/.test(name)) continue;
    const city = plain(name.split('/').at(-1) ?? '');
    found.set(city, [...(found.get(city) ?? []), zoneSchema.parse(name)]);
  }
  return new Map([...found].filter(([, zones]) => zones.length === 1));
}

function plain(text: string): string {
  return withoutAccents(text)
    .toLowerCase()
    .replaceAll(/[^a-z]+/g, ' ')
    .trim();
}
