import type { TemperatureUnit } from '../core/model/temperature.js';
import { type Format, formatFor } from '../core/words/format.js';

/** Quantities as a terminal says them: in English, like all that is said there. */
export const terminalFormat = (temperature: TemperatureUnit): Format =>
  formatFor({ temperature, language: 'en' });
