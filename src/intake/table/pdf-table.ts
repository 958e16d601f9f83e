import { readFile, stat } from 'node:fs/promises';
import { DossierError } from '../../core/model/error.js';
import { WorkerError } from '../../platform/node/worker/worker-error.js';
import { Workers } from '../../platform/node/worker/workers.js';
import { type SheetText, sheetTexts } from './sheet-text.js';

/** A log of sixty days by the minute on paper is some two thousand pages, and 20 MB. */
const MOST_BYTES = 64 * 1024 * 1024;

const reader = new Workers<Uint8Array, SheetText[]>({
  script: new URL('./pdf-table.worker.js', import.meta.url),
  runs: 'thread',
  seconds: 60,
  megabytes: 768,
  answer: sheetTexts,
});

const AS_TABLE =
  'if it is the download of a log, get that as a table (CSV or a spreadsheet) and collect it too';

/**
 * The table of a log in the text of a PDF; none where its pages hold no rows of one, and where the optional library
 * that reads PDFs is not installed. Throws DossierError where there are such rows and their columns are not clear, and
 * for a file that is too large to be looked through.
 */
export async function readPdfTable(path: string, fileName: string): Promise<SheetText[]> {
  const { size } = await stat(path);
  if (size > MOST_BYTES)
    throw new DossierError(
      'file-too-large',
      `${size.toLocaleString('en-US')} bytes: its text was not looked through for a log, which is done up to ${MOST_BYTES.toLocaleString('en-US')}`,
      { where: { file: fileName }, fix: AS_TABLE },
    );
  try {
    return await reader.ask(new Uint8Array(await readFile(path)));
  } catch (cause) {
    if (!(cause instanceof WorkerError)) throw cause;
    const message =
      cause.is === 'refused'
        ? cause.message
        : `its text was not looked through to the end for a log: ${cause.message}`;
    throw new DossierError('unsupported-file', message, { where: { file: fileName }, fix: AS_TABLE, cause });
  }
}
