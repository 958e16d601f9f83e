import { withoutAccents } from '../../time/months.js';

/** What a cell says when a sensor is broken, missing or out of reach; lower case, no accents. */
const FAULT_WORDS: ReadonlySet<string> = new Set([
  ...[
    '?',
    'n/a',
    'na',
    'n.a.',
    'nan',
    'null',
    'none',
    'nil',
    '#n/a',
    '#value!',
    '#null!',
    '#num!',
    '#div/0!',
    '#ref!',
  ],
  ...[
    'err',
    'error',
    'fail',
    'failed',
    'fault',
    'faulty',
    'open',
    'open circuit',
    'short',
    'shorted',
    'short circuit',
  ],
  ...[
    'invalid',
    'missing',
    'no data',
    'nodata',
    'no sensor',
    'no probe',
    'off scale',
    'out of range',
    'over',
    'under',
  ],
  ...[
    'over range',
    'under range',
    'disconnected',
    'not connected',
    'unplugged',
    'bad',
    'bad sensor',
    'unknown',
    'inf',
  ],
  ...[
    'abierto',
    'corto',
    'cortocircuito',
    'fallo',
    'falla',
    'sin datos',
    'sin dato',
    'sin sensor',
    'sin sonda',
  ],
  ...['fuera de rango', 'desconectado', 'desconectada', 'invalido', 'averia', 'nd', 'n/d', 's/d'],
  ...[
    'ouvert',
    'ouverte',
    'court circuit',
    'court-circuit',
    'defaut',
    'erreur',
    'absent',
    'absente',
    'sans donnees',
  ],
  ...['hors plage', 'hors gamme', 'hs', 'debranche', 'debranchee', 'invalide', 'panne'],
]);

/** Cells of punctuation alone, which mark a missing value: `---`, `***`, `--.-`, `....`. */
const MARKS = /^[-–—*._/#?~\s]+$/;

/** A number of nines, or the end of a 16-bit register in whole, tenths or hundredths of a degree. */
const NINES = /^([-−]?)9{2,6}(?:[.,]9{1,3}|[.,]0{1,3})?$/;
const REGISTER_ENDS: ReadonlySet<string> = new Set([
  ...['32767', '3276.7', '327.67', '-32768', '-3276.8', '-327.68', '65535', '6553.5', '655.35'],
  ...['-127', '0x7fff', '0xffff', '7fff', 'ffff'],
]);

/**
 * Whether a cell is the mark of a sensor that gave nothing (common practice, no source). Numbers count only
 * where they are no temperature of air or produce, but for a row of nines below zero, which is one nowhere.
 */
export function isFaultMark(text: string, possible: boolean): boolean {
  const plain = withoutAccents(text).toLowerCase().trim().replaceAll(/\s+/g, ' ');
  if (FAULT_WORDS.has(plain) || MARKS.test(plain)) return true;
  const bare = plain.replace(/\s*(?:°|º|deg)?\s*[cf]$/, '');
  const nines = NINES.exec(bare);
  if (nines !== null) return !possible || nines[1] !== '';
  return !possible && (REGISTER_ENDS.has(plain) || REGISTER_ENDS.has(shortNumber(bare)));
}

/** `-3276,80` is `-3276.8`. */
function shortNumber(text: string): string {
  return text
    .replace(',', '.')
    .replace('−', '-')
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');
}
