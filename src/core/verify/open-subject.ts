import { constants } from 'node:fs';
import { type FileHandle, lstat, open, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { refuse } from './malformed.js';

/** What stands at a path, as far as its name and first bytes tell. */
export type ItemKind = 'dossier' | 'bag-zip' | 'bag-folder' | 'record' | 'unknown';

/** A dossier is made to be sent by e-mail; what is far larger is not one. */
const LARGEST_DOSSIER = 1024 ** 3;

/** Looks at a path without following a link there. @throws Error of the system when it cannot be looked at */
export async function kindOf(path: string): Promise<ItemKind> {
  const stat = await lstat(path);
  if (stat.isDirectory()) {
    const names = await readdir(path);
    if (names.includes('bagit.txt')) return 'bag-folder';
    if (names.includes('ledger.jsonl') || names.includes('checkpoint')) return 'record';
    // A bag that was unpacked by hand often stands in a folder of its own name.
    const [only, second] = names;
    if (only === undefined || second !== undefined) return 'unknown';
    const inner: string[] = await readdir(join(path, only)).catch(() => []);
    return inner.includes('bagit.txt') ? 'bag-folder' : 'unknown';
  }
  const head = await withFile(path, async (file) => {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(8), 0, 8, 0);
    return buffer.subarray(0, bytesRead).toString('latin1');
  });
  if (head.startsWith('PK\x03\x04') || head.startsWith('PK\x05\x06')) return 'bag-zip';
  // One whose first bytes were changed is still to be judged as what it is called.
  return /\.zip$/i.test(path) && !head.startsWith('%PDF-') ? 'bag-zip' : 'dossier';
}

/** The bytes of a dossier. @throws Malformed when it is too large or no plain file */
export async function readDossier(path: string): Promise<Uint8Array> {
  return withFile(path, async (file) => {
    const { size } = await file.stat();
    if (size > LARGEST_DOSSIER) refuse(`${size} bytes are more than the ${LARGEST_DOSSIER} that are read`);
    // In one piece: readFile asks for half a megabyte at a time, and waits between.
    const bytes = Buffer.allocUnsafe(size);
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
