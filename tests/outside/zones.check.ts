import { expect } from 'vitest';
import { zone as zoneSchema } from '../../src/core/model/time.js';
import { ZONE_NAMES } from '../../src/core/model/zone-names.js';
import { usualOrder } from '../../src/intake/time/country-order.js';
import { COUNTRIES } from '../../src/intake/time/zone-regions.js';
import { ask, checkWith, python } from './programs.js';

const SCRIPT = 'import zoneinfo; print("\\n".join(sorted(zoneinfo.available_timezones())))';

/** A name that is missing here came with a later release of the time zone database: make the list anew. */
checkWith(python, 'every zone of this machine’s time zone database is in the list', () => {
  const { out } = ask(python, '-c', SCRIPT);
  const names = out.split('\n').filter((name) => name.includes('/') || name === 'UTC');
  expect(names.length).toBeGreaterThan(400);
  expect(names.filter((name) => !ZONE_NAMES.includes(name))).toEqual([]);
});

/** The country (ISO 3166-1) of each zone. */
const TAB = `
import zoneinfo, os
path = next(p for p in zoneinfo.TZPATH if os.path.exists(p + '/zone.tab'))
for line in open(path + '/zone.tab', encoding='utf-8'):
    if not line.startswith('#'): print(line.split('\\t')[2].strip(), line.split('\\t')[0])
`;
const countries = () =>
  new Map(
    ask(python, '-c', TAB)
      .out.trim()
      .split('\n')
      .map((line) => line.split(' ') as [string, string]),
  );

const ORDERS: Readonly<Record<string, ReturnType<typeof usualOrder>>> = {
  mdy: 'month-day-year',
  dmy: 'day-month-year',
};

/** How the short dates of a country's likeliest language run by the CLDR of this engine; undefined where it has none. */
function orderByCldr(country: string): string | undefined {
  const { language } = new Intl.Locale(`und-${country}`).maximize();
  const locale = `${language}-${country}`;
  const format = new Intl.DateTimeFormat(locale, { dateStyle: 'short' });
  if (!format.resolvedOptions().locale.includes(country)) return undefined;
  const parts = format.formatToParts(0).map(({ type }) => type);
  return parts.flatMap((type) => (/^(?:day|month|year)$/.test(type) ? [type[0]] : [])).join('');
}

checkWith(
  python,
  'the order of day and month that a zone’s country has in the CLDR is the usual one, or asked for',
  () => {
    const read = [...countries()].flatMap(([name, country]) => {
      const order = orderByCldr(country);
      return order === undefined ? [] : [{ name, order, usual: usualOrder(zoneSchema.parse(name)) }];
    });
    expect(read.length).toBeGreaterThan(350);
    expect(read.filter(({ order, usual }) => usual !== undefined && usual !== ORDERS[order])).toEqual([]);
    // Asked for only where the year comes first, both are in use or nobody lives.
    const asked = read.filter(({ usual, order }) => usual === undefined && order !== 'ymd');
    expect(
      asked
        .map(({ name }) => name)
        .filter((name) => !/^(?:Antarctica|Arctic)\//.test(name))
        .sort(),
    ).toEqual([...['Africa/Asmara', 'America/Panama', 'Asia/Manila', 'Pacific/Kwajalein', 'Pacific/Majuro']]);
  },
);

/** Offsets of zones over a year, by the rules of this machine. */
const OFFSETS = `
import sys, datetime, zoneinfo
for name in sys.argv[1:]:
    zone = zoneinfo.ZoneInfo(name)
    days = [datetime.datetime(2026, m, 15, tzinfo=datetime.timezone.utc) for m in range(1, 13)]
    print(name, *[int(zone.utcoffset(d.astimezone(zone)).total_seconds() // 60) for d in days])
`;

checkWith(python, 'a country’s zones in the list are all that the time zone database has for it', () => {
  const of = countries();
  const offsets = new Map(
    ask(python, '-c', OFFSETS, ...of.keys())
      .out.trim()
      .split('\n')
      .map((line) => [line.split(' ')[0] ?? '', line.slice(line.indexOf(' ') + 1)] as const),
  );
  for (const [country, zones] of COUNTRIES) {
    const mine = zones.split(' ');
    const codes = new Set(mine.map((zone) => of.get(zone)));
    expect([country, codes.size]).toEqual([country, 1]);
    const all = [...of].filter(([, code]) => codes.has(code)).map(([zone]) => offsets.get(zone));
    expect([country, new Set(mine.map((zone) => offsets.get(zone)))]).toEqual([country, new Set(all)]);
  }
});
