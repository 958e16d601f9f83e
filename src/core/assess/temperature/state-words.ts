import { DEFROST_WORDS, plainWords } from '../../model/operation.js';

/** Words for the states of a log in English, Spanish and French; lower case, no accents. */
const BLANK_WORDS: ReadonlySet<string> = new Set([
  ...[
    '',
    'no',
    'n',
    'off',
    '0',
    'false',
    'none',
    'closed',
    'close',
    'shut',
    'inactive',
    'idle',
    'ok',
    'normal',
  ],
  ...[
    'cerrada',
    'cerrado',
    'cerradas',
    'cerrados',
    'inactivo',
    'inactiva',
    'ninguno',
    'ninguna',
    'apagado',
    'falso',
  ],
  ...[
    'fermee',
    'ferme',
    'fermees',
    'fermes',
    'non',
    'inactif',
    'inactive',
    'aucun',
    'aucune',
    'faux',
    'arret',
  ],
]);
const OFF: ReadonlySet<string> = new Set([
  ...['off', '0', 'no', 'false', 'unit off', 'power off', 'shut down', 'shutdown', 'stopped'],
  ...[
    'apagado',
    'apagada',
    'paro',
    'parado',
    'parada',
    'detenido',
    'detenida',
    'desconectado',
    'equipo apagado',
  ],
  ...['arret', 'arrete', 'arretee', 'eteint', 'eteinte', 'hors tension', 'non', 'groupe arrete'],
]);
const NO_ALARM: ReadonlySet<string> = new Set([
  ...[
    'no alarm',
    'no alarms',
    'sin alarma',
    'sin alarmas',
    'sin fallas',
    'aucune alarme',
    'pas alarme',
    'ras',
  ],
]);

/** The text means that no event is in progress, or is a mark for no value. */
export function isBlankState(text: string): boolean {
  const said = plainWords(text);
  return BLANK_WORDS.has(said) || /^[-–—*.?]+$/.test(said);
}

export function isNoAlarm(text: string): boolean {
  return isBlankState(text) || NO_ALARM.has(plainWords(text));
}

export function isOffWord(text: string): boolean {
  return OFF.has(plainWords(text));
}

export function isDefrostWord(text: string): boolean {
  const said = plainWords(text);
  return DEFROST_WORDS.some((word) => said.includes(word));
}
