import { userInfo } from 'node:os';

/** Who enters something: what was said on the command line, DOSSIER_BY, or the name of the account. */
export function resolveEnteredBy(said: string | undefined): string {
  const named = said ?? process.env.DOSSIER_BY;
  if (named !== undefined && named.trim() !== '') return named.trim().slice(0, 200);
  return userInfo().username;
}
