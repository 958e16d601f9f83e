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

export interface DocumentInput {
  path: string;
  file: FileRef;
  is: Exclude<Recognised['is'], 'archive' | 'message'>;
  hint?: Hint;
}

/** What the bytes of a paper show, before what people say about it. */
interface DocumentScan {
  flags: Flag[];
  problems: Problem[];
  pages?: number;
  /** Its beginning, to find out what it calls itself. */
  text?: string;
}

const NO_TIME: EventTime = { is: 'none', why: 'a paper carries no time of its own that can be relied on' };

/**
 * Draws up a paper's evidence. Never throws for a bad one: what is empty, locked, damaged or of unknown type is
 * kept, flagged and said so. What it is, is proposed from its own words unless a person said it.
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
    case 'text':
      return { flags: [], problems: [], text: decode(await headOf(path, 16 * 1024)) };
    case 'unknown':
      return {
        flags: [{ is: 'unknown-type', detail: 'its content is of no known type' }],
        problems: [],
      };
    case 'table':
    case 'spreadsheet':
    case 'picture':
      return { flags: [], problems: [] };
    default:
      return assertNever(is);
  }
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

/** The paper that a text or, failing that, the file's name speaks of: always a proposal. */
function proposeSubject(text: string, fileName: string): Subject | undefined {
  const words = documentByHeading(text);
  if (words !== undefined) return { is: words.is, sure: 'proposed', from: `heading "${words.phrase}"` };
  const name = documentByFileName(fileName);
  return name === undefined
    ? undefined
    : { is: name.is, sure: 'proposed', from: `file name, "${name.phrase}"` };
}

/** A file that could not be opened as what it is; every other error is passed on. */
export function problemOfKeptFile(error: unknown, file: string): Problem {
  if (!(error instanceof DossierError)) throw error;
  return { ...error.toProblem(), where: { ...error.where, file } };
}
