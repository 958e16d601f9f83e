import type { SubjectName } from '../../core/model/evidence.js';

/**
 * Titles of documents, in lower case without accents. Common practice of the trade, no source. A phrase counts only
 * as a heading, so that a letter which mentions the bill is not taken for it.
 */
const DOCUMENT_WORDS: readonly (readonly [SubjectName, readonly string[]])[] = [
  [
    'bill-of-lading',
    ['bill of lading', 'straight bill', 'carta de porte', 'conocimiento de embarque', 'consignment note'],
  ],
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
      'loss and damage claim',
      'carta de reclamo',
      'reclamacion de carga',
    ],
  ],
  ['invoice', ['invoice', 'factura']],
];
/** Lines from the top that can be headings. */
const MOST_LINES = 60;
/** Other characters in a heading: a number, a firm. */
const BESIDE = 32;

/** The first heading that is a document's title. */
export function documentByHeading(text: string): { is: SubjectName; phrase: string } | undefined {
  const lines = text
    .split('\n', 4 * MOST_LINES)
    .map(plain)
    .filter((line) => line !== '');
  for (const line of lines.slice(0, MOST_LINES))
    for (const [is, phrases] of DOCUMENT_WORDS) {
      const phrase = phrases.find((words) => standsAlone(line, words));
      if (phrase !== undefined && line.length <= phrase.length + BESIDE && !/[.?!;]$/.test(line))
        return { is, phrase };
    }
  return undefined;
}

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
