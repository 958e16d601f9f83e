import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** `templates/` beside `src/` or `dist/`. */
export const SHIPPED = fileURLToPath(new URL('../../templates', import.meta.url));

/** The folder of the shipped words of a language. */
export const shippedWords = (language: string): string => join(SHIPPED, 'words', language);
