import { readFile, stat } from 'node:fs/promises';
import { DossierError } from '../../core/model/error.js';
import { WorkerError } from '../../platform/node/worker/worker-error.js';
import { Workers } from '../../platform/node/worker/workers.js';
import { type SheetText, sheetTexts } from './sheet-text.js';

/** A log of sixty days by the minute on paper is some two thousand pages. */
const MOST_BYTES = 64 * 1024 * 1024;

const reader = new Workers<Uint8Array, SheetText[]>({
  script: new URL('./pdf-table.worker.js', import.meta.url),
  runs: 'thread',
  seconds: 60,
  megabytes: 768,
  answer: sheetTexts,
});

/**
 * The table of a log in the text of a PDF; none where its pages hold no rows of one. Throws DossierError where there
 * are such rows and their columns are not clear. None, too, of a file of more than 64 MB, and where the optional library
 * that reads PDFs is not installed: it is kept as the paper that it is.
 */
export async function readPdfTable(path: string, fileName: string): Promise<SheetText[]> {
  if ((await stat(path)).size > MOST_BYTES) return [];
  try {
    return await reader.ask(new Uint8Array(await readFile(path)));
  } catch (cause) {
    if (!(cause instanceof WorkerError)) throw cause;
    throw new DossierError('unsupported-file', cause.message, {
      where: { file: fileName },
      fix: 'download the log as a table (CSV or a spreadsheet) and collect that too',
      cause,
    });
  }
}
