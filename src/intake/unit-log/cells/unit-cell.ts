import type { TemperatureUnit } from '../../../core/model/temperature.js';

/** Degrees that a cell of a column of units states: `°C`, `C`, `deg F`, `Celsius`; undefined for any other text. */
export function unitOfCell(text: string): TemperatureUnit | undefined {
  const match =
    /^[^\p{L}\p{N}]{0,2}\s*(?:[oº]|deg(?:rees?)?\.?)?\s*([CF])(?:elsius|ahrenheit|el|ahr)?\.?$/iu.exec(
      text.trim(),
    );
  if (match === null) return undefined;
  return match[1]?.toUpperCase() === 'F' ? '°F' : '°C';
}
