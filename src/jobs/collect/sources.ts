import { basename, join } from 'node:path';
import { CAPTIONS_NAME, hintFor, placeOf, readCaptions } from '../../intake/captions.js';
import type { Hint, InsideFile } from '../../intake/draft.js';
import type { FoundFile } from '../../intake/walk.js';
import { DossierError, type Problem } from '../../model/error.js';
import type { DeliveryRecord } from '../../record/store.js';

/** A file on the disk, or one in an e-mail or archive. */
export interface Source {
  found: FoundFile;
  hint: Hint;
  inside?: InsideFile;
}

/** The files of an e-mail or archive, with what a captions.csv among them says. */
export async function sourcesInside(
  container: FoundFile,
  files: readonly InsideFile[],
  record: DeliveryRecord,
): Promise<{ sources: Source[]; problems: Problem[] }> {
  const listed: { found: FoundFile; inside: InsideFile }[] = [];
  for (const inside of files) {
    const found = {
      // Only a captions.csv is read before its turn, from where its original then lies.
      path: isCaptions(inside) ? await storedPath(inside, record) : undefined,
      at: join(placeOf(container), inside.entry),
      name: `${container.name}/${inside.entry}`,
      bytes: inside.bytes,
    };
    listed.push({ found: { ...found, path: found.path ?? '' }, inside });
  }
  const readable = listed.filter(({ found, inside }) => found.path !== '' || !isCaptions(inside));
  const captions = await readCaptions(readable.map(({ found }) => found));
  const sources = listed.map(({ found, inside }) => ({
    found,
    inside,
    hint: {
      ...(inside.caption === undefined ? {} : { caption: inside.caption }),
      ...hintFor(captions, found),
    },
  }));
  return { sources, problems: captions.problems };
}

function isCaptions({ entry }: InsideFile): boolean {
  return basename(entry).toLowerCase() === CAPTIONS_NAME;
}

async function storedPath(inside: InsideFile, record: DeliveryRecord): Promise<string | undefined> {
  try {
    return (await record.addOriginalStream(inside.read(), '.csv', inside.bytes)).file.path;
  } catch (error) {
    // It is named when it is taken in in its turn.
    if (error instanceof DossierError && error.code !== 'disk') return undefined;
    throw error;
  }
}
