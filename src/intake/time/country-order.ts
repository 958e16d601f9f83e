import type { Zone } from '../../core/model/time.js';
import type { DateOrder } from './wall-time.js';

/** Zones of the United States and its islands, where the month is written first; old names too. */
const MONTH_FIRST = new RegExp(
  `^(?:US/.+|America/(?:${[
    'Adak|Anchorage|Atka|Boise|Chicago|Denver|Detroit|Fort_Wayne|Indiana/.+|Indianapolis|Juneau',
    'Kentucky/.+|Knox_IN|Los_Angeles|Louisville|Menominee|Metlakatla|New_York|Nome|North_Dakota/.+',
    'Phoenix|Puerto_Rico|Shiprock|Sitka|St_Thomas|Virgin|Yakutat',
  ].join('|')})|Pacific/(?:Guam|Honolulu|Johnston|Midway|Pago_Pago|Saipan|Samoa|Wake))$`,
);

/**
 * Zones of countries where both orders are in use, or whose short dates have the year first, so that a date with the
 * year behind is of no usual form; and of places that nobody lives in.
 */
const EITHER = new RegExp(
  `^(?:Canada/.+|Etc/.+|UTC|Arctic/.+|Antarctica/.+|America/(?:${[
    'Atikokan|Blanc-Sablon|Cambridge_Bay|Coral_Harbour|Creston|Dawson|Dawson_Creek|Edmonton|Fort_Nelson',
    'Glace_Bay|Goose_Bay|Halifax|Inuvik|Iqaluit|Moncton|Montreal|Nipigon|Pangnirtung|Rainy_River',
    'Rankin_Inlet|Regina|Resolute|St_Johns|Swift_Current|Thunder_Bay|Toronto|Vancouver|Whitehorse',
    'Winnipeg|Yellowknife|Panama|Nuuk|Godthab|Danmarkshavn|Scoresbysund|Thule',
  ].join('|')})|Africa/(?:${['Asmara|Asmera|Harare|Johannesburg|Kigali|Maseru|Windhoek'].join(
    '|',
  )})|Asia/(?:${[
    'Chongqing|Chungking|Choibalsan|Colombo|Harbin|Hovd|Kabul|Kashgar|Kathmandu|Katmandu|Manila|Pyongyang',
    'Seoul|Shanghai|Taipei|Tehran|Thimbu|Thimphu|Tokyo|Ulaanbaatar|Ulan_Bator|Urumqi',
  ].join('|')})|Europe/(?:Budapest|Stockholm|Vilnius)|Indian/Antananarivo|Pacific/(?:${[
    'Kwajalein|Majuro|Palau',
  ].join('|')}))$`,
);

/**
 * The order in which people of a zone's country write day and month in figures: the short dates of the Unicode CLDR 48,
 * against which `tests/outside/zones.check.ts` holds it; undefined where both are in use or the year comes first.
 */
export function usualOrder(zone: Zone): Exclude<DateOrder, 'iso'> | undefined {
  if (MONTH_FIRST.test(zone)) return 'month-day-year';
  return EITHER.test(zone) ? undefined : 'day-month-year';
}
