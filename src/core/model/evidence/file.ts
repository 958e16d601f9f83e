/** Files as they came in. */
import { z } from 'zod';
import { evidenceId, sha256 } from './ids.js';

/** A file as it was taken in; its bytes lie under originals/ by this hash. */
export const fileRef = z.strictObject({
  name: z.string().meta({ description: 'Name' }),
  bytes: z.int().nonnegative().meta({ description: 'Size' }),
  sha256: sha256.meta({ description: 'SHA-256, which also names the original' }),
  type: z.string().meta({ description: 'Media type, recognised from the content' }),
});
export type FileRef = z.infer<typeof fileRef>;

/** The e-mail or archive that a file came in, which is evidence itself, and its name in there. */
export const containerRef = z.strictObject({ evidence: evidenceId, entry: z.string().min(1).max(1000) });
export type ContainerRef = z.infer<typeof containerRef>;
