import { sha256OfLarge } from '../../ledger/tree.js';
import type { Sha256 } from '../../model/evidence.js';
import type { PdfFile } from './file.js';
import { nameOf } from './value.js';

/** The pictures of the pages by the hashes of their streams, which are left as they are packed. */
export async function pictureStreams({ bytes, objects }: PdfFile): Promise<Map<Sha256, Uint8Array>> {
  const found = new Map<Sha256, Uint8Array>();
  for (const { value, stream } of objects.values()) {
    if (stream === undefined || value.is !== 'dict' || nameOf(value.get('Subtype')) !== 'Image') continue;
    const picture = bytes.subarray(stream.from, stream.to);
    found.set(await sha256OfLarge(picture), picture);
  }
  return found;
}
