import { readFile, stat } from 'node:fs/promises';
import { DossierError } from '../../core/model/error.js';
import { WorkerError } from '../../platform/node/worker/worker-error.js';
import { Workers } from '../../platform/node/worker/workers.js';
import { decode, judgeEncoding } from './encoding.js';
import { type SheetText, sheetTexts } from './sheet-text.js';

export type RecordForm = 'json' | 'json-lines' | 'xml';

/** Half a million records; as objects they take many times as much. */
const MOST_BYTES = 64 * 1024 * 1024;

const reader = new Workers<{ is: RecordForm; text: string }, SheetText[]>({
  script: new URL('./records.worker.js', import.meta.url),
  runs: 'thread',
  seconds: 30,
  megabytes: 768,
  answer: sheetTexts,
});

/**
 * The form of records that a text begins with: JSON lines where the first line is an object of its own.
 */
export function recordForm(head: string): RecordForm | undefined {
  const text = head.replace(/^\uFEFF/, '').trimStart();
  if (/^<\?xml\s|^<[\p{L}_][^>]{0,2000}>/u.test(text) && !/^<(?:!doctype\s+)?html/i.test(text)) return 'xml';
  if (/^\[\s*\{/.test(text)) return 'json';
  if (!text.startsWith('{')) return undefined;
  const [first = '', second] = text.split(/\r?\n/, 2);
  return second !== undefined && isObject(first) && /^\s*(?:\{|$)/.test(second) ? 'json-lines' : 'json';
}

function isObject(line: string): boolean {
  try {
    const value: unknown = JSON.parse(line);
    return typeof value === 'object' && value !== null;
  } catch {
    return false;
  }
}

/** The records of a file as one table; none where it holds no list of records. Throws DossierError for a damaged file. */
export async function readRecords(path: string, fileName: string, is: RecordForm): Promise<SheetText[]> {
  const refuse = (code: 'unsupported-file' | 'file-too-large', message: string, cause?: unknown) =>
    new DossierError(code, message, {
      where: { file: fileName },
      fix: 'save the table of the log as CSV and collect that too',
      cause,
    });
  const { size } = await stat(path);
  if (size > MOST_BYTES)
    throw refuse('file-too-large', `${size} bytes; at most ${MOST_BYTES} are read as records`);
  const text = decode(await readFile(path), await judgeEncoding(path, 64 * 1024));
  try {
    return await reader.ask({ is, text });
  } catch (cause) {
    if (!(cause instanceof WorkerError)) throw cause;
    const why = cause.is === 'out-of-memory' ? 'it is larger than is read' : cause.message;
    throw refuse('unsupported-file', `the records cannot be read: ${why}`, cause);
  }
}
