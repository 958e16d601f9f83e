/**
 * Currencies by the decimals of their minor unit: ISO 4217, list one as SIX published it on 25 June 2024, with the
 * amendments up to 1 January 2026: 176 (XCG in the place of ANG), 178 (CUC withdrawn) and 180 (BGN withdrawn on
 * 1 January 2026). Funds, metals and units of account are no money that anybody pays a claim in, but for the special
 * drawing right, in which conventions of carriage set their limits.
 */
const BY_DECIMALS: readonly (readonly [decimals: number, codes: readonly string[]])[] = [
  [0, ['BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF']],
  [
    2,
    [
      'AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF',
      'CNY COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL',
      'HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT',
      'MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB',
      'SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH',
      'USD UYU UZS VED VES WST XCD XCG YER ZAR ZMW ZWG',
    ],
  ],
  [3, ['BHD IQD JOD KWD LYD OMR TND']],
  // The special drawing right has no minor unit; amounts of it are written with two decimals.
  [2, ['XDR']],
  // Withdrawn, or of no country: amounts that were entered when the list still had them stay readable.
  [2, ['ANG BGN CUC HRK SLL XSU ZWL']],
];

/** Decimals of each currency's minor unit, by its code. */
export const CURRENCY_DECIMALS: ReadonlyMap<string, number> = new Map(
  BY_DECIMALS.flatMap(([decimals, codes]) =>
    codes.flatMap((line) => line.split(' ').map((code) => [code, decimals] as const)),
  ),
);
