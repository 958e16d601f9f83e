import { assertNever, DossierError, type Problem } from '../core/model/error.js';
import type { FileRef, Flag, Subject } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { EventTime } from '../core/model/time.js';
import { documentByFileName, documentByHeading } from './document/document-words.js';
import { scanPdf } from './document/pdf.js';
import type { Hint, ReceivedDraftOf } from './draft.js';
import type { Recognised } from './recognise.js';
import { headOf } from './table/bytes.js';
import { decode } from './table/encoding.js';
import { hasRowsOfValues } from './table/prose.js';

export interface DocumentInput {
  path: string;
  file: FileRef;
  is: Exclude<Recognised['is'], 'archive' | 'message' | 'recording'>;
  hint?: Hint;
}

/** What the bytes of a document show, without what people say about it. */
interface DocumentScan {
  flags: Flag[];
  problems: Problem[];
  pages?: number;
  /** Beginning of its text, for proposing its subject. */
  text?: string;
}

const NO_TIME: EventTime = { is: 'none', why: 'a paper carries no time of its own that can be relied on' };

/**
 * Makes a document's evidence. Never throws for a bad file: an empty, locked, damaged or unknown one is kept,
 * flagged and reported. Its subject is proposed from its own words unless a person stated it.
 */
export async function examineDocument({
  path,
  file,
  is,
  hint,
}: DocumentInput): Promise<{ received: ReceivedDraftOf<'document'>; problems: Problem[] }> {
  const { flags, problems, pages, text } = await scanDocument(path, file, is);
  const subject = hint?.subject ?? (is === 'empty' ? undefined : proposeSubject(text ?? '', file.name));
  return {
    received: {
      kind: 'document',
      file,
      time: NO_TIME,
      flags,
      ...omitUndefined({ pages }),
      ...hint,
      ...omitUndefined({ subject }),
    },
    problems,
  };
}

async function scanDocument(path: string, file: FileRef, is: DocumentInput['is']): Promise<DocumentScan> {
  switch (is) {
    case 'empty':
      return {
        flags: [
          {
            is: 'empty-file',
            detail: file.bytes === 0 ? 'the file has no bytes' : 'the file holds nothing but blank space',
          },
        ],
        problems: [
          {
            code: 'unreadable-file',
            message: 'the file is empty; that it came empty is kept',
            where: { file: file.name },
            fix: 'collect a whole copy if there is one',
          },
        ],
      };
    case 'pdf':
      return scanPdfDocument(path, file);
    case 'text': {
      const text = decode(await headOf(path, 16 * 1024));
      return { flags: [], problems: hasRowsOfValues(text) ? [logWithBlanks(file.name)] : [], text };
    }
    case 'table':
    case 'records':
      return { flags: [], problems: [], text: decode(await headOf(path, 16 * 1024)) };
    case 'unknown':
      return {
        flags: [{ is: 'unknown-type', detail: 'its content is of no known type' }],
        problems: [],
      };
    case 'spreadsheet':
    case 'picture':
      return { flags: [], problems: [] };
    default:
      return assertNever(is);
  }
}

function logWithBlanks(file: string): Problem {
  return {
    code: 'unsupported-file',
    message:
      'its lines hold a time and temperatures with nothing but blanks or words between them: it may be a log, and is not read as one',
    where: { file },
    fix: 'download it with commas or semicolons between the columns, or save it so from a spreadsheet',
  };
}

async function scanPdfDocument(path: string, file: FileRef): Promise<DocumentScan> {
  const pdf = await scanPdf(path);
  const paper: DocumentScan = { flags: [], problems: [], text: pdf.text };
  if (pdf.pages !== undefined) paper.pages = pdf.pages;
  if (pdf.encrypted) {
    paper.flags.push({ is: 'encrypted', detail: 'the PDF is encrypted; a reader may need its password' });
    paper.problems.push({
      code: 'unsupported-file',
      message: 'the PDF is encrypted; it is kept as it is',
      where: { file: file.name },
      fix: 'collect an open copy too, so that readers of the dossier can see it',
    });
  }
  if (pdf.active.length > 0)
    paper.flags.push({
      is: 'active-content',
      detail: `it carries ${pdf.active.join(', ')}; open it only in a reader that runs nothing`,
    });
  if (pdf.damaged !== undefined) {
    paper.flags.push({ is: 'damaged', detail: pdf.damaged });
    paper.problems.push({
      code: 'unreadable-file',
      message: `the PDF is damaged: ${pdf.damaged}; its bytes are kept as they are`,
      where: { file: file.name },
      fix: 'collect a whole copy too, if there is one',
    });
  }
  return paper;
}

/** The subject by the text or, failing that, the file's name: always a proposal. */
function proposeSubject(text: string, fileName: string): Subject | undefined {
  const words = documentByHeading(text);
  if (words !== undefined) return { is: words.is, sure: 'proposed', from: `heading "${words.phrase}"` };
  const name = documentByFileName(fileName);
  return name === undefined
    ? undefined
    : { is: name.is, sure: 'proposed', from: `file name, "${name.phrase}"` };
}

/** The problem of a file that could not be opened as its type; every other error is thrown on. */
export function problemOfKeptFile(error: unknown, file: string): Problem {
  if (!(error instanceof DossierError)) throw error;
  return { ...error.toProblem(), where: { ...error.where, file } };
}
