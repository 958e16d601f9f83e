import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdtemp, open, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DossierError } from '../../core/model/error.js';
import { type Sha256, sha256 as sha256Schema } from '../../core/model/evidence.js';
import type { NestedFile } from '../../intake/draft.js';

/** A readable file, with size and hash. */
export interface ExtractedFile {
  path: string;
  bytes: number;
  sha256: Sha256;
}

/** A temporary folder for files that are examined and not kept; it is removed with its contents. */
export class ScratchFolder {
  #folder: string | undefined;
  #count = 0;

  /** Extracts one file of an e-mail or archive. Errors of the source pass through; DossierError `disk`. */
  async extract(inside: NestedFile): Promise<ExtractedFile> {
    const path = await this.#next();
    const hash = createHash('sha256');
    let bytes = 0;
    const file = await onDisk(path, () => open(path, 'wx', 0o600));
    try {
      for await (const chunk of inside.read()) {
        bytes += chunk.length;
        // An archive that understates a file's size must not fill the disk.
        if (bytes > inside.bytes)
          throw new DossierError(
            'file-too-large',
            `it has more than the ${inside.bytes} bytes that are stated`,
            {
              where: { file: inside.entry },
            },
          );
        hash.update(chunk);
        await onDisk(path, () => file.writeFile(chunk));
      }
    } finally {
      await file.close();
    }
    return { path, bytes, sha256: sha256Schema.parse(hash.digest('hex')) };
  }

  async drop(path: string): Promise<void> {
    await rm(path, { force: true });
  }

  async end(): Promise<void> {
    if (this.#folder !== undefined) await rm(this.#folder, { recursive: true, force: true });
  }

  async #next(): Promise<string> {
    const folder = tmpdir();
    this.#folder ??= await onDisk(folder, () => mkdtemp(join(folder, 'dossier-look-')));
    this.#count += 1;
    // Never under the archive's own name.
    return join(this.#folder, String(this.#count));
  }
}

/** Throws DossierError `unreadable-file`. */
export async function hashOf(path: string): Promise<Sha256> {
  const hash = createHash('sha256');
  try {
    for await (const chunk of createReadStream(path)) hash.update(chunk as Buffer);
  } catch (cause) {
    throw new DossierError('unreadable-file', 'the file cannot be read', { where: { file: path }, cause });
  }
  return sha256Schema.parse(hash.digest('hex'));
}

async function onDisk<T>(file: string, action: () => Promise<T>): Promise<T> {
  try {
    return await action();
  } catch (cause) {
    throw new DossierError('disk', 'cannot write it out to look at it', {
      where: { file },
      fix: 'Make room there, or name another folder in TMPDIR.',
      cause,
    });
  }
}
