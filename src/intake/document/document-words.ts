import type { SubjectName } from '../../core/model/evidence.js';

/**
 * Titles of documents, in lower case without accents. Common practice of the trade, no source. A phrase counts only
 * as a heading, so that a letter which mentions the bill is not taken for it.
 */
const DOCUMENT_WORDS: readonly (readonly [SubjectName, readonly string[]])[] = [
  ['bill-of-lading', ['bill of lading', 'straight bill', 'carta de porte', 'conocimiento de embarque']],
  ['consignment-note', ['consignment note', 'lettre de voiture', 'carta de porte internacional']],
  [
    'proof-of-delivery',
    ['proof of delivery', 'delivery receipt', 'comprobante de entrega', 'prueba de entrega'],
  ],
  [
    'inspection-certificate',
    ['inspection certificate', 'certificate of inspection', 'inspection report', 'certificado de inspeccion'],
  ],
  ['washout-receipt', ['washout receipt', 'wash out receipt', 'trailer washout', 'comprobante de lavado']],
  [
    'scale-ticket',
    ['scale ticket', 'weigh ticket', 'weight ticket', 'boleta de bascula', 'ticket de bascula'],
  ],
  [
    'thermometer-check',
    ['thermometer check', 'ice point check', 'thermometer calibration', 'verificacion del termometro'],
  ],
  [
    'pre-trip-report',
    ['pre-trip report', 'pre-trip inspection', 'pretrip report', 'revision previa al viaje'],
  ],
  [
    'shipper-pulp-sheet',
    ['pulp temperature sheet', 'pulp sheet', 'shipping temperature record', 'hoja de pulpa'],
  ],
  [
    'rejection-notice',
    [
      'notice of rejection',
      'rejection notice',
      'notice of refusal',
      'aviso de rechazo',
      'notificacion de rechazo',
    ],
  ],
  [
    'claim-letter',
    [
      'freight claim',
      'cargo claim',
      'notice of claim',
      'claim letter',
      'claim for loss',
      'claim for damage',
      'claim for shortage',
      'standard form for presentation of loss and damage claims',
      'loss and damage claim',
      'carta de reclamo',
      'reclamacion de carga',
    ],
  ],
  ['invoice', ['invoice', 'factura']],
  [
    'calibration-certificate',
    ['certificate of calibration', 'calibration certificate', 'certificado de calibracion'],
  ],
  [
    'market-report',
    ['market news report', 'terminal market report', 'shipping point report', 'informe de mercado'],
  ],
  ['phytosanitary-certificate', ['phytosanitary certificate', 'certificado fitosanitario']],
  ['customs-document', ['entry summary', 'customs declaration', 'pedimento']],
  ['harvest-record', ['harvest record', 'cooling record', 'registro de cosecha']],
];
/** A claim is headed by that word alone, or with its number. */
const CLAIM_TITLE = /^(?:claim|reclamo|reclamacion)(?: (?:no|nr|number|num)?\.? ?#? ?[\w-]{1,20})?$/;
/** Lines at the top in which a number stands beside a title. */
const TITLE_LINES = 2;
/** Lines from the top that can be headings. */
const MOST_LINES = 60;
/** Other characters in a heading: a number, a firm. */
const BESIDE = 32;

/** The first heading that is a document's title. */
export function documentByHeading(text: string): { is: SubjectName; phrase: string } | undefined {
  const lines = text.split('\n', 4 * MOST_LINES).filter((line) => line.trim() !== '');
  for (const [index, written] of lines.slice(0, MOST_LINES).entries()) {
    const line = plain(written);
    if (CLAIM_TITLE.test(line)) return { is: 'claim-letter', phrase: 'claim' };
    for (const [is, phrases] of DOCUMENT_WORDS) {
      const phrase = phrases.find((words) => standsAlone(line, words));
      if (phrase === undefined || line.length > phrase.length + BESIDE || /[.?!;]$/.test(line)) continue;
      if (!isReference(line, phrase, index < TITLE_LINES || isCapitals(written))) return { is, phrase };
    }
  }
  return undefined;
}

/**
 * Whether a line names a document by its number, as other papers do: `Bill of lading: 4711`. A title has a number
 * beside it only in the first lines, or in capitals.
 */
function isReference(line: string, phrase: string, isTitle: boolean): boolean {
  const after = line.slice(line.indexOf(phrase) + phrase.length).trim();
  if (/^:/.test(after)) return true;
  return !isTitle && /^(?:#|no\b|nr\b|num|number)|^\D{0,4}\d/.test(after);
}

const isCapitals = (line: string): boolean => /\p{L}/u.test(line) && line === line.toUpperCase();

/** A file name such as `Bill_of_Lading-4711.pdf` names the document; anyone can choose it, so it counts last. */
export function documentByFileName(name: string): { is: SubjectName; phrase: string } | undefined {
  const base = plain(
    (name.split('/').at(-1) ?? '').replace(/\.[A-Za-z0-9]{1,5}$/, '').replaceAll(/[_+.-]+/g, ' '),
  );
  for (const [is, phrases] of DOCUMENT_WORDS) {
    const phrase = phrases.find((words) => standsAlone(base, words.replaceAll('-', ' ')));
    if (phrase !== undefined) return { is, phrase };
  }
  return undefined;
}

function standsAlone(line: string, words: string): boolean {
  const at = line.indexOf(words);
  if (at < 0) return false;
  return !/[a-z]/.test(line[at - 1] ?? ' ') && !/[a-z]/.test(line[at + words.length] ?? ' ');
}

function plain(text: string): string {
  return text
    .slice(0, 400)
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/\s+/g, ' ')
    .trim();
}
