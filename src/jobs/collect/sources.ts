import { basename, join } from 'node:path';
import { DossierError, type Problem } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import {
  CAPTIONS_NAME,
  type CaptionContext,
  captionKey,
  hintFor,
  noSuchFile,
  readCaptions,
} from '../../intake/captions.js';
import type { Hint, NestedFile } from '../../intake/draft.js';
import type { FoundFile } from '../../intake/file-scan.js';

/** A file on the disk, or one in an e-mail or archive. */
export interface Source {
  found: FoundFile;
  hint: Hint;
  inside?: NestedFile;
}

/**
 * The files of an e-mail or archive, with the captions.csv among them.
 * @param lay extracts one file, and gives its path
 */
export async function sourcesInside(
  container: FoundFile,
  files: readonly NestedFile[],
  lay: (inside: NestedFile) => Promise<string>,
  context: CaptionContext,
): Promise<{ sources: Source[]; problems: Problem[] }> {
  const listed: { found: FoundFile; inside: NestedFile }[] = [];
  for (const inside of files) {
    const found = {
      // Only what tells of the files beside it is read before its turn.
      path: isSidecar(inside) ? await pathOf(inside, lay) : undefined,
      at: join(captionKey(container), inside.entry),
      name: `${container.name}/${inside.entry}`,
      bytes: inside.bytes,
    };
    listed.push({ found: { ...found, path: found.path ?? '' }, inside });
  }
  const readable = listed.filter(({ found, inside }) => found.path !== '' || !isSidecar(inside));
  const captions = await readCaptions(
    readable.map(({ found }) => found),
    context,
  );
  const sources = listed.map(({ found, inside }) => ({
    found,
    inside,
    hint: {
      ...omitUndefined({ caption: inside.caption }),
      ...hintFor(captions, found),
    },
  }));
  return { sources, problems: [...captions.problems, ...captions.unmatched.map(noSuchFile)] };
}

/** Largest text that is looked at for a chat before its turn. */
const MOST_CHAT = 20 * 1024 * 1024;

/** A captions.csv, or a text that can be an exported chat. */
function isSidecar({ entry, bytes }: NestedFile): boolean {
  return basename(entry).toLowerCase() === CAPTIONS_NAME || (/\.txt$/i.test(entry) && bytes <= MOST_CHAT);
}

async function pathOf(
  inside: NestedFile,
  lay: (inside: NestedFile) => Promise<string>,
): Promise<string | undefined> {
  try {
    return await lay(inside);
  } catch (error) {
    // Its problems are reported in its own turn.
    if (error instanceof DossierError && error.code !== 'disk') return undefined;
    throw error;
  }
}
