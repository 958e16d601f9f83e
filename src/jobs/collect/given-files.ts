import { DossierError } from '../../core/model/error.js';
import { CAPTIONS_NAME } from '../../intake/captions.js';
import { ignoredReason } from '../../intake/file-scan.js';
import type { GivenBytes } from '../../platform/node/container/given-item.js';
import { LARGEST_ORIGINAL } from '../../record/store.js';
import type { Source } from './sources.js';

/** A file whose bytes are handed over, such as an upload. */
export interface GivenFile {
  /** Its name, with the folders that it lay in: `photos/IMG_0412.jpg`. Folders propose what a file shows. */
  name: string;
  /** Its bytes, or a stream of them, which is read once. */
  bytes: GivenBytes;
}

/**
 * Sources of files whose bytes are given. Throws DossierError `bad-value` for a name that is none, and for a
 * captions.csv, which has no folder here: what it says is given with `describe` afterwards.
 */
export function givenSources(given: readonly GivenFile[]): Source[] {
  return given.map(({ name, bytes }) => {
    requireName(name);
    return {
      found: { path: '', at: name, name, bytes: bytes instanceof Uint8Array ? bytes.length : 0 },
      hint: {},
      inside: { entry: name, bytes: LARGEST_ORIGINAL, read: () => readable(name, bytes) },
    };
  });
}

function requireName(name: string): void {
  const refuse = (message: string, fix: string) => {
    throw new DossierError('bad-value', message, { where: { file: name, field: 'given' }, fix });
  };
  const parts = name.split('/');
  if (parts.some((part) => part === '' || part === '.' || part === '..') || ignoredReason(name) !== undefined)
    refuse('this is no name of a file', 'Give its own name, with the folders that it lay in before it.');
  if (parts.at(-1)?.toLowerCase() === CAPTIONS_NAME)
    refuse(
      'a captions.csv describes files of its folder',
      'Give its path, or describe the files afterwards.',
    );
}

/** The bytes; what goes wrong with a stream is said of the file. */
async function* readable(file: string, bytes: GivenBytes): AsyncGenerator<Uint8Array> {
  if (bytes instanceof Uint8Array) {
    yield bytes;
    return;
  }
  try {
    yield* bytes;
  } catch (cause) {
    if (cause instanceof DossierError) throw cause;
    throw new DossierError('unreadable-file', `its bytes stopped coming: ${reasonOf(cause)}`, {
      where: { file },
      fix: 'Hand it over once more.',
      cause,
    });
  }
}

function reasonOf(cause: unknown): string {
  return cause instanceof Error ? cause.message.slice(0, 200) : 'no reason was given';
}
