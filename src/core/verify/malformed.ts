/**
 * Thrown by the strict readers of this folder when bytes are not what a dossier has there, and caught by the
 * check that asked for them: it never leaves `verifyDossier`.
 */
export class Malformed extends Error {
  override readonly name = 'Malformed';
}

export function refuse(why: string): never {
  throw new Malformed(why);
}
