import { DateTime } from 'luxon';
import type { Day } from '../../core/model/claim.js';
import type { Language } from '../../core/model/delivery.js';
import type { Money } from '../../core/model/money.js';

const LOCALES: Readonly<Record<Language, string>> = { en: 'en-US', es: 'es-US' };

/** `USD 12,480.50`: the code, since many currencies use the sign $; the digits as written. */
export function formatMoney({ amount, currency }: Money, language: Language): string {
  const written = amount.split('.')[1];
  const decimals = written === undefined ? 0 : Math.max(2, written.length);
  const digits = new Intl.NumberFormat(LOCALES[language], {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  }).format(Number(amount));
  return `${currency}\u00a0${digits}`;
}

/** `August 3, 2026`: a calendar day, the same in every zone. */
export function formatDay({ date }: Day, language: Language): string {
  return DateTime.fromISO(date, { zone: 'utc', locale: LOCALES[language] }).toLocaleString(
    DateTime.DATE_FULL,
  );
}
