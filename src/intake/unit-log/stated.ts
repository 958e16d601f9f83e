import type { StatedNumbers } from '../../core/model/unit-log.js';
import { plainHeading } from './headings/meaning.js';

type Whose = keyof StatedNumbers;

const THINGS: Readonly<Record<Whose, readonly string[]>> = {
  trailer: ['trailer', 'semi trailer', 'remolque', 'semirremolque', 'remorque', 'semi remorque'],
  unit: ['unit', 'refrigeration unit', 'unidad', 'equipo', 'groupe', 'groupe froid', 'unite'],
  recorder: ['recorder', 'logger', 'device', 'registrador', 'dispositivo', 'enregistreur', 'appareil'],
};
/** `Trailer`, `Trailer no.`, `Numero remolque`, `Unit serial number`. */
const NUMBER = ['no', 'nr', 'num', 'number', 'id', 'numero', 'name', 'nombre', 'nom', 'n'];
const SERIAL = ['serial', 'serie', 'sn'];

/** Reads whose log it is from the cells of the lines above its header: `Trailer,T-118` or `Trailer: T-118`. */
export class StatedReader {
  readonly #found: StatedNumbers = {};

  add(cells: readonly string[]): void {
    cells.forEach((cell, i) => {
      const [label = '', ...rest] = cell.split(/[:=#]/);
      const whose = whoseNumber(label);
      const value = (rest.join(':').trim() || (cells[i + 1] ?? '')).trim();
      // A unit of measurement stands under the same word: a number of a trailer has digits.
      if (whose === undefined || !/^[\p{L}\p{N}][\p{L}\p{N} ._/-]{0,39}$/u.test(value) || !/\d/.test(value))
        return;
      this.#found[whose] ??= value;
    });
  }

  get stated(): StatedNumbers | undefined {
    return Object.keys(this.#found).length === 0 ? undefined : this.#found;
  }
}

function whoseNumber(label: string): Whose | undefined {
  if (label.length > 60) return undefined;
  const words = plainHeading(label).split(' ');
  const serial = words.some((word) => SERIAL.includes(word));
  const thing = words.filter((word) => !NUMBER.includes(word) && !SERIAL.includes(word)).join(' ');
  // A serial number is the maker's: it says which device, not which number the carrier gave it.
  for (const whose of ['trailer', 'unit', 'recorder'] as const)
    if (THINGS[whose].includes(thing)) return serial ? 'recorder' : whose;
  return thing === '' && serial ? 'recorder' : undefined;
}
