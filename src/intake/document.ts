import { createReadStream } from 'node:fs';
import type { Problem } from '../model/error.js';
import type { FileRef, Flag } from '../model/evidence.js';
import type { Hint, ReceivedDraftOf } from './draft.js';
import type { Recognised } from './recognise.js';

/** Larger papers are kept, but not taken apart to count their pages. */
const MOST_BYTES = 64 * 1024 * 1024;

export interface DocumentInput {
  path: string;
  file: FileRef;
  is: Recognised['is'];
  hint?: Hint;
}

/** Draws up a paper's evidence. Never throws: what is empty, locked or of unknown type is kept, flagged and said so. */
export async function examineDocument({
  path,
  file,
  is,
  hint,
}: DocumentInput): Promise<{ received: ReceivedDraftOf<'document'>; problems: Problem[] }> {
  const flags: Flag[] = [];
  const problems: Problem[] = [];
  let pages: number | undefined;
  switch (is) {
    case 'empty':
      flags.push({
        is: 'empty-file',
        detail: file.bytes === 0 ? 'the file has no bytes' : 'the file holds nothing but blank space',
      });
      problems.push({
        code: 'unreadable-file',
        message: 'the file is empty; that it came empty is kept',
        where: { file: file.name },
        fix: 'collect a whole copy if there is one',
      });
      break;
    case 'pdf': {
      const pdf = await lookAtPdf(path);
      pages = pdf.pages;
      if (pdf.encrypted) {
        flags.push({ is: 'encrypted', detail: 'the PDF is encrypted; a reader may need its password' });
        problems.push({
          code: 'unsupported-file',
          message: 'the PDF is encrypted; it is kept as it is',
          where: { file: file.name },
          fix: 'collect an open copy too, so that readers of the dossier can see it',
        });
      }
      break;
    }
    case 'unknown':
      flags.push({ is: 'unknown-type', detail: 'its content is of no known type' });
      break;
    case 'table':
    case 'text':
    case 'picture':
      break;
  }
  return {
    received: {
      kind: 'document',
      file,
      time: { is: 'none', why: 'a paper carries no time of its own that can be relied on' },
      flags,
      ...(pages === undefined ? {} : { pages }),
      ...hint,
    },
    problems,
  };
}

/** Page count and encryption by a scan of the bytes; where pages lie in compressed objects, by pdf-lib. */
async function lookAtPdf(path: string): Promise<{ pages?: number; encrypted: boolean }> {
  const chunks: Buffer[] = [];
  let total = 0;
  for await (const chunk of createReadStream(path, { highWaterMark: 1 << 20 })) {
    chunks.push(chunk as Buffer);
    total += (chunk as Buffer).length;
    if (total > MOST_BYTES) return { encrypted: false };
  }
  const bytes = Buffer.concat(chunks);
  const text = bytes.toString('latin1');
  const encrypted = /\/Encrypt\s*(?:\d+\s+\d+\s+R|<<)/.test(text);
  const plain = text.match(/\/Type\s*\/Page(?![A-Za-z])/g)?.length ?? 0;
  // Updates repeat pages and object streams hide them: then only the page tree knows.
  const simple = !text.includes('/ObjStm') && text.match(/startxref/g)?.length === 1;
  if (encrypted || (simple && plain > 0)) return { encrypted, ...(plain > 0 ? { pages: plain } : {}) };
  try {
    const { PDFDocument } = await import('pdf-lib');
    const pages = (
      await PDFDocument.load(bytes, { updateMetadata: false, throwOnInvalidObject: true })
    ).getPageCount();
    return { encrypted, ...(pages > 0 ? { pages } : {}) };
  } catch {
    // A damaged PDF is still evidence; its page count is simply not known.
    return { encrypted, ...(plain > 0 ? { pages: plain } : {}) };
  }
}
