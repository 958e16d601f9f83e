import { z } from 'zod';
import type { ByteSource } from './bytes.js';

/** One sheet of a spreadsheet, or the table of another file, as tab-separated text: line n is row n. */
export interface SheetText {
  name: string;
  text: string;
  /** What the file holds of the table and the text does not, in sentences. */
  losses?: string[] | undefined;
}

export const sheetTexts = z.array(
  z.object({ name: z.string(), text: z.string(), losses: z.array(z.string()).optional() }),
);

const SLICE = 1 << 20;

export function asSource({ text }: SheetText): ByteSource {
  return async function* () {
    for (let at = 0; at < text.length; ) {
      const end = at + SLICE;
      // A slice never ends between the halves of a character.
      const cut = (text.charCodeAt(end - 1) & 0xfc00) === 0xd800 ? end + 1 : end;
      yield Buffer.from(text.slice(at, cut));
      at = cut;
    }
  };
}
