import { concatBytes } from '../../core/model/bytes.js';
import type { Inflate } from '../../core/ports/cryptography.js';

export const inflate: Inflate = async (packed, most) => {
  const reader = new Blob([concatBytes([packed])])
    .stream()
    .pipeThrough(new DecompressionStream('deflate'))
    .getReader();
  const pieces: Uint8Array[] = [];
  let size = 0;
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      size += next.value.length;
      if (size > most) {
        await reader.cancel();
        return undefined;
      }
      pieces.push(next.value);
    }
  } catch {
    return undefined;
  }
  return concatBytes(pieces);
};
