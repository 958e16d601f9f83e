import type { Delivery } from '../core/model/delivery.js';
import { assertNever, DossierError, type Problem } from '../core/model/error.js';
import type { FileRef } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { folderHint } from './captions.js';
import type { ExaminedFile, Hint, LogOptions } from './draft.js';
import { type Recognised, recogniseFile } from './recognise.js';
import { nearestWord } from './settings/did-you-mean.js';

export type { ExaminedFile, Hint, LogOptions } from './draft.js';

export interface ExamineInput {
  /** Where the bytes can be read. */
  path: string;
  /** Name as shown, with its folders. */
  name: string;
  file: Omit<FileRef, 'type'>;
  delivery: Delivery;
  /** The file's description in captions.csv. */
  hint?: Hint;
  options?: LogOptions;
}

/**
 * Recognises a file and makes its evidence: kind, time, place, flags. A bad file is kept in the best form it
 * allows, with a problem that says why; throws only for a file that cannot be opened at all (DossierError
 * `unreadable-file`).
 */
export async function examineFile(input: ExamineInput): Promise<ExaminedFile> {
  const { path, name, delivery, options = {} } = input;
  let recognised: Recognised;
  try {
    recognised = await recogniseFile(path);
  } catch (cause) {
    throw new DossierError('unreadable-file', 'the file cannot be read', { where: { file: name }, cause });
  }
  const file: FileRef = { ...input.file, type: recognised.type };
  const checked = checkHint(mergeHints(input.hint, folderHint(name, delivery)), name, delivery);
  const asked = { path, file, delivery, hint: checked.hint };
  const examined = await examineKind(recognised, asked, options);
  return { ...examined, problems: [...checked.problems, ...examined.problems] };
}

interface FileQuery {
  path: string;
  file: FileRef;
  delivery: Delivery;
  hint: Hint;
}

const HAS_OWN_TIMES: ReadonlySet<Recognised['is']> = new Set([
  'table',
  'spreadsheet',
  'records',
  'archive',
  'message',
]);

async function examineKind(
  recognised: Recognised,
  query: FileQuery,
  options: LogOptions,
): Promise<ExaminedFile> {
  // Tables and containers have times of their own.
  const { time: _time, ...timeless } = query.hint;
  const asked = HAS_OWN_TIMES.has(recognised.is) ? { ...query, hint: timeless } : query;
  switch (recognised.is) {
    case 'picture': {
      const { examinePhoto } = await import('./photo/examine-photo.js');
      const { received, problems } = await examinePhoto({ ...asked, type: recognised.type });
      const shows = received.subject === undefined ? 'what it shows is not said yet' : received.subject.is;
      const { credentials } = received;
      const signed =
        credentials === undefined ? '' : `; content credentials: ${CREDENTIALS[credentials.state]}`;
      return { received, readings: [], problems, takenFor: `photo: ${shows}${signed}` };
    }
    case 'table':
      return (await import('./examine-table.js')).examineTable(asked, options);
    case 'spreadsheet':
      return (await import('./examine-book.js')).examineSpreadsheet(asked, options);
    case 'records':
      return (await import('./examine-book.js')).examineRecords(asked, options);
    case 'archive':
      return (await import('./examine-container.js')).examineArchive(asked);
    case 'message':
      return (await import('./examine-container.js')).examineMail(asked);
    case 'pdf': {
      const paper = await examinePaper(asked, recognised.is);
      return (await import('./examine-book.js')).examinePdfTable(asked, options, paper);
    }
    case 'recording': {
      const { examineRecording } = await import('./recording/examine-recording.js');
      return { ...(await examineRecording(asked)), readings: [] };
    }
    case 'text':
    case 'empty':
    case 'unknown':
      return examinePaper(asked, recognised.is);
    default:
      return assertNever(recognised);
  }
}

async function examinePaper(
  asked: FileQuery,
  is: 'pdf' | 'text' | 'empty' | 'unknown',
): Promise<ExaminedFile> {
  const { examineDocument } = await import('./document.js');
  const { received, problems } = await examineDocument({ ...asked, is });
  const what = {
    pdf:
      received.pages === undefined
        ? 'PDF'
        : `PDF of ${received.pages} ${received.pages === 1 ? 'page' : 'pages'}`,
    text: 'text',
    empty: 'an empty file',
    unknown: 'a file of unknown type, kept as it is',
  }[is];
  const named = received.subject === undefined ? '' : `, ${received.subject.is}`;
  return { received, readings: [], problems, takenFor: `document: ${what}${named}` };
}

const CREDENTIALS = {
  intact: 'the picture is as it was signed, nobody here vouches for the signer',
  broken: 'the picture was changed since it was signed',
  unreadable: 'they cannot be read',
  'not-checked': 'they were not checked',
};

/** Captions first, then folder names. */
function mergeHints(said: Hint | undefined, folder: Hint): Hint {
  const place = { ...folder.place, ...said?.place };
  return {
    ...folder,
    ...said,
    ...omitUndefined({ place: Object.keys(place).length === 0 ? undefined : place }),
  };
}

/** Stops and lines that the delivery lacks are removed from the hint and reported. */
export function checkHint(hint: Hint, file: string, delivery: Delivery): { hint: Hint; problems: Problem[] } {
  const problems: Problem[] = [];
  const known = (
    name: string | undefined,
    field: 'stop' | 'line',
    names: readonly string[],
  ): string | undefined => {
    const found = names.find((n) => n.toLowerCase() === name?.toLowerCase());
    if (name === undefined || found !== undefined) return found;
    const close = nearestWord(name, names);
    problems.push({
      code: 'bad-value',
      message: `there is no ${field} "${name}"; there are: ${names.join(', ')}`,
      where: { file, field },
      ...omitUndefined({ fix: close === undefined ? undefined : `did you mean ${close}?` }),
    });
    return undefined;
  };
  const stop = known(
    hint.place?.stop,
    'stop',
    delivery.stops.map((s) => s.id),
  );
  const line = known(
    hint.line,
    'line',
    delivery.lines.map((l) => l.id),
  );
  const { place, line: _line, ...others } = hint;
  const { stop: _stop, ...part } = place ?? {};
  const at = { ...part, ...omitUndefined({ stop }) };
  return {
    hint: {
      ...others,
      ...omitUndefined({ place: Object.keys(at).length === 0 ? undefined : at, line }),
    },
    problems,
  };
}
