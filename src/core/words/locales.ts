import type { Language } from '../model/delivery.js';

/** The locale of each language: names of days and months, and the marks in numbers. */
export const LOCALES: Readonly<Record<Language, string>> = { en: 'en-US', es: 'es-US' };
