import { constants } from 'node:fs';
import { type FileHandle, lstat, open, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { latin1 } from '../../../core/model/bytes.js';
import {
  type Item,
  isOfRecord,
  LARGEST_DOSSIER,
  looksLikeZip,
  type OpenedItem,
} from '../../../core/verify/item.js';
import { refuse } from '../../../core/verify/malformed.js';
import { openFolder } from './folder.js';

/** What stands at a path, as far as its name and first bytes tell: a file or a folder. Links are not followed. */
export function itemAt(path: string): Item {
  return { path, open: () => openPath(path) };
}

async function openPath(path: string): Promise<OpenedItem> {
  const stat = await lstat(path);
  if (stat.isDirectory()) return openedFolder(path);
  const head = await withFile(path, async (file) => {
    const { buffer, bytesRead } = await file.read(new Uint8Array(8), 0, 8, 0);
    return latin1(buffer, 0, bytesRead);
  });
  if (!looksLikeZip(head, path)) return { is: 'dossier', bytes: await readDossier(path) };
  // Only now: a dossier is checked without the library that reads zip files.
  return { is: 'bag', container: async () => (await import('./zip.js')).openZip(path) };
}

async function openedFolder(path: string): Promise<OpenedItem> {
  const names = await readdir(path);
  const bag = { is: 'bag', container: () => openFolder(path) } as const;
  if (names.includes('bagit.txt')) return bag;
  if (names.includes('ledger.jsonl') || names.includes('checkpoint'))
    return { is: 'record', container: () => openFolder(path, isOfRecord) };
  // A bag that was unpacked by hand often stands in a folder of its own name.
  const [only, second] = names;
  if (only === undefined || second !== undefined) return { is: 'unknown' };
  const inner: string[] = await readdir(join(path, only)).catch(() => []);
  return inner.includes('bagit.txt') ? bag : { is: 'unknown' };
}

/** The bytes of a dossier. @throws Malformed when it is too large or no plain file */
async function readDossier(path: string): Promise<Uint8Array> {
  return withFile(path, async (file) => {
    const { size } = await file.stat();
    if (size > LARGEST_DOSSIER) refuse(`${size} bytes are more than the ${LARGEST_DOSSIER} that are read`);
    // In one piece: readFile asks for half a megabyte at a time, and waits between.
    const bytes = new Uint8Array(size);
    let filled = 0;
    for (let more = 1; more > 0 && filled < size; filled += more)
      more = (await file.read(bytes, filled, size - filled)).bytesRead;
    return bytes.subarray(0, filled);
  });
}

async function withFile<T>(path: string, action: (file: FileHandle) => Promise<T>): Promise<T> {
  // A pipe would be waited for without end.
  const file = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    if (!(await file.stat()).isFile()) refuse('it is not a plain file');
    return await action(file);
  } finally {
    await file.close();
  }
}
