import { userInfo } from 'node:os';

/** Who enters a record entry: the name on the command line, DOSSIER_BY, or the account's name. */
export function resolveEnteredBy(said: string | undefined): string {
  const named = said ?? process.env.DOSSIER_BY;
  if (named !== undefined && named.trim() !== '') return named.trim().slice(0, 200);
  return userInfo().username;
}
