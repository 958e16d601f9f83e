import type { LogMapping } from '../../../core/model/evidence.js';

export type TimePart = NonNullable<LogMapping['time']['parts']>[number];

const two = (n: number) => String(n).padStart(2, '0');

/**
 * Date and time of day from cells that hold a part each, as `2026-07-14 04:05:00`; empty where one that is needed is
 * missing or no number.
 */
export function composedTime(cells: readonly string[], parts: readonly TimePart[]): string {
  const numbers = new Map<TimePart, number>();
  let clock = '';
  for (const [i, part] of parts.entries()) {
    const text = (cells[i] ?? '').trim();
    if (part === 'clock') clock = text;
    else if (text === '' || !/^\d{1,4}(?:\.0+)?$/.test(text)) return '';
    else numbers.set(part, Number(text));
  }
  const year = numbers.get('year') ?? 0;
  const full = year < 100 ? 2000 + year : year;
  const date = dateOf(full, numbers);
  if (date === undefined) return '';
  if (parts.includes('clock')) return clock === '' ? '' : `${date} ${clock}`;
  const joined = numbers.get('hhmm');
  const hour = joined === undefined ? numbers.get('hour') : Math.floor(joined / 100);
  if (hour === undefined) return date;
  const minute = joined === undefined ? (numbers.get('minute') ?? 0) : joined % 100;
  return `${date} ${two(hour)}:${two(minute)}:${two(numbers.get('second') ?? 0)}`;
}

function dateOf(year: number, numbers: ReadonlyMap<TimePart, number>): string | undefined {
  const ofYear = numbers.get('day-of-year');
  const [month, day] = [numbers.get('month'), numbers.get('day')];
  const at =
    month !== undefined && day !== undefined
      ? Date.UTC(year, month - 1, day)
      : ofYear === undefined
        ? Number.NaN
        : Date.UTC(year, 0, ofYear);
  if (Number.isNaN(at)) return undefined;
  const date = new Date(at);
  // The 31st of June is no day, nor is the 366th of most years.
  const real =
    day === undefined
      ? date.getUTCFullYear() === year
      : date.getUTCDate() === day && date.getUTCMonth() + 1 === month;
  return real ? date.toISOString().slice(0, 10) : undefined;
}
