/** Beginnings of words for a defrost in the languages of logs, lower case, without accents. */
export const DEFROST_WORDS = [
  'defrost',
  'deshielo',
  'desescarche',
  'descarche',
  'descongel',
  'degivrage',
  'abtau',
];

/** A text of a log in lower case, without accents. */
export function plainWords(text: string): string {
  return text.normalize('NFKD').replaceAll(/\p{M}/gu, '').trim().toLowerCase();
}

/** What a unit does at one time, by the words of a column of operation. */
export type Operation = 'cooling' | 'heating' | 'idle' | 'defrost' | 'off';

/** Beginnings of words, lower case and without accents, in the order in which they are looked for. */
const OPERATIONS: readonly [Operation, readonly string[]][] = [
  ['defrost', [...DEFROST_WORDS, 'dfst']],
  [
    'off',
    [
      ...['off', 'unit off', 'power off', 'shut', 'stopped', 'stop', 'not running'],
      ...['apagad', 'parad', 'paro', 'detenid', 'desconectad', 'fuera de servicio'],
      ...['arret', 'eteint', 'hors tension', 'hors service', 'aus', 'ausgeschaltet'],
    ],
  ],
  [
    'idle',
    [
      ...['null', 'idle', 'standby', 'stand by', 'neutral', 'off cycle', 'cycle off', 'waiting', 'paus'],
      ...['nulo', 'nula', 'espera', 'reposo', 'neutro', 'en espera', 'en reposo'],
      ...['neutre', 'repos', 'attente', 'veille', 'en attente', 'en veille', 'bereit', 'leerlauf'],
    ],
  ],
  ['heating', ['heat', 'calent', 'calef', 'calor', 'chauff', 'rechauff', 'heiz']],
  [
    'cooling',
    ['cool', 'refrig', 'chill', 'pull down', 'pulldown', 'enfri', 'frio', 'refroid', 'froid', 'kuhl'],
  ],
];

/** Words that stand before what is done: `High speed cool`, `Unit: cooling`, `En deshielo`. */
const BEFORE =
  /^(?:(?:the|unit|equipo|unidad|groupe|gerat|mode|modo|state|estado|etat|in|en|im|high|hi|low|lo|full|max|speed|alta|baja|velocidad|grande|petite|vitesse|h|l|hs|ls)[\s:.,/-]+)*/;

/** What a text of a column of operation says; undefined for a word that is not known, or a number. */
export function operationIn(text: string): Operation | undefined {
  const said = plainWords(text).replaceAll(/[_/-]/g, ' ').replaceAll(/\s+/g, ' ');
  // A cycle that is off is a pause of a unit that is on.
  if (/\b(?:off cycle|cycle off)\b/.test(said)) return 'idle';
  // A run mode is no operation.
  if (/start stop|stop start|contin/.test(said)) return undefined;
  if (/\b(?:off|apagad[oa]|aus)$/.test(said)) return 'off';
  const rest = said.replace(BEFORE, '');
  return OPERATIONS.find(([, words]) => words.some((word) => rest.startsWith(word) || said === word))?.[0];
}
