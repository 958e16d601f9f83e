import type { Language } from '../model/delivery.js';
import { type Money, shownDecimals, unitsPerOne } from '../model/money.js';
import { LOCALES } from './locales.js';
import { NBSP } from './spaces.js';

/** Separates value and percent sign. */
const PERCENT: Readonly<Record<Language, string>> = { en: '%', es: `${NBSP}%` };

/** Writes numbers, durations, sizes and money in a language; what stands before a unit keeps to it. */
export function numbersFor(language: Language) {
  const formats = new Map<number, Intl.NumberFormat>();
  const formatWith = (decimals: number): Intl.NumberFormat => {
    const made =
      formats.get(decimals) ??
      new Intl.NumberFormat(LOCALES[language], {
        minimumFractionDigits: decimals,
        maximumFractionDigits: decimals,
      });
    formats.set(decimals, made);
    return made;
  };

  /** A number with a fixed count of decimals, with a true minus sign and never a negative zero. */
  const number = (value: number, decimals = 0): string => {
    const rounded = Number(value.toFixed(decimals));
    const text = formatWith(decimals).format(Object.is(rounded, -0) ? 0 : rounded);
    return text.replace('-', '−');
  };

  const amount = (minor: number, code: string): string =>
    number(minor / unitsPerOne(code), shownDecimals(minor, code));

  return {
    number,
    /** A plus sign before what is more than nothing in print. */
    signedNumber: (value: number, decimals = 0): string => {
      const text = number(value, decimals);
      return Number(value.toFixed(decimals)) > 0 ? `+${text}` : text;
    },
    /** 0 to 1 in; what is not whole is never rounded up to 100 or down to 0. */
    share: (of: number): string => {
      const tenths = Math.round(of * 1000);
      const shown = of <= 0 ? 0 : of >= 1 ? tenths : Math.min(Math.max(tenths, 1), 999);
      return `${number(shown / 10, shown % 10 === 0 ? 0 : 1)}${PERCENT[language]}`;
    },
    /** `53 h 20 min`, `14 min`, `40 s`; the size alone, without sign. */
    duration: (seconds: number): string => {
      const whole = Math.round(Math.abs(seconds));
      if (whole < 60) return `${whole}${NBSP}s`;
      const minutes = Math.round(whole / 60);
      const hours = Math.floor(minutes / 60);
      const rest = `${hours === 0 ? minutes : String(minutes % 60).padStart(2, '0')}${NBSP}min`;
      if (hours === 0) return rest;
      return minutes % 60 === 0 ? `${number(hours)}${NBSP}h` : `${number(hours)}${NBSP}h${NBSP}${rest}`;
    },
    /** `1 h 2 min 3 s`, to the second: by how much a clock is off. */
    exactDuration: (seconds: number): string => {
      const whole = Math.round(Math.abs(seconds));
      const parts = [
        [Math.floor(whole / 3600), 'h'] as const,
        [Math.floor(whole / 60) % 60, 'min'] as const,
        [whole % 60, 's'] as const,
      ].flatMap(([count, unit]) => (count === 0 ? [] : [`${number(count)}${NBSP}${unit}`]));
      return parts.length === 0 ? `0${NBSP}s` : parts.join(NBSP);
    },
    bytes: (count: number): string => {
      if (count < 1000) return `${number(count)} B`;
      return count < 1e6 ? `${number(count / 1000, 1)} kB` : `${number(count / 1e6, 1)} MB`;
    },
    /** Minor units of a currency in, `USD 12,480.50` out; the code, since many currencies use the sign $. */
    money: (minor: number, code: string): string => `${code}${NBSP}${amount(minor, code)}`,
    /** `USD 100.00 – 250.00`, or the one amount that both are. */
    moneyRange: (low: number, high: number, code: string): string =>
      `${code}${NBSP}${amount(low, code)}${low === high ? '' : ` – ${amount(high, code)}`}`,
    /** `USD 3,000` or `USD 3,000.00`: the digits as written. */
    statedMoney: ({ amount: digits, currency }: Money): string => {
      const fraction = digits.split('.')[1];
      return `${currency}${NBSP}${number(Number(digits), fraction === undefined ? 0 : Math.max(2, fraction.length))}`;
    },
  };
}
