import { concatBytes, latin1 } from '../../../core/model/bytes.js';
import { type Item, LARGEST_DOSSIER, looksLikeZip, type OpenedItem } from '../../../core/verify/item.js';
import { refuse } from '../../../core/verify/malformed.js';

/** Bytes that are at hand, or come as they are read. */
export type GivenBytes = Uint8Array | AsyncIterable<Uint8Array>;

/** A dossier or the zip of a bag whose bytes are given: read whole into memory, and no more than 1 GiB of it. */
export function itemOf(name: string, given: GivenBytes): Item {
  return { path: name, open: () => openBytes(name, given) };
}

async function openBytes(name: string, given: GivenBytes): Promise<OpenedItem> {
  const bytes = given instanceof Uint8Array ? given : await readAll(given);
  if (!looksLikeZip(latin1(bytes, 0, 8), name)) return { is: 'dossier', bytes };
  return { is: 'bag', container: async () => (await import('./zip.js')).openZip(bytes) };
}

async function readAll(stream: AsyncIterable<Uint8Array>): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  let size = 0;
  for await (const piece of stream) {
    size += piece.length;
    if (size > LARGEST_DOSSIER) refuse(`more than the ${LARGEST_DOSSIER} bytes that are read`);
    pieces.push(piece);
  }
  return concatBytes(pieces);
}
