/**
 * Bytes that are not what a dossier has in that place. Strict readers throw it, and the check that called the reader
 * catches it: it never leaves `verifyDossier`.
 */
export class Malformed extends Error {
  override readonly name = 'Malformed';
}

export function refuse(why: string): never {
  throw new Malformed(why);
}
