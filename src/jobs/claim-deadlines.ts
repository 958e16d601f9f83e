import { readFile } from 'node:fs/promises';
import { carrierTemplates } from '../compose/templates.js';
import type { ClaimDeadlines } from '../core/model/claim-deadlines.js';
import { DossierError } from '../core/model/error.js';
import { parseClaimDeadlines } from '../intake/claim-deadlines-file.js';

/** The shipped deadlines, which never change. */
let shipped: ClaimDeadlines | undefined;

/**
 * The claim deadlines: the carrier's own file in its folder of templates, or the shipped one. Throws DossierError
 * `bad-template` when the file cannot be read or does not fit the schema.
 */
export async function loadClaimDeadlines(folder?: string): Promise<ClaimDeadlines> {
  const name = 'claim-deadlines.yaml';
  const { changed, fileOf } = await carrierTemplates(folder);
  if (!changed.has(name) && shipped !== undefined) return shipped;
  const file = fileOf(name);
  const text = await readFile(file, 'utf8').catch((cause: unknown) => {
    throw new DossierError('bad-template', 'the clocks of a claim cannot be read', {
      where: { file },
      fix: 'Compare it with the shipped templates/claim-deadlines.yaml.',
      cause,
    });
  });
  const clocks = parseClaimDeadlines(text, file);
  if (!changed.has(name)) shipped = clocks;
  return clocks;
}
