import type { TemperatureUnit } from '../../../core/model/temperature.js';
import type { Zone } from '../../../core/model/time.js';

/**
 * Areas of the IANA list whose countries measure in °C (Unicode CLDR 48, `measurementSystem-category-temperature`).
 * North and Central America and the Caribbean are none of them: instruments there are set to either, whatever the
 * country (common practice, no source), as are those near the islands of the United States in the Pacific.
 */
const CELSIUS = new RegExp(
  `^(?:(?:Africa|Asia|Australia|Europe|Indian)/.+|Atlantic/(?!Bermuda$).+|Pacific/(?:Auckland|Chatham|Fiji)|America/(?:${[
    'Araguaina|Argentina/.+|Asuncion|Bahia|Belem|Boa_Vista|Bogota|Buenos_Aires|Campo_Grande|Caracas|Cayenne',
    'Cordoba|Coyhaique|Cuiaba|Eirunepe|Fortaleza|Guayaquil|Guyana|La_Paz|Lima|Maceio|Manaus|Montevideo',
    'Noronha|Paramaribo|Porto_Velho|Punta_Arenas|Recife|Rio_Branco|Santarem|Santiago|Sao_Paulo',
  ].join('|')}))$`,
);

/** The unit in which temperatures are measured where all stops are; undefined where both are in use, or they differ. */
export function usualUnit(zones: readonly Zone[]): TemperatureUnit | undefined {
  return zones.length > 0 && zones.every((zone) => CELSIUS.test(zone)) ? '°C' : undefined;
}
